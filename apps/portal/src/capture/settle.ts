import { announce } from './changes.ts';
import { durable, openCapture } from './database.ts';
import type { Kept } from './kept.ts';

/**
 * Changes something kept, unless it was replaced meanwhile by a later answer of the same name.
 *
 * @returns whether it was still the same
 */
export async function settle<K extends Kept>(
  personId: string,
  item: K,
  change: Partial<K>,
): Promise<boolean> {
  const db = await openCapture(personId);
  const tx = db.transaction(['items', 'files'], 'readwrite', durable);
  const now = await tx.objectStore('items').get(item.id);
  const same = now?.keptAt === item.keptAt;
  if (same) {
    await tx.objectStore('items').put({ ...now, ...change } as Kept);
    // The server has it: the room is for the next photo.
    if (change.state === 'sent') await tx.objectStore('files').delete(item.id);
  }
  await tx.done;
  announce(change.state === 'sent' ? 'sent' : 'progress');
  return same;
}

/** Notes that it has reached the server. */
export const settleSent = <K extends Kept>(personId: string, item: K, more: Partial<K>) =>
  settle(personId, item, {
    state: 'sent',
    sentAt: Date.now(),
    sentBytes: item.bytes,
    refusal: null,
    ...more,
  } as Partial<K>);
