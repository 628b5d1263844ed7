import type { importPhotos, SurveyImportRecord } from '@garboard/contract/imports';
import type { z } from 'zod';
import type { Ctx } from '../context.ts';
import { invalidField, wrongState } from '../problems.ts';
import { lockImport, requireOpen } from './load-import.ts';
import { presentImport } from './present-import.ts';

/**
 * Says by which names photos come, or which photo of the survey each has become. Replaces what was said before.
 *
 * @throws Refusal `not-found`; `wrong-state` when it is being brought in, or its photos are in a ZIP; `invalid-input`
 *   for a name said twice and a photo of another survey
 */
export async function namePhotos(
  ctx: Ctx,
  { id, photos }: { id: string; photos: z.output<typeof importPhotos> },
): Promise<SurveyImportRecord> {
  const { row, survey } = await lockImport(ctx, id);
  requireOpen(row);
  if (row.zipSha256)
    throw wrongState('The photos of this sheet come in its ZIP; none can be named beside it.');
  const { items } = photos;
  if (new Set(items.map(({ name }) => name)).size !== items.length) {
    throw invalidField('/items', 'A name is said twice. Give each file its folder and its name.');
  }
  const ids = [...new Set(items.flatMap(({ photoId }) => photoId ?? []))];
  const found = await ctx.tx.photo.count({ where: { id: { in: ids }, surveyId: row.surveyId } });
  if (found !== ids.length) throw invalidField('/items', 'Only photos of this survey can be named.');
  await ctx.tx.importPhoto.deleteMany({ where: { importId: id } });
  await ctx.tx.importPhoto.createMany({
    data: items.map((item, ordinal) => ({ firmId: row.firmId, importId: id, ordinal, ...item })),
  });
  const touched = await ctx.tx.surveyImport.update({ where: { id }, data: { updatedAt: ctx.clock() } });
  return presentImport(ctx, touched, survey);
}
