import type { sessionCreated } from '@garboard/contract/people';
import { newId } from '@garboard/db/ids';
import type { z } from 'zod';
import type { Ctx } from '../context.ts';
import { deviceWords } from './device-words.ts';
import { hashToken, newToken } from './tokens.ts';

const dayMs = 86_400_000;

/** A session ends after so long, however busy. */
export const sessionDays = 30;
/** And after so long without a request. */
export const idleDays = 14;

/** Where a request comes from. */
export interface Origin {
  /** What the browser calls itself. */
  userAgent: string | undefined;
  /** Its network address. */
  address: string;
  /** Hash of the session token that came with the request; that session ends when another begins. */
  sessionHash: string | null;
}

/**
 * Opens a session for a person and hands out its token, which is kept only as a hash. The token that came with the
 * request is never carried on.
 */
export async function startSession(
  ctx: Ctx,
  person: { id: string; name: string; email: string },
  origin: Origin,
  { byLink = false } = {},
): Promise<z.output<typeof sessionCreated>> {
  const now = ctx.clock();
  const token = newToken();
  if (origin.sessionHash) await ctx.tx.session.deleteMany({ where: { tokenHash: origin.sessionHash } });
  await ctx.tx.session.create({
    data: {
      id: newId(),
      personId: person.id,
      tokenHash: hashToken(token),
      createdAt: now,
      lastSeenAt: now,
      expiresAt: new Date(now.getTime() + idleDays * dayMs),
      device: deviceWords(origin.userAgent),
      address: origin.address,
      byLink,
    },
  });
  await ctx.tx.person.updateMany({ where: { id: person.id, joinedAt: null }, data: { joinedAt: now } });
  const { id, name, email } = person;
  const expiresAt = new Date(now.getTime() + sessionDays * dayMs);
  return { token, expiresAt: expiresAt.toISOString(), person: { id, name, email } };
}
