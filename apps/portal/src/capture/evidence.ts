import { uuidv7 } from 'uuidv7';
import { durable, openCapture } from './database.ts';

/** A file chosen for evidence or a re-inspection that has not been sent; its bytes are kept apart from what is written. */
export interface DraftFile {
  id: string;
  name: string;
  type: string;
  size: number;
  lastModified: number;
}

/** Drafts under these names are somebody's unsent work: signing out asks before it leaves them. */
const unsentPrefixes = ['evidence:', 're-inspection:'];

/** Copies a file out of the picker onto this device. @throws DOMException `QuotaExceededError` when there is no room */
export async function keepDraftFile(personId: string, file: File): Promise<DraftFile> {
  const id = uuidv7();
  const bytes = await file.arrayBuffer();
  const db = await openCapture(personId);
  const tx = db.transaction('files', 'readwrite', durable);
  await Promise.all([tx.store.put({ id, bytes }), tx.done]);
  const { name, type, size, lastModified } = file;
  return { id, name, type, size, lastModified };
}

/** The file as it was chosen, or null when the browser has cleared it. */
export async function draftFileOf(personId: string, kept: DraftFile): Promise<File | null> {
  const db = await openCapture(personId);
  const { name, type, lastModified } = kept;
  const found = await db.get('files', kept.id);
  return found ? new File([found.bytes], name, { type, lastModified }) : null;
}

/** Forgets files that were sent or taken out again. */
export async function dropDraftFiles(personId: string, ids: readonly string[]): Promise<void> {
  if (ids.length === 0) return;
  const db = await openCapture(personId);
  const tx = db.transaction('files', 'readwrite');
  await Promise.all([...ids.map((id) => tx.store.delete(id)), tx.done]);
}

/** How many pieces of evidence and re-inspections were begun on this device and not sent. */
export async function countUnsentDrafts(personId: string): Promise<number> {
  const db = await openCapture(personId);
  const keys = await db.getAllKeys('drafts');
  return keys.filter((key) => unsentPrefixes.some((prefix) => key.startsWith(prefix))).length;
}
