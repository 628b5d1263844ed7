import { importLimits } from '@garboard/contract/limits';
import { fileTypeFromFile } from 'file-type';
import type { AcceptedFile, ReceivedFile, RefusedUpload, Upload } from '../files/received-file.ts';

const megabytes = (bytes: number) => `${Math.floor(bytes / 1024 / 1024)} MB`;

/** Sorts what a survey is brought in from into the sheet and the ZIP, by their content. */
export async function inspectBrought(files: readonly ReceivedFile[]): Promise<Upload> {
  const upload: Upload = { accepted: [], refused: [] };
  for (const file of files) {
    const verdict = await inspectOne(file);
    if ('problem' in verdict) upload.refused.push(verdict);
    else upload.accepted.push(verdict);
  }
  return upload;
}

async function inspectOne({ name, staged, maxBytes }: ReceivedFile): Promise<AcceptedFile | RefusedUpload> {
  const refuse = (problem: string, tooLarge = false): RefusedUpload => ({ name, problem, tooLarge });
  if (!staged) {
    return refuse(
      `The file is larger than the ${megabytes(maxBytes)} accepted. Bring the photos in by two ZIPs.`,
      true,
    );
  }
  if (staged.bytes === 0) return refuse('The file is empty. Choose it again.');
  const kind = await fileTypeFromFile(staged.localPath);
  const take = (mediaType: string): AcceptedFile => ({ name, staged, mediaType, size: null, takenAt: null });
  if (kind?.mime === 'application/zip') return take('application/zip');
  if (kind && /officedocument\.spreadsheetml|ms-excel|opendocument|x-cfb|numbers/.test(kind.mime)) {
    return refuse(
      'This is a spreadsheet’s own file. In the spreadsheet choose “Save as”, CSV (UTF-8), and send that.',
    );
  }
  // A sheet has no mark of its own; what is found is by chance or another kind of file.
  if (kind && !/^text\/|xml$/.test(kind.mime)) {
    return refuse(`The file is ${kind.mime} by its content. Send the findings as CSV, and photos in a ZIP.`);
  }
  if (staged.bytes > importLimits.csvBytes) {
    return refuse(
      `A sheet of findings may have ${megabytes(importLimits.csvBytes)}; this file has more.`,
      true,
    );
  }
  return take('text/csv');
}
