import type { Clearance } from '@garboard/contract/clearances';
import type { Finding } from '@garboard/contract/findings';
import type { Survey } from '@garboard/contract/surveys';
import { clearanceStateLabels } from '@garboard/trade/vocabulary';
import { isStatus } from '../../api/problems.ts';
import { useWholeList } from '../../api/queries.ts';
import { ErrorNotice } from '../../ui/ErrorNotice.tsx';
import { formatDay, formatInstant } from '../../ui/format.ts';
import { whoWas } from '../surveys/EventSteps.tsx';
import { DecideEvidence } from './DecideEvidence.tsx';
import { EvidenceFiles } from './EvidenceFiles.tsx';
import { SendEvidence } from './SendEvidence.tsx';

const reasonWords = { accept: 'Remark: ', return: 'Returned because: ', 'accept-as-is': 'Limit: ' } as const;

/** A photo just sent has no small picture yet; look again soon, but not for ever if it never gets one. */
const whilePreparing = (clearances: Clearance[]) =>
  clearances.some(
    (clearance) =>
      Date.now() - Date.parse(clearance.sentAt) < 120_000 &&
      clearance.files.some((file) => file.mediaType.startsWith('image/') && !file.thumbUrl),
  )
    ? 2000
    : false;

/** What was sent to show that a finding was put right, what became of it, and what the reader can do now. */
export function Evidence({ survey, finding }: { survey: Survey; finding: Finding }) {
  const sent = useWholeList('listClearances', { params: { id: finding.id } }, { again: whilePreparing });
  if (isStatus(sent.error, 403)) return null;
  const waiting = sent.data?.find((clearance) => clearance.state === 'sent');
  return (
    <section className="stack">
      <h2>Evidence</h2>
      {sent.error && !sent.data ? (
        <ErrorNotice quiet error={sent.error} onRetry={() => void sent.refetch()} />
      ) : null}
      {sent.data?.length === 0 ? <p>None has been sent yet.</p> : null}
      {sent.data?.length ? (
        <ol className="steps">
          {sent.data.map((clearance) => (
            <Step key={clearance.id} clearance={clearance} timeZone={survey.timeZone} />
          ))}
        </ol>
      ) : null}
      {waiting && finding.may.decide ? <DecideEvidence key={waiting.id} clearance={waiting} /> : null}
      {waiting && !finding.may.decide ? (
        <p className="soft">
          Waiting for the {survey.clearanceDecidedBy === 'insurer' ? 'insurer' : 'surveyor'} to decide.
        </p>
      ) : null}
      {finding.may.sendEvidence ? <SendEvidence finding={finding} timeZone={survey.timeZone} /> : null}
    </section>
  );
}

function Step({ clearance, timeZone }: { clearance: Clearance; timeZone: string }) {
  return (
    <li>
      <div className="stack">
        <p>
          <strong>{clearanceStateLabels[clearance.state]}</strong>
          <br />
          <span className="soft small">
            Sent by {whoWas(clearance.sentBy)}, {formatInstant(clearance.sentAt, timeZone)}
          </span>
        </p>
        <p className="text">{clearance.statement}</p>
        <p>
          Work done by {clearance.workDoneBy} on {formatDay(clearance.workDoneOn)}.
        </p>
        <EvidenceFiles files={clearance.files} />
        {clearance.decidedBy && clearance.decidedAt ? (
          <div>
            {clearance.reason ? (
              <p className="text">
                <strong>{clearance.decision ? reasonWords[clearance.decision] : ''}</strong>
                {clearance.reason}
              </p>
            ) : null}
            <p className="soft small">
              Decided by {whoWas(clearance.decidedBy)}, {formatInstant(clearance.decidedAt, timeZone)}
            </p>
          </div>
        ) : null}
      </div>
    </li>
  );
}
