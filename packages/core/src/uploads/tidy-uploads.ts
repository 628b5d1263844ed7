import type { Tx } from '@garboard/db/database';

const dayMs = 24 * 60 * 60_000;
/** An upload to which nothing was added for this long is abandoned. */
export const abandonedMs = 7 * dayMs;
/** What was received and never kept is removed from the waiting area after a day. */
export const stagingMs = dayMs;
/** For so long a repeat of what was settled is answered, even when the photo was deleted meanwhile. */
const settledMs = 90 * dayMs;

/** Forgets abandoned uploads and those settled long ago. Returns how many were abandoned. */
export async function tidyUploads(tx: Tx, now: Date): Promise<number> {
  const before = (ms: number) => ({ lt: new Date(now.getTime() - ms) });
  const abandoned = await tx.photoUpload.deleteMany({
    where: { state: 'receiving', updatedAt: before(abandonedMs) },
  });
  await tx.photoUpload.deleteMany({
    where: { state: { in: ['kept', 'refused'] }, updatedAt: before(settledMs) },
  });
  return abandoned.count;
}
