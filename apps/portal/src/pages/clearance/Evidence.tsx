import type { Clearance } from '@garboard/contract/clearances';
import type { Finding } from '@garboard/contract/findings';
import type { Survey } from '@garboard/contract/surveys';
import { clearanceStateLabels } from '@garboard/trade/vocabulary';
import { useState } from 'react';
import { isStatus } from '../../api/problems.ts';
import { useWholeList } from '../../api/queries.ts';
import { ErrorNotice } from '../../ui/ErrorNotice.tsx';
import { formatDay, formatInstant } from '../../ui/format.ts';
import { whoWas } from '../surveys/EventSteps.tsx';
import { Verdict } from '../worksheets/ResultView.tsx';
import { Decided } from './decide/Decided.tsx';
import { DecideEvidence } from './decide/DecideEvidence.tsx';
import { EvidenceFiles } from './EvidenceFiles.tsx';
import { LeftOver } from './send/LeftOver.tsx';
import { SendEvidence } from './send/SendEvidence.tsx';

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
  // Of a decision that came too late: it stays to be read when the form is gone.
  const [tooLate, setTooLate] = useState<unknown>(null);
  if (isStatus(sent.error, 403)) return null;
  const waiting = sent.data?.filter((clearance) => clearance.state === 'sent') ?? [];
  return (
    <section className="stack" id="evidence">
      <h2>Evidence</h2>
      {sent.error && !sent.data ? (
        <ErrorNotice quiet error={sent.error} onRetry={() => void sent.refetch()} />
      ) : null}
      {sent.data?.length === 0 ? <p>None has been sent yet.</p> : null}
      {sent.data?.length ? (
        <ol className="steps">
          {sent.data.map((clearance) => (
            <Step key={clearance.id} clearance={clearance} finding={finding} timeZone={survey.timeZone} />
          ))}
        </ol>
      ) : null}
      <ErrorNotice error={tooLate} />
      {finding.may.decide
        ? waiting.map((clearance) => (
            <DecideEvidence
              key={clearance.id}
              clearance={clearance}
              finding={finding}
              onTooLate={setTooLate}
            />
          ))
        : null}
      {waiting.length && !finding.may.decide ? (
        <p className="soft">
          Waiting for the {survey.clearanceDecidedBy === 'insurer' ? 'insurer' : 'surveyor'} to decide.
        </p>
      ) : null}
      {finding.may.sendEvidence ? (
        <SendEvidence finding={finding} timeZone={survey.timeZone} />
      ) : sent.data ? (
        <LeftOver finding={finding} sent={sent.data} timeZone={survey.timeZone} />
      ) : null}
    </section>
  );
}

function Step({
  clearance,
  finding,
  timeZone,
}: {
  clearance: Clearance;
  finding: Finding;
  timeZone: string;
}) {
  const seen = clearance.reInspectionId !== null;
  return (
    <li>
      <div className="stack">
        <p>
          <strong>{clearanceStateLabels[clearance.state]}</strong>
          <br />
          <span className="soft small">
            {seen ? 'Seen at a visit by' : 'Sent by'} {whoWas(clearance.sentBy)},{' '}
            {formatInstant(clearance.sentAt, timeZone)}
          </span>
        </p>
        <p className="text" dir="auto">
          {clearance.statement}
        </p>
        {clearance.items.length && clearance.items.length < finding.items.length ? (
          <div>
            <p>It covers:</p>
            <ul className="bullets">
              {clearance.items.map((item) => (
                <li key={item.itemId}>{item.text}</li>
              ))}
            </ul>
          </div>
        ) : null}
        {seen ? null : (
          <p>
            Work done by {clearance.workDoneBy} on {formatDay(clearance.workDoneOn)}.
          </p>
        )}
        {clearance.worksheet ? (
          <div>
            <h3>{clearance.worksheet.title}</h3>
            <Verdict result={clearance.worksheet} />
          </div>
        ) : null}
        <EvidenceFiles files={clearance.files} finding={finding} />
        <Decided clearance={clearance} timeZone={timeZone} />
      </div>
    </li>
  );
}
