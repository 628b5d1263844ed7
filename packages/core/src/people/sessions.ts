import type { session as sessionSchema } from '@garboard/contract/account';
import type { z } from 'zod';
import type { Ctx } from '../context.ts';
import { cutPage, decodeCursor, type Page, type PageInput, uuidForm } from '../paging.ts';
import { notFound } from '../problems.ts';
import { atTheKeyboard } from './prove-presence.ts';

/** Where the person is signed in, the newest first. */
export async function listSessions(
  ctx: Ctx,
  input: PageInput & { sessionHash: string | null },
): Promise<Page<z.output<typeof sessionSchema>>> {
  const { personId } = atTheKeyboard(ctx);
  const before = decodeCursor(input.cursor, uuidForm);
  const rows = await ctx.tx.session.findMany({
    where: { personId, expiresAt: { gt: ctx.clock() }, ...(before ? { id: { lt: before } } : {}) },
    orderBy: { id: 'desc' },
    take: input.limit + 1,
  });
  const page = cutPage(rows, input.limit, (row) => row.id);
  const items = page.items.map((row) => ({
    id: row.id,
    device: row.device,
    address: row.address,
    createdAt: row.createdAt.toISOString(),
    lastSeenAt: row.lastSeenAt.toISOString(),
    expiresAt: row.expiresAt.toISOString(),
    current: row.tokenHash === input.sessionHash,
  }));
  return { items, next: page.next };
}

/** Ends one of the person's sessions at once. @throws Refusal `not-found` */
export async function endSession(ctx: Ctx, sessionId: string): Promise<void> {
  const { personId } = atTheKeyboard(ctx);
  const ended = await ctx.tx.session.deleteMany({ where: { id: sessionId, personId } });
  if (ended.count === 0) throw notFound('session');
}

/** Ends every session of the person but the one that asks. */
export async function endOtherSessions(ctx: Ctx, sessionHash: string | null): Promise<void> {
  const { personId } = atTheKeyboard(ctx);
  await ctx.tx.session.deleteMany({ where: { personId, NOT: { tokenHash: sessionHash ?? '' } } });
}
