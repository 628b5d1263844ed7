import { announce } from './changes.ts';
import { openCapture, removeCapture } from './database.ts';
import { countUnsentDrafts } from './evidence.ts';
import { listKept } from './keep.ts';
import { isUnsent } from './kept.ts';

/** How many things kept on this telephone have not reached the server. */
export async function countUnsent(personId: string): Promise<number> {
  const kept = (await listKept(personId)).filter(isUnsent).length;
  return kept + (await countUnsentDrafts(personId));
}

/**
 * Stops sending in every window and forgets what the telephone showed of the firm's surveys. What has not been sent
 * stays, out of everybody's sight, until the same person signs in here again.
 */
export async function leaveTelephone(personId: string): Promise<void> {
  announce('stop');
  if ((await countUnsent(personId)) === 0) {
    await removeCapture(personId);
    return;
  }
  const db = await openCapture(personId);
  const tx = db.transaction(['answers', 'items'], 'readwrite');
  const sent = (await tx.objectStore('items').getAll()).filter((kept) => !isUnsent(kept));
  await Promise.all([
    tx.objectStore('answers').clear(),
    ...sent.map((kept) => tx.objectStore('items').delete(kept.id)),
    tx.done,
  ]);
}
