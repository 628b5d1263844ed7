import { newId } from '@garboard/db/ids';
import { actorId } from '../access/actor.ts';
import type { Ctx } from '../context.ts';
import { recordEvent } from '../events/record-event.ts';
import { keepObject } from '../files/keep-object.ts';
import type { AcceptedFile } from '../files/received-file.ts';
import { enqueue } from '../outbox/enqueue.ts';

export interface AddPhoto {
  survey: { id: string; firmId: string };
  file: AcceptedFile;
  /** The photo's id when its client made one. */
  id?: string;
  caption?: string;
}

/**
 * Adds a photo to a survey whose row is locked, and asks for its sizes. A picture that the survey has already stays
 * one photo.
 */
export async function addPhoto(
  ctx: Ctx,
  { survey, file, id = newId(), caption = '' }: AddPhoto,
): Promise<{ id: string; fresh: boolean }> {
  const { sha256, bytes } = file.staged;
  const known = { surveyId_sha256: { surveyId: survey.id, sha256 } };
  const existing = await ctx.tx.photo.findUnique({ where: known, select: { id: true } });
  if (existing) return { id: existing.id, fresh: false };
  if (!file.size) throw new Error(`A document came where only pictures are taken: ${file.mediaType}`);
  await ctx.tx.photo.create({
    data: {
      id,
      firmId: survey.firmId,
      surveyId: survey.id,
      sha256,
      bytes,
      mediaType: file.mediaType,
      fileName: file.name,
      width: file.size.width,
      height: file.size.height,
      takenAt: file.takenAt,
      caption,
      orderKey: `${(file.takenAt ?? ctx.clock()).toISOString()}_${id}`,
      uploadedById: actorId(ctx.actor),
      createdAt: ctx.clock(),
    },
  });
  await keepObject(ctx.tx, file.staged);
  await enqueue(ctx.tx, 'photo.derive', { firmId: survey.firmId, photoId: id });
  return { id, fresh: true };
}

/** Counts added photos on the survey and writes them into its history. */
export async function countAdded(
  ctx: Ctx,
  survey: { id: string; firmId: string },
  { added, role }: { added: number; role: string },
): Promise<void> {
  if (added === 0) return;
  await ctx.tx.survey.update({ where: { id: survey.id }, data: { photoCount: { increment: added } } });
  const where = { firmId: survey.firmId, surveyId: survey.id };
  await recordEvent(ctx, { ...where, kind: 'photos.added', role, data: { count: added } });
}
