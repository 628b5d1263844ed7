import { isDeepStrictEqual } from 'node:util';
import type { Photo, photoPatch } from '@garboard/contract/photos';
import type { z } from 'zod';
import type { Ctx } from '../context.ts';
import { enqueue } from '../outbox/enqueue.ts';
import { staleVersion } from '../problems.ts';
import { getPhoto } from './get-photo.ts';
import { loadPhoto } from './load-photo.ts';
import { authorisePhotoWriting } from './photo-writing.ts';
import { refuseUnfitBefore } from './refuse-unfit-before.ts';

export interface UpdatePhoto {
  id: string;
  patch: z.output<typeof photoPatch>;
  ifMatch?: number | undefined;
}

/**
 * Captions, turns or marks up a photo, or pairs it with an earlier one; the original is never touched. Turning and marking make its sizes anew.
 *
 * @throws Refusal `not-found`, `not-allowed`, `wrong-state`, `stale-version`; `invalid-input` for a pair that isn't one
 */
export async function updatePhoto(ctx: Ctx, { id, patch, ifMatch }: UpdatePhoto): Promise<Photo> {
  const photo = await loadPhoto(ctx, id);
  authorisePhotoWriting(ctx, photo.survey);
  if (patch.beforePhotoId) await refuseUnfitBefore(ctx, photo, patch.beforePhotoId);
  const turns = patch.quarterTurns ?? photo.quarterTurns;
  const lies = (turns - photo.quarterTurns) % 2 !== 0;
  const redrawn =
    turns !== photo.quarterTurns ||
    (patch.marks !== undefined && !isDeepStrictEqual(patch.marks, photo.marks));
  const changed = await ctx.tx.photo.updateMany({
    // What was read decides on width and height, so it must still be so.
    where: { id, version: ifMatch ?? photo.version },
    data: {
      ...(patch.caption === undefined ? {} : { caption: patch.caption }),
      ...(patch.beforePhotoId === undefined ? {} : { beforePhotoId: patch.beforePhotoId }),
      ...(patch.marks === undefined ? {} : { marks: patch.marks }),
      quarterTurns: turns,
      ...(lies ? { width: photo.height, height: photo.width } : {}),
      ...(redrawn ? { state: 'processing', problem: null } : {}),
      version: { increment: 1 },
    },
  });
  if (changed.count === 0) throw staleVersion('photo');
  if (redrawn) await enqueue(ctx.tx, 'photo.derive', { firmId: photo.firmId, photoId: id });
  return getPhoto(ctx, id);
}
