import { purposeLabels, surveyStateLabels } from '@garboard/trade/vocabulary';
import { Link } from 'wouter';
import { isStatus } from '../../api/problems.ts';
import { useAnswer, useList } from '../../api/queries.ts';
import { NotFound } from '../../app/NotFound.tsx';
import { ButtonLink } from '../../ui/Button.tsx';
import { Loading } from '../../ui/EmptyState.tsx';
import { ErrorNotice } from '../../ui/ErrorNotice.tsx';
import { Facts } from '../../ui/Facts.tsx';
import { MoreList } from '../../ui/MoreList.tsx';
import { Page } from '../../ui/Page.tsx';
import { Table } from '../../ui/Table.tsx';
import { vesselFacts } from './vesselWords.ts';

/** A vessel's particulars and her surveys. */
export default function VesselPage({ id }: { id: string }) {
  const vessel = useAnswer('getVessel', { params: { id } });
  const surveys = useList('listSurveys', { query: { vesselId: id } });
  if (isStatus(vessel.error, 404) || isStatus(vessel.error, 422)) return <NotFound />;
  if (!vessel.data)
    return vessel.error ? <ErrorNotice error={vessel.error} /> : <Loading what="the vessel" />;
  return (
    <Page
      title={vessel.data.name}
      over={<Link href="/vessels">Vessels</Link>}
      action={
        <>
          <ButtonLink href={`/vessels/${id}/edit`}>Edit particulars</ButtonLink>
          <ButtonLink href={`/surveys/new?vessel=${id}`} kind="main">
            New survey of her
          </ButtonLink>
        </>
      }
    >
      <div className="stack-wide">
        <Facts facts={vesselFacts(vessel.data)} />
        <section className="stack">
          <h2>Surveys</h2>
          <MoreList list={surveys} what="her surveys" empty={<p>She has not been surveyed here yet.</p>}>
            {(items) => (
              <Table
                caption="Newest first"
                rows={items}
                rowKey={(survey) => survey.id}
                columns={[
                  {
                    key: 'number',
                    heading: 'Number',
                    cell: (survey) => <Link href={`/surveys/${survey.id}`}>{survey.number}</Link>,
                  },
                  { key: 'purpose', heading: 'Purpose', cell: (survey) => purposeLabels[survey.purpose] },
                  { key: 'state', heading: 'State', cell: (survey) => surveyStateLabels[survey.state] },
                ]}
              />
            )}
          </MoreList>
        </section>
      </div>
    </Page>
  );
}
