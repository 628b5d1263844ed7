import type { SurveyReportSnapshot } from '@garboard/contract/report-snapshot';
import { dayIn } from '@garboard/trade/due-dates';
import { hasExpired } from '@garboard/trade/inventory';
import { systemLabels } from '@garboard/trade/vocabulary';
import { formatDay } from '../../../ui/format.ts';
import { Table } from '../../../ui/Table.tsx';

/** The equipment found on board, with its numbers and dates. */
export function EquipmentRead({ snapshot }: { snapshot: SurveyReportSnapshot }) {
  const { inventory, timeZone, frozenAt } = snapshot;
  if (!inventory.length) return null;
  const day = dayIn(timeZone, new Date(frozenAt));
  return (
    <section id="equipment" className="stack">
      <h2>Equipment</h2>
      <Table
        caption="As marked on the equipment or as told. Being in date is no proof that it works."
        rows={inventory}
        rowKey={(item) => item.id}
        columns={[
          {
            key: 'name',
            heading: 'What',
            cell: (item) => (
              <>
                <span dir="auto">{item.name}</span>
                <small dir="auto">{[item.place, item.note].filter(Boolean).join('. ')}</small>
              </>
            ),
          },
          { key: 'system', heading: 'System', cell: (item) => systemLabels[item.system] },
          { key: 'count', heading: 'How many', align: 'num', cell: (item) => item.count },
          {
            key: 'marked',
            heading: 'Maker and number',
            cell: (item) => [item.maker, item.serialNumber].filter(Boolean).join(', '),
          },
          { key: 'made', heading: 'Made or fitted', cell: (item) => item.madeOn && formatDay(item.madeOn) },
          {
            key: 'until',
            heading: 'Good until',
            cell: ({ expiresOn }) =>
              expiresOn &&
              (hasExpired(expiresOn, day) ? (
                <strong>Expired on {formatDay(expiresOn)}</strong>
              ) : (
                formatDay(expiresOn)
              )),
          },
        ]}
      />
    </section>
  );
}
