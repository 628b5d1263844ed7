import type { signingKeyAnswer } from '@garboard/contract/signing-key';
import type { z } from 'zod';
import type { Ctx } from '../context.ts';
import { loadFirm } from '../firms/load-firm.ts';
import { presentSigningKey } from './key-facts.ts';

/** The certificate that signs the firm's documents, for its staff; null while there is none. @throws Refusal `not-found` */
export async function getSigningKey(ctx: Ctx, firmId: string): Promise<z.output<typeof signingKeyAnswer>> {
  await loadFirm(ctx, firmId);
  const row = await ctx.tx.signingKey.findUnique({ where: { firmId } });
  return { key: row ? presentSigningKey(row, ctx.clock()) : null };
}
