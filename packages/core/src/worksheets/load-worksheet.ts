import type { SnapshotWorksheet } from '@garboard/contract/report-snapshot';
import { actorId } from '../access/actor.ts';
import { visibleSurveys } from '../access/scopes.ts';
import type { Ctx } from '../context.ts';
import { notFound } from '../problems.ts';
import { type WorksheetView, worksheetView } from './visible-worksheets.ts';

const nobody = '00000000-0000-0000-0000-000000000000';

const isShown = (view: WorksheetView, issued: SnapshotWorksheet | null): boolean =>
  view === 'all' ||
  (view === 'issued' && issued !== null) ||
  (view === 'of-findings' && issued !== null && issued.findingId !== null);

/** A worksheet with its survey as the actor stands to it. @throws Refusal `not-found` */
export async function loadWorksheet(ctx: Ctx, id: string) {
  const row = await ctx.tx.worksheet.findFirst({
    where: { id, survey: visibleSurveys(ctx.actor) },
    include: { survey: { include: { parties: { where: { personId: actorId(ctx.actor) ?? nobody } } } } },
  });
  if (!row) throw notFound('worksheet');
  const issued = row.issued as SnapshotWorksheet | null;
  if (!isShown(worksheetView(ctx.actor, row.survey), issued)) throw notFound('worksheet');
  return { ...row, issued };
}

export type LoadedWorksheet = Awaited<ReturnType<typeof loadWorksheet>>;
