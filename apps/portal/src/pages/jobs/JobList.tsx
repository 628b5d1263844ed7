import type { Job } from '@garboard/contract/job-list';
import { jobStageLabels, jobStages, jobWaitLabels } from '@garboard/trade/job-stages';
import { purposeLabels, purposes } from '@garboard/trade/vocabulary';
import { Link } from 'wouter';
import type { Answer, CallArgs } from '../../api/client.ts';
import { pathOf } from '../../api/client.ts';
import { useAnswer, useList } from '../../api/queries.ts';
import { oneOf, useFilters, useSearchField } from '../../app/filters.ts';
import { ButtonLink } from '../../ui/Button.tsx';
import { EmptyState } from '../../ui/EmptyState.tsx';
import { SelectField, TextField } from '../../ui/Field.tsx';
import { MoreList } from '../../ui/MoreList.tsx';
import { Page } from '../../ui/Page.tsx';
import { StandingLine } from '../../ui/Standing.tsx';
import type { Column } from '../../ui/Table.tsx';
import { Table } from '../../ui/Table.tsx';
import { MoreFilters } from '../lists/MoreFilters.tsx';
import { SavedViews } from '../lists/SavedViews.tsx';
import { nextWords, waitWords } from './jobWords.ts';

const waitLabels = { me: 'Me', ...jobWaitLabels } as const;
const dueLabels = { overdue: 'Overdue', 'this-week': 'In the next 7 days' } as const;
const sortLabels = { newest: 'Newest', stage: 'Stage', vessel: 'Vessel' } as const;
const keys = <K extends string>(labels: Record<K, string>) => Object.keys(labels) as K[];

const columns: Column<Job>[] = [
  {
    key: 'vessel',
    heading: 'Vessel and survey number',
    cell: (job) => (
      <>
        <Link href={`/surveys/${job.id}`}>{job.vesselName}</Link>
        <small>
          {job.number}, {purposeLabels[job.purpose].toLowerCase()}
          {job.requestedBy ? ` for ${job.requestedBy}` : ''}
        </small>
      </>
    ),
  },
  { key: 'stage', heading: 'Stage', align: 'tight', cell: (job) => jobStageLabels[job.stage] },
  {
    key: 'next',
    heading: 'What is due',
    cell: (job) => {
      const { words, passed } = nextWords(job);
      return <span className={passed ? 'signal' : undefined}>{words}</span>;
    },
  },
  {
    key: 'waiting',
    heading: 'Who is waited for',
    cell: (job) =>
      job.waiting.map((wait) => (
        <span className="line" key={wait.for}>
          {waitWords(job, wait)}
        </span>
      )),
  },
  { key: 'surveyor', heading: 'Surveyor', cell: (job) => job.surveyorName },
];

/** The firm's jobs: where each stands, what is due and who waits for whom. */
export default function JobList() {
  const [filter, setFilter] = useFilters();
  const [search, setSearch] = useSearchField(filter('q'), (q) => setFilter('q', q));
  const counts = useAnswer('countJobs', {}).data;
  const stage = oneOf(filter('stage'), jobStages);
  const all = filter('stage') === 'all';
  const narrowed = {
    stage,
    closed: stage || all ? undefined : 'no',
    due: oneOf(filter('due'), keys(dueLabels)),
    waitingFor: oneOf(filter('waiting'), keys(waitLabels)),
    surveyorId: counts?.surveyors.find(({ id }) => id === filter('surveyor'))?.id,
    purpose: oneOf(filter('purpose'), purposes),
    q: filter('q') || undefined,
  };
  const sort = oneOf(filter('sort'), keys(sortLabels)) ?? 'due';
  const list = useList('listJobs', { query: { ...narrowed, sort } } as CallArgs<'listJobs'>);
  // Counting takes the longer the more there are, so that the page does not wait for it.
  const counting = { query: { ...narrowed, limit: 1, total: 'yes' } } as CallArgs<'listJobs'>;
  const total = useAnswer('listJobs', counting).data?.total ?? null;
  const { closed: _closed, ...asked } = narrowed;
  const filtered = all || Object.values(asked).some(Boolean);
  const select = (name: string, label: string, empty: string, options: Readonly<Record<string, string>>) => (
    <SelectField
      label={label}
      value={filter(name) in options ? filter(name) : ''}
      options={options}
      empty={empty}
      onChange={(value) => setFilter(name, value)}
    />
  );
  return (
    <Page
      title="Surveys"
      action={
        <>
          {list.items?.length ? (
            <a className="button button-plain" href={pathOf('exportJobs', {}, narrowed)} download>
              Download as CSV
            </a>
          ) : null}
          <ButtonLink href="/surveys/bring-in">Bring in a survey</ButtonLink>
          <ButtonLink href="/surveys/new" kind="main">
            New survey
          </ButtonLink>
        </>
      }
    >
      <StandingLine label="What needs attention" items={attention(filter, counts)} />
      <SavedViews page="jobs" />
      <search>
        <div className="filters">
          <TextField
            className="grow"
            label="Vessel or number"
            type="search"
            value={search}
            onChange={setSearch}
          />
          {select('stage', 'Stage', openLabel(counts), stageLabels(counts))}
          {select('waiting', 'Waiting for', 'Anybody', waitLabels)}
          {select('sort', 'Order', 'Soonest due', sortLabels)}
        </div>
        <MoreFilters set={Boolean(filter('due') || filter('surveyor') || filter('purpose'))}>
          {select('due', 'Due', 'Any day', dueLabels)}
          {select(
            'surveyor',
            'Surveyor',
            'Any surveyor',
            Object.fromEntries((counts?.surveyors ?? []).map(({ id, name }) => [id, name])),
          )}
          {select('purpose', 'Purpose', 'Any purpose', purposeLabels)}
        </MoreFilters>
      </search>
      <MoreList list={list} what="the surveys" empty={<Nothing filtered={filtered} />}>
        {(items) => (
          <Table
            caption={`${total === null ? 'Surveys' : `${total} ${total === 1 ? 'survey' : 'surveys'}`}, ${sort === 'due' ? 'soonest due first' : sort === 'newest' ? 'newest first' : `by ${sort}`}`}
            columns={columns}
            rows={items}
            rowKey={(job) => job.id}
          />
        )}
      </MoreList>
    </Page>
  );
}

const closedStages: readonly string[] = ['closed', 'cancelled'];

function openLabel(counts: Answer<'countJobs'> | undefined): string {
  if (!counts) return 'All open';
  const open = jobStages.filter((one) => !closedStages.includes(one));
  return `All open (${open.reduce((sum, one) => sum + (counts.stages[one] ?? 0), 0)})`;
}

/** The stages, each with how many jobs stand at it. */
function stageLabels(counts: Answer<'countJobs'> | undefined): Record<string, string> {
  const told = jobStages.map((one) => [
    one,
    counts ? `${jobStageLabels[one]} (${counts.stages[one] ?? 0})` : jobStageLabels[one],
  ]);
  return { ...Object.fromEntries(told), all: 'Any stage' };
}

function attention(filter: (name: string) => string, counts: Answer<'countJobs'> | undefined) {
  const bare = ['stage', 'waiting', 'due', 'surveyor', 'purpose', 'q'];
  const at = (name: string, value: string) =>
    bare.every((other) => filter(other) === (other === name ? value : ''));
  return [
    {
      ...{ key: 'me', count: counts?.waitingForMe, words: 'waiting for you' },
      ...{ href: '/surveys?waiting=me', current: at('waiting', 'me') },
    },
    {
      ...{ key: 'overdue', count: counts?.overdue, words: 'overdue', urgent: true },
      ...{ href: '/surveys?due=overdue', current: at('due', 'overdue') },
    },
    {
      ...{ key: 'week', count: counts?.dueThisWeek, words: 'due in the next 7 days' },
      ...{ href: '/surveys?due=this-week', current: at('due', 'this-week') },
    },
    { key: 'open', count: undefined, words: 'All open', href: '/surveys', current: at('stage', '') },
  ];
}

function Nothing({ filtered }: { filtered: boolean }) {
  return filtered ? (
    <EmptyState title="No survey matches">
      <p>
        Choose another stage, or try fewer words. <Link href="/surveys">Show all that are open</Link>
      </p>
    </EmptyState>
  ) : (
    <EmptyState title="No open surveys">
      <p>
        Begin with the vessel and the purpose; everything else can follow as you go along.{' '}
        <Link href="/surveys?stage=closed">Show closed ones</Link>
      </p>
    </EmptyState>
  );
}
