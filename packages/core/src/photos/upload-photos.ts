import type { photosUploaded } from '@garboard/contract/photos';
import { newId } from '@garboard/db/ids';
import type { z } from 'zod';
import { actorId } from '../access/actor.ts';
import type { Ctx } from '../context.ts';
import { recordEvent } from '../events/record-event.ts';
import { keepObject } from '../files/keep-object.ts';
import type { AcceptedFile, Upload } from '../files/received-file.ts';
import { noFiles, refuseUpload } from '../files/refuse-upload.ts';
import { enqueue } from '../outbox/enqueue.ts';
import { type LoadedSurvey, loadSurvey, lockSurvey } from '../surveys/load-survey.ts';
import { authorisePhotoWriting } from './photo-writing.ts';
import { presentPhoto } from './present-photo.ts';

/** Whether photos may be uploaded, asked before their bytes are read. @returns the zone of their capture times */
export async function mayUploadPhotos(ctx: Ctx, surveyId: string): Promise<{ timeZone: string }> {
  const survey = await loadSurvey(ctx, surveyId);
  authorisePhotoWriting(ctx, survey);
  return { timeZone: survey.timeZone };
}

/**
 * Adds photos to a survey. A file that the survey has already is answered with the photo it has.
 *
 * @throws Refusal `not-found`, `not-allowed`, `wrong-state`; `files-refused` or `too-large` when none can be taken.
 */
export async function uploadPhotos(
  ctx: Ctx,
  { surveyId, upload }: { surveyId: string; upload: Upload },
): Promise<z.input<typeof photosUploaded>> {
  // Held first, so that two uploads of the same file wait for each other and closing can't come in between.
  await lockSurvey(ctx, surveyId);
  const survey = await loadSurvey(ctx, surveyId);
  const role = authorisePhotoWriting(ctx, survey);
  const { accepted, refused } = upload;
  if (accepted.length === 0) throw refused.length > 0 ? refuseUpload(refused) : noFiles();

  const ids = new Set<string>();
  let added = 0;
  for (const file of accepted) {
    const { id, fresh } = await addPhoto(ctx, survey, file);
    ids.add(id);
    if (fresh) added++;
  }
  if (added > 0) {
    await ctx.tx.survey.update({ where: { id: survey.id }, data: { photoCount: { increment: added } } });
    const where = { firmId: survey.firmId, surveyId: survey.id };
    await recordEvent(ctx, { ...where, kind: 'photos.added', role, data: { count: added } });
  }
  const rows = await ctx.tx.photo.findMany({ where: { id: { in: [...ids] } } });
  const byId = new Map(rows.map((row) => [row.id, presentPhoto(row)]));
  return {
    items: [...ids].flatMap((id) => byId.get(id) ?? []),
    refused: refused.map(({ name, problem }) => ({ name, problem })),
  };
}

async function addPhoto(
  ctx: Ctx,
  survey: LoadedSurvey,
  file: AcceptedFile,
): Promise<{ id: string; fresh: boolean }> {
  const { sha256, bytes } = file.staged;
  const known = { surveyId_sha256: { surveyId: survey.id, sha256 } };
  const existing = await ctx.tx.photo.findUnique({ where: known, select: { id: true } });
  if (existing) return { id: existing.id, fresh: false };
  if (!file.size) throw new Error(`A document came where only pictures are taken: ${file.mediaType}`);
  const id = newId();
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
      orderKey: `${(file.takenAt ?? ctx.clock()).toISOString()}_${id}`,
      uploadedById: actorId(ctx.actor),
      createdAt: ctx.clock(),
    },
  });
  await keepObject(ctx.tx, file.staged);
  await enqueue(ctx.tx, 'photo.derive', { firmId: survey.firmId, photoId: id });
  return { id, fresh: true };
}
