import { uploadLimits } from '@garboard/contract/limits';
import { fileTypeFromFile } from 'file-type';
import { readCaptureTime } from './capture-time.ts';
import { isHeic } from './heic-structure.ts';
import { inspectDocument } from './inspect-document.ts';
import { inspectHeic } from './inspect-heic.ts';
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
  const accepted =
    options.accepts === 'pictures' ? 'JPEG, PNG, WebP or HEIC' : 'JPEG, PNG, WebP, HEIC or PDF';
  if (mediaType === 'application/pdf' && options.accepts === 'evidence') {
    if (staged.bytes > uploadLimits.documentBytes) return tooLarge(uploadLimits.documentBytes);
    const problem = await inspectDocument(staged.localPath);
    return problem ? refuse(problem) : { name, staged, mediaType, size: null, takenAt: null };
  }
  if (mediaType === null || !(isHeic(mediaType) || pictures.has(mediaType))) {
    const what = mediaType ? `is ${mediaType} by its content` : 'holds no picture that we know';
    return refuse(`The file ${what}, whatever its name says. Send ${accepted}.`);
  }
  const path = staged.localPath;
  // Half a proof misleads, so evidence is decoded before it is taken. Photos are decoded a moment later, by the worker.
  const look = options.accepts === 'evidence' ? 'whole' : 'quick';
  const verdict = isHeic(mediaType) ? await inspectHeic(path) : await inspectPicture(path, look);
  if ('problem' in verdict) return refuse(verdict.problem);
  const exif = verdict.exif ?? path;
  const takenAt = await readCaptureTime(exif, options.timeZone, options.now);
  return { name, staged, mediaType, size: verdict.size, takenAt };
}
