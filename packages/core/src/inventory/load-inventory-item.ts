import { actorId } from '../access/actor.ts';
import { authorise } from '../access/policy.ts';
import { visibleSurveys } from '../access/scopes.ts';
import type { Ctx } from '../context.ts';
import { notFound } from '../problems.ts';

const nobody = '00000000-0000-0000-0000-000000000000';
export const readersOnly = 'The equipment is drafted by the survey firm; the issued report prints it.';

/** A piece of equipment with its survey as the actor stands to it. @throws Refusal `not-found`, `not-allowed` */
export async function loadInventoryItem(ctx: Ctx, id: string) {
  const row = await ctx.tx.inventoryItem.findFirst({
    where: { id, survey: visibleSurveys(ctx.actor) },
    include: { survey: { include: { parties: { where: { personId: actorId(ctx.actor) ?? nobody } } } } },
  });
  if (!row) throw notFound('piece of equipment');
  authorise(ctx.actor, row.survey, 'inventory.read', readersOnly);
  return row;
}
