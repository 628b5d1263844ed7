import { etagOf } from '@garboard/contract/client';
import type { InvoiceView } from '@garboard/contract/invoices';
import type { FirmRates } from '@garboard/contract/quotations';
import type { Survey } from '@garboard/contract/surveys';
import { useState } from 'react';
import { Link, useLocation } from 'wouter';
import { call } from '../../api/client.ts';
import { fieldError } from '../../api/problems.ts';
import { useAction, useAnswer } from '../../api/queries.ts';
import { useLeaveWarning } from '../../app/leaving.tsx';
import { same } from '../../app/merge.ts';
import { Button } from '../../ui/Button.tsx';
import { Loading } from '../../ui/EmptyState.tsx';
import { ErrorNotice } from '../../ui/ErrorNotice.tsx';
import { TextArea } from '../../ui/Field.tsx';
import { LinesEditor } from '../engagement/LinesEditor.tsx';
import { draftOfLine, freshLine, inputsOf, linesFrom } from '../engagement/lineDraft.ts';
import { SurveyFrame, WithSurvey } from '../surveys/SurveyFrame.tsx';

/** Writes a draft invoice of lines of its own, or changes one. */
export default function InvoiceEditor({ surveyId, invoice }: { surveyId: string; invoice?: InvoiceView }) {
  return (
    <WithSurvey id={surveyId}>
      {(survey) => (
        <SurveyFrame survey={survey} title={invoice ? 'Change the invoice' : 'Draft an invoice'}>
          <Loaded survey={survey} invoice={invoice} />
        </SurveyFrame>
      )}
    </WithSurvey>
  );
}

function Loaded({ survey, invoice }: { survey: Survey; invoice: InvoiceView | undefined }) {
  const rates = useAnswer('getFirmRates', { params: { id: survey.firmId } });
  if (rates.error) return <ErrorNotice error={rates.error} onRetry={() => void rates.refetch()} />;
  if (!rates.data) return <Loading what="your rates" />;
  if (rates.data.version === 0) {
    return (
      <p className="measure">
        Your firm has not set its currency and rates yet. A principal does so on the{' '}
        <Link href="/firm">firm’s page</Link>.
      </p>
    );
  }
  return <Form survey={survey} rates={rates.data} invoice={invoice} />;
}

function Form({
  survey,
  rates,
  invoice,
}: {
  survey: Survey;
  rates: FirmRates;
  invoice: InvoiceView | undefined;
}) {
  const [, go] = useLocation();
  const currency = invoice?.currency ?? rates.currency;
  const [begun] = useState(() => ({
    billTo: invoice?.billTo ?? survey.requestedBy,
    lines: invoice ? invoice.lines.map((line) => draftOfLine(line, currency)) : [freshLine(rates.taxRate)],
  }));
  const [draft, setDraft] = useState(begun);
  const [tried, setTried] = useState(false);
  const lines = linesFrom(draft.lines, currency);
  const save = useAction({
    run: (body: { billTo: string; lines: ReturnType<typeof inputsOf> }, key) =>
      invoice
        ? call('updateInvoice', { params: { id: invoice.id }, body, ifMatch: etagOf(invoice) })
        : call('createInvoice', { params: { id: survey.id }, body, idempotencyKey: key }),
    done: 'The invoice is saved as a draft. Look it over, then send it.',
    touches: ['listInvoices', 'listAllInvoices', 'getInvoice'],
    onDone: (saved) => {
      leaving.pass(() => go(`/invoices/${saved.id}`));
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
        if (lines?.length && draft.billTo.trim() !== '') {
          save.run({ billTo: draft.billTo, lines: inputsOf(lines) });
        }
      }}
    >
      <ErrorNotice error={save.error} />
      <div className="measure">
        <TextArea
          label="Made out to"
          hint="Name and address, line by line."
          value={draft.billTo}
          onChange={(billTo) => setDraft({ ...draft, billTo })}
          error={
            fieldError(save.error, '/billTo') ??
            (tried && draft.billTo.trim() === '' ? 'Say to whom it is made out.' : undefined)
          }
        />
      </div>
      <LinesEditor
        lines={draft.lines}
        onChange={(next) => setDraft({ ...draft, lines: next })}
        currency={currency}
        taxRate={rates.taxRate}
        shown={tried}
      />
      <div className="actions">
        <Button kind="main" type="submit" busy={save.busy} busyLabel="Saving…">
          Save the draft
        </Button>
      </div>
      {leaving.dialog}
    </form>
  );
}
