import type { DBSchema, IDBPDatabase } from 'idb';
import { deleteDB, openDB } from 'idb';
import type { Kept } from './kept.ts';

interface Schema extends DBSchema {
  items: { key: string; value: Kept };
  /** The bytes of photos, apart so that a list doesn't load them. Copied out of the file: a picker's file can go. */
  files: { key: string; value: { id: string; bytes: ArrayBuffer } };
  /** Answers of the server kept for the time without signal. */
  answers: { key: string; value: { key: string; at: number; data: unknown } };
  /** What is being written, so that a reload loses nothing. */
  drafts: { key: string; value: { key: string; value: unknown } };
}
export type CaptureDatabase = IDBPDatabase<Schema>;

const nameOf = (personId: string) => `garboard-capture-${personId}`;
const opened = new Map<string, Promise<CaptureDatabase>>();

/** Each person has a database of their own: nobody sees what another kept on the same telephone. */
export function openCapture(personId: string): Promise<CaptureDatabase> {
  const already = opened.get(personId);
  if (already) return already;
  const opening = openDB<Schema>(nameOf(personId), 1, {
    upgrade(db) {
      db.createObjectStore('items', { keyPath: 'id' });
      db.createObjectStore('files', { keyPath: 'id' });
      db.createObjectStore('answers', { keyPath: 'key' });
      db.createObjectStore('drafts', { keyPath: 'key' });
    },
    blocking: (_current, _next, event) => {
      opened.delete(personId);
      (event.target as IDBDatabase).close();
    },
    terminated: () => opened.delete(personId),
  });
  opened.set(personId, opening);
  opening.catch(() => opened.delete(personId));
  return opening;
}

/** Removes everything kept for a person. */
export async function removeCapture(personId: string): Promise<void> {
  const db = await opened.get(personId);
  opened.delete(personId);
  db?.close();
  await deleteDB(nameOf(personId));
}

/** Written to the disk before it counts as kept. */
export const durable = { durability: 'strict' } as const;
