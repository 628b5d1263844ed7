import type { Ctx } from '../context.ts';

/** Holds a firm's entry until the end of the transaction, also one that isn't there yet. */
export async function lockEntry(ctx: Ctx, firmId: string, key: string): Promise<void> {
  await ctx.tx
    .$executeRaw`SELECT pg_advisory_xact_lock(hashtextextended(${`catalogue ${firmId} ${key}`}, 0))`;
}
