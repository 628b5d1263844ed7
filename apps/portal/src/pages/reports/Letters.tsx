import type { Finding } from '@garboard/contract/findings';
import type { Survey } from '@garboard/contract/surveys';
import { decidedFindingStates } from '@garboard/trade/states';
import { reportKindLabels } from '@garboard/trade/vocabulary';
import { Link } from 'wouter';
import { call } from '../../api/client.ts';
import { useAction } from '../../api/queries.ts';
import { Button } from '../../ui/Button.tsx';
import { Loading } from '../../ui/EmptyState.tsx';
import { ErrorNotice } from '../../ui/ErrorNotice.tsx';
import { count } from '../../ui/format.ts';
import { stateWords } from '../clearance/stateWords.ts';

type Kind = 'clearance-letter' | 'status-letter' | 'recommendations' | 'summary' | 're-inspection';

/** The clearance letter once nothing is open; until then what is open, and a letter on how things stand. */
export function Letters({ survey, findings }: { survey: Survey; findings: readonly Finding[] | undefined }) {
  const issue = useAction({
    run: (kind: Kind, idempotencyKey) =>
      call('createReport', { params: { id: survey.id }, body: { kind }, idempotencyKey }),
    done: (_, kind) => `${reportKindLabels[kind]} is being made; it appears under “Issued so far”.`,
    touches: ['listReports', 'listEvents'],
  });
  if (!findings) return <Loading what="the findings" />;
  const toClear = findings.filter((finding) => finding.requiresClearing && finding.state !== 'draft');
  const open = toClear.filter((finding) => !decidedFindingStates.includes(finding.state));
  return (
    <section className="stack measure">
      <h2>Letters</h2>
      <ErrorNotice error={issue.error} />
      {open.length ? (
        <>
          <p>
            A clearance letter can be issued once every finding that requires clearing has been decided.{' '}
            {count(open.length, 'finding is', 'findings are')} still open:
          </p>
          <ul className="bullets">
            {open.map((finding) => (
              <li key={finding.id}>
                <Link href={`/findings/${finding.id}`}>
                  {finding.number}. {finding.title}
                </Link>
                : {stateWords(finding).toLowerCase()}
              </li>
            ))}
          </ul>
          <p>Until then a status letter says what has been cleared and what has not.</p>
        </>
      ) : (
        <p>
          {toClear.length
            ? toClear.length === 1
              ? 'The one finding that required clearing has been decided.'
              : `All ${toClear.length} findings that required clearing have been decided.`
            : 'No finding of this report requires clearing, so there is nothing a clearance letter could confirm.'}
        </p>
      )}
      <div className="actions">
        {open.length || !toClear.length ? null : (
          <Button kind="main" busy={issue.busy} onClick={() => issue.run('clearance-letter')}>
            Issue the clearance letter
          </Button>
        )}
        <Button busy={issue.busy} onClick={() => issue.run('status-letter')}>
          Issue a status letter
        </Button>
        <Button busy={issue.busy} onClick={() => issue.run('recommendations')}>
          Issue the recommendations alone
        </Button>
        <Button busy={issue.busy} onClick={() => issue.run('summary')}>
          Issue a summary for the broker
        </Button>
        <Button busy={issue.busy} onClick={() => issue.run('re-inspection')}>
          Issue a re-inspection addendum
        </Button>
      </div>
    </section>
  );
}
