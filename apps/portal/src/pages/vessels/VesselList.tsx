import type { Vessel } from '@garboard/contract/vessels';
import { Link } from 'wouter';
import { useList } from '../../api/queries.ts';
import { useFilters, useSearchField } from '../../app/filters.ts';
import { ButtonLink } from '../../ui/Button.tsx';
import { EmptyState } from '../../ui/EmptyState.tsx';
import { TextField } from '../../ui/Field.tsx';
import { formatLength } from '../../ui/format.ts';
import { MoreList } from '../../ui/MoreList.tsx';
import { Page } from '../../ui/Page.tsx';
import type { Column } from '../../ui/Table.tsx';
import { Table } from '../../ui/Table.tsx';
import { vesselLine } from './vesselWords.ts';

const columns: Column<Vessel>[] = [
  {
    key: 'name',
    heading: 'Name',
    cell: (vessel) => <Link href={`/vessels/${vessel.id}`}>{vessel.name}</Link>,
  },
  { key: 'built', heading: 'Builder, model, year', cell: (vessel) => vesselLine(vessel) },
  {
    key: 'length',
    heading: 'Length overall',
    align: 'tight',
    cell: (vessel) => vessel.lengthOverallM && formatLength(vessel.lengthOverallM),
  },
  { key: 'hull', heading: 'Hull number', cell: (vessel) => vessel.hullNumber },
  { key: 'port', heading: 'Home port', cell: (vessel) => vessel.homePort },
];

/** The firm's vessels. */
export default function VesselList() {
  const [filter, setFilter] = useFilters();
  const q = filter('q');
  const [search, setSearch] = useSearchField(q, (value) => setFilter('q', value));
  const list = useList('listVessels', { query: { q: q || undefined } });
  return (
    <Page
      title="Vessels"
      action={
        <ButtonLink href="/vessels/new" kind="main">
          New vessel
        </ButtonLink>
      }
    >
      <search className="filters">
        <TextField
          className="grow"
          label="Name or hull number"
          type="search"
          value={search}
          onChange={setSearch}
        />
      </search>
      <MoreList
        list={list}
        what="the vessels"
        empty={
          <EmptyState title={q ? 'No vessel matches' : 'No vessels yet'}>
            <p>{q ? 'Try fewer letters.' : 'Enter the first one, or begin a survey and enter her there.'}</p>
          </EmptyState>
        }
      >
        {(items) => <Table caption="By name" columns={columns} rows={items} rowKey={(vessel) => vessel.id} />}
      </MoreList>
    </Page>
  );
}
