import type { Finding, findingCreate } from '@garboard/contract/findings';
import { Prisma } from '@garboard/db/database';
import { newId } from '@garboard/db/ids';
import type { z } from 'zod';
import { startedFrom } from '../catalogue/started-from.ts';
import { idTaken, unlessTaken } from '../client-ids.ts';
import type { Ctx } from '../context.ts';
import { recordEvent } from '../events/record-event.ts';
import { wrongState } from '../problems.ts';
import { attachPhotos } from './attach-photos.ts';
import { dueByHandColumns, itemColumns } from './clearing-columns.ts';
import { costColumns, gradingColumns } from './cost-columns.ts';
import { getFinding } from './get-finding.ts';
import { writableSurvey } from './writable-survey.ts';

/** States in which a first finding makes the survey one that is being drafted. */
export const beforeDrafting = ['enquiry', 'booked', 'attended'];

/**
 * Records a finding after the last one; the first makes the survey one that is being drafted. With an id made by
 * the client, sent again, it answers the finding already kept.
 *
 * @throws Refusal `invalid-input`, `wrong-state` for an id that names something else
 */
export async function createFinding(
  ctx: Ctx,
  input: { surveyId: string; finding: z.output<typeof findingCreate> },
): Promise<Finding> {
  const { survey, role } = await writableSurvey(ctx, input.surveyId);
  const {
    id = newId(),
    photoIds,
    position,
    cost,
    grading,
    catalogueVersion,
    items,
    dueOnSet,
    ...fields
  } = input.finding;
  const at = { firmId: survey.firmId, surveyId: survey.id };
  if (input.finding.id && (await isKept(ctx, id, survey.id))) return getFinding(ctx, id);
  const version = await startedFrom(ctx, {
    ...{ firmId: survey.firmId, key: fields.catalogueKey, version: catalogueVersion },
  });
  const last = await ctx.tx.finding.aggregate({ where: { surveyId: survey.id }, _max: { number: true } });
  const create = ctx.tx.finding.create({
    data: {
      ...{ id, ...at, number: (last._max.number ?? 0) + 1, ...fields },
      catalogueVersion: version,
      position: position ?? Prisma.DbNull,
      ...costColumns(cost),
      ...gradingColumns(grading),
      ...itemColumns(items),
      ...dueByHandColumns({
        ...{ dueOnSet, urgency: fields.urgency, issuedAt: null },
        ...{ timeZone: survey.timeZone, now: ctx.clock() },
      }),
    },
  });
  await unlessTaken(create, 'finding');
  await attachPhotos(ctx, { ...at, findingId: id, photoIds });
  await ctx.tx.survey.update({
    where: { id: survey.id },
    data: {
      findingCount: { increment: 1 },
      ...(beforeDrafting.includes(survey.state) ? { state: 'drafting' } : {}),
    },
  });
  const data = { title: fields.title };
  await recordEvent(ctx, { ...at, findingId: id, kind: 'finding.created', role, data });
  return getFinding(ctx, id);
}

/** Whether this survey has a finding of that id; the survey is held, so that no other request makes it meanwhile. */
async function isKept(ctx: Ctx, id: string, surveyId: string): Promise<boolean> {
  const kept = await ctx.tx.finding.findUnique({ where: { id }, select: { surveyId: true } });
  if (kept) {
    if (kept.surveyId !== surveyId) throw idTaken('finding');
    return true;
  }
  const deleted = await ctx.tx.deletedFinding.findUnique({ where: { id }, select: { surveyId: true } });
  if (!deleted) return false;
  if (deleted.surveyId !== surveyId) throw idTaken('finding');
  throw wrongState('This finding was deleted. Restore it, or record it anew under another id.');
}
