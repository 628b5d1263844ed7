import type { decisionsAnswer, decisionsBody } from '@garboard/contract/recommendations';
import type { z } from 'zod';
import { decideClearance } from '../clearance/decide-clearance.ts';
import type { Ctx } from '../context.ts';
import { Refusal } from '../problems.ts';

/**
 * Decides on many pieces of evidence with one reason. Each is decided by the same use case as a single one, so each has
 * its own event and its own refusal; what is refused is undone alone. In the order of their ids, so that two people who
 * do this at once wait for each other and never lock each other out.
 */
export async function decideRecommendations(
  ctx: Ctx,
  input: z.output<typeof decisionsBody>,
): Promise<z.input<typeof decisionsAnswer>> {
  const answer: z.input<typeof decisionsAnswer> = { done: [], refused: [] };
  const { decision, reason } = input;
  for (const clearanceId of [...new Set(input.clearanceIds)].sort()) {
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
