import { Refusal } from '../problems.ts';
import type { RefusedUpload } from './received-file.ts';

/** The refusal of a whole upload, naming each file at fault: `too-large` when that is all that is wrong. */
export function refuseUpload(refused: readonly RefusedUpload[]): Refusal {
  const type = refused.length > 0 && refused.every((f) => f.tooLarge) ? 'too-large' : 'files-refused';
  const detail = refused.map((f) => `${f.name}: ${f.problem}`).join(' ');
  return new Refusal(
    type,
    detail,
    refused.map((f) => ({ pointer: f.name, detail: f.problem })),
  );
}

/** The refusal of a form in which no file came. */
export const noFiles = () =>
  new Refusal('files-refused', 'The form holds no file. Send each file in a part named “file”.', [
    { pointer: 'file', detail: 'At least one file is needed.' },
  ]);
