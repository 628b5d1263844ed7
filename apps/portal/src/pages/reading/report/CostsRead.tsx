import type { SurveyReportSnapshot } from '@garboard/contract/report-snapshot';
import { costsByUrgency, costsInAll, writtenCost } from '@garboard/trade/costs';
import { decidedFindingStates } from '@garboard/trade/states';
import { urgencyLabels } from '@garboard/trade/vocabulary';
import { count } from '../../../ui/format.ts';
import { Table } from '../../../ui/Table.tsx';

/** What putting things right may cost, by urgency; nothing when the firm prints no costs. */
export function CostsRead({ snapshot }: { snapshot: SurveyReportSnapshot }) {
  const costed = snapshot.findings.flatMap((f) =>
    f.cost && !decidedFindingStates.includes(f.state) ? [{ ...f, cost: f.cost }] : [],
  );
  const totals = costsByUrgency(costed);
  if (!totals.length) return null;
  const rows = [
    ...totals.map((total) => ({ ...total, words: urgencyLabels[total.urgency] as string })),
    ...costsInAll(totals).map((total) => ({ ...total, words: 'All together' })),
  ];
  return (
    <section id="costs" className="stack">
      <h2>What putting it right may cost</h2>
      <p className="measure">
        A surveyor’s opinion of a cost is a guide for talks between buyer and seller, not an offer. Have the
        work quoted before relying on a figure.
      </p>
      <Table
        caption="Costs by urgency"
        rows={rows}
        rowKey={(row) => `${row.words} ${row.currency}`}
        columns={[
          { key: 'urgency', heading: 'Urgency', cell: (row) => row.words },
          { key: 'of', heading: 'Of', cell: (row) => count(row.findings, 'finding') },
          { key: 'opinions', heading: 'Opinions among them', align: 'num', cell: (row) => row.opinions },
          { key: 'cost', heading: 'Cost', align: 'num', cell: (row) => writtenCost(row) },
        ]}
      />
    </section>
  );
}
