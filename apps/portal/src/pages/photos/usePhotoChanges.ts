import { etagOf } from '@garboard/contract/client';
import type { Photo } from '@garboard/contract/photos';
import { call } from '../../api/client.ts';
import { explain } from '../../api/problems.ts';
import { useAction } from '../../api/queries.ts';
import { count } from '../../ui/format.ts';
import { turned } from './markup/geometry.ts';

/** Turns photos a quarter to the right; their marks turn with them. */
export function useTurning() {
  return useAction({
    run: async (photos: readonly Photo[]) => {
      for (const photo of photos) {
        const marks = photo.marks.length ? { marks: turned(photo.marks, 1, photo) } : {};
        await call('updatePhoto', {
          params: { id: photo.id },
          body: { quarterTurns: (photo.quarterTurns + 1) % 4, ...marks },
          ifMatch: etagOf(photo),
        });
      }
    },
    done: (_, photos) => `${count(photos.length, 'photo')} turned right.`,
    touches: ['listPhotos', 'getPhoto', 'listFindings', 'getFinding'],
  });
}

export interface Kept {
  photo: Photo;
  reason: string;
}

/** Deletes photos, each for itself: those that something still shows are kept, with the reason. */
export function useDeleting(onDone: (kept: Kept[]) => void) {
  return useAction({
    run: async (photos: readonly Photo[]) => {
      const kept: Kept[] = [];
      for (const photo of photos) {
        try {
          await call('deletePhoto', { params: { id: photo.id } });
        } catch (error) {
          const { title, detail } = explain(error);
          kept.push({ photo, reason: detail || title });
        }
      }
      return kept;
    },
    done: (kept, photos) =>
      `${count(photos.length - kept.length, 'photo')} deleted${kept.length ? `, ${kept.length} kept` : ''}.`,
    touches: ['listPhotos', 'getSurvey', 'listSurveys', 'listEvents'],
    onDone,
  });
}
