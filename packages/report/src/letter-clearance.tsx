import type { SnapshotClearance, SnapshotFinding } from '@garboard/contract/report-snapshot';
import {
  findingStateLabels,
  firmRoleLabels,
  partyRoleLabels,
  verdictLabels,
} from '@garboard/trade/vocabulary';
import { counted, listed, urgencyWords, writtenDay, writtenDayOf } from './format.ts';
import { Items, limitWords } from './items.tsx';
import { Gauge, Prose } from './parts.tsx';

interface Props {
  finding: SnapshotFinding;
  timeZone: string;
}

/** One recommendation with the evidence sent for it, what was decided, and by whom. */
export function Cleared({ finding, timeZone }: Props) {
  const counting = evidenceThatCounted(finding);
  return (
    <article className={counting.length > 1 ? 'finding' : 'finding cleared'}>
      <h3 className="finding-title keep">
        <span className="finding-number">{`${finding.number} `}</span>
        <span dir="auto">{finding.title}</span>
      </h3>
      <div className="finding-margin">
        <div className="urgency">
          <Gauge urgency={finding.urgency} />
          <p>
            <b>{urgencyWords(finding)}</b>
            {(finding.urgency !== 'before-use' || finding.dueStated) && finding.dueOn && (
              <span>By {writtenDay(finding.dueOn)}</span>
            )}
          </p>
        </div>
      </div>
      <div className="finding-text">
        <Prose text={finding.recommendation} lead={<b>Recommended. </b>} />
        <Items items={finding.items} />
        <Extensions finding={finding} timeZone={timeZone} />
        {counting.map((clearance, index) => (
          <Evidence
            key={clearance.sentAt ?? index}
            clearance={clearance}
            timeZone={timeZone}
            inPart={counting.length > 1}
          />
        ))}
        <Decision finding={finding} timeZone={timeZone} />
      </div>
    </article>
  );
}

const accepts = (decision: SnapshotClearance['decision']) =>
  decision === 'accept' || decision === 'accept-as-is';

/** All that was accepted, in whole or in part; else the latest that was sent. */
function evidenceThatCounted({ evidence, clearance }: SnapshotFinding): SnapshotClearance[] {
  const accepted = evidence.filter(
    (sent) => accepts(sent.decision) || sent.items.some((item) => accepts(item.decision)),
  );
  return accepted.length > 0 ? accepted : clearance ? [clearance] : [];
}

/** How a finding stands, and who decided so, when, within what limit and why. */
export function Decision({ finding, timeZone }: Props) {
  const { clearance, limit, withdrawal } = finding;
  if (withdrawal && finding.state === 'withdrawn') {
    return (
      <>
        <p className="decision" dir="auto">
          <b>{findingStateLabels.withdrawn}</b> by {withdrawal.by} on {writtenDayOf(withdrawal.at, timeZone)}.
        </p>
        <Prose text={withdrawal.reason} lead={<b>Reason. </b>} />
      </>
    );
  }
  // Before limits were kept apart, the reason was the limit.
  const within =
    finding.state === 'accepted-as-is' && limit ? `, ${limitWords(limit.text, limit.until)}` : '';
  return (
    <>
      <p className="decision" dir="auto">
        <b>{findingStateLabels[finding.state]}</b>
        {clearance?.decidedByName && ` by ${decider(clearance)}`}
        {clearance?.decidedAt && ` on ${writtenDayOf(clearance.decidedAt, timeZone)}`}
        {within}.
      </p>
      {clearance?.reason && <Prose text={clearance.reason} lead={<b>Reason. </b>} />}
    </>
  );
}

/** More time that was given, each with who gave it and why. */
export function Extensions({ finding, timeZone }: Props) {
  return finding.extensions.map(({ dueOn, reason, byName, byRole, at }) => (
    <Prose
      key={at}
      text={`Until ${writtenDay(dueOn)}, by ${named(byName, byRole)} on ${writtenDayOf(at, timeZone)}: ${reason}`}
      lead={<b>More time given. </b>}
    />
  ));
}

interface EvidenceProps {
  clearance: SnapshotClearance;
  timeZone: string;
  /** Whether it is one of several, so that its own decision is told with it. */
  inPart: boolean;
}

function Evidence({ clearance, timeZone, inPart }: EvidenceProps) {
  const { workDoneBy, workDoneOn, decidedAt } = clearance;
  const who = [workDoneBy && `Work done by ${workDoneBy}`, workDoneOn && `on ${writtenDay(workDoneOn)}`]
    .filter(Boolean)
    .join(' ');
  const settled = clearance.items.filter((item) => accepts(item.decision));
  return (
    <>
      <Prose text={clearance.statement} lead={<b>Evidence. </b>} />
      {who && <p dir="auto">{who}.</p>}
      <Proof clearance={clearance} timeZone={timeZone} />
      {inPart && decidedAt && (
        <p dir="auto">
          Settled{settled.length > 0 && ` ${listed(settled.map(({ text }) => `“${text}”`))}`}, decided by{' '}
          {decider(clearance)} on {writtenDayOf(decidedAt, timeZone)}.
        </p>
      )}
    </>
  );
}

/** Who sent evidence, when, and what came with it. */
function Proof({ clearance, timeZone }: Omit<EvidenceProps, 'inPart'>) {
  const { sentByName, sentByRole, sentAt, photos, documents, worksheet } = clearance;
  if (!sentByName || !sentAt) return null;
  const enclosed = [
    ...(photos > 0 ? [counted(photos, 'photo', 'photos')] : []),
    ...documents,
    ...(worksheet ? [`${worksheet.title} (${verdictLabels[worksheet.verdict].toLowerCase()})`] : []),
  ];
  return (
    <p className="proof" dir="auto">
      Sent by {named(sentByName, sentByRole)} on {writtenDayOf(sentAt, timeZone)}
      {enclosed.length > 0 && ` with ${listed(enclosed)}`}.
    </p>
  );
}

const roleLabels: Readonly<Record<string, string>> = { ...partyRoleLabels, ...firmRoleLabels };

/** A person as a document names them: with what they are. */
const named = (name: string, role: string | null): string =>
  role === null ? name : `${name} (${roleLabels[role]?.toLowerCase() ?? role})`;

const decider = ({ decidedByName, decidedByRole }: SnapshotClearance): string =>
  named(decidedByName ?? '', decidedByRole);
