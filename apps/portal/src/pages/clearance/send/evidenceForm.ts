import type { WorksheetKind } from '@garboard/contract/worksheets';
import { Incomplete } from '../../../api/problems.ts';
import { draftFileOf } from '../../../capture/evidence.ts';
import { inputsOf } from '../../worksheets/form/draft.ts';
import { fieldsOf } from '../../worksheets/form/fieldSpec.ts';
import type { EvidenceDraft } from './useEvidenceDraft.ts';

/**
 * The multipart form of the evidence. Text parts go first, so that the server knows them before it takes in a file.
 *
 * @throws Incomplete when a photo is no longer on the device
 */
export async function evidenceForm(
  personId: string,
  draft: Omit<EvidenceDraft, 'attempt'>,
  itemIds: readonly string[] | null,
  kind: WorksheetKind | undefined,
): Promise<FormData> {
  const { statement, workDoneBy, workDoneOn, revision, measured, worksheetId } = draft;
  const body = new FormData();
  for (const [name, value] of Object.entries({ statement, workDoneBy, workDoneOn })) body.append(name, value);
  if (itemIds) body.append('itemIds', JSON.stringify(itemIds));
  if (revision !== null) body.append('revision', String(revision));
  if (measured && kind) {
    const inputs = inputsOf(fieldsOf(kind.inputs), measured.entries);
    body.append('worksheet', JSON.stringify({ kind: kind.kind, inputs }));
  } else if (worksheetId) {
    body.append('worksheetId', worksheetId);
  }
  const pairs = draft.files.flatMap(({ beforePhotoId }, file) =>
    beforePhotoId ? [{ file, beforePhotoId }] : [],
  );
  if (pairs.length) body.append('pairs', JSON.stringify(pairs));
  for (const kept of draft.files) {
    const file = await draftFileOf(personId, kept);
    if (!file) {
      throw new Incomplete(`${kept.name} is no longer on this device. Take it out and choose it again.`);
    }
    body.append('file', file, file.name);
  }
  return body;
}
