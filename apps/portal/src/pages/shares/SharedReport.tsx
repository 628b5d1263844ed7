import type { ReportSnapshot } from '@garboard/contract/report-snapshot';
import { purposeLabels, reportKindLabels } from '@garboard/trade/vocabulary';
import type { Answer } from '../../api/client.ts';
import { pathOf } from '../../api/client.ts';
import { isProblem, isStatus } from '../../api/problems.ts';
import { useAnswer } from '../../api/queries.ts';
import { NotFound } from '../../app/NotFound.tsx';
import { Button } from '../../ui/Button.tsx';
import { Loading } from '../../ui/EmptyState.tsx';
import { ErrorNotice } from '../../ui/ErrorNotice.tsx';
import { formatInstant, formatInstantDay } from '../../ui/format.ts';
import { Page } from '../../ui/Page.tsx';
import { DocumentReading } from '../reading/report/DocumentReading.tsx';
import { PhotoAddressProvider } from '../reading/report/photoAddress.ts';
import { useUnfoldedOnPaper } from '../reading/report/useUnfoldedOnPaper.ts';

const photoAddress = (id: string, photoId: string) =>
  pathOf('getSharedReportPhotoImage', { id, photoId }, { size: 'screen' });

/** An issued document as the holder of a link reads it: the document, and nothing around it. */
export default function SharedReport({ id }: { id: string }) {
  const shared = useAnswer('getSharedReport', { params: { id } });
  const data = useAnswer('getSharedReportData', { params: { id } }, { enabled: shared.isSuccess });
  const error = shared.error ?? data.error;
  if (isStatus(error, 404)) return <NotFound />;
  if (isProblem(error, 'link-spent')) {
    return (
      <Page title="Reading has ended">
        <p className="measure">
          An opened report can be read for an hour. Open the link that you were given once more; if it no
          longer works, ask whoever gave it to you for another.
        </p>
      </Page>
    );
  }
  if (error) {
    const again = shared.error ? shared : data;
    return <ErrorNotice error={error} onRetry={() => void again.refetch()} />;
  }
  if (!shared.data || !data.data) return <Loading what="the report" />;
  return <Reading shared={shared.data} snapshot={data.data} />;
}

function Reading({ shared, snapshot }: { shared: Answer<'getSharedReport'>; snapshot: ReportSnapshot }) {
  useUnfoldedOnPaper();
  const { survey, firm, timeZone, kind } = snapshot;
  const what = kind === 'full' ? purposeLabels[survey.purpose] : reportKindLabels[kind];
  const issued = formatInstantDay(shared.issuedAt, timeZone);
  return (
    <Page
      title={shared.vesselName}
      windowTitle={`${shared.vesselName}: ${what} ${shared.surveyNumber}`}
      over={`Shared with you by ${shared.sharedBy}`}
      under={`${what} ${shared.surveyNumber} by ${firm.name}, revision ${shared.revision}, issued ${issued}`}
      action={
        <>
          <Button onClick={() => window.print()}>Print this page</Button>
          <a className="button button-main" href={pathOf('getSharedReportPdf', { id: shared.id })} download>
            Download the PDF
          </a>
        </>
      }
    >
      <div className="stack-wide report-read">
        {shared.superseded ? (
          <p className="notice" role="note">
            <strong>Superseded.</strong> A later revision stands in its place. Ask {shared.sharedBy} for it.
          </p>
        ) : null}
        <p className="soft measure">
          You can read on until {formatInstant(shared.expiresAt)}; then open the link once more. The PDF is
          the document: it is signed and can be verified. This page says the same, for reading.
        </p>
        <PhotoAddressProvider value={photoAddress}>
          <DocumentReading reportId={shared.id} snapshot={snapshot} />
        </PhotoAddressProvider>
        {shared.verificationCode ? (
          <p>
            <a href={`/verify/${shared.verificationCode}`}>Is this document genuine? Verify it</a>
          </p>
        ) : null}
      </div>
    </Page>
  );
}
