import type { sessionCreated } from '@garboard/contract/people';
import { newId } from '@garboard/db/ids';
import type { z } from 'zod';
import type { Ctx } from '../context.ts';
import { hashToken, newToken } from './tokens.ts';

const sessionDays = 30;

/** Opens a session for a person and hands out its token, which is kept only as a hash. */
export async function startSession(
  ctx: Ctx,
  person: { id: string; name: string; email: string },
): Promise<z.output<typeof sessionCreated>> {
  const token = newToken();
  const expiresAt = new Date(ctx.clock().getTime() + sessionDays * 86_400_000);
  await ctx.tx.session.create({
    data: { id: newId(), personId: person.id, tokenHash: hashToken(token), expiresAt },
  });
  const { id, name, email } = person;
  return { token, expiresAt: expiresAt.toISOString(), person: { id, name, email } };
}
