import type { SnapshotFinding, SurveyReportSnapshot } from '@garboard/contract/report-snapshot';
import {
  type CostTotal,
  costBasisLabels,
  costsByUrgency,
  costsInAll,
  writtenCost,
} from '@garboard/trade/costs';
import { decidedFindingStates } from '@garboard/trade/states';
import { urgencies, urgencyLabels } from '@garboard/trade/vocabulary';
import type { ReactNode } from 'react';
import { byNumber } from './findings-order.ts';
import { counted } from './format.ts';
import { Gauge, PageOf } from './parts.tsx';

/** What a finding may cost to put right and on what that rests; nothing when it isn't printed. */
export function FindingCost({ finding: { cost } }: { finding: SnapshotFinding }) {
  if (!cost) return null;
  return (
    <p className="cost">
      <b>Cost to put right: </b>
      {writtenCost(cost)} ({costBasisLabels[cost.basis].toLowerCase()}).
      {cost.note && <span dir="auto"> {cost.note}</span>}
    </p>
  );
}

type Costed = SnapshotFinding & { cost: NonNullable<SnapshotFinding['cost']> };

/** Findings with a cost that are still to be put right. */
function costedOf(findings: readonly SnapshotFinding[]): Costed[] {
  return byNumber(findings).filter(
    (f): f is Costed => f.cost !== null && !decidedFindingStates.includes(f.state),
  );
}

/** Whether the report says what things may cost. */
export const hasCosts = (snapshot: SurveyReportSnapshot): boolean => costedOf(snapshot.findings).length > 0;

/** Costs finding by finding and their totals by urgency; each currency by itself. */
export function Costs({ snapshot }: { snapshot: SurveyReportSnapshot }) {
  const costed = costedOf(snapshot.findings);
  if (costed.length === 0) return null;
  const totals = costsByUrgency(costed);
  const without = snapshot.findings.filter(
    (f) => f.cost === null && f.urgency !== 'note' && !decidedFindingStates.includes(f.state),
  ).length;
  return (
    <section id="costs">
      <h2>What putting it right may cost</h2>
      <p>
        A surveyor’s opinion of a cost is a guide for talks between buyer and seller, not an offer: prices
        differ between yards, and opening up may show more. Have the work quoted before relying on a figure.
        {without > 0 &&
          ` ${counted(without, 'finding that asks for work is', 'findings that ask for work are')} not in these figures.`}
      </p>
      <table className="costs">
        <caption className="unseen">Costs by urgency</caption>
        <thead>
          <tr>
            <th scope="col" className="number">
              No.
            </th>
            <th scope="col">Finding</th>
            <th scope="col" className="basis">
              Rests on
            </th>
            <th scope="col" className="amount">
              Cost
            </th>
            <th scope="col" className="page">
              Page
            </th>
          </tr>
        </thead>
        {urgencies
          .map((urgency) => ({ urgency, rows: costed.filter((f) => f.urgency === urgency) }))
          .filter(({ rows }) => rows.length > 0)
          .map(({ urgency, rows }) => (
            <tbody key={urgency}>
              {rows.map((finding) => (
                <Row key={finding.id} finding={finding} />
              ))}
              {totals
                .filter((total) => total.urgency === urgency)
                .map((total) => (
                  <Total key={total.currency} total={total}>
                    <Gauge urgency={urgency} /> {urgencyLabels[urgency]}
                  </Total>
                ))}
            </tbody>
          ))}
        <tbody>
          {costsInAll(totals).map((total) => (
            <Total key={total.currency} total={total}>
              All together
            </Total>
          ))}
        </tbody>
      </table>
    </section>
  );
}

/** The totals alone, for a document that says nothing more of each finding. */
export function CostTotals({ findings }: { findings: readonly SnapshotFinding[] }) {
  const totals = costsByUrgency(costedOf(findings));
  if (totals.length === 0) return null;
  return (
    <section id="costs" className="keep">
      <h2>What putting it right may cost</h2>
      <p>
        A guide for talks between buyer and seller, not an offer. Have the work quoted before relying on it.
      </p>
      <table className="costs">
        <caption className="unseen">Costs by urgency</caption>
        <thead>
          <tr>
            <th scope="col">Urgency</th>
            <th scope="col" className="basis">
              Rests on
            </th>
            <th scope="col" className="amount">
              Cost
            </th>
          </tr>
        </thead>
        <tbody>
          {[
            ...totals.map((total) => ({ ...total, words: urgencyLabels[total.urgency] })),
            ...costsInAll(totals).map((total) => ({ ...total, words: 'All together' })),
          ].map((total) => (
            <tr key={`${total.words} ${total.currency}`}>
              <th scope="row">{total.words}</th>
              <td className="basis">{restsOn(total)}</td>
              <td className="amount">{writtenCost(total)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

function Row({ finding }: { finding: Costed }) {
  return (
    <tr>
      <td className="number">{finding.number}</td>
      <th scope="row" dir="auto">
        <a href={`#finding-${finding.number}`}>{finding.title}</a>
      </th>
      <td className="basis">{costBasisLabels[finding.cost.basis]}</td>
      <td className="amount">{writtenCost(finding.cost)}</td>
      <td className="page">
        <PageOf id={`finding-${finding.number}`} />
      </td>
    </tr>
  );
}

/** What a total rests on, in words. */
function restsOn({ findings, opinions }: Pick<CostTotal, 'findings' | 'opinions'>): string {
  if (opinions === 0) return counted(findings, 'quotation', 'quotations');
  if (opinions === findings) return counted(opinions, 'opinion', 'opinions');
  const quotations = counted(findings - opinions, 'quotation', 'quotations');
  return `${counted(opinions, 'opinion', 'opinions')}, ${quotations}`;
}

function Total({ total, children }: { total: Omit<CostTotal, 'urgency'>; children: ReactNode }) {
  return (
    <tr className="total">
      <td className="number" />
      <th scope="row">{children}</th>
      <td className="basis">{restsOn(total)}</td>
      <td className="amount">{writtenCost(total)}</td>
      <td className="page" />
    </tr>
  );
}
