import type { CoverageAnswer, CoverageItem } from '@garboard/contract/coverage';
import type { System } from '@garboard/trade/vocabulary';
import { uuidv7 } from 'uuidv7';
import { announce } from './changes.ts';
import { durable, openCapture } from './database.ts';
import type { Kept, KeptCoverage, KeptNote, KeptPhoto, KeptWorksheet, SurveyBrief } from './kept.ts';
import { coverageId } from './kept.ts';
import { sha256Of, thumbOf } from './picture.ts';
import { askToLast } from './space.ts';

/** Where something is kept: whose it is, of which survey and system. */
export interface Place {
  personId: string;
  survey: SurveyBrief;
  system: System;
}

const begun = (place: Place, id: string, bytes = 0) => ({
  id,
  surveyId: place.survey.id,
  surveyName: place.survey.name,
  system: place.system,
  keptAt: Date.now(),
  state: 'waiting' as const,
  attempts: 0,
  bytes,
  sentBytes: 0,
  sentAt: null,
  refusal: null,
});

/** Everything kept, oldest first, in the order it is sent in. */
export async function listKept(personId: string): Promise<Kept[]> {
  const db = await openCapture(personId);
  return (await db.getAll('items')).sort((a, b) => a.keptAt - b.keptAt || (a.id < b.id ? -1 : 1));
}

/**
 * Keeps a photo, its bytes and its place in one transaction; the same picture of the same survey only once.
 *
 * @returns the photo, and whether it had been kept before
 * @throws DOMException `QuotaExceededError` when there is no room; what was kept before is untouched
 */
export async function keepPhoto(
  place: Place,
  file: File,
  noteId: string | null,
): Promise<{ photo: KeptPhoto; before: boolean }> {
  const bytes = await file.arrayBuffer();
  const sha256 = await sha256Of(bytes);
  const same = (await listKept(place.personId)).find(
    (kept): kept is KeptPhoto =>
      kept.kind === 'photo' && kept.surveyId === place.survey.id && kept.sha256 === sha256,
  );
  if (same) return { photo: same, before: true };
  const photo: KeptPhoto = {
    ...begun(place, uuidv7(), bytes.byteLength),
    kind: 'photo',
    name: file.name || 'photo.jpg',
    sha256,
    takenAt: file.lastModified ? new Date(file.lastModified).toISOString() : null,
    noteId,
    thumb: await thumbOf(bytes, file.type),
    photoId: null,
  };
  const db = await openCapture(place.personId);
  const tx = db.transaction(['items', 'files'], 'readwrite', durable);
  await together(tx.done, [
    tx.objectStore('items').put(photo),
    tx.objectStore('files').put({ id: photo.id, bytes }),
  ]);
  kept();
  return { photo, before: false };
}

/** Waits for the transaction and all its writes: what fails fails once, as the first of them did. */
async function together(done: Promise<void>, writes: Promise<unknown>[]): Promise<void> {
  const results = await Promise.allSettled([...writes, done]);
  const failures = results.filter((r) => r.status === 'rejected').map((r) => r.reason as unknown);
  if (failures.length === 0) return;
  throw failures.find((e) => e instanceof DOMException && e.name === 'QuotaExceededError') ?? failures[0];
}

/** Keeps a note with the photos it belongs to; `id` names a refused one that was corrected. */
export async function keepNote(
  place: Place,
  note: Pick<KeptNote, 'text' | 'urgent' | 'photoIds'>,
  id: string = uuidv7(),
): Promise<KeptNote> {
  const item: KeptNote = { ...begun(place, id), kind: 'note', ...note };
  await put(place.personId, item);
  return item;
}

/** Keeps how far a system was examined, in place of an answer that is still waiting. */
export async function keepCoverage(
  place: Place,
  answer: CoverageAnswer,
  seen: CoverageItem | undefined,
): Promise<void> {
  const id = coverageId(place.survey.id, place.system);
  const before = (await listKept(place.personId)).find((kept) => kept.id === id);
  const unheard = before?.kind === 'coverage' && before.state !== 'sent' && before.attempts > 0;
  const item: KeptCoverage = {
    ...begun(place, id),
    kind: 'coverage',
    answer,
    fromVersion: seen?.version ?? null,
    tried: unheard ? before.answer : null,
    theirs: null,
  };
  await put(place.personId, item);
}

/** Keeps a filled-in worksheet; the server works it when it is sent. */
export async function keepWorksheet(
  place: Place,
  worksheet: Pick<KeptWorksheet, 'worksheetKind' | 'kindTitle' | 'title' | 'inputs'>,
  id: string = uuidv7(),
): Promise<KeptWorksheet> {
  const item: KeptWorksheet = {
    ...begun(place, id),
    kind: 'worksheet',
    ...worksheet,
    verdict: null,
    reasons: [],
  };
  await put(place.personId, item);
  return item;
}

async function put(personId: string, item: Kept): Promise<void> {
  const db = await openCapture(personId);
  const tx = db.transaction('items', 'readwrite', durable);
  await together(tx.done, [tx.store.put(item)]);
  kept();
}

/** Sends a refused item again; a coverage answer now stands against what the other one wrote. */
export async function sendAgain(personId: string, item: Kept): Promise<void> {
  const fromVersion =
    item.kind === 'coverage' && item.theirs ? { fromVersion: item.theirs.version, theirs: null } : {};
  await put(personId, { ...item, ...fromVersion, state: 'waiting', refusal: null } as Kept);
}

/** Takes away what was kept: something refused, or something of which sending never began. */
export async function removeKept(personId: string, id: string): Promise<void> {
  const db = await openCapture(personId);
  const tx = db.transaction(['items', 'files'], 'readwrite', durable);
  await Promise.all([tx.objectStore('items').delete(id), tx.objectStore('files').delete(id), tx.done]);
  kept();
}

/** The bytes of a photo that has not been sent. */
export async function bytesOf(personId: string, id: string): Promise<ArrayBuffer | null> {
  const db = await openCapture(personId);
  return (await db.get('files', id))?.bytes ?? null;
}

const keptForDays = 7;

/** Forgets what was sent more than a week ago. */
export async function pruneSent(personId: string): Promise<void> {
  const before = Date.now() - keptForDays * 24 * 3_600_000;
  const old = (await listKept(personId)).filter((kept) => kept.sentAt !== null && kept.sentAt < before);
  if (old.length === 0) return;
  const db = await openCapture(personId);
  const tx = db.transaction('items', 'readwrite');
  await Promise.all([...old.map((kept) => tx.store.delete(kept.id)), tx.done]);
}

function kept(): void {
  announce('kept');
  void askToLast();
  void wakeWhenConnected();
}

interface SyncingRegistration extends ServiceWorkerRegistration {
  sync?: { register(tag: string): Promise<void> };
}

/** Where the browser can, it wakes the service worker once there is signal, also with the page closed. */
async function wakeWhenConnected(): Promise<void> {
  try {
    const registration: SyncingRegistration | undefined = await navigator.serviceWorker?.getRegistration();
    await registration?.sync?.register('send-kept');
  } catch {
    // Refused by the browser's settings: the page sends when it is opened.
  }
}
