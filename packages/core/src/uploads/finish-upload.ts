import type { UploadRecord } from '@garboard/contract/uploads';
import type { Ctx } from '../context.ts';
import type { Upload } from '../files/received-file.ts';
import { appendPhoto } from '../findings/append-photo.ts';
import { addPhoto, countAdded } from '../photos/add-photo.ts';
import { authorisePhotoWriting } from '../photos/photo-writing.ts';
import { loadSurvey, lockSurvey } from '../surveys/load-survey.ts';
import { loadUpload, lockUpload, presentUpload } from './load-upload.ts';

export interface FinishUpload {
  id: string;
  /** The whole file, put together and inspected like one that came at once. */
  file: Upload;
  sha256: string;
}

/**
 * Turns a whole upload into a photo with the same id, once: a second ending finds it done.
 *
 * @returns the upload, kept or refused
 * @throws Refusal `not-found`, `not-allowed`; `wrong-state` while the survey is shut (the parts stay)
 */
export async function finishUpload(ctx: Ctx, { id, file, sha256 }: FinishUpload): Promise<UploadRecord> {
  const { surveyId } = await loadUpload(ctx, id);
  // In the order of every other use case: first the survey, then what belongs to it.
  await lockSurvey(ctx, surveyId);
  const upload = await lockUpload(ctx, id);
  if (upload.state !== 'receiving') return presentUpload(upload);
  const survey = await loadSurvey(ctx, surveyId);
  const role = authorisePhotoWriting(ctx, survey);
  const settle = async (data: { state: string; problem?: string; photoId?: string }) =>
    presentUpload(
      await ctx.tx.photoUpload.update({ where: { id }, data: { ...data, updatedAt: ctx.clock() } }),
    );

  const [refused] = file.refused;
  if (sha256 !== upload.sha256) {
    return settle({
      state: 'refused',
      problem:
        'What arrived isn’t the file that was announced: its SHA-256 differs. Send it again under a new id.',
    });
  }
  if (refused) return settle({ state: 'refused', problem: refused.problem });
  const [accepted] = file.accepted;
  if (!accepted) throw new Error('A file that was neither accepted nor refused.');
  const photo = await addPhoto(ctx, {
    survey,
    file: { ...accepted, takenAt: accepted.takenAt ?? upload.takenAt },
    id,
    caption: upload.caption,
  });
  await countAdded(ctx, survey, { added: photo.fresh ? 1 : 0, role });
  const { findingId } = upload;
  // A finding deleted meanwhile doesn't take the photo with it.
  if (findingId) await appendPhoto(ctx, { surveyId, findingId, photoId: photo.id });
  return settle({ state: 'kept', photoId: photo.id });
}
