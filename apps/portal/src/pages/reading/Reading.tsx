import type { Report } from '@garboard/contract/reports';
import type { Survey } from '@garboard/contract/surveys';
import { attendanceConditionLabels, purposeLabels } from '@garboard/trade/vocabulary';
import { Link } from 'wouter';
import { pathOf } from '../../api/client.ts';
import { isStatus } from '../../api/problems.ts';
import { useAnswer, useList } from '../../api/queries.ts';
import { mayDo } from '../../app/roles.ts';
import { ErrorNotice } from '../../ui/ErrorNotice.tsx';
import { Facts } from '../../ui/Facts.tsx';
import { formatDay, formatInstantDay } from '../../ui/format.ts';
import { Page } from '../../ui/Page.tsx';
import { Table } from '../../ui/Table.tsx';
import { Visits } from '../clearance/visit/Visits.tsx';
import { documentName } from '../reports/DocumentTable.tsx';
import { WithSurvey } from '../surveys/SurveyFrame.tsx';
import { vesselFacts } from '../vessels/vesselWords.ts';
import { ReadingFindings } from './ReadingFindings.tsx';

/** A survey as those read it with whom it was shared. */
export default function Reading({ id }: { id: string }) {
  return <WithSurvey id={id}>{(survey) => <ReadingOf survey={survey} />}</WithSurvey>;
}

function ReadingOf({ survey }: { survey: Survey }) {
  const mayRead = mayDo('report.read', survey);
  const list = useList('listReports', { params: { id: survey.id } }, { enabled: mayRead });
  const issued = (list.items ?? []).filter((report) => report.state === 'issued');
  const latest = issued.find((report) => report.kind === 'full' && !report.superseded);
  return (
    <Page
      title={`${survey.vesselName}, ${survey.number}`}
      over={`${purposeLabels[survey.purpose]} by ${survey.firmName}`}
      under={
        survey.issuedAt
          ? `Issued ${formatInstantDay(survey.issuedAt, survey.timeZone)}`
          : 'The report has not been issued yet.'
      }
      action={
        latest ? (
          <a className="button button-main" href={pathOf('getReportPdf', { id: latest.id })} download>
            Download the report (PDF)
          </a>
        ) : null
      }
    >
      <div className="stack-wide">
        {list.error && !isStatus(list.error, 403) ? (
          <ErrorNotice quiet error={list.error} onRetry={list.retry} />
        ) : null}
        {survey.issuedAt && survey.released ? (
          <ReadingFindings survey={survey} />
        ) : (
          <NotIssued held={survey.held} />
        )}
        {survey.issuedAt && mayDo('evidence.read', survey) ? <Visits survey={survey} /> : null}
        {latest ? <Issued report={latest} /> : null}
        <Documents survey={survey} reports={issued} />
        {mayDo('visit.read', survey) || mayDo('quotation.read', survey) ? <Arranged survey={survey} /> : null}
        {mayDo('party.read', survey) ? <Others survey={survey} /> : null}
      </div>
    </Page>
  );
}

/** The way to what is arranged around the survey. */
function Arranged({ survey }: { survey: Survey }) {
  return (
    <section className="stack measure">
      <h2>{survey.client ? 'Fee, terms and visits' : 'Visits'}</h2>
      <p>
        <Link href={`/surveys/${survey.id}/engagement`}>
          {survey.client
            ? 'See what the firm offers and asks, and when the boat is visited'
            : 'See when the boat is visited, and answer if you are asked'}
        </Link>
      </p>
    </section>
  );
}

/** The way to the parties, for those who may do something there. */
function Others({ survey }: { survey: Survey }) {
  return (
    <section className="stack measure">
      <h2>{survey.client ? 'Who else reads it' : 'The yard'}</h2>
      <p>
        {survey.client
          ? 'You pay for this survey: you say to whom the report is released, and see who opened it.'
          : 'A yard that does the work can send the evidence itself.'}{' '}
        <Link href={`/surveys/${survey.id}/parties`}>
          {mayDo('party.invite-yard', survey) ? 'See the parties or invite a yard' : 'See the parties'}
        </Link>
      </p>
    </section>
  );
}

function NotIssued({ held }: { held: boolean }) {
  return (
    <p className="measure">
      {held
        ? 'The report is withheld until it is paid for or the firm gives the word. You will find it here as soon as that is done.'
        : 'The surveyor is still at work, or the report has not been released to you. You will find it here as soon as it is.'}
    </p>
  );
}

/** What the report says of vessel, attendances, scope and limitations, exactly as it was issued. */
function Issued({ report }: { report: Report }) {
  const data = useAnswer('getReportData', { params: { id: report.id } });
  if (!data.data) return <ErrorNotice quiet error={data.error} onRetry={() => void data.refetch()} />;
  const { survey, vessel, surveyor, attendances } = data.data;
  return (
    <>
      <section className="stack">
        <h2>Vessel</h2>
        <Facts facts={[['Name', vessel.name], ...vesselFacts(vessel)]} />
      </section>
      <section className="stack">
        <h2>Attendances</h2>
        <Table
          caption={`Surveyor: ${surveyor.name}${surveyor.qualifications ? `, ${surveyor.qualifications}` : ''}`}
          rows={attendances.map((attendance, at) => ({ ...attendance, at }))}
          rowKey={(row) => String(row.at)}
          columns={[
            { key: 'date', heading: 'Date', cell: (row) => formatDay(row.date) },
            { key: 'place', heading: 'Place', cell: (row) => row.place },
            {
              key: 'condition',
              heading: 'The vessel was',
              cell: (row) => attendanceConditionLabels[row.condition],
            },
          ]}
        />
      </section>
      <section className="stack">
        <h2>Scope</h2>
        <p className="text">{survey.scope || 'Not stated.'}</p>
        <h2>Limitations</h2>
        <p className="text">{survey.limitations || 'Not stated.'}</p>
      </section>
    </>
  );
}

function Documents({ survey, reports }: { survey: Survey; reports: readonly Report[] }) {
  if (!reports.length) return null;
  return (
    <section className="stack">
      <h2>Documents</h2>
      <Table
        caption="Newest first"
        rows={reports}
        rowKey={(report) => report.id}
        columns={[
          {
            key: 'name',
            heading: 'Document',
            cell: (report) => <Link href={`/reports/${report.id}`}>{documentName(report)}</Link>,
          },
          {
            key: 'issued',
            heading: 'Issued',
            cell: (report) => report.issuedAt && formatInstantDay(report.issuedAt, survey.timeZone),
          },
          {
            key: 'now',
            heading: 'Now',
            cell: ({ supersededBy }) =>
              supersededBy ? `Superseded by revision ${supersededBy.revision}` : 'In force',
          },
          {
            key: 'file',
            heading: 'File',
            cell: (report) => (
              <a
                href={pathOf('getReportPdf', { id: report.id })}
                aria-label={`Download PDF: ${documentName(report)}`}
                download
              >
                Download PDF
              </a>
            ),
          },
        ]}
      />
    </section>
  );
}
