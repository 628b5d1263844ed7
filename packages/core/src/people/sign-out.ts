import type { Ctx } from '../context.ts';

/** Ends a session at once. */
export async function signOut(ctx: Ctx, sessionHash: string | null): Promise<void> {
  if (sessionHash) await ctx.tx.session.deleteMany({ where: { tokenHash: sessionHash } });
}
