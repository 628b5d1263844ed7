import { findingStateLabels, findingStates } from '@garboard/trade/vocabulary';
import { Link } from 'wouter';
import type { Item } from '../../api/client.ts';
import { useList } from '../../api/queries.ts';
import { oneOf, useFilters, useSearchField } from '../../app/filters.ts';
import { EmptyState } from '../../ui/EmptyState.tsx';
import { SelectField, TextField } from '../../ui/Field.tsx';
import { MoreList } from '../../ui/MoreList.tsx';
import { Page } from '../../ui/Page.tsx';
import type { Column } from '../../ui/Table.tsx';
import { Table } from '../../ui/Table.tsx';
import { DueDate, UrgencyGauge } from '../../ui/UrgencyGauge.tsx';

type Recommendation = Item<'listRecommendations'>;
const { draft: _draft, ...stateLabels } = findingStateLabels;
const states = findingStates.filter((state) => state !== 'draft');
const waitingLabels = { owner: 'Owner', insurer: 'Insurer', surveyor: 'Surveyor' } as const;

const columns: Column<Recommendation>[] = [
  {
    key: 'what',
    heading: 'Vessel and recommendation',
    cell: (item) => (
      <>
        {item.vesselName}: <Link href={`/findings/${item.id}`}>{item.title}</Link>
        <small>
          {item.surveyNumber}, finding {item.number}, {item.firmName}
        </small>
      </>
    ),
  },
  { key: 'urgency', heading: 'Urgency', cell: (item) => <UrgencyGauge urgency={item.urgency} /> },
  { key: 'due', heading: 'Due', cell: (item) => <DueDate dueOn={item.dueOn} overdue={item.overdue} /> },
  { key: 'state', heading: 'State', cell: (item) => findingStateLabels[item.state] },
  {
    key: 'waiting',
    heading: 'Waiting for',
    cell: (item) => (item.waitingFor ? waitingLabels[item.waitingFor] : 'Nobody'),
  },
];

/** Everything that must be cleared, over all surveys the person may see, soonest due first. */
export default function Recommendations() {
  const [filter, setFilter] = useFilters();
  const [search, setSearch] = useSearchField(filter('q'), (q) => setFilter('q', q));
  const state = oneOf(filter('state'), states);
  const dueBefore = /^\d{4}-\d{2}-\d{2}$/.test(filter('due')) ? filter('due') : undefined;
  const q = filter('q') || undefined;
  const list = useList('listRecommendations', { query: { state, dueBefore, q } });
  const filtered = Boolean(state || dueBefore || q);
  return (
    <Page title="Recommendations" under="Findings that require clearing, over all surveys you may see">
      <search className="filters">
        <TextField
          className="grow"
          label="Vessel, number or words"
          type="search"
          value={search}
          onChange={setSearch}
        />
        <SelectField
          label="State"
          value={state ?? ''}
          options={stateLabels}
          empty="Any state"
          onChange={(value) => setFilter('state', value)}
        />
        <TextField
          label="Due before"
          type="date"
          value={dueBefore ?? ''}
          onChange={(value) => setFilter('due', value)}
        />
      </search>
      <MoreList
        list={list}
        what="the recommendations"
        empty={
          <EmptyState title={filtered ? 'No recommendation matches' : 'Nothing to clear'}>
            <p>
              {filtered
                ? 'Choose another state or date, or search for fewer words.'
                : 'Once a report is issued, its findings that require clearing are listed here.'}
            </p>
          </EmptyState>
        }
      >
        {(items) => (
          <Table caption="Soonest due first" columns={columns} rows={items} rowKey={(item) => item.id} />
        )}
      </MoreList>
    </Page>
  );
}
