import type { Survey } from '@garboard/contract/surveys';
import { costsInAll, writtenCost } from '@garboard/trade/costs';
import { count } from '../../ui/format.ts';
import { Table } from '../../ui/Table.tsx';
import { UrgencyGauge } from '../../ui/UrgencyGauge.tsx';

/** What the findings may cost together, by urgency; currencies are never added to one another. */
export function CostTotals({ survey }: { survey: Survey }) {
  if (!survey.costs.length) return null;
  const rows = [
    ...survey.costs.map((total) => ({ ...total, all: false })),
    ...costsInAll(survey.costs).map((total) => ({ ...total, urgency: null, all: true })),
  ];
  return (
    <section className="stack">
      <h2>What putting it right may cost</h2>
      <p className="soft">
        Of findings still to be put right. An opinion is a guide for talks, not an offer.
        {survey.printCosts ? '' : ' Not printed in the report.'}
      </p>
      <Table
        caption="By urgency"
        rows={rows}
        rowKey={(row) => `${row.urgency ?? 'all'} ${row.currency}`}
        columns={[
          {
            key: 'urgency',
            heading: 'Urgency',
            cell: (row) => (row.urgency ? <UrgencyGauge urgency={row.urgency} /> : 'All together'),
          },
          { key: 'cost', heading: 'Cost', align: 'num', cell: (row) => writtenCost(row) },
          { key: 'findings', heading: 'Findings', cell: (row) => count(row.findings, 'finding') },
          {
            key: 'basis',
            heading: 'Rests on',
            cell: ({ findings, opinions }) =>
              [
                opinions ? count(opinions, 'opinion') : '',
                findings > opinions ? count(findings - opinions, 'quotation') : '',
              ]
                .filter(Boolean)
                .join(', '),
          },
        ]}
      />
    </section>
  );
}
