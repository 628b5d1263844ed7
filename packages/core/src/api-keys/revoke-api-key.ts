import type { Ctx } from '../context.ts';
import { atTheKeyboard } from '../people/prove-presence.ts';
import { notFound } from '../problems.ts';

/** Ends a key at once. @throws Refusal `not-found` */
export async function revokeApiKey(ctx: Ctx, keyId: string): Promise<void> {
  const { personId } = atTheKeyboard(ctx);
  const ended = await ctx.tx.apiKey.updateMany({
    where: { id: keyId, personId, revokedAt: null },
    data: { revokedAt: ctx.clock() },
  });
  if (ended.count === 0) throw notFound('key');
}
