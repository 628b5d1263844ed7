import { etagOf } from '@garboard/contract/client';
import type { Photo } from '@garboard/contract/photos';
import { useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import { call } from '../../../api/client.ts';
import { explain, isStatus } from '../../../api/problems.ts';
import { useStatus } from '../../../ui/Status.tsx';

/** What has been typed and isn't in the list yet. */
export interface TypedCaption {
  text: string;
  /** Why it could not be saved; null while it is on its way. */
  problem: string | null;
}

const touched = new Set<unknown>(['listPhotos', 'getPhoto', 'listFindings', 'getFinding']);

/**
 * Saves captions one after the other without holding up the typing of the next. One that could not be saved is kept
 * with the reason, to be opened again.
 */
export function useCaptions() {
  const queryClient = useQueryClient();
  const say = useStatus();
  const [typed, setTyped] = useState<ReadonlyMap<string, TypedCaption>>(new Map());
  const put = (id: string, value: TypedCaption | null) =>
    setTyped((now) => {
      const next = new Map(now);
      if (value) next.set(id, value);
      else next.delete(id);
      return next;
    });

  async function save(photo: Photo, number: number, text: string) {
    put(photo.id, { text, problem: null });
    try {
      await send(photo, text);
      say(`Caption of photo ${number} saved.`);
      await queryClient.invalidateQueries({ predicate: (query) => touched.has(query.queryKey[0]) });
      put(photo.id, null);
    } catch (error) {
      const { title, detail } = explain(error);
      put(photo.id, { text, problem: error instanceof WrittenByAnother ? error.message : detail || title });
    }
  }
  return { typed, save: (photo: Photo, number: number, text: string) => void save(photo, number, text) };
}

class WrittenByAnother extends Error {}

/** A photo that was only turned or marked meanwhile still takes the caption; another's words are not written over. */
async function send(photo: Photo, caption: string): Promise<void> {
  let now = photo;
  for (;;) {
    try {
      await call('updatePhoto', { params: { id: photo.id }, body: { caption }, ifMatch: etagOf(now) });
      return;
    } catch (error) {
      if (!isStatus(error, 412)) throw error;
      now = await call('getPhoto', { params: { id: photo.id } });
      if (now.caption === photo.caption || now.caption === caption) continue;
      throw new WrittenByAnother(`Someone else wrote: ${now.caption || '(nothing)'}.`);
    }
  }
}
