import type { Ctx } from '../context.ts';
import { invalidField } from '../problems.ts';

/** @throws Refusal `invalid-input` when the finding to attach to isn't one of the survey. */
export async function refuseForeignFinding(
  ctx: Ctx,
  { findingId, surveyId }: { findingId: string | null | undefined; surveyId: string },
): Promise<void> {
  if (!findingId) return;
  const found = await ctx.tx.finding.count({ where: { id: findingId, surveyId } });
  if (found === 0) {
    throw invalidField('/findingId', 'A worksheet can only belong to a finding of its own survey.');
  }
}
