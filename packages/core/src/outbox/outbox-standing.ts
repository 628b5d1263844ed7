import type { Tx } from '@garboard/db/database';

/** How many jobs wait to be handed to their queue, and for how long the oldest has, by the database's clock. */
export async function outboxStanding(tx: Tx): Promise<{ waiting: number; oldestSeconds: number }> {
  const [row] = await tx.$queryRaw<{ waiting: number; oldest: number | null }[]>`
    SELECT count(*)::int AS waiting, extract(epoch FROM now() - min(created_at))::float8 AS oldest
      FROM outbox WHERE dispatched_at IS NULL`;
  return { waiting: row?.waiting ?? 0, oldestSeconds: Math.max(0, row?.oldest ?? 0) };
}
