import { firmRole } from '../access/actor.ts';
import type { Ctx } from '../context.ts';
import { notAllowed, notFound } from '../problems.ts';

/** A firm the actor works for. @throws Refusal `not-found` */
export async function loadFirm(ctx: Ctx, id: string) {
  const firm = firmRole(ctx.actor, id) ? await ctx.tx.firm.findUnique({ where: { id } }) : null;
  if (!firm) throw notFound('firm');
  return firm;
}

/** @throws Refusal `not-allowed` unless the actor is a principal of the firm. */
export function mustBePrincipal(ctx: Ctx, firmId: string): void {
  if (firmRole(ctx.actor, firmId) !== 'principal') {
    throw notAllowed('Only a principal of the firm may do this.');
  }
}
