import { openCapture } from './database.ts';

/** What was being written under this name, or null. */
export async function draftKept(personId: string, key: string): Promise<unknown> {
  const db = await openCapture(personId);
  return (await db.get('drafts', key))?.value ?? null;
}

/** Keeps what is being written. @throws DOMException `QuotaExceededError` when there is no room */
export async function keepDraft(personId: string, key: string, value: unknown): Promise<void> {
  const db = await openCapture(personId);
  const tx = db.transaction('drafts', 'readwrite');
  const asked = value === null ? tx.store.delete(key) : tx.store.put({ key, value });
  // Committed without waiting for the answer: a page that goes away now would undo what isn't committed.
  tx.commit();
  await Promise.all([asked, tx.done]);
}
