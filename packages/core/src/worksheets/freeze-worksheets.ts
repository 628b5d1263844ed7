import type { ReportSnapshot, SnapshotWorksheet } from '@garboard/contract/report-snapshot';
import type { WorksheetResult } from '@garboard/trade/worksheets/core/evaluate';
import type { Ctx } from '../context.ts';

/**
 * A survey's worksheets as the report prints them: those that are to be printed, in the order of the findings that
 * it prints and then by when they were made. One of a finding that isn't printed is left out with it.
 */
export async function freezeWorksheets(
  ctx: Ctx,
  input: { surveyId: string; findingIds: readonly string[] },
): Promise<SnapshotWorksheet[]> {
  const rows = await ctx.tx.worksheet.findMany({
    where: { surveyId: input.surveyId, printed: true },
    orderBy: { id: 'asc' },
    select: { id: true, findingId: true, title: true, result: true },
  });
  const place = new Map(input.findingIds.map((id, index) => [id, index]));
  const placeOf = (row: { findingId: string | null }) =>
    row.findingId === null ? place.size : place.get(row.findingId);
  return rows
    .flatMap((row) => {
      const at = placeOf(row);
      return at === undefined ? [] : [{ at, row }];
    })
    .sort((a, b) => a.at - b.at)
    .map(({ row }) => ({ ...row, result: row.result as unknown as WorksheetResult }));
}

/**
 * Writes into every worksheet what the report that was just issued prints of it, and nothing into those it leaves
 * out, in one statement.
 */
export async function issueWorksheets(ctx: Ctx, surveyId: string, snapshot: ReportSnapshot): Promise<void> {
  const shown = 'worksheets' in snapshot ? snapshot.worksheets : [];
  const rows = shown.map((worksheet) => ({ id: worksheet.id, issued: worksheet }));
  await ctx.tx.$executeRaw`
    UPDATE worksheets AS w
       SET issued = r.issued, version = w.version + 1, updated_at = ${ctx.clock()}
      FROM worksheets AS old
      LEFT JOIN json_to_recordset(${JSON.stringify(rows)}::json) AS r (id uuid, issued json) ON r.id = old.id
     WHERE old.id = w.id AND w.survey_id = ${surveyId}::uuid
       AND (r.id IS NOT NULL OR w.issued IS NOT NULL)`;
}
