import type { Tx } from '@garboard/db/database';

/** A round of which nothing was heard for so long lost its worker, in minutes. */
const silentMinutes = 10;

/**
 * Takes a round for this process when none is under way and the last whole one ended longer ago than `everyMs`; by the
 * database's clock, which all processes share. @returns whether it is ours
 */
export async function takeRound(tx: Tx, name: string, everyMs: number): Promise<boolean> {
  const taken = await tx.$executeRaw`
    INSERT INTO sweep_rounds AS r (name, seen_at) VALUES (${name}, now())
    ON CONFLICT (name) DO UPDATE SET seen_at = now()
    WHERE r.seen_at < now() - ${silentMinutes} * interval '1 minute'
      AND (r.ended_at IS NULL OR r.ended_at < now() - ${everyMs} * interval '1 millisecond')`;
  return taken > 0;
}

/** Says that a round is still under way. */
export async function goOnWithRound(tx: Tx, name: string): Promise<void> {
  await tx.$executeRaw`UPDATE sweep_rounds SET seen_at = now() WHERE name = ${name}`;
}

/** Says that a round is done. */
export async function endRound(tx: Tx, name: string): Promise<void> {
  await tx.$executeRaw`UPDATE sweep_rounds SET seen_at = now(), ended_at = now() WHERE name = ${name}`;
}
