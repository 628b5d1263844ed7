import type { ReportSnapshot } from '@garboard/contract/report-snapshot';
import type { Report } from '@garboard/contract/reports';
import { purposeLabels, reportKindLabels } from '@garboard/trade/vocabulary';
import { Link } from 'wouter';
import { pathOf } from '../../../api/client.ts';
import { isStatus } from '../../../api/problems.ts';
import { useAnswer } from '../../../api/queries.ts';
import { NotFound } from '../../../app/NotFound.tsx';
import { mayDo } from '../../../app/roles.ts';
import { Button } from '../../../ui/Button.tsx';
import { Loading } from '../../../ui/EmptyState.tsx';
import { ErrorNotice } from '../../../ui/ErrorNotice.tsx';
import { formatInstantDay } from '../../../ui/format.ts';
import { Page } from '../../../ui/Page.tsx';
import { DocumentFiles } from '../../reports/DocumentFiles.tsx';
import { documentName } from '../../reports/DocumentTable.tsx';
import { ShareLinks } from '../../shares/ShareLinks.tsx';
import { DocumentReading } from './DocumentReading.tsx';
import { useUnfoldedOnPaper } from './useUnfoldedOnPaper.ts';

/** An issued document, read on the screen: what its PDF says, from the same frozen data. */
export default function ReportPage({ id }: { id: string }) {
  const report = useAnswer('getReport', { params: { id } });
  const issued = report.data?.state === 'issued';
  const data = useAnswer('getReportData', { params: { id } }, { enabled: issued });
  if (isStatus(report.error, 404) || isStatus(report.error, 422)) return <NotFound />;
  const error = report.error ?? data.error;
  if (error) {
    const again = report.error ? report : data;
    return <ErrorNotice error={error} onRetry={() => void again.refetch()} />;
  }
  if (report.data && !issued) return <NotIssued report={report.data} />;
  if (!report.data || !data.data) return <Loading what="the report" />;
  return <ReportOf report={report.data} snapshot={data.data} />;
}

function NotIssued({ report }: { report: Report }) {
  return (
    <Page title={documentName(report)}>
      <p className="measure">
        This is not issued.{' '}
        <Link href={`/surveys/${report.surveyId}/report`}>See what is made of the survey’s report</Link>
      </p>
    </Page>
  );
}

function ReportOf({ report, snapshot }: { report: Report; snapshot: ReportSnapshot }) {
  useUnfoldedOnPaper();
  const asked = useAnswer('getSurvey', { params: { id: report.surveyId } });
  // The firm and the client, who owns the report, share it; to others nothing is said of that.
  const sharing = asked.data && mayDo('report.share', asked.data);
  const { vessel, survey, firm, timeZone, kind } = snapshot;
  const what = kind === 'full' ? purposeLabels[survey.purpose] : reportKindLabels[kind];
  const { supersededBy } = report;
  return (
    <Page
      title={vessel.name}
      windowTitle={`${vessel.name}: ${what} ${survey.number}, revision ${report.revision}`}
      over={
        <Link href={`/surveys/${report.surveyId}`}>
          {vessel.name}, {survey.number}
        </Link>
      }
      under={`${what} ${survey.number} by ${firm.name}, revision ${report.revision}${report.issuedAt ? `, issued ${formatInstantDay(report.issuedAt, timeZone)}` : ''}`}
      action={
        <>
          <Button onClick={() => window.print()}>Print this page</Button>
          <a className="button button-main" href={pathOf('getReportPdf', { id: report.id })} download>
            Download the PDF
          </a>
        </>
      }
    >
      <div className="stack-wide report-read">
        {supersededBy ? (
          <p className="notice" role="note">
            <strong>Superseded.</strong> Revision {supersededBy.revision} of{' '}
            {formatInstantDay(supersededBy.issuedAt, timeZone)} stands in its place:{' '}
            <Link href={`/reports/${supersededBy.id}`}>read revision {supersededBy.revision}</Link>
          </p>
        ) : null}
        <p className="soft measure">
          The PDF is the document: it is signed and can be verified. This page says the same, for reading.
          {sharing ? (
            <>
              {' '}
              <a href="#links">Share it by a link</a>
            </>
          ) : null}
        </p>
        <DocumentReading reportId={report.id} snapshot={snapshot} />
        <section className="stack">
          <h2>Files and verification</h2>
          <DocumentFiles report={report} name={documentName(report)} />
        </section>
        {sharing ? <ShareLinks reportId={report.id} /> : null}
      </div>
    </Page>
  );
}
