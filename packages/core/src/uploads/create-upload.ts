import { uploadLimits } from '@garboard/contract/limits';
import type { UploadRecord, uploadCreate } from '@garboard/contract/uploads';
import type { z } from 'zod';
import { authorise } from '../access/policy.ts';
import type { Ctx } from '../context.ts';
import { cleanFileName } from '../files/file-name.ts';
import { appendPhoto } from '../findings/append-photo.ts';
import { authorisePhotoWriting } from '../photos/photo-writing.ts';
import { invalidField, Refusal, wrongState } from '../problems.ts';
import { type LoadedSurvey, loadSurvey, lockSurvey } from '../surveys/load-survey.ts';
import { findUpload, presentUpload } from './load-upload.ts';

export interface CreateUpload {
  surveyId: string;
  upload: z.output<typeof uploadCreate>;
}

/**
 * Announces a photo that will come in parts. The same again answers how far it came; a picture that the survey has
 * already is kept at once, without its bytes being sent.
 *
 * @throws Refusal `not-found`, `not-allowed`, `too-large`; `wrong-state` when the id belongs to something else;
 *   `invalid-input` for a finding of another survey
 */
export async function createUpload(ctx: Ctx, { surveyId, upload }: CreateUpload): Promise<UploadRecord> {
  await lockSurvey(ctx, surveyId);
  const survey = await loadSurvey(ctx, surveyId);
  authorisePhotoWriting(ctx, survey);
  const { id, bytes, sha256 } = upload;
  const most = uploadLimits.photoBytes;
  if (bytes > most) {
    const detail = `The file is larger than the ${Math.floor(most / 1024 / 1024)} MB accepted. Send a smaller version.`;
    throw new Refusal('too-large', detail);
  }
  const known = await findKnown(ctx, id);
  if (known) {
    if (known.surveyId === surveyId && known.bytes === bytes && known.sha256 === sha256) return known.record;
    throw taken();
  }
  const findingId = upload.findingId ?? null;
  if (findingId) await checkFinding(ctx, survey, findingId);
  const twin = await ctx.tx.photo.findUnique({
    where: { surveyId_sha256: { surveyId, sha256 } },
    select: { id: true },
  });
  const now = ctx.clock();
  const made = await ctx.tx.photoUpload.createMany({
    data: [
      {
        ...{
          id,
          firmId: survey.firmId,
          surveyId,
          fileName: cleanFileName(upload.name),
          bytes,
          sha256,
          findingId,
        },
        takenAt: upload.takenAt ?? null,
        caption: upload.caption ?? '',
        ...(twin ? { state: 'kept', photoId: twin.id, received: bytes } : {}),
        ...{ createdAt: now, updatedAt: now },
      },
    ],
    skipDuplicates: true,
  });
  // Another firm's, of which nothing more is told.
  if (made.count === 0) throw taken();
  if (twin && findingId) await appendPhoto(ctx, { surveyId, findingId, photoId: twin.id });
  return presentUpload(await ctx.tx.photoUpload.findUniqueOrThrow({ where: { id } }));
}

const taken = () =>
  wrongState(
    'This id belongs to another upload or photo already. Make a new id for each photo and send it again.',
  );

/** What goes by this id already: an upload, or a photo whose upload was tidied away long ago. */
async function findKnown(ctx: Ctx, id: string) {
  const row = await findUpload(ctx, id);
  if (row) {
    return { surveyId: row.surveyId, bytes: row.bytes, sha256: row.sha256, record: presentUpload(row) };
  }
  const photo = await ctx.tx.photo.findUnique({
    where: { id },
    select: { surveyId: true, bytes: true, sha256: true },
  });
  if (!photo) return null;
  const { surveyId, bytes } = photo;
  const record: UploadRecord = {
    ...{ id, surveyId, received: bytes, bytes, state: 'kept' },
    ...{ photoId: id, problem: null },
  };
  return { ...photo, record };
}

async function checkFinding(ctx: Ctx, survey: LoadedSurvey, findingId: string): Promise<void> {
  authorise(
    ctx.actor,
    survey,
    'finding.write',
    'Only surveyors add photos to findings; leave findingId out.',
  );
  const found = await ctx.tx.finding.count({ where: { id: findingId, surveyId: survey.id } });
  if (found === 0) {
    const detail =
      'There is no such finding in this survey; it may have been deleted. Send the photo without it.';
    throw invalidField('/findingId', detail);
  }
}
