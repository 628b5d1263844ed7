import type { Coverage } from '@garboard/contract/coverage';
import type { Finding } from '@garboard/contract/findings';
import type { Report } from '@garboard/contract/reports';
import type { ReviewStanding } from '@garboard/contract/reviews';
import type { Survey } from '@garboard/contract/surveys';
import { useState } from 'react';
import { Link } from 'wouter';
import { call } from '../../api/client.ts';
import { useAction, useAnswer } from '../../api/queries.ts';
import { Button } from '../../ui/Button.tsx';
import { ConfirmDialog } from '../../ui/Dialog.tsx';
import { Loading } from '../../ui/EmptyState.tsx';
import { ErrorNotice } from '../../ui/ErrorNotice.tsx';
import { ChangeList } from './ChangeList.tsx';
import { readiness } from './readiness.ts';

const verdictWords = { ready: 'Ready', missing: 'Missing', look: 'Look again' } as const;

/** The last look before the report goes out, and the button that issues it. */
export function IssueReport({
  survey,
  findings,
  coverage,
  review,
  reports,
}: {
  survey: Survey;
  findings: readonly Finding[] | undefined;
  coverage: Coverage | undefined;
  review: ReviewStanding | undefined;
  reports: readonly Report[] | undefined;
}) {
  const [asking, setAsking] = useState(false);
  const issue = useAction({
    run: (_: undefined, idempotencyKey) =>
      call('createReport', { params: { id: survey.id }, body: { kind: 'full' }, idempotencyKey }),
    done: 'The report is being made.',
    touches: ['listReports', 'getSurvey', 'listFindings', 'listEvents', 'listSurveys'],
    onDone: () => setAsking(false),
  });
  const again = Boolean(survey.issuedAt);
  const changes = useAnswer('getSurveyChanges', { params: { id: survey.id } }, { enabled: again });
  if (!findings || !coverage || !reports || !review) return <Loading what="what the report needs" />;
  const checks = readiness(survey, findings, coverage, review);
  const stopped = checks.some((check) => check.verdict === 'missing');
  const making = reports.some(
    (report) => report.kind === 'full' && (report.state === 'queued' || report.state === 'rendering'),
  );
  // Once everything is decided the clearance letter is what comes next, and the page has one main action.
  const letterIsNext =
    again && survey.openCount === 0 && findings.some((f) => f.state !== 'draft' && f.requiresClearing);
  return (
    <section className="stack measure">
      <h2>{again ? 'Issue a new revision' : 'Before it is issued'}</h2>
      <ul className="checklist">
        {checks.map((check) => (
          <li key={check.key}>
            <span className={check.verdict === 'missing' ? 'signal' : undefined}>
              {verdictWords[check.verdict]}
            </span>
            <span>
              {check.text}{' '}
              {check.verdict === 'ready' ? null : (
                <Link href={`/surveys/${survey.id}${check.place}`}>Go there</Link>
              )}
            </span>
          </li>
        ))}
      </ul>
      {changes.data?.changes ? (
        <ChangeList
          changes={changes.data.changes}
          caption={`What it will say that differs from revision ${changes.data.changes.against}`}
        />
      ) : null}
      <div className="actions">
        <Button
          kind={letterIsNext ? 'plain' : 'main'}
          disabled={stopped || making}
          onClick={() => setAsking(true)}
        >
          {making ? 'The report is being made' : again ? 'Issue the next revision' : 'Issue the report'}
        </Button>
      </div>
      {asking ? (
        <ConfirmDialog
          title={again ? 'Issue the next revision?' : 'Issue the report?'}
          confirmLabel="Issue it"
          busy={issue.busy}
          onClose={() => setAsking(false)}
          onConfirm={() => issue.run(undefined)}
        >
          <p>
            Everyone to whom the report is released can read it as soon as it is made.{' '}
            {again ? 'The earlier revision stays on file, marked as superseded.' : ''} What is issued can't be
            taken back, only followed by another revision.
          </p>
          <ErrorNotice error={issue.error} />
        </ConfirmDialog>
      ) : null}
    </section>
  );
}
