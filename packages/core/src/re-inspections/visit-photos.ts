import { newId } from '@garboard/db/ids';
import type { Ctx } from '../context.ts';
import { enqueue } from '../outbox/enqueue.ts';
import { invalidField } from '../problems.ts';

export interface VisitPhotos {
  firmId: string;
  surveyId: string;
  clearanceId: string;
  photoIds: readonly string[];
  /** Of the finding in the visit, for pointing at it. */
  ordinal: number;
}

/**
 * Adds photos of the survey to evidence, as files of their own: a photo may be taken off the survey later, what was
 * decided on may not. One that is paired with an earlier photo keeps that pair.
 *
 * @throws Refusal `invalid-input` for a photo that isn't the survey's
 */
export async function addVisitPhotos(ctx: Ctx, input: VisitPhotos): Promise<void> {
  const { firmId, surveyId, clearanceId, ordinal } = input;
  const photos = await ctx.tx.photo.findMany({ where: { id: { in: [...input.photoIds] }, surveyId } });
  const before = await ctx.tx.clearanceFile.count({ where: { clearanceId } });
  for (const [place, photoId] of input.photoIds.entries()) {
    const photo = photos.find((p) => p.id === photoId);
    if (!photo)
      throw invalidField(`/items/${ordinal}/photoIds/${place}`, 'There is no such photo in this survey.');
    const id = newId();
    const { sha256, bytes, mediaType, fileName, width, height, thumbHash, screenHash, beforePhotoId } = photo;
    await ctx.tx.clearanceFile.create({
      data: {
        ...{
          id,
          firmId,
          clearanceId,
          ordinal: before + place,
          sha256,
          bytes,
          mediaType,
          fileName,
          width,
          height,
        },
        ...{ thumbHash, screenHash, beforePhotoId },
      },
    });
    if (!screenHash) await enqueue(ctx.tx, 'clearance-file.derive', { firmId, fileId: id });
  }
}
