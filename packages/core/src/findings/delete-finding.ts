import type { Ctx } from '../context.ts';
import { recordEvent } from '../events/record-event.ts';
import { wrongState } from '../problems.ts';
import { loadFinding } from './load-finding.ts';
import { writableSurvey } from './writable-survey.ts';

/** Deletes a finding that was never issued and closes the gap in the numbers. @throws Refusal `wrong-state` */
export async function deleteFinding(ctx: Ctx, id: string): Promise<void> {
  const finding = await loadFinding(ctx, id);
  const { role } = await writableSurvey(ctx, finding.surveyId);
  const gone = await ctx.tx.finding.deleteMany({ where: { id, state: 'draft' } });
  if (gone.count === 0) {
    throw wrongState(
      'This finding was issued and stays on record. It ends by being cleared or accepted as it is.',
    );
  }
  await ctx.tx.finding.updateMany({
    where: { surveyId: finding.surveyId, number: { gt: finding.number } },
    data: { number: { decrement: 1 } },
  });
  await ctx.tx.survey.update({ where: { id: finding.surveyId }, data: { findingCount: { decrement: 1 } } });
  await recordEvent(ctx, {
    firmId: finding.firmId,
    surveyId: finding.surveyId,
    kind: 'finding.deleted',
    role,
    data: { title: finding.title },
  });
}
