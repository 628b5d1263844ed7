import type { CoveredItem, clearanceFields } from '@garboard/contract/clearances';
import type { SnapshotFinding } from '@garboard/contract/report-snapshot';
import { itemsLeft } from '@garboard/trade/clearing';
import type { WorksheetResult } from '@garboard/trade/worksheets/core/evaluate';
import { findWorksheet } from '@garboard/trade/worksheets/registry';
import type { z } from 'zod';
import type { Ctx } from '../context.ts';
import type { Upload } from '../files/received-file.ts';
import type { LoadedFinding } from '../findings/load-finding.ts';
import { invalidField } from '../problems.ts';
import { loadWorksheet } from '../worksheets/load-worksheet.ts';
import { presentWorksheet } from '../worksheets/present-worksheet.ts';
import { workInputs } from '../worksheets/work-inputs.ts';
import { type Item, issuedItems, standingsOf } from './items.ts';

type Fields = z.output<typeof clearanceFields>;

/**
 * The items that evidence covers: those named, or all that are left. None for a finding without items.
 *
 * @throws Refusal `invalid-input` for one that isn't the finding's or is decided already
 */
export function coveredItems(finding: LoadedFinding, named: readonly string[] | undefined): CoveredItem[] {
  const items = issuedItems(finding);
  const ids = items.map((item) => item.id);
  const left = itemsLeft(ids, standingsOf(finding));
  if (named === undefined || named.length === 0) return covering(items, left);
  for (const itemId of named) {
    if (!ids.includes(itemId)) {
      throw invalidField('/itemIds', 'One of these items doesn’t belong to the finding. Load it again.');
    }
    if (!left.includes(itemId)) {
      const text = items.find((item) => item.id === itemId)?.text;
      throw invalidField('/itemIds', `“${text}” is decided already. Leave it out.`);
    }
  }
  return covering(items, named);
}

/** Items of a finding as evidence covers them, undecided yet. */
export const covering = (items: readonly Item[], ids: readonly string[]): CoveredItem[] =>
  items
    .filter((item) => ids.includes(item.id))
    .map(({ id, text }) => ({
      itemId: id,
      text,
      decision: null,
      reason: null,
      limit: null,
      limitUntil: null,
    }));

/** The measurement that goes with evidence: one taken again and worked now, or one of the survey as the sender sees it. */
export async function measurementOf(
  ctx: Ctx,
  finding: LoadedFinding,
  { worksheet, worksheetId }: Fields,
): Promise<{ inputs: Record<string, unknown> | null; result: WorksheetResult } | null> {
  if (worksheet && worksheetId) {
    throw invalidField('/worksheet', 'Send a measurement taken again or name one of the survey, not both.');
  }
  if (worksheet) {
    const kind = findWorksheet(worksheet.kind);
    if (!kind) throw invalidField('/worksheet/kind', 'There is no such kind of worksheet.');
    return { inputs: worksheet.inputs, result: workInputs(kind, worksheet.inputs) };
  }
  if (!worksheetId) return null;
  const kept = await loadWorksheet(ctx, worksheetId);
  if (kept.surveyId !== finding.surveyId) {
    throw invalidField('/worksheetId', 'That worksheet belongs to another survey.');
  }
  const { inputs, result } = presentWorksheet(ctx, kept);
  return { inputs, result };
}

/**
 * Which photo of the finding each file answers, by the file's place.
 *
 * @throws Refusal `invalid-input` for a file that isn't there or isn't a picture, or a photo that the finding doesn't show
 */
export function answersOf(
  finding: LoadedFinding,
  pairs: Fields['pairs'],
  files: Upload['accepted'],
): Map<number, string> {
  const shown = new Set((finding.issued as SnapshotFinding | null)?.photos.map((photo) => photo.id));
  const answers = new Map<number, string>();
  for (const { file, beforePhotoId } of pairs ?? []) {
    if (!files[file]?.size) {
      throw invalidField('/pairs', 'A pair names a file that was not sent with the evidence or is no photo.');
    }
    if (!shown.has(beforePhotoId)) {
      throw invalidField('/pairs', 'A pair names a photo that this finding doesn’t show in the report.');
    }
    answers.set(file, beforePhotoId);
  }
  return answers;
}
