import type { Ctx } from '../context.ts';
import { findingsCsv } from './findings-csv.ts';
import { getReportData } from './get-report-data.ts';

/** The findings of an issued report as CSV, and what to call the file. @throws Refusal `not-found`; `wrong-state` while it has not been issued. */
export async function getReportCsv(ctx: Ctx, reportId: string): Promise<{ text: string; fileName: string }> {
  const snapshot = await getReportData(ctx, reportId);
  const fileName = `${snapshot.survey.number} findings r${snapshot.revision}.csv`;
  return { text: findingsCsv(snapshot), fileName };
}
