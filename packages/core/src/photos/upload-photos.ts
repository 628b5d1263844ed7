import type { photosUploaded } from '@garboard/contract/photos';
import type { z } from 'zod';
import type { Ctx } from '../context.ts';
import type { Upload } from '../files/received-file.ts';
import { noFiles, refuseUpload } from '../files/refuse-upload.ts';
import { loadSurvey, lockSurvey } from '../surveys/load-survey.ts';
import { addPhotos, countAdded } from './add-photo.ts';
import { authorisePhotoWriting } from './photo-writing.ts';
import { photoInclude, presentPhotos } from './present-photo.ts';

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

  const photos = await addPhotos(
    ctx,
    survey,
    accepted.map((file) => ({ file })),
  );
  const ids = new Set(photos.map(({ id }) => id));
  await countAdded(ctx, survey, { added: photos.filter(({ fresh }) => fresh).length, role });
  const rows = await ctx.tx.photo.findMany({ where: { id: { in: [...ids] } }, include: photoInclude });
  const byId = new Map((await presentPhotos(ctx, survey.id, rows)).map((photo) => [photo.id, photo]));
  return {
    items: [...ids].flatMap((id) => byId.get(id) ?? []),
    refused: refused.map(({ name, problem }) => ({ name, problem })),
  };
}
