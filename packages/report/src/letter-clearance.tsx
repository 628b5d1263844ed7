import type { SnapshotClearance, SnapshotFinding } from '@garboard/contract/report-snapshot';
import { findingStateLabels, firmRoleLabels, partyRoleLabels } from '@garboard/trade/vocabulary';
import { dueWords, urgencyWords, writtenDay, writtenDayOf } from './format.ts';
import { Gauge, Prose } from './parts.tsx';

/** One recommendation with the evidence sent for it, what was decided, and by whom. */
export function Cleared({ finding, timeZone }: { finding: SnapshotFinding; timeZone: string }) {
  const { clearance } = finding;
  return (
    <article className="finding cleared">
      <h3 className="finding-title keep">
        <span className="finding-number">{`${finding.number} `}</span>
        <span dir="auto">{finding.title}</span>
      </h3>
      <div className="finding-margin">
        <div className="urgency">
          <Gauge urgency={finding.urgency} />
          <p>
            <b>{urgencyWords(finding)}</b>
            {finding.urgency === 'within-days' && finding.dueOn && <span>By {dueWords(finding)}</span>}
          </p>
        </div>
      </div>
      <div className="finding-text">
        <Prose text={finding.recommendation} lead={<b>Recommended. </b>} />
        {clearance && <Evidence clearance={clearance} />}
        <Decision finding={finding} timeZone={timeZone} />
      </div>
    </article>
  );
}

/** How a finding stands, and who decided so, when and why. */
export function Decision({ finding, timeZone }: { finding: SnapshotFinding; timeZone: string }) {
  const { clearance } = finding;
  return (
    <>
      <p className="decision">
        <b>{findingStateLabels[finding.state]}</b>
        {clearance?.decision && ` by ${decider(clearance)}`}
        {clearance?.decidedAt && ` on ${writtenDayOf(clearance.decidedAt, timeZone)}`}.
      </p>
      {clearance?.reason && <Prose text={clearance.reason} lead={<b>Reason. </b>} />}
    </>
  );
}

function Evidence({ clearance }: { clearance: SnapshotClearance }) {
  const { workDoneBy, workDoneOn } = clearance;
  const who = [workDoneBy && `Work done by ${workDoneBy}`, workDoneOn && `on ${writtenDay(workDoneOn)}`]
    .filter(Boolean)
    .join(' ');
  return (
    <>
      <Prose text={clearance.statement} lead={<b>Evidence. </b>} />
      {who && <p dir="auto">{who}.</p>}
    </>
  );
}

function decider({ decidedByName, decidedByRole }: SnapshotClearance): string {
  if (decidedByRole === null) return decidedByName ?? '';
  const labels: Record<string, string> = { ...partyRoleLabels, ...firmRoleLabels };
  return `${decidedByName} (${labels[decidedByRole]?.toLowerCase()})`;
}
