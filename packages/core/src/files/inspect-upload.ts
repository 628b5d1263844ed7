import { uploadLimits } from '@garboard/contract/photos';
import { fileTypeFromFile } from 'file-type';
import { readCaptureTime } from './capture-time.ts';
import { inspectDocument } from './inspect-document.ts';
import { inspectPicture } from './inspect-picture.ts';
import type { AcceptedFile, ReceivedFile, RefusedUpload, Upload } from './received-file.ts';

/** What an upload may hold: pictures, or pictures and PDF documents. */
export type Accepts = 'pictures' | 'evidence';

export interface InspectOptions {
  accepts: Accepts;
  /** IANA zone for capture times that name no offset. */
  timeZone: string;
  now: Date;
}

const pictures = new Set(['image/jpeg', 'image/png', 'image/webp']);
// Phones write these; whether they can be read depends on how the image library was built.
const phonePictures = new Set(['image/heic', 'image/heif', 'image/heic-sequence', 'image/heif-sequence']);

/** Decides on each file of an upload by its content, never by its name. One after another: decoding takes memory. */
export async function inspectUpload(
  files: readonly ReceivedFile[],
  options: InspectOptions,
): Promise<Upload> {
  const upload: Upload = { accepted: [], refused: [] };
  for (const file of files) {
    const verdict = await inspectFile(file, options);
    if ('problem' in verdict) upload.refused.push(verdict);
    else upload.accepted.push(verdict);
  }
  return upload;
}

async function inspectFile(
  file: ReceivedFile,
  options: InspectOptions,
): Promise<AcceptedFile | RefusedUpload> {
  const { name, staged } = file;
  const refuse = (problem: string, tooLarge = false): RefusedUpload => ({ name, problem, tooLarge });
  const tooLarge = (max: number) =>
    refuse(
      `The file is larger than the ${Math.floor(max / 1024 / 1024)} MB accepted. Send a smaller version.`,
      true,
    );

  if (!staged) return tooLarge(file.maxBytes);
  if (staged.bytes === 0) return refuse('The file is empty. Send it again.');

  const mediaType = (await fileTypeFromFile(staged.localPath))?.mime ?? null;
  const accepted = options.accepts === 'pictures' ? 'JPEG, PNG or WebP' : 'JPEG, PNG, WebP or PDF';
  if (mediaType === 'application/pdf' && options.accepts === 'evidence') {
    if (staged.bytes > uploadLimits.documentBytes) return tooLarge(uploadLimits.documentBytes);
    const problem = await inspectDocument(staged.localPath);
    return problem ? refuse(problem) : { name, staged, mediaType, size: null, takenAt: null };
  }
  const fromPhone = mediaType !== null && phonePictures.has(mediaType);
  if (mediaType === null || !(fromPhone || pictures.has(mediaType))) {
    const what = mediaType ? `is ${mediaType} by its content` : 'holds no picture that we know';
    return refuse(`The file ${what}, whatever its name says. Send ${accepted}.`);
  }
  const verdict = await inspectPicture(staged.localPath);
  if ('problem' in verdict) {
    return refuse(
      fromPhone ? 'This HEIC picture can’t be read here. Export it as JPEG and send that.' : verdict.problem,
    );
  }
  const takenAt = await readCaptureTime(staged.localPath, options.timeZone, options.now);
  return { name, staged, mediaType, size: verdict.size, takenAt };
}
