import type { ReportSnapshot, SnapshotFinding } from '@garboard/contract/report-snapshot';
import { findingStateLabels } from '@garboard/trade/vocabulary';
import { recommendations } from './findings-order.ts';
import { dueWords } from './format.ts';
import { hasMovedOn } from './index-of-findings.tsx';
import { Items } from './items.tsx';
import { Gauge, Prose } from './parts.tsx';

/** Every recommendation in the order in which it falls due, with room to note who did it and when. */
export function WorkList({ snapshot }: { snapshot: ReportSnapshot }) {
  const items = recommendations(snapshot.findings);
  const decider = snapshot.survey.clearanceDecidedBy;
  return (
    <section id="work" className={items.length > 0 ? 'sheet' : undefined}>
      <h2>What to do, and by when</h2>
      {items.length === 0 ? (
        <p>No work is recommended.</p>
      ) : (
        <>
          <p>
            In the order in which it falls due. Note in the last column who did the work and when, and keep
            bills and photos: the {decider} decides from them whether a recommendation is cleared.
          </p>
          <table className="work">
            <caption className="unseen">Recommendations by the date they fall due</caption>
            <thead>
              <tr>
                <th scope="col" className="number">
                  No.
                </th>
                <th scope="col">What to do</th>
                <th scope="col" className="due">
                  Put right by
                </th>
                <th scope="col" className="done">
                  Done: by, on
                </th>
              </tr>
            </thead>
            <tbody>
              {items.map((finding) => (
                <Row key={finding.id} finding={finding} />
              ))}
            </tbody>
          </table>
        </>
      )}
    </section>
  );
}

function Row({ finding }: { finding: SnapshotFinding }) {
  return (
    <tr>
      <td className="number">
        <Gauge urgency={finding.urgency} /> {finding.number}
      </td>
      <th scope="row">
        <a href={`#finding-${finding.number}`} dir="auto">
          {finding.title}
        </a>
        {finding.recommendation && <Prose text={finding.recommendation} />}
        <Items items={finding.items} />
      </th>
      <td className="due">{dueWords(finding)}</td>
      <td className="done">{hasMovedOn(finding) ? findingStateLabels[finding.state] : ''}</td>
    </tr>
  );
}
