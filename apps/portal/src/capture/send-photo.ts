import type { Answer } from '../api/client.ts';
import { isStatus } from '../api/problems.ts';
import { openCapture } from './database.ts';
import type { KeptPhoto } from './kept.ts';
import type { Send } from './send-item.ts';
import { Refused } from './send-item.ts';
import { settle, settleSent } from './settle.ts';

/** Small enough that little is lost when the signal goes. */
const partSize = 256 * 1024;
/** How often the server may name the same place in a row before we stop believing that we get on. */
const patience = 3;

/** Sends a photo in parts, going on from where the server says that it is. */
export async function sendPhoto({ personId, call, items }: Send, photo: KeptPhoto): Promise<void> {
  const db = await openCapture(personId);
  const file = await db.get('files', photo.id);
  if (!file) throw new Refused('The picture is no longer on this telephone. Remove it from the list.');
  // The finding that a note became has the note's id; a note that was refused has none yet.
  const note = items.find((kept) => kept.id === photo.noteId);
  let upload = await call('createUpload', {
    params: { id: photo.surveyId },
    body: {
      id: photo.id,
      name: photo.name,
      bytes: photo.bytes,
      sha256: photo.sha256,
      ...(photo.takenAt ? { takenAt: photo.takenAt } : {}),
      ...(note?.state === 'sent' ? { findingId: note.id } : {}),
    },
  });
  let stuck = 0;
  while (upload.state === 'receiving') {
    const from = upload.received;
    await settle(personId, photo, { sentBytes: from });
    upload = await sendPart(call, photo.id, from, file.bytes.slice(from, from + partSize));
    stuck = upload.state === 'receiving' && upload.received <= from ? stuck + 1 : 0;
    if (stuck >= patience) throw new TypeError('The server takes no more of this picture for now.');
  }
  if (upload.state === 'refused')
    throw new Refused(upload.problem ?? 'The server could not read this picture. Take it again.');
  await settleSent(personId, photo, { photoId: upload.photoId ?? photo.id });
}

async function sendPart(
  call: Send['call'],
  id: string,
  offset: number,
  bytes: ArrayBuffer,
): Promise<Answer<'getUpload'>> {
  try {
    return await call('sendUploadPart', { params: { id }, part: { offset, bytes: new Uint8Array(bytes) } });
  } catch (error) {
    // An earlier answer was lost on its way, so the server is further than we thought; or the picture was refused.
    if (isStatus(error, 409) || isStatus(error, 422)) return call('getUpload', { params: { id } });
    throw error;
  }
}
