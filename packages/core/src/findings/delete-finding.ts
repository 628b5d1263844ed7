import { actorName } from '../access/actor.ts';
import type { Ctx } from '../context.ts';
import { recordEvent } from '../events/record-event.ts';
import { notFound, wrongState } from '../problems.ts';
import { recordOf } from './deleted-record.ts';
import { loadFinding } from './load-finding.ts';
import { writableSurvey } from './writable-survey.ts';

/**
 * Deletes a finding that was never issued and closes the gap in the numbers. It is kept apart, so that
 * `restoreFinding` can bring it back until it is swept away; its photos stay with the survey.
 *
 * @throws Refusal `wrong-state` for one that was issued
 */
export async function deleteFinding(ctx: Ctx, id: string): Promise<void> {
  const { firmId, surveyId } = await loadFinding(ctx, id);
  const { role } = await writableSurvey(ctx, surveyId);
  // Read again, now that the survey is held: its number may have changed meanwhile.
  const finding = await ctx.tx.finding.findUnique({ where: { id } });
  const record = await recordOf(ctx, id);
  if (!finding || !record) throw notFound('finding');
  const gone = await ctx.tx.finding.deleteMany({ where: { id, state: 'draft' } });
  if (gone.count === 0) {
    throw wrongState(
      'This finding was issued and stays on record. It ends by being cleared or accepted as it is.',
    );
  }
  const { number, title, system, urgency } = finding;
  await ctx.tx.deletedFinding.create({
    data: {
      ...{ id, firmId, surveyId, number, title, system, urgency, record },
      ...{ deletedAt: ctx.clock(), deletedBy: actorName(ctx.actor) },
    },
  });
  await ctx.tx.finding.updateMany({
    where: { surveyId, number: { gt: number } },
    data: { number: { decrement: 1 } },
  });
  await ctx.tx.survey.update({ where: { id: surveyId }, data: { findingCount: { decrement: 1 } } });
  await recordEvent(ctx, {
    ...{ firmId, surveyId, findingId: id, kind: 'finding.deleted', role, data: { title } },
  });
}
