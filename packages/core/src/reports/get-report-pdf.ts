import { type ReportKind, reportKindLabels } from '@garboard/trade/vocabulary';
import type { Ctx } from '../context.ts';
import type { ServedFile } from '../files/served-file.ts';
import { wrongState } from '../problems.ts';
import { loadReport } from './load-report.ts';
import { recordView } from './record-view.ts';

/**
 * Which stored file is the PDF of an issued document, or of a draft to look at. Who may see the survey is looked at
 * each time.
 *
 * @throws Refusal `not-found`; `wrong-state` while it has not been made.
 */
export async function getReportPdf(ctx: Ctx, reportId: string): Promise<ServedFile> {
  const report = await loadReport(ctx, reportId);
  const { sha256, survey } = report;
  if (report.state !== (report.preview ? 'ready' : 'issued') || sha256 === null) {
    throw wrongState(
      report.preview
        ? 'This draft is not made yet; its PDF is there once its state is “ready”.'
        : 'This report has not been issued yet; its PDF is there once its state is “issued”.',
    );
  }
  await recordView(ctx, report);
  const label = reportKindLabels[report.kind as ReportKind].toLowerCase();
  // A vessel's name can hold what a file's name can't, as in M/Y.
  const vessel = survey.vessel.name.replace(/[/\\:*?"<>|]/g, '-');
  const which = report.preview ? 'DRAFT' : `r${report.revision}`;
  const fileName = `${survey.number} ${vessel} ${label} ${which}.pdf`;
  return { sha256, mediaType: 'application/pdf', fileName, immutable: false, download: false };
}
