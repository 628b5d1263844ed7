import { Link } from 'wouter';
import type { Answer, CallArgs, Item } from '../../api/client.ts';
import { useAnswer, useList } from '../../api/queries.ts';
import { oneOf, useFilters, useSearchField } from '../../app/filters.ts';
import { EmptyState } from '../../ui/EmptyState.tsx';
import { SelectField, TextField } from '../../ui/Field.tsx';
import { formatDay } from '../../ui/format.ts';
import { MoreList } from '../../ui/MoreList.tsx';
import type { Column } from '../../ui/Table.tsx';
import { Table } from '../../ui/Table.tsx';
import { SavedViews } from '../lists/SavedViews.tsx';
import { RecommendationFrame } from './RecommendationFrame.tsx';

type Vessel = Item<'listCoveredVessels'>;

const onlyLabels = {
  'waiting-for-me': 'Waiting for my decision',
  overdue: 'Something overdue',
  'this-week': 'Something due in the next 7 days',
  undecided: 'Something still to clear',
  unreleased: 'Nothing released yet',
} as const;
const onlyKeys = Object.keys(onlyLabels) as (keyof typeof onlyLabels)[];

/** A count that leads to what it counts; nothing is told by a dash. */
function counted(vessel: Vessel, n: number, address: string, urgent = false) {
  if (!n) return <span className="soft">–</span>;
  return (
    <Link
      href={`/recommendations?vessel=${vessel.id}${address}`}
      className={urgent ? 'signal' : undefined}
      aria-label={`${n} of ${vessel.name}`}
    >
      {n}
    </Link>
  );
}

function columnsFor(counts: Answer<'countRecommendations'> | undefined): Column<Vessel>[] {
  const severalFirms = (counts?.firms.length ?? 0) > 1;
  return [
    {
      key: 'vessel',
      heading: 'Vessel',
      cell: (vessel) => (
        <>
          <Link href={`/recommendations?vessel=${vessel.id}&state=all`}>{vessel.name}</Link>
          <small>
            Survey{' '}
            <Link
              href={`/surveys/${vessel.latestSurveyId}`}
              aria-label={`Survey ${vessel.latestSurveyNumber} of ${vessel.name}`}
            >
              {vessel.latestSurveyNumber}
            </Link>
            {severalFirms ? `, ${vessel.firmName}` : ''}
          </small>
        </>
      ),
    },
    {
      key: 'me',
      heading: 'Waiting for you',
      align: 'num',
      cell: (vessel) => counted(vessel, vessel.waitingForMe, '&waiting=me'),
    },
    {
      key: 'overdue',
      heading: 'Overdue',
      align: 'num',
      cell: (vessel) => counted(vessel, vessel.overdue, '&due=overdue', true),
    },
    {
      key: 'week',
      heading: 'Next 7 days',
      align: 'num',
      cell: (vessel) => counted(vessel, vessel.dueThisWeek, '&due=this-week'),
    },
    {
      key: 'open',
      heading: 'Still to clear',
      align: 'num',
      cell: (vessel) => counted(vessel, vessel.undecided, ''),
    },
    { key: 'next', heading: 'Next due', cell: nextOf },
  ];
}

function nextOf(vessel: Vessel) {
  if (!vessel.issued) return <span className="soft">No report yet</span>;
  if (!vessel.released) return <span className="soft">Not released to you yet</span>;
  if (vessel.nextDueOn) return formatDay(vessel.nextDueOn);
  return <span className="soft">{vessel.undecided ? 'No date' : 'All clear'}</span>;
}

/** The vessels of every survey the person may see, the one whose next day comes soonest first. */
export default function VesselsToClear() {
  const [filter, setFilter] = useFilters();
  const [search, setSearch] = useSearchField(filter('q'), (q) => setFilter('q', q));
  const counts = useAnswer('countRecommendations', {}).data;
  const only = oneOf(filter('only'), onlyKeys);
  const firms = counts?.firms ?? [];
  const firmId = firms.find((firm) => firm.id === filter('firm'))?.id;
  const query = {
    only,
    firmId,
    q: filter('q') || undefined,
    sort: oneOf(filter('sort'), ['vessel']) ?? 'due',
  };
  const list = useList('listCoveredVessels', { query } as CallArgs<'listCoveredVessels'>);
  const filtered = Boolean(only || firmId || query.q);
  return (
    <RecommendationFrame counts={counts}>
      <SavedViews page="vessels" />
      <search className="filters">
        <TextField className="grow" label="Vessel" type="search" value={search} onChange={setSearch} />
        <SelectField
          label="Only those with"
          value={only ?? ''}
          options={onlyLabels}
          empty="Anything"
          onChange={(value) => setFilter('only', value)}
        />
        {firms.length > 1 ? (
          <SelectField
            label="Survey firm"
            value={firmId ?? ''}
            options={Object.fromEntries(firms.map((firm) => [firm.id, firm.name]))}
            empty="Any firm"
            onChange={(value) => setFilter('firm', value)}
          />
        ) : null}
        <SelectField
          label="Order"
          value={query.sort === 'vessel' ? 'vessel' : ''}
          options={{ vessel: 'Name' }}
          empty="Next due first"
          onChange={(value) => setFilter('sort', value)}
        />
      </search>
      <MoreList
        list={list}
        what="the vessels"
        empty={
          <EmptyState title={filtered ? 'No vessel matches' : 'No vessels yet'}>
            <p>
              {filtered
                ? 'Choose “Anything”, or search for fewer letters.'
                : 'The vessels of surveys that a firm shares with you are listed here.'}
            </p>
          </EmptyState>
        }
      >
        {(items) => (
          <Table
            caption={query.sort === 'vessel' ? 'By name' : 'Next due first'}
            columns={columnsFor(counts)}
            rows={items}
            rowKey={(vessel) => vessel.id}
          />
        )}
      </MoreList>
    </RecommendationFrame>
  );
}
