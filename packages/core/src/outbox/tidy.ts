import type { Tx } from '@garboard/db/database';

const hourMs = 60 * 60_000;

/**
 * Removes what has served its time: jobs handed over a week ago, expired sessions and links, counts of attempts,
 * answers kept for repeats. Returns how many rows.
 */
export async function tidy(tx: Tx, now: Date): Promise<number> {
  const ago = (hours: number) => new Date(now.getTime() - hours * hourMs);
  const mailed = { OR: [{ mailBy: null }, { mailBy: { lt: now } }] };
  const removed = [
    await tx.outbox.deleteMany({ where: { dispatchedAt: { lt: ago(7 * 24) } } }),
    await tx.session.deleteMany({ where: { expiresAt: { lt: now } } }),
    await tx.oneTimeLink.deleteMany({ where: { expiresAt: { lt: now }, ...mailed } }),
    await tx.attemptCount.deleteMany({ where: { endsAt: { lt: now } } }),
    await tx.idempotencyKey.deleteMany({ where: { createdAt: { lt: ago(48) } } }),
  ];
  return removed.reduce((sum, { count }) => sum + count, 0);
}
