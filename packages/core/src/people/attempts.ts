import { createHash } from 'node:crypto';
import type { Tx } from '@garboard/db/database';

/** What is limited: so many attempts of a kind by or on somebody, within a span of time. */
export interface AttemptLimit {
  kind: string;
  /** An address, a token, a network address: whoever it is about. Only its hash is kept. */
  whose: string;
  most: number;
  spanMs: number;
}

const keyOf = ({ kind, whose }: Pick<AttemptLimit, 'kind' | 'whose'>): string =>
  createHash('sha256').update(`${kind}\n${whose}`).digest('hex');

/**
 * Counts an attempt against each limit before it is judged, so that many sent at once are counted too, and answers for
 * how many milliseconds the caller is over one of them; 0 when over none. One that is over any counts against none: it
 * isn't judged, and whoever is held up at his own address must not use up what others may try on the same account.
 * Needs a transaction of its own: what the attempt undoes must not undo its count.
 */
export async function countAttempt(tx: Tx, limits: readonly AttemptLimit[], now: Date): Promise<number> {
  // In one order, so that two requests never wait for each other.
  const sorted = limits
    .map((limit) => ({ ...limit, key: keyOf(limit) }))
    .sort((a, b) => (a.key < b.key ? -1 : 1));
  const keys = sorted.map(({ key }) => key);
  const ends = sorted.map(({ spanMs }) => new Date(now.getTime() + spanMs));
  // Makes a row of each and locks it; a span that is over begins anew.
  const rows = await tx.$queryRaw<{ key: string; count: number; ends_at: Date }[]>`
    INSERT INTO attempt_counts AS a (key, count, ends_at)
    SELECT key, 0, ends_at FROM unnest(${keys}::text[], ${ends}::timestamptz[]) AS asked (key, ends_at)
    ON CONFLICT (key) DO UPDATE SET
      count = CASE WHEN a.ends_at <= ${now} THEN 0 ELSE a.count END,
      ends_at = CASE WHEN a.ends_at <= ${now} THEN excluded.ends_at ELSE a.ends_at END
    RETURNING key, count, ends_at`;
  const found = new Map(rows.map((row) => [row.key, row]));
  const over = sorted.flatMap(({ key, most }) => {
    const row = found.get(key);
    return row && row.count >= most ? [row.ends_at.getTime() - now.getTime()] : [];
  });
  if (over.length > 0) return Math.max(...over);
  await tx.attemptCount.updateMany({ where: { key: { in: keys } }, data: { count: { increment: 1 } } });
  return 0;
}

/** Forgets what was counted, after an attempt that succeeded. */
export async function forgetAttempts(
  tx: Tx,
  limits: readonly Pick<AttemptLimit, 'kind' | 'whose'>[],
): Promise<void> {
  await tx.attemptCount.deleteMany({ where: { key: { in: limits.map(keyOf) } } });
}
