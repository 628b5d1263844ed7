import { type ReportKind, reportKindLabels } from '@garboard/trade/vocabulary';
import type { Ctx } from '../context.ts';
import { wrongState } from '../problems.ts';
import { loadReport } from './load-report.ts';

export interface ReportPdf {
  sha256: string;
  bytes: number;
  /** As the reader may want to keep it; any character can occur in a vessel's name. */
  fileName: string;
}

/**
 * Which file is the issued PDF. Who may see the survey is looked at each time.
 *
 * @throws Refusal `not-found`; `wrong-state` while it has not been issued.
 */
export async function getReportPdf(ctx: Ctx, reportId: string): Promise<ReportPdf> {
  const report = await loadReport(ctx, reportId);
  const { sha256, bytes, survey } = report;
  if (report.state !== 'issued' || sha256 === null || bytes === null) {
    throw wrongState('This report has not been issued yet; its PDF is there once its state is “issued”.');
  }
  const label = reportKindLabels[report.kind as ReportKind].toLowerCase();
  return {
    sha256,
    bytes,
    fileName: `${survey.number} ${survey.vessel.name} ${label} r${report.revision}.pdf`,
  };
}
