import { createHash } from 'node:crypto';
import type { Prisma } from '@garboard/db/database';
import { type Actor, staffFirmIds } from '../access/actor.ts';
import { ownParties } from '../access/scopes.ts';
import type { Ctx } from '../context.ts';
import { notFound } from '../problems.ts';

/** Quotations of the actor's own firms; of others what was sent for a survey that the actor pays for. */
export function visibleQuotations(actor: Actor): Prisma.QuotationWhereInput {
  const own = { firmId: { in: staffFirmIds(actor) } };
  if (actor.kind === 'system') return own;
  const paid = { parties: { some: { ...ownParties(actor), client: true } } };
  return { OR: [own, { state: { not: 'draft' }, survey: paid }] };
}

/** A quotation with its survey as the actor stands to it. @throws Refusal `not-found` */
export async function loadQuotation(ctx: Ctx, id: string) {
  const row = await ctx.tx.quotation.findFirst({
    where: { AND: [{ id }, visibleQuotations(ctx.actor)] },
    include: { survey: { include: { parties: { where: ownParties(ctx.actor) } } } },
  });
  if (!row) throw notFound('quotation');
  return row;
}

export type LoadedQuotation = Awaited<ReturnType<typeof loadQuotation>>;

/** SHA-256 of a text in UTF-8, 64 hexadecimal digits. */
export const sha256Of = (text: string): string => createHash('sha256').update(text, 'utf8').digest('hex');
