import type { Ctx } from '../context.ts';
import { authorisePhotoWriting } from '../photos/photo-writing.ts';
import { invalidField, Refusal } from '../problems.ts';
import { loadSurvey } from '../surveys/load-survey.ts';
import { lockUpload, type UploadRow } from './load-upload.ts';

export interface TakePart {
  id: string;
  /** Where in the file the part begins, in bytes; null when that wasn't said. */
  offset: number | null;
  bytes: Buffer;
}

/** A part that doesn't begin where the last one ended. */
export class WrongOffset extends Refusal {
  readonly received: number;
  constructor(received: number) {
    super(
      'wrong-state',
      `The server has ${received} bytes of this file. Go on from there: Upload-Offset: ${received}.`,
    );
    this.received = received;
  }
}

/**
 * Takes the next part of an upload. A part sent once more after the upload was kept answers the same as then. The row
 * is held while the part is written, so of two at the same offset one is taken.
 *
 * @returns the upload and the zone in which its camera's clock is read
 * @throws Refusal `not-found`, `not-allowed`, `wrong-state`; WrongOffset; `files-refused` after the picture was refused
 */
export async function takePart(
  ctx: Ctx,
  { id, offset, bytes }: TakePart,
): Promise<{ upload: UploadRow; timeZone: string }> {
  const upload = await lockUpload(ctx, id);
  const survey = await loadSurvey(ctx, upload.surveyId);
  const { timeZone } = survey;
  if (upload.state === 'kept') return { upload, timeZone };
  if (upload.state === 'refused') throw new Refusal('files-refused', upload.problem ?? '');
  authorisePhotoWriting(ctx, survey);
  if (offset === null) {
    const detail = 'Say in Upload-Offset at which byte of the file this part begins, such as 0.';
    throw invalidField('/headers/upload-offset', detail);
  }
  if (offset !== upload.received) throw new WrongOffset(upload.received);
  if (offset + bytes.length > upload.bytes) {
    throw invalidField(
      '/body',
      `The file was announced with ${upload.bytes} bytes; this part would make it ${offset + bytes.length}.`,
    );
  }
  if (bytes.length === 0) return { upload, timeZone };
  await ctx.store.putPart(id, offset, bytes);
  const taken = await ctx.tx.photoUpload.update({
    where: { id },
    data: { received: offset + bytes.length, updatedAt: ctx.clock() },
  });
  return { upload: taken, timeZone };
}

/** Begins an upload again whose parts are gone, as after a restored backup. */
export async function restartUpload(ctx: Ctx, id: string): Promise<UploadRow> {
  await lockUpload(ctx, id);
  // What is left of the old parts would stand in the way of new ones of another length.
  await ctx.store.dropParts(id);
  await ctx.tx.photoUpload.updateMany({ where: { id, state: 'receiving' }, data: { received: 0 } });
  return ctx.tx.photoUpload.findUniqueOrThrow({ where: { id } });
}
