import type { Answer, CallArgs, RouteName } from '../api/client.ts';
import type { Kept, KeptNote, KeptWorksheet } from './kept.ts';
import { titleOf } from './kept.ts';
import { sendCoverage } from './send-coverage.ts';
import { sendPhoto } from './send-photo.ts';
import { settleSent } from './settle.ts';

/** What sending one thing needs: whose it is, how the server is asked, what else is kept. */
export interface Send {
  personId: string;
  call: <N extends RouteName>(name: N, args: CallArgs<N>) => Promise<Answer<N>>;
  items: readonly Kept[];
}

/** The server has it and doesn't want it. The message is for the person, with what to do. */
export class Refused extends Error {}

/** Sends one thing. Sent again after a lost answer it makes nothing new: the ids are ours. */
export function sendItem(send: Send, item: Kept): Promise<void> {
  switch (item.kind) {
    case 'photo':
      return sendPhoto(send, item);
    case 'note':
      return sendNote(send, item);
    case 'coverage':
      return sendCoverage(send, item);
    case 'worksheet':
      return sendWorksheet(send, item);
  }
}

async function sendNote({ personId, call, items }: Send, note: KeptNote): Promise<void> {
  await call('createFinding', {
    params: { id: note.surveyId },
    body: {
      id: note.id,
      system: note.system,
      title: titleOf(note.text),
      observed: note.text,
      urgency: note.urgent ? 'before-use' : 'note',
      photoIds: photosOf(note, items),
    },
  });
  await settleSent(personId, note, {});
}

/** The photos of a note that have reached the server; others follow it by themselves. */
function photosOf(note: KeptNote, items: readonly Kept[]): string[] {
  const ids = items.flatMap((kept) => {
    if (kept.kind !== 'photo' || kept.state !== 'sent' || !kept.photoId) return [];
    return note.photoIds.includes(kept.id) || kept.noteId === note.id ? [kept.photoId] : [];
  });
  return [...new Set(ids)];
}

async function sendWorksheet({ personId, call }: Send, worksheet: KeptWorksheet): Promise<void> {
  const { result } = await call('createWorksheet', {
    params: { id: worksheet.surveyId },
    body: {
      id: worksheet.id,
      kind: worksheet.worksheetKind,
      inputs: worksheet.inputs,
      ...(worksheet.title ? { title: worksheet.title } : {}),
    },
  });
  await settleSent(personId, worksheet, { verdict: result.verdict, reasons: result.reasons });
}
