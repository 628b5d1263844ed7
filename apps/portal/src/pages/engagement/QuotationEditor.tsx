import { etagOf } from '@garboard/contract/client';
import type { FirmRates, QuotationView } from '@garboard/contract/quotations';
import type { Survey } from '@garboard/contract/surveys';
import { addDays } from '@garboard/trade/due-dates';
import { partyRoleLabels } from '@garboard/trade/vocabulary';
import { useState } from 'react';
import { Link, useLocation } from 'wouter';
import { call } from '../../api/client.ts';
import { fieldError } from '../../api/problems.ts';
import { useAction, useAnswer, useWholeList } from '../../api/queries.ts';
import { useLeaveWarning } from '../../app/leaving.tsx';
import { same } from '../../app/merge.ts';
import { Button } from '../../ui/Button.tsx';
import { Loading } from '../../ui/EmptyState.tsx';
import { ErrorNotice } from '../../ui/ErrorNotice.tsx';
import { SelectField, TextArea, TextField } from '../../ui/Field.tsx';
import { today } from '../../ui/format.ts';
import { SurveyFrame, WithSurvey } from '../surveys/SurveyFrame.tsx';
import { FeeByRates } from './FeeByRates.tsx';
import { LinesEditor } from './LinesEditor.tsx';
import { draftOfLine, inputsOf, linesFrom } from './lineDraft.ts';

/** Writes a quotation: a new one, or one that wasn't sent yet. */
export default function QuotationEditor({ surveyId, id }: { surveyId: string; id?: string }) {
  return (
    <WithSurvey id={surveyId}>
      {(survey) => (
        <SurveyFrame survey={survey} title={id ? 'Change the quotation' : 'Draft a quotation'}>
          <Loaded survey={survey} id={id} />
        </SurveyFrame>
      )}
    </WithSurvey>
  );
}

function Loaded({ survey, id }: { survey: Survey; id: string | undefined }) {
  const rates = useAnswer('getFirmRates', { params: { id: survey.firmId } });
  const parties = useWholeList('listParties', { params: { id: survey.id } });
  const draft = useAnswer(
    'getQuotation',
    { params: { id: id ?? '' } },
    { enabled: id !== undefined, anew: true },
  );
  const vessel = useAnswer('getVessel', { params: { id: survey.vesselId } });
  const error = rates.error ?? parties.error ?? draft.error ?? vessel.error;
  if (error) return <ErrorNotice error={error} />;
  if (!rates.data || !parties.data || !vessel.data || (id && !draft.isFetchedAfterMount)) {
    return <Loading what="your rates" />;
  }
  if (rates.data.version === 0) {
    return (
      <p className="measure">
        Your firm has not said what it charges yet. A principal sets the rates on the{' '}
        <Link href="/firm">firm’s page</Link>; quotations are reckoned from them.
      </p>
    );
  }
  const payers = parties.data.filter((party) => party.role !== 'yard');
  if (payers.length === 0) {
    return (
      <p className="measure">
        Nobody is invited yet to whom a quotation could go. Invite the owner or the buyer on the{' '}
        <Link href={`/surveys/${survey.id}/parties`}>parties’ page</Link> first.
      </p>
    );
  }
  const labels = Object.fromEntries(
    payers.map((party) => [party.id, `${party.name}, ${partyRoleLabels[party.role].toLowerCase()}`]),
  );
  const usual = payers.find((party) => party.client) ?? payers[0];
  return (
    <Form
      survey={survey}
      rates={rates.data}
      payers={labels}
      usual={usual?.id ?? ''}
      lengthM={vessel.data.lengthOverallM}
      kept={id ? draft.data : undefined}
    />
  );
}

function Form({
  survey,
  rates,
  payers,
  usual,
  lengthM,
  kept,
}: {
  survey: Survey;
  rates: FirmRates;
  payers: Readonly<Record<string, string>>;
  usual: string;
  lengthM: number | null;
  kept: QuotationView | undefined;
}) {
  const [, go] = useLocation();
  const currency = kept?.currency ?? rates.currency;
  const [begun] = useState(() => ({
    partyId: kept?.partyId ?? usual,
    scope: kept?.scope ?? survey.scope,
    validUntil: kept?.validUntil ?? addDays(today(survey.timeZone), rates.quotationDays),
    lines: (kept?.lines ?? []).map((line) => draftOfLine(line, currency)),
  }));
  const [draft, setDraft] = useState(begun);
  const [tried, setTried] = useState(false);
  const lines = linesFrom(draft.lines, currency);
  const save = useAction({
    run: (
      body: { partyId: string; scope: string; validUntil: string; lines: ReturnType<typeof inputsOf> },
      key,
    ) =>
      kept
        ? call('updateQuotation', { params: { id: kept.id }, body, ifMatch: etagOf(kept) })
        : call('createQuotation', { params: { id: survey.id }, body, idempotencyKey: key }),
    done: 'The quotation is saved as a draft. Look it over, then send it.',
    touches: ['listQuotations', 'getQuotation'],
    onDone: (saved) => {
      leaving.pass(() => go(`/surveys/${survey.id}/quotations/${saved.id}`));
    },
  });
  const leaving = useLeaveWarning(!same(draft, begun) && !save.output, () => undefined);
  return (
    <form
      className="stack"
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        setTried(true);
        if (!lines?.length || draft.scope.trim() === '') return;
        const { partyId, scope, validUntil } = draft;
        save.run({ partyId, scope, validUntil, lines: inputsOf(lines) });
      }}
    >
      <ErrorNotice error={save.error} />
      <div className="measure stack">
        <SelectField
          label="To whoever pays"
          hint="They own the report: they say to whom else it is released."
          value={draft.partyId}
          options={payers}
          onChange={(partyId) => setDraft({ ...draft, partyId })}
          error={fieldError(save.error, '/partyId')}
        />
      </div>
      <FeeByRates
        rates={rates}
        lengthM={lengthM}
        onLines={(made) => setDraft({ ...draft, lines: made.map((line) => draftOfLine(line, currency)) })}
      />
      <LinesEditor
        lines={draft.lines}
        onChange={(next) => setDraft({ ...draft, lines: next })}
        currency={currency}
        taxRate={rates.taxRate}
        shown={tried}
      />
      {tried && draft.lines.length === 0 ? (
        <p className="field-error">Give at least one line: fill them from your rates, or add one.</p>
      ) : null}
      <div className="measure stack">
        <TextArea
          label="What is surveyed"
          hint="The exact scope that the client accepts. It begins with what the survey’s particulars say."
          rows={8}
          value={draft.scope}
          onChange={(scope) => setDraft({ ...draft, scope })}
          error={
            fieldError(save.error, '/scope') ??
            (tried && draft.scope.trim() === '' ? 'Say what is surveyed.' : undefined)
          }
        />
        <TextField
          label="Can be accepted until"
          type="date"
          required
          value={draft.validUntil}
          onChange={(validUntil) => setDraft({ ...draft, validUntil })}
          error={fieldError(save.error, '/validUntil')}
        />
      </div>
      <div className="actions">
        <Button kind="main" type="submit" busy={save.busy} busyLabel="Saving…">
          Save the draft
        </Button>
      </div>
      {leaving.dialog}
    </form>
  );
}
