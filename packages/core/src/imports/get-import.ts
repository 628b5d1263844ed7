import type { SurveyImportRecord } from '@garboard/contract/imports';
import type { Ctx } from '../context.ts';
import { loadImport } from './load-import.ts';
import { presentImport } from './present-import.ts';

/** What would be made of a sheet, or what was. @throws Refusal `not-found` */
export async function getImport(ctx: Ctx, id: string): Promise<SurveyImportRecord> {
  const { row, survey } = await loadImport(ctx, id);
  return presentImport(ctx, row, survey);
}
