import { findingStateLabels } from '@garboard/trade/vocabulary';
import { useState } from 'react';
import { Link } from 'wouter';
import type { CallArgs, Item } from '../../api/client.ts';
import { pathOf } from '../../api/client.ts';
import { useAnswer, useList } from '../../api/queries.ts';
import { useFilters } from '../../app/filters.ts';
import { Button } from '../../ui/Button.tsx';
import { EmptyState } from '../../ui/EmptyState.tsx';
import { Checkbox } from '../../ui/Field.tsx';
import { count, formatInstantDay } from '../../ui/format.ts';
import { MoreList } from '../../ui/MoreList.tsx';
import { StandingLine } from '../../ui/Standing.tsx';
import type { Column } from '../../ui/Table.tsx';
import { Table } from '../../ui/Table.tsx';
import { DueDate, UrgencyGauge } from '../../ui/UrgencyGauge.tsx';
import { SavedViews } from '../lists/SavedViews.tsx';
import { AcceptChosen } from './AcceptChosen.tsx';
import { RecommendationFilters } from './RecommendationFilters.tsx';
import { RecommendationFrame } from './RecommendationFrame.tsx';
import { recommendationQuery, sortLabels } from './recommendationQuery.ts';

type Recommendation = Item<'listRecommendations'>;
const waitingWords = { owner: 'Owner', insurer: 'Insurer', surveyor: 'Surveyor' } as const;

const columns: Column<Recommendation>[] = [
  { key: 'urgency', heading: 'Urgency', cell: (item) => <UrgencyGauge urgency={item.urgency} /> },
  { key: 'due', heading: 'Due', cell: (item) => <DueDate dueOn={item.dueOn} overdue={item.overdue} /> },
  {
    key: 'state',
    heading: 'State',
    cell: (item) => (
      <>
        {findingStateLabels[item.state]}
        {item.evidence ? (
          <small>
            {formatInstantDay(item.evidence.sentAt)}, {item.evidence.sentBy}
          </small>
        ) : null}
      </>
    ),
  },
  {
    key: 'waiting',
    heading: 'Waiting for',
    cell: (item) => (item.mayDecide ? 'You' : item.waitingFor ? waitingWords[item.waitingFor] : 'Nobody'),
  },
];

/** Everything that must be cleared, over all surveys the person may see; evidence can be accepted several at a time. */
export default function Recommendations() {
  const [filter, setFilter] = useFilters();
  const query = recommendationQuery(filter);
  const counts = useAnswer('countRecommendations', {}).data;
  const list = useList('listRecommendations', { query } as CallArgs<'listRecommendations'>);
  // Counting takes the longer the more there are, so that the page does not wait for it.
  const counting = { query: { ...query, limit: 1, total: 'yes' } } as CallArgs<'listRecommendations'>;
  const total = useAnswer('listRecommendations', counting).data?.total ?? null;
  const [chosen, setChosen] = useState<ReadonlyMap<string, Recommendation>>(new Map());
  const [accepting, setAccepting] = useState(false);
  const mine = list.items?.filter((item) => item.mayDecide) ?? [];
  const { sort, ...narrowed } = query;
  const filtered = Object.values({ ...narrowed, decided: undefined }).some(Boolean) || filter('state') !== '';

  const choose = (items: readonly Recommendation[], on: boolean) => {
    const next = new Map(chosen);
    for (const item of items) {
      if (on) next.set(item.id, item);
      else next.delete(item.id);
    }
    setChosen(next);
  };
  const first: Column<Recommendation> = {
    key: 'what',
    heading: 'Vessel and recommendation',
    cell: (item) => (
      <>
        {item.mayDecide ? (
          <label className="choose">
            <input
              type="checkbox"
              aria-label={`Choose ${item.vesselName}: ${item.title}`}
              checked={chosen.has(item.id)}
              onChange={(event) => choose([item], event.target.checked)}
            />
          </label>
        ) : null}
        {item.vesselName}: <Link href={`/findings/${item.id}`}>{item.title}</Link>
        <small>
          {item.surveyNumber}, finding {item.number}, {item.firmName}
        </small>
      </>
    ),
  };
  return (
    <RecommendationFrame
      counts={counts}
      action={
        list.items?.length ? (
          <a className="button button-plain" href={pathOf('exportRecommendations', {}, narrowed)} download>
            Download as CSV
          </a>
        ) : null
      }
    >
      <StandingLine label="How they stand" items={standing(filter, counts)} />
      <SavedViews page="recommendations" />
      <RecommendationFilters filter={filter} setFilter={setFilter} firms={counts?.firms ?? []} />
      {query.vesselId ? (
        <p>
          Only {list.items?.[0]?.vesselName ?? 'one vessel'}.{' '}
          <Button kind="quiet" onClick={() => setFilter('vessel', '')}>
            Show all vessels
          </Button>
        </p>
      ) : null}
      <MoreList list={list} what="the recommendations" empty={<Nothing filtered={filtered} />}>
        {(items) => (
          <>
            {mine.length > 1 ? (
              <Checkbox
                label={`Choose all ${mine.length} shown that wait for your decision`}
                checked={mine.every((item) => chosen.has(item.id))}
                onChange={(on) => choose(mine, on)}
              />
            ) : null}
            <Table
              caption={captionOf(sort, total)}
              columns={[first, ...columns]}
              rows={items}
              rowKey={(item) => item.id}
            />
          </>
        )}
      </MoreList>
      {chosen.size ? (
        <div className="chosen-bar">
          <span>{count(chosen.size, 'recommendation')} chosen</span>
          <div className="row">
            <Button kind="quiet" onClick={() => setChosen(new Map())}>
              Choose none
            </Button>
            <Button kind="main" onClick={() => setAccepting(true)}>
              Accept their evidence…
            </Button>
          </div>
        </div>
      ) : null}
      {accepting ? (
        <AcceptChosen
          chosen={[...chosen.values()]}
          onDone={() => setChosen(new Map())}
          onClose={() => setAccepting(false)}
        />
      ) : null}
    </RecommendationFrame>
  );
}

function captionOf(sort: string, total: number | null): string {
  const order = sortLabels[sort as keyof typeof sortLabels].toLowerCase();
  return `${total === null ? 'Recommendations' : count(total, 'recommendation')}, ${sort === 'vessel' ? 'by vessel' : `${order} first`}`;
}

function standing(
  filter: (name: string) => string,
  counts: { undecided: number; overdue: number; dueThisWeek: number; waitingForMe: number } | undefined,
) {
  const bare = ['state', 'due', 'waiting', 'urgency', 'system', 'firm', 'vessel', 'q'];
  const at = (name: string, value: string) =>
    bare.every((other) => filter(other) === (other === name ? value : ''));
  const home = '/recommendations';
  return [
    ...(counts?.waitingForMe
      ? [
          {
            ...{ key: 'me', count: counts.waitingForMe, words: 'waiting for your decision' },
            ...{ href: `${home}?waiting=me&sort=sent`, current: at('waiting', 'me') },
          },
        ]
      : []),
    {
      ...{ key: 'overdue', count: counts?.overdue, words: 'overdue', urgent: true },
      ...{ href: `${home}?due=overdue`, current: at('due', 'overdue') },
    },
    {
      ...{ key: 'week', count: counts?.dueThisWeek, words: 'due in the next 7 days' },
      ...{ href: `${home}?due=this-week`, current: at('due', 'this-week') },
    },
    {
      ...{ key: 'open', count: counts?.undecided, words: 'still to clear' },
      ...{ href: home, current: at('state', '') },
    },
  ];
}

function Nothing({ filtered }: { filtered: boolean }) {
  return filtered ? (
    <EmptyState title="No recommendation matches">
      <p>
        Choose another state or day, or search for fewer words.{' '}
        <Link href="/recommendations">Show all that are still to clear</Link>
      </p>
    </EmptyState>
  ) : (
    <EmptyState title="Nothing to clear">
      <p>
        Once a report is issued, its findings that require clearing are listed here.{' '}
        <Link href="/recommendations?state=decided">Show those that are decided</Link>
      </p>
    </EmptyState>
  );
}
