import { authorise } from '../access/policy.ts';
import { ownParties, visibleSurveys } from '../access/scopes.ts';
import type { Ctx } from '../context.ts';
import { notAllowed, notFound } from '../problems.ts';

export const readersOnly = 'The equipment is drafted by the survey firm; the issued report prints it.';

/** A piece of equipment with its survey as the actor stands to it. @throws Refusal `not-found`, `not-allowed` */
export async function loadInventoryItem(ctx: Ctx, id: string) {
  const row = await ctx.tx.inventoryItem.findFirst({
    where: { id, survey: visibleSurveys(ctx.actor) },
    include: { survey: { include: { parties: { where: ownParties(ctx.actor) } } } },
  });
  if (!row) {
    // Row-level security keeps equipment from parties: those who see its survey are told so.
    const known = await ctx.tx.$queryRaw<unknown[]>`SELECT FROM my_inventory WHERE id = ${id}::uuid`;
    throw known.length > 0 ? notAllowed(readersOnly) : notFound('piece of equipment');
  }
  authorise(ctx.actor, row.survey, 'inventory.read', readersOnly);
  return row;
}
