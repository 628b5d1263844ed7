import type { Tx } from '@garboard/db/database';
import { goneBefore } from './deleted-record.ts';

/** Removes for good the drafts that can no longer be brought back. Answers how many there were. */
export async function sweepDeleted(tx: Tx, now: Date): Promise<number> {
  const { count } = await tx.deletedFinding.deleteMany({ where: { deletedAt: { lt: goneBefore(now) } } });
  return count;
}
