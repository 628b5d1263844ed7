import type { noticesRead } from '@garboard/contract/notices';
import type { z } from 'zod';
import type { Ctx } from '../context.ts';
import { readerOf } from './reader-of.ts';
import { visibleNotices } from './visible-notices.ts';

/** Counted no further, as nobody reads the difference. */
const mostCounted = 100;

/** How many notices a person has not read, 100 at most. @throws Refusal `not-allowed` */
export async function countUnread(ctx: Ctx): Promise<{ unread: number }> {
  const [row] = await ctx.tx.$queryRaw<{ unread: number }[]>`
    SELECT count(*)::int AS unread FROM (
      SELECT FROM notices n WHERE n.read_at IS NULL AND ${visibleNotices(readerOf(ctx.actor))}
      LIMIT ${mostCounted}) AS counted`;
  return { unread: row?.unread ?? 0 };
}

/**
 * Marks notices as read: those named that are the reader's own, or all that are not newer than one. Answers how many
 * are left.
 *
 * @throws Refusal `not-allowed`
 */
export async function readNotices(
  ctx: Ctx,
  input: z.output<typeof noticesRead>,
): Promise<{ unread: number }> {
  await ctx.tx.notice.updateMany({
    where: {
      personId: readerOf(ctx.actor),
      readAt: null,
      id: 'ids' in input ? { in: input.ids } : { lte: input.upTo },
    },
    data: { readAt: ctx.clock() },
  });
  return countUnread(ctx);
}
