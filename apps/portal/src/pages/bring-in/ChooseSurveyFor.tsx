import { jobStageLabels } from '@garboard/trade/job-stages';
import { purposeLabels } from '@garboard/trade/vocabulary';
import { Link } from 'wouter';
import type { CallArgs } from '../../api/client.ts';
import { useList } from '../../api/queries.ts';
import { useFilters, useSearchField } from '../../app/filters.ts';
import { ButtonLink } from '../../ui/Button.tsx';
import { EmptyState } from '../../ui/EmptyState.tsx';
import { TextField } from '../../ui/Field.tsx';
import { MoreList } from '../../ui/MoreList.tsx';
import { Page } from '../../ui/Page.tsx';
import { Table } from '../../ui/Table.tsx';

/** Into which survey a sheet is to be brought: one that is open, or a new one. */
export default function ChooseSurveyFor() {
  const [filter, setFilter] = useFilters();
  const [search, setSearch] = useSearchField(filter('q'), (q) => setFilter('q', q));
  const query = { closed: 'no', sort: 'newest', q: filter('q') || undefined };
  const list = useList('listJobs', { query } as CallArgs<'listJobs'>);
  return (
    <Page
      title="Bring in a survey"
      action={
        <ButtonLink kind="main" href="/surveys/new?then=bring-in">
          Begin a new survey
        </ButtonLink>
      }
    >
      <div className="stack">
        <p className="text">
          A folder of photos and a sheet of findings become drafts of a survey. Begin a new one for the boat,
          or choose the survey to which they belong.
        </p>
        <search>
          <div className="filters">
            <TextField
              className="grow"
              label="Vessel or number"
              type="search"
              value={search}
              onChange={setSearch}
            />
          </div>
        </search>
        <MoreList
          list={list}
          what="the surveys"
          empty={
            <EmptyState title={filter('q') ? 'No open survey matches' : 'No open surveys'}>
              <p>Begin a new survey: vessel and purpose are enough.</p>
            </EmptyState>
          }
        >
          {(items) => (
            <Table
              caption="Open surveys, newest first"
              rows={items}
              rowKey={({ id }) => id}
              columns={[
                {
                  key: 'vessel',
                  heading: 'Vessel and survey number',
                  cell: (job) => (
                    <>
                      <Link href={`/surveys/${job.id}/bring-in`}>{job.vesselName}</Link>
                      <small>
                        {job.number}, {purposeLabels[job.purpose].toLowerCase()}
                        {job.requestedBy ? ` for ${job.requestedBy}` : ''}
                      </small>
                    </>
                  ),
                },
                { key: 'stage', heading: 'Stage', align: 'tight', cell: (job) => jobStageLabels[job.stage] },
              ]}
            />
          )}
        </MoreList>
      </div>
    </Page>
  );
}
