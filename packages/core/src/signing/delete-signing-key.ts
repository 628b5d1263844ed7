import type { Ctx } from '../context.ts';
import { loadFirm, mustBePrincipal } from '../firms/load-firm.ts';

/** Removes the firm's key for good. @throws Refusal `not-found`, `not-allowed` */
export async function deleteSigningKey(ctx: Ctx, firmId: string): Promise<void> {
  await loadFirm(ctx, firmId);
  mustBePrincipal(ctx, firmId);
  await ctx.tx.signingKey.deleteMany({ where: { firmId } });
}
