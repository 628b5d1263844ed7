import type { Finding } from '@garboard/contract/findings';
import { staffFirmIds } from '../access/actor.ts';
import type { Ctx } from '../context.ts';
import { recordEvent } from '../events/record-event.ts';
import { goneBefore, writeBack } from './deleted-record.ts';
import { getFinding } from './get-finding.ts';
import { loadFinding } from './load-finding.ts';
import { writableSurvey } from './writable-survey.ts';

/**
 * Brings a deleted draft back to its place, or as near to it as the numbers of issued findings allow. One that is
 * there already is answered as it is, so that asking twice does no harm.
 *
 * @throws Refusal `not-found` also when it was swept away
 */
export async function restoreFinding(ctx: Ctx, id: string): Promise<Finding> {
  const deleted = await findDeleted(ctx, id);
  const { surveyId } = deleted ?? (await loadFinding(ctx, id));
  const { role } = await writableSurvey(ctx, surveyId);
  // Looked for again, now that the survey is held: someone else may have brought it back meanwhile.
  const held = await findDeleted(ctx, id);
  if (!held) return getFinding(ctx, id);
  const number = await placeFor(ctx, surveyId, held.number);
  await ctx.tx.finding.updateMany({
    where: { surveyId, number: { gte: number } },
    data: { number: { increment: 1 } },
  });
  await writeBack(ctx, { ...held, number });
  await ctx.tx.deletedFinding.delete({ where: { id } });
  await ctx.tx.survey.update({ where: { id: surveyId }, data: { findingCount: { increment: 1 } } });
  const { firmId, title } = held;
  await recordEvent(ctx, {
    ...{ firmId, surveyId, findingId: id, kind: 'finding.restored', role, data: { title } },
  });
  return getFinding(ctx, id);
}

function findDeleted(ctx: Ctx, id: string) {
  return ctx.tx.deletedFinding.findFirst({
    where: { id, firmId: { in: staffFirmIds(ctx.actor) }, deletedAt: { gte: goneBefore(ctx.clock()) } },
  });
}

/** Its number before, but behind every issued finding (those keep theirs) and without a gap. */
async function placeFor(ctx: Ctx, surveyId: string, before: number): Promise<number> {
  const where = { surveyId };
  const all = await ctx.tx.finding.aggregate({ where, _max: { number: true } });
  const issued = await ctx.tx.finding.aggregate({
    where: { ...where, state: { not: 'draft' } },
    _max: { number: true },
  });
  const behindIssued = Math.max(before, (issued._max.number ?? 0) + 1);
  return Math.min(behindIssued, (all._max.number ?? 0) + 1);
}
