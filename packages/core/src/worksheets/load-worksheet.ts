import type { SnapshotWorksheet } from '@garboard/contract/report-snapshot';
import { ownParties, visibleSurveys } from '../access/scopes.ts';
import type { Ctx } from '../context.ts';
import { notFound } from '../problems.ts';
import { viewCondition, worksheetView } from './visible-worksheets.ts';

/** A worksheet with its survey as the actor stands to it. @throws Refusal `not-found` */
export async function loadWorksheet(ctx: Ctx, id: string) {
  const row = await ctx.tx.worksheet.findFirst({
    where: { id, survey: visibleSurveys(ctx.actor) },
    include: { survey: { include: { parties: { where: ownParties(ctx.actor) } } } },
  });
  if (!row) throw notFound('worksheet');
  const shown = viewCondition(ctx.actor, worksheetView(ctx.actor, row.survey));
  const found = await ctx.tx.$queryRaw<
    unknown[]
  >`SELECT FROM worksheets w WHERE w.id = ${id}::uuid AND ${shown}`;
  if (found.length === 0) throw notFound('worksheet');
  const issued = row.issued as SnapshotWorksheet | null;
  return { ...row, issued };
}

export type LoadedWorksheet = Awaited<ReturnType<typeof loadWorksheet>>;
