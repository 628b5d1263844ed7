import { addDays } from '@garboard/trade/due-dates';
import { Link } from 'wouter';
import type { Item } from '../../api/client.ts';
import { useList } from '../../api/queries.ts';
import { useFilters } from '../../app/filters.ts';
import { Button } from '../../ui/Button.tsx';
import { EmptyState } from '../../ui/EmptyState.tsx';
import { TextField } from '../../ui/Field.tsx';
import { formatDay, today } from '../../ui/format.ts';
import { MoreList } from '../../ui/MoreList.tsx';
import { Page } from '../../ui/Page.tsx';
import type { Column } from '../../ui/Table.tsx';
import { Table } from '../../ui/Table.tsx';
import { GoodUntil, numberColumn, placeColumn } from './columns.tsx';

type Expiry = Item<'listExpiries'>;

const columns: Column<Expiry>[] = [
  {
    key: 'what',
    heading: 'Vessel and equipment',
    cell: (item) => (
      <>
        {item.vesselName}: <Link href={`/surveys/${item.surveyId}/equipment`}>{item.name}</Link>
        <small>
          {item.surveyNumber}
          {item.count > 1 ? `, ${item.count} of them` : ''}
        </small>
      </>
    ),
  },
  { key: 'until', heading: 'Good until', cell: (item) => <GoodUntil item={item} /> },
  placeColumn,
  numberColumn,
];

/** Days ahead that the list looks when no day is chosen. */
const usualDays = 90;

/** What expires before a day, over the boats of the firm, soonest first. */
export default function Expiries() {
  const [filter, setFilter] = useFilters();
  const chosen = filter('before');
  const all = chosen === 'any';
  const before = all ? undefined : /^\d{4}-\d{2}-\d{2}$/.test(chosen) ? chosen : addDays(today(), usualDays);
  const list = useList('listExpiries', { query: { before } });
  return (
    <Page
      title="What expires"
      under="Equipment with a last day marked, of each boat as its latest survey recorded it"
    >
      <search className="filters">
        <TextField
          label="Expires before"
          type="date"
          value={before ?? ''}
          onChange={(value) => setFilter('before', value || 'any')}
        />
        {all ? null : <Button onClick={() => setFilter('before', 'any')}>Any day</Button>}
      </search>
      <MoreList
        list={list}
        what="what expires"
        empty={
          <EmptyState title={before ? `Nothing expires before ${formatDay(before)}` : 'Nothing bears a date'}>
            <p>Equipment and its dates are recorded on the page “Equipment” of a survey.</p>
          </EmptyState>
        }
      >
        {(items) => (
          <Table caption="Soonest first" columns={columns} rows={items} rowKey={(item) => item.id} />
        )}
      </MoreList>
    </Page>
  );
}
