import type { Survey } from '@garboard/contract/surveys';
import { purposeLabels, surveyStateLabels, surveyStates } from '@garboard/trade/vocabulary';
import { Link } from 'wouter';
import { useList } from '../../api/queries.ts';
import { oneOf, useFilters, useSearchField } from '../../app/filters.ts';
import { useIsStaff } from '../../app/session.tsx';
import { ButtonLink } from '../../ui/Button.tsx';
import { EmptyState } from '../../ui/EmptyState.tsx';
import { SelectField, TextField } from '../../ui/Field.tsx';
import { formatDay, formatInstantDay } from '../../ui/format.ts';
import { MoreList } from '../../ui/MoreList.tsx';
import { Page } from '../../ui/Page.tsx';
import type { Column } from '../../ui/Table.tsx';
import { Table } from '../../ui/Table.tsx';

const telephone: Column<Survey> = {
  key: 'vessel',
  heading: 'Vessel and survey number',
  cell: (survey) => (
    <>
      <Link href={`/surveys/${survey.id}`}>{survey.vesselName}</Link> <small>{survey.number}</small>
    </>
  ),
};
const open: Column<Survey> = {
  key: 'open',
  heading: 'Still to clear',
  cell: (survey) => stillOpen(survey),
};
const staffColumns: Column<Survey>[] = [
  telephone,
  { key: 'purpose', heading: 'Purpose', cell: (survey) => purposeLabels[survey.purpose] },
  { key: 'state', heading: 'State', cell: (survey) => surveyStateLabels[survey.state] },
  { key: 'attended', heading: 'Attended', cell: attended },
  { key: 'findings', heading: 'Findings', align: 'num', cell: (survey) => survey.findingCount },
  open,
];
const partyColumns: Column<Survey>[] = [
  telephone,
  { key: 'purpose', heading: 'Purpose', cell: (survey) => purposeLabels[survey.purpose] },
  { key: 'firm', heading: 'Surveyed by', cell: (survey) => survey.firmName },
  {
    key: 'issued',
    heading: 'Report',
    cell: (survey) =>
      survey.issuedAt ? `Issued ${formatInstantDay(survey.issuedAt, survey.timeZone)}` : 'Not issued yet',
  },
  open,
];

/** Every survey the person may see: the firm's for staff, those shared with them for others. */
export default function SurveyList() {
  const staff = useIsStaff();
  const [filter, setFilter] = useFilters();
  const [search, setSearch] = useSearchField(filter('q'), (q) => setFilter('q', q));
  const state = oneOf(filter('state'), surveyStates);
  const q = filter('q');
  const list = useList('listSurveys', { query: { state, q: q || undefined } });
  const filtered = Boolean(state || q);
  return (
    <Page
      title={staff ? 'Surveys' : 'Surveys shared with you'}
      action={
        staff ? (
          <ButtonLink href="/surveys/new" kind="main">
            New survey
          </ButtonLink>
        ) : null
      }
    >
      <search className="filters">
        <TextField
          className="grow"
          label="Vessel or number"
          type="search"
          value={search}
          onChange={setSearch}
        />
        {staff ? (
          <SelectField
            label="State"
            value={state ?? ''}
            options={surveyStateLabels}
            empty="Any state"
            onChange={(value) => setFilter('state', value)}
          />
        ) : null}
      </search>
      <MoreList list={list} what="the surveys" empty={<Nothing filtered={filtered} staff={staff} />}>
        {(items) => (
          <Table
            caption="Newest first"
            columns={staff ? staffColumns : partyColumns}
            rows={items}
            rowKey={(survey) => survey.id}
          />
        )}
      </MoreList>
    </Page>
  );
}

function attended(survey: Survey): string {
  const days = survey.attendances.map((attendance) => attendance.date).sort();
  const last = days.at(-1);
  return last ? formatDay(last) : 'Not yet';
}

function stillOpen(survey: Survey): string {
  if (!survey.issuedAt) return '';
  if (!survey.openCount) return 'Nothing';
  const due = survey.nextDueOn ? `, next due ${formatDay(survey.nextDueOn)}` : '';
  return `${survey.openCount} open${due}`;
}

function Nothing({ filtered, staff }: { filtered: boolean; staff: boolean }) {
  if (filtered) {
    return (
      <EmptyState title="No survey matches">
        <p>
          Try fewer words. <Link href="/surveys">Show all surveys</Link>
        </p>
      </EmptyState>
    );
  }
  return staff ? (
    <EmptyState title="No surveys yet">
      <p>Begin with the vessel and the purpose; everything else can follow as you go along.</p>
    </EmptyState>
  ) : (
    <EmptyState title="Nothing has been shared with you yet">
      <p>When a survey firm shares a survey with your e-mail address, it appears here.</p>
    </EmptyState>
  );
}
