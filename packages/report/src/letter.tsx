import type { AddendumSnapshot, LetterSnapshot, SnapshotFinding } from '@garboard/contract/report-snapshot';
import { dayIn } from '@garboard/trade/due-dates';
import { decidedFindingStates } from '@garboard/trade/states';
import { findingStateLabels, reportKindLabels } from '@garboard/trade/vocabulary';
import { byNumber, recommendations } from './findings-order.ts';
import { counted, dueWords, writtenDay, writtenDayOf } from './format.ts';
import { Items } from './items.tsx';
import { Cleared, Extensions } from './letter-clearance.tsx';
import { Letterhead } from './letterhead.tsx';
import { Gauge, Prose } from './parts.tsx';
import { Signature } from './statement.tsx';

/** A letter about the clearing of recommendations: all decided, or how far it has come. */
export function Letter({ snapshot }: { snapshot: LetterSnapshot }) {
  const { survey, vessel } = snapshot;
  const decided = byNumber(snapshot.findings.filter(isDecided));
  const waiting = recommendations(snapshot.findings.filter((f) => !isDecided(f)));
  const title =
    snapshot.kind === 'clearance-letter' ? 'Clearance of recommendations' : 'State of recommendations';
  return (
    <main className="letter">
      <Letterhead snapshot={snapshot} />
      <div className="letter-top">
        <p dir="auto">{survey.requestedBy}</p>
        <p>{writtenDayOf(snapshot.frozenAt, snapshot.timeZone)}</p>
      </div>
      <h1>
        {title}: {vessel.name}
      </h1>
      <p>
        Survey {survey.number}
        {vessel.hullNumber && `, hull number ${vessel.hullNumber}`}. {standing(decided, waiting)}
      </p>
      <RestsOn snapshot={snapshot} />
      {waiting.length > 0 && (
        <Waiting findings={waiting} today={today(snapshot)} timeZone={snapshot.timeZone} />
      )}
      {decided.length > 0 && (
        <section id="decided">
          <h2>Decided</h2>
          {decided.map((finding) => (
            <Cleared key={finding.id} finding={finding} timeZone={snapshot.timeZone} />
          ))}
        </section>
      )}
      <div className="keep closing">
        <p>
          This letter records decisions taken on the evidence sent. Unless it says so, the vessel was not
          attended again, and it does not say that she is fit for any use or free of other faults.
        </p>
        <Signature snapshot={snapshot} />
      </div>
    </main>
  );
}

function isDecided(finding: SnapshotFinding): boolean {
  return decidedFindingStates.includes(finding.state);
}

function today(snapshot: LetterSnapshot): string {
  return dayIn(snapshot.timeZone, new Date(snapshot.frozenAt));
}

/** How matters stand, in a sentence or two; says that all is cleared only when it is. */
function standing(decided: readonly SnapshotFinding[], waiting: readonly SnapshotFinding[]): string {
  const asIs = decided.filter((f) => f.state === 'accepted-as-is').length;
  const exception =
    asIs === 0
      ? ''
      : ` ${asIs === 1 ? 'One of them was' : `${asIs} of them were`} accepted as found, without the recommended work and within the limit stated.`;
  const all = counted(decided.length + waiting.length, 'recommendation', 'recommendations');
  if (decided.length + waiting.length === 0) return 'No recommendation of this survey requires clearing.';
  const done = decided.every((f) => f.state === 'cleared') ? 'cleared' : 'decided';
  if (waiting.length === 0) {
    return decided.length === 1
      ? `The one recommendation that required clearing has been ${done}.${exception}`
      : `All ${all} that required clearing have been ${done}.${exception}`;
  }
  return `Of ${all} that require clearing, ${decided.length} ${decided.length === 1 ? 'has' : 'have'} been decided and ${waiting.length} ${waiting.length === 1 ? 'is' : 'are'} still open.${exception}`;
}

/** The issued reports the letter refers to; the fingerprint tells a copy from an altered one. */
export function RestsOn({ snapshot }: { snapshot: LetterSnapshot | AddendumSnapshot }) {
  if (snapshot.issuedReports.length === 0) return null;
  return (
    <p className="small">
      It refers to:{' '}
      {snapshot.issuedReports.map((report, index) => (
        <span key={report.sha256}>
          {index > 0 && '; '}
          {reportKindLabels[report.kind]}, revision {report.revision}, issued{' '}
          {writtenDayOf(report.issuedAt, snapshot.timeZone)} (SHA-256{' '}
          <span className="fingerprint">{report.sha256}</span>)
        </span>
      ))}
      .
    </p>
  );
}

// A boat that is not to be used until then can lie with the fault for years; only a date that was set can pass.
function isOverdue({ urgency, dueOn, dueStated }: SnapshotFinding, today: string): boolean {
  return (urgency !== 'before-use' || dueStated) && dueOn !== null && dueOn < today;
}

interface WaitingProps {
  findings: readonly SnapshotFinding[];
  today: string;
  timeZone: string;
}

function Waiting({ findings, today, timeZone }: WaitingProps) {
  return (
    <section id="open">
      <h2>Still open</h2>
      <table className="work">
        <caption className="unseen">Recommendations that are still open</caption>
        <thead>
          <tr>
            <th scope="col" className="number">
              No.
            </th>
            <th scope="col">What to do</th>
            <th scope="col" className="due">
              Put right by
            </th>
            <th scope="col" className="stands">
              Where it stands
            </th>
          </tr>
        </thead>
        <tbody>
          {findings.map((finding) => (
            <tr key={finding.id}>
              <td className="number">
                <Gauge urgency={finding.urgency} /> {finding.number}
              </td>
              <th scope="row">
                <span dir="auto">{finding.title}</span>
                <Prose text={finding.recommendation} />
                <Items items={finding.items} />
                <Extensions finding={finding} timeZone={timeZone} />
              </th>
              <td className="due">
                {dueWords(finding)}
                {isOverdue(finding, today) && finding.dueOn && (
                  <b className="overdue">Overdue since {writtenDay(finding.dueOn)}</b>
                )}
              </td>
              <td className="stands">
                {findingStateLabels[finding.state]}
                {finding.state === 'returned' && finding.clearance?.reason && `: ${finding.clearance.reason}`}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}
