import type { SnapshotFinding } from '@garboard/contract/report-snapshot';
import { findingStateLabels, systemLabels, urgencyLabels } from '@garboard/trade/vocabulary';
import { byUrgency } from './findings-order.ts';
import { counted, dueWords } from './format.ts';
import { Gauge, PageOf } from './parts.tsx';

interface Props {
  findings: readonly SnapshotFinding[];
  /** Whether the document says more of each finding, to link to. */
  inFull?: boolean;
}

/** Every finding on one line, most urgent first, each a link to its place in the report. */
export function IndexOfFindings({ findings, inFull = true }: Props) {
  const groups = byUrgency(findings);
  return (
    <section id="index">
      <h2>Findings by urgency</h2>
      {groups.length === 0 && <p>No findings were recorded.</p>}
      {groups.map((group) => (
        <table key={group.urgency} className={`index ${group.urgency}`}>
          <caption>
            <Gauge urgency={group.urgency} />
            <span>
              <b>{urgencyLabels[group.urgency]}</b> {counted(group.findings.length, 'finding', 'findings')}
            </span>
          </caption>
          <thead>
            <tr>
              <th scope="col" className="number">
                No.
              </th>
              <th scope="col">Finding</th>
              <th scope="col" className="system">
                System
              </th>
              {group.urgency === 'within-days' && (
                <th scope="col" className="due">
                  Put right by
                </th>
              )}
              {inFull && (
                <th scope="col" className="page">
                  Page
                </th>
              )}
            </tr>
          </thead>
          <tbody>
            {group.findings.map((finding) => (
              <Row key={finding.id} finding={finding} inFull={inFull} />
            ))}
          </tbody>
        </table>
      ))}
    </section>
  );
}

function Row({ finding, inFull }: { finding: SnapshotFinding; inFull: boolean }) {
  return (
    <tr id={`index-${finding.number}`}>
      <td className="number">{finding.number}</td>
      <th scope="row" dir="auto">
        {inFull ? <a href={`#finding-${finding.number}`}>{finding.title}</a> : finding.title}
        {hasMovedOn(finding) && <span className="state">{findingStateLabels[finding.state]}</span>}
      </th>
      <td className="system">{systemLabels[finding.system]}</td>
      {finding.urgency === 'within-days' && <td className="due">{dueWords(finding)}</td>}
      {inFull && (
        <td className="page">
          <PageOf id={`finding-${finding.number}`} />
        </td>
      )}
    </tr>
  );
}

/** Whether the finding has moved on since it was first issued, so that its state is worth printing. */
export function hasMovedOn({ state }: SnapshotFinding): boolean {
  return state !== 'draft' && state !== 'open';
}
