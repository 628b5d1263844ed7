import type { Finding } from '@garboard/contract/findings';
import type { FindingState } from '@garboard/trade/vocabulary';
import { actorName } from '../access/actor.ts';
import type { Ctx } from '../context.ts';
import { recordEvent } from '../events/record-event.ts';
import { wrongState } from '../problems.ts';
import { getFinding } from './get-finding.ts';
import { issuedTitle, loadFinding } from './load-finding.ts';
import { writableSurvey } from './writable-survey.ts';

const withdrawable: readonly FindingState[] = ['open', 'evidence-sent', 'returned'];

const notNow: Record<Exclude<FindingState, 'open' | 'evidence-sent' | 'returned'>, string> = {
  draft: 'This finding was never issued; delete it instead.',
  withdrawn: 'This finding is withdrawn already.',
  cleared: 'This finding was put right and is cleared; it stays on record as it was decided.',
  'accepted-as-is': 'This finding was accepted as it is; it stays on record as it was decided.',
};

/**
 * Withdraws an issued finding that should not have been made. The revision that has it stays as it is; the next one
 * lists it as withdrawn, with the reason. Everyone to whom the report was released is told.
 *
 * @throws Refusal `not-found`, `not-allowed`; `wrong-state` for one that was not issued or is decided.
 */
export async function withdrawFinding(
  ctx: Ctx,
  { id, reason }: { id: string; reason: string },
): Promise<Finding> {
  const finding = await loadFinding(ctx, id);
  const { firmId, surveyId } = finding;
  const { role } = await writableSurvey(ctx, surveyId, 'finding.withdraw');
  const withdrawn = await ctx.tx.finding.updateMany({
    where: { id, state: { in: [...withdrawable] } },
    data: {
      state: 'withdrawn',
      withdrawnReason: reason,
      withdrawnAt: ctx.clock(),
      withdrawnBy: actorName(ctx.actor),
      version: { increment: 1 },
    },
  });
  if (withdrawn.count === 0) {
    const { state } = await ctx.tx.finding.findUniqueOrThrow({ where: { id }, select: { state: true } });
    throw wrongState(notNow[state as keyof typeof notNow]);
  }
  // Evidence that waits for a decision waits for nothing any more.
  await ctx.tx.clearance.updateMany({ where: { findingId: id, state: 'sent' }, data: { state: 'lapsed' } });
  await recordEvent(ctx, {
    ...{ firmId, surveyId, findingId: id, kind: 'finding.withdrawn', role },
    // The words that parties know it by.
    data: { title: issuedTitle(finding), reason },
  });
  return getFinding(ctx, id);
}
