import type { Ctx } from '../context.ts';
import { recordEvent } from '../events/record-event.ts';
import { writableSurvey } from '../findings/writable-survey.ts';
import { notFound } from '../problems.ts';
import { loadInventoryItem } from './load-inventory-item.ts';

/** Takes a piece of equipment off the list; issued reports keep it. @throws Refusal `not-found`, `wrong-state` */
export async function deleteInventoryItem(ctx: Ctx, id: string): Promise<void> {
  const { firmId, surveyId, name } = await loadInventoryItem(ctx, id);
  const { role } = await writableSurvey(ctx, surveyId, 'inventory.write');
  const gone = await ctx.tx.inventoryItem.deleteMany({ where: { id } });
  if (gone.count === 0) throw notFound('piece of equipment');
  await recordEvent(ctx, { firmId, surveyId, kind: 'inventory.removed', role, data: { name } });
}
