import type { decisionsAnswer, decisionsBody } from '@garboard/contract/recommendations';
import type { z } from 'zod';
import { decideClearance } from '../clearance/decide-clearance.ts';
import { lockFindingsOf } from '../clearance/lock-finding.ts';
import type { Ctx } from '../context.ts';
import { Refusal } from '../problems.ts';

/**
 * Decides on many pieces of evidence with one reason. Each is decided by the same use case as a single one, so each has
 * its own event and its own refusal; what is refused is undone alone. Their findings are held first, in the order of
 * their ids, as everybody holds several: so nobody who decides, visits or issues meanwhile is locked out.
 */
export async function decideRecommendations(
  ctx: Ctx,
  input: z.output<typeof decisionsBody>,
): Promise<z.input<typeof decisionsAnswer>> {
  const answer: z.input<typeof decisionsAnswer> = { done: [], refused: [] };
  const { decision, reason } = input;
  const clearanceIds = [...new Set(input.clearanceIds)];
  await lockFindingsOf(ctx, clearanceIds);
  for (const clearanceId of clearanceIds) {
    await ctx.tx.$executeRaw`SAVEPOINT one_decision`;
    try {
      const decided = await decideClearance(ctx, {
        id: clearanceId,
        decision: { decision, reason, limit: '', limitUntil: null },
      });
      answer.done.push({ clearanceId, findingId: decided.findingId });
    } catch (error) {
      if (!(error instanceof Refusal)) throw error;
      await ctx.tx.$executeRaw`ROLLBACK TO SAVEPOINT one_decision`;
      answer.refused.push({ clearanceId, type: error.type, detail: error.message });
    }
    await ctx.tx.$executeRaw`RELEASE SAVEPOINT one_decision`;
  }
  return answer;
}
