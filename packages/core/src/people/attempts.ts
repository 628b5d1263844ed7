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
 * how many milliseconds the caller is over one of them; 0 when over none. Needs a transaction of its own: what the
 * attempt undoes must not undo its count.
 */
export async function countAttempt(tx: Tx, limits: readonly AttemptLimit[], now: Date): Promise<number> {
  let overMs = 0;
  // In one order, so that two requests never wait for each other.
  const sorted = limits
    .map((limit) => ({ ...limit, key: keyOf(limit) }))
    .sort((a, b) => (a.key < b.key ? -1 : 1));
  for (const { key, most, spanMs } of sorted) {
    const endsAt = new Date(now.getTime() + spanMs);
    const [row] = await tx.$queryRaw<{ count: number; ends_at: Date }[]>`
      INSERT INTO attempt_counts AS a (key, count, ends_at) VALUES (${key}, 1, ${endsAt})
      ON CONFLICT (key) DO UPDATE SET
        count = CASE WHEN a.ends_at <= ${now} THEN 1 ELSE a.count + 1 END,
        ends_at = CASE WHEN a.ends_at <= ${now} THEN excluded.ends_at ELSE a.ends_at END
      RETURNING count, ends_at`;
    if (row && row.count > most) overMs = Math.max(overMs, row.ends_at.getTime() - now.getTime());
  }
  return overMs;
}

/** Forgets what was counted, after an attempt that succeeded. */
export async function forgetAttempts(
  tx: Tx,
  limits: readonly Pick<AttemptLimit, 'kind' | 'whose'>[],
): Promise<void> {
  await tx.attemptCount.deleteMany({ where: { key: { in: limits.map(keyOf) } } });
}
