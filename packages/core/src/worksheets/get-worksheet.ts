import type { Worksheet } from '@garboard/contract/worksheets';
import type { Ctx } from '../context.ts';
import { loadWorksheet } from './load-worksheet.ts';
import { presentWorksheet } from './present-worksheet.ts';

/** A worksheet the actor may see; parties get what was issued. @throws Refusal `not-found` */
export async function getWorksheet(ctx: Ctx, id: string): Promise<Worksheet> {
  return presentWorksheet(ctx, await loadWorksheet(ctx, id));
}
