import type {
  AddendumSnapshot,
  LetterSnapshot,
  ReportSnapshot,
  SnapshotFinding,
} from '@garboard/contract/report-snapshot';
import { decisionLabels, findingStateLabels } from '@garboard/trade/vocabulary';
import type { ReactNode } from 'react';
import { formatDay, formatInstantDay } from '../../../ui/format.ts';
import { UrgencyGauge } from '../../../ui/UrgencyGauge.tsx';
import { dueWords } from './order.ts';
import { PhotoRead } from './PhotosRead.tsx';

/** Of a letter: every finding that requires clearing, and what became of it. */
export function DecidedRead({ snapshot }: { snapshot: LetterSnapshot }) {
  return (
    <>
      <section className="stack">
        <h2>
          {snapshot.kind === 'clearance-letter' ? 'Clearance of recommendations' : 'State of recommendations'}
        </h2>
        {[...snapshot.findings]
          .sort((a, b) => a.number - b.number)
          .map((finding) => (
            <Decided key={finding.id} finding={finding} snapshot={snapshot} />
          ))}
      </section>
      <p className="measure">
        This letter records decisions taken on the evidence sent. Unless it says so, the vessel was not
        attended again, and it does not say that she is fit for any use or free of other faults.
      </p>
      <p>
        <strong>{snapshot.surveyor.name}</strong>, {snapshot.firm.name}
      </p>
    </>
  );
}

/** Of an addendum: the findings looked at again, what was found, and the photos then and now. */
export function LookedAgainRead({ reportId, snapshot }: { reportId: string; snapshot: AddendumSnapshot }) {
  const seen = new Map(snapshot.lookedAgain.map((again) => [again.findingId, again]));
  const { timeZone } = snapshot;
  return (
    <section className="stack">
      <h2>What was found</h2>
      {snapshot.findings.map((finding) => {
        const again = seen.get(finding.id);
        return (
          <Decided key={finding.id} finding={finding} snapshot={snapshot}>
            {again?.found ? (
              <p className="text" dir="auto">
                <strong>Found now.</strong> {again.found}
              </p>
            ) : null}
            {again?.pairs.map((pair, at) => (
              <ul key={pair.after.id} className="report-photos">
                <li>
                  <PhotoRead
                    reportId={reportId}
                    photo={pair.before}
                    name={`Before ${finding.number}.${at + 1}`}
                    timeZone={timeZone}
                  />
                </li>
                <li>
                  <PhotoRead
                    reportId={reportId}
                    photo={pair.after}
                    name={`After ${finding.number}.${at + 1}`}
                    timeZone={timeZone}
                  />
                </li>
              </ul>
            ))}
          </Decided>
        );
      })}
    </section>
  );
}

function Decided({
  finding,
  snapshot,
  children,
}: {
  finding: SnapshotFinding;
  snapshot: Pick<ReportSnapshot, 'timeZone'>;
  children?: ReactNode;
}) {
  const { clearance } = finding;
  return (
    <article className="report-finding stack" id={`finding-${finding.number}`}>
      <h3 dir="auto">
        {finding.number}. {finding.title}
      </h3>
      <p>
        <UrgencyGauge urgency={finding.urgency} withinDays={finding.withinDays} />. {dueWords(finding)}.{' '}
        <strong>{findingStateLabels[finding.state]}</strong>
      </p>
      <p className="text" dir="auto">
        <strong>Recommended.</strong> {finding.recommendation}
      </p>
      {children}
      {clearance ? (
        <>
          <p className="text" dir="auto">
            <strong>Evidence.</strong> {clearance.statement}
          </p>
          <p>
            {clearance.workDoneBy ? `Work done by ${clearance.workDoneBy}` : ''}
            {clearance.workDoneOn ? ` on ${formatDay(clearance.workDoneOn)}` : ''}
          </p>
          {clearance.decision && clearance.decidedAt ? (
            <p>
              {decisionLabels[clearance.decision]} by {clearance.decidedByName},{' '}
              {formatInstantDay(clearance.decidedAt, snapshot.timeZone)}
              {clearance.reason ? `: ${clearance.reason}` : ''}
            </p>
          ) : null}
        </>
      ) : null}
    </article>
  );
}
