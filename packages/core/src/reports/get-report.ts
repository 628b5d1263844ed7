import type { Report } from '@garboard/contract/reports';
import type { Ctx } from '../context.ts';
import { loadReport } from './load-report.ts';
import { latestIssued, presentReport } from './present-report.ts';

/** A report's state and progress. @throws Refusal `not-found` */
export async function getReport(ctx: Ctx, reportId: string): Promise<Report> {
  const report = await loadReport(ctx, reportId);
  return presentReport(report, await latestIssued(ctx, report.surveyId));
}
