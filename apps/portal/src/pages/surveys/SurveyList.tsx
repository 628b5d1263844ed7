import type { Survey } from '@garboard/contract/surveys';
import { purposeLabels } from '@garboard/trade/vocabulary';
import { Link } from 'wouter';
import { useList } from '../../api/queries.ts';
import { useFilters, useSearchField } from '../../app/filters.ts';
import { EmptyState } from '../../ui/EmptyState.tsx';
import { TextField } from '../../ui/Field.tsx';
import { formatDay, formatInstantDay } from '../../ui/format.ts';
import { MoreList } from '../../ui/MoreList.tsx';
import { Page } from '../../ui/Page.tsx';
import type { Column } from '../../ui/Table.tsx';
import { Table } from '../../ui/Table.tsx';

const columns: Column<Survey>[] = [
  {
    key: 'vessel',
    heading: 'Vessel and survey number',
    cell: (survey) => (
      <>
        <Link href={`/surveys/${survey.id}`}>{survey.vesselName}</Link> <small>{survey.number}</small>
      </>
    ),
  },
  { key: 'purpose', heading: 'Purpose', cell: (survey) => purposeLabels[survey.purpose] },
  { key: 'firm', heading: 'Surveyed by', cell: (survey) => survey.firmName },
  {
    key: 'issued',
    heading: 'Report',
    cell: (survey) =>
      survey.issuedAt ? `Issued ${formatInstantDay(survey.issuedAt, survey.timeZone)}` : 'Not issued yet',
  },
  { key: 'open', heading: 'Still to clear', cell: (survey) => stillOpen(survey) },
];

/** Every survey that is shared with the person, newest first. */
export default function SurveyList() {
  const [filter, setFilter] = useFilters();
  const [search, setSearch] = useSearchField(filter('q'), (q) => setFilter('q', q));
  const q = filter('q');
  const list = useList('listSurveys', { query: { q: q || undefined } });
  return (
    <Page title="Surveys shared with you">
      <search className="filters">
        <TextField
          className="grow"
          label="Vessel or number"
          type="search"
          value={search}
          onChange={setSearch}
        />
      </search>
      <MoreList list={list} what="the surveys" empty={<Nothing filtered={Boolean(q)} />}>
        {(items) => (
          <Table caption="Newest first" columns={columns} rows={items} rowKey={(survey) => survey.id} />
        )}
      </MoreList>
    </Page>
  );
}

function stillOpen(survey: Survey): string {
  if (!survey.issuedAt) return '';
  if (!survey.openCount) return 'Nothing';
  const due = survey.nextDueOn ? `, next due ${formatDay(survey.nextDueOn)}` : '';
  return `${survey.openCount} open${due}`;
}

function Nothing({ filtered }: { filtered: boolean }) {
  return filtered ? (
    <EmptyState title="No survey matches">
      <p>
        Try fewer words. <Link href="/surveys">Show all surveys</Link>
      </p>
    </EmptyState>
  ) : (
    <EmptyState title="Nothing has been shared with you yet">
      <p>When a survey firm shares a survey with your e-mail address, it appears here.</p>
    </EmptyState>
  );
}
