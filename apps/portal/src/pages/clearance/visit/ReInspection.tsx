import type { Finding } from '@garboard/contract/findings';
import type { Survey } from '@garboard/contract/surveys';
import { attendanceConditionLabels } from '@garboard/trade/vocabulary';
import { useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import { Link, useLocation } from 'wouter';
import { call } from '../../../api/client.ts';
import { fieldError, isStatus } from '../../../api/problems.ts';
import { useAction, useWholeList } from '../../../api/queries.ts';
import { Button } from '../../../ui/Button.tsx';
import { EmptyState, Loading } from '../../../ui/EmptyState.tsx';
import { ErrorNotice } from '../../../ui/ErrorNotice.tsx';
import { SelectField, TextArea, TextField } from '../../../ui/Field.tsx';
import { today } from '../../../ui/format.ts';
import { ProgressBar } from '../../../ui/ProgressBar.tsx';
import { SurveyFrame, WithSurvey } from '../../surveys/SurveyFrame.tsx';
import { KeptDraft } from '../KeptDraft.tsx';
import { SeenFinding } from './SeenFinding.tsx';
import { useVisitDraft } from './useVisitDraft.ts';
import { bodyOf, lookedAt, pointerTo, summaryOf, unseen, type VisitDraft } from './visitDraft.ts';

/** A visit after the report: every finding that is left, looked at again in one go. */
export default function ReInspection({ id }: { id: string }) {
  return <WithSurvey id={id}>{(survey) => <VisitTo survey={survey} />}</WithSurvey>;
}

function VisitTo({ survey }: { survey: Survey }) {
  const findings = useWholeList('listFindings', { params: { id: survey.id } });
  const draft = useVisitDraft(survey);
  const left = findings.data?.filter((finding) => finding.may.reInspect);
  return (
    <SurveyFrame survey={survey} title="Re-inspection">
      {!left || !draft.value ? (
        findings.error ? (
          <ErrorNotice quiet error={findings.error} onRetry={() => void findings.refetch()} />
        ) : (
          <Loading what="the findings" />
        )
      ) : left.length ? (
        <Form survey={survey} findings={left} draft={draft} value={draft.value} />
      ) : (
        <EmptyState title="Nothing is left to look at again">
          <p>
            Once a report is issued, its findings that require clearing are looked at again here until each
            has been decided.
          </p>
          <p>
            <Link href={`/surveys/${survey.id}/clearance`}>How clearance stands</Link>
          </p>
        </EmptyState>
      )}
    </SurveyFrame>
  );
}

function Form({
  survey,
  findings,
  draft,
  value,
}: {
  survey: Survey;
  findings: readonly Finding[];
  draft: ReturnType<typeof useVisitDraft>;
  value: VisitDraft;
}) {
  const queryClient = useQueryClient();
  const [, go] = useLocation();
  const [share, setShare] = useState(0);
  const record = useAction({
    run: async (visit: VisitDraft, idempotencyKey) => {
      bodyOf(visit, findings);
      setShare(0);
      const arrived = await draft.sendPhotos(visit, setShare);
      const body = bodyOf(arrived, findings);
      try {
        return await call('recordReInspection', { params: { id: survey.id }, body, idempotencyKey });
      } catch (error) {
        // What was decided meanwhile goes from the list, and so from the visit.
        if (isStatus(error, 409)) void queryClient.invalidateQueries({ queryKey: ['listFindings'] });
        throw error;
      }
    },
    done: (visit) =>
      survey.clearanceDecidedBy === 'insurer'
        ? 'The visit is recorded. What was put right waits for the insurer now.'
        : `The visit is recorded: ${visit.items.length === 1 ? '1 finding' : `${visit.items.length} findings`}.`,
    touches: [
      ...['listFindings', 'getFinding', 'listClearances', 'listFindingEvents', 'listEvents'],
      ...['listReInspections', 'listRecommendations', 'getSurvey', 'listSurveys', 'listPhotos'],
    ] as Parameters<typeof useAction>[0]['touches'],
    onDone: () => {
      void draft.forget();
      go(`/surveys/${survey.id}/clearance`);
    },
  });
  const open = findings.filter((finding) => !value.seen[finding.id]?.outcome);
  return (
    <form
      className="stack-wide measure"
      onSubmit={(event) => {
        event.preventDefault();
        record.run(value);
      }}
    >
      <p>
        {survey.clearanceDecidedBy === 'insurer'
          ? 'The insurer decides on this survey: what you saw put right is sent as evidence and waits for that decision.'
          : 'You decide on this survey: what you saw put right is cleared as soon as the visit is recorded.'}
      </p>
      <div className="stack">
        <div className="fields-2">
          <TextField
            label="Date of the visit"
            type="date"
            required
            max={today(survey.timeZone)}
            value={value.date}
            onChange={(date) => draft.set({ date })}
            error={fieldError(record.error, '/date')}
          />
          <TextField
            label="Place"
            required
            maxLength={160}
            value={value.place}
            onChange={(place) => draft.set({ place })}
            error={fieldError(record.error, '/place')}
          />
          <SelectField
            label="The vessel was"
            required
            value={value.condition}
            options={attendanceConditionLabels}
            empty="Choose"
            onChange={(condition) => draft.set({ condition })}
            error={fieldError(record.error, '/condition')}
          />
        </div>
      </div>
      {findings.map((finding) => (
        <SeenFinding
          key={finding.id}
          finding={finding}
          draft={draft}
          value={value}
          error={record.error}
          pointer={pointerTo(value, findings, finding.id)}
        />
      ))}
      <section className="seen stack">
        <TextArea
          label="On the visit as a whole"
          optional
          rows={2}
          maxLength={10_000}
          value={value.note}
          onChange={(note) => draft.set({ note })}
          error={fieldError(record.error, '/note')}
        />
        {draft.trouble ? (
          <p className="field-error" role="alert">
            {draft.trouble}
          </p>
        ) : null}
        {record.busy && share > 0 ? <ProgressBar label="Sending the photos," value={share} /> : null}
        <ErrorNotice error={record.error} />
        <p role="status">{summaryOf(value, findings)}</p>
        <KeptDraft
          draft={draft}
          busy={record.busy}
          throwAway={{
            title: 'Throw away this visit?',
            words: 'The words and the photos that have not been sent are removed from this device.',
          }}
        >
          <Button kind="main" type="submit" busy={record.busy || draft.keeping} busyLabel="Recording…">
            Record the visit
          </Button>
          {open.length && lookedAt(value, findings).length ? (
            <Button
              onClick={() => {
                for (const { id } of open)
                  draft.setSeen(id, (now) => ({ ...(now ?? unseen), outcome: 'put-right' }));
              }}
            >
              Mark the rest as put right
            </Button>
          ) : null}
        </KeptDraft>
      </section>
    </form>
  );
}
