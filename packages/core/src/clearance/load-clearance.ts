import { authorise } from '../access/policy.ts';
import { ownParties, visibleFindings } from '../access/scopes.ts';
import type { Ctx } from '../context.ts';
import { notAllowed, notFound } from '../problems.ts';
import { withFiles } from './present-clearance.ts';

/** What is told to those who see a finding but not the evidence for it. */
export const evidenceIsFor =
  'Evidence is shown to the survey firm, the owner, the yard, the buyer and the insurer only.';

/**
 * Evidence with its finding and survey as the actor stands to it.
 *
 * @throws Refusal `not-found` when the finding isn't visible; `not-allowed` when the evidence isn't for the actor.
 */
export async function loadClearance(ctx: Ctx, clearanceId: string) {
  const parties = { where: ownParties(ctx.actor) };
  const clearance = await ctx.tx.clearance.findFirst({
    where: { id: clearanceId, finding: visibleFindings(ctx.actor) },
    include: { ...withFiles, finding: { include: { survey: { include: { parties } } } } },
  });
  if (!clearance) {
    // Row-level security keeps evidence from some who see the finding: those are told so.
    const known = await ctx.tx.$queryRaw<
      unknown[]
    >`SELECT FROM my_clearances WHERE id = ${clearanceId}::uuid`;
    throw known.length > 0 ? notAllowed(evidenceIsFor) : notFound('piece of evidence');
  }
  authorise(ctx.actor, clearance.finding.survey, 'evidence.read', evidenceIsFor);
  return clearance;
}
