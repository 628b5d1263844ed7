import { type ReportSnapshot, reportSnapshot } from '@garboard/contract/report-snapshot';
import type { Ctx } from '../context.ts';
import { wrongState } from '../problems.ts';
import { loadReport } from './load-report.ts';
import { recordView } from './record-view.ts';

/**
 * What the issued report says, as data. Parsing leaves nothing but the fields of the contract, among which there
 * is no place on earth.
 *
 * @throws Refusal `not-found`; `wrong-state` while it has not been issued.
 */
export async function getReportData(ctx: Ctx, reportId: string): Promise<ReportSnapshot> {
  const report = await loadReport(ctx, reportId);
  if (report.state !== 'issued') {
    throw wrongState('This report has not been issued yet; its data is there once its state is “issued”.');
  }
  await recordView(ctx, report);
  const { snapshot } = await ctx.tx.report.findUniqueOrThrow({
    where: { id: report.id },
    select: { snapshot: true },
  });
  return reportSnapshot.parse(snapshot);
}
