import type { InventoryItem, inventoryCreate } from '@garboard/contract/inventory';
import { newId } from '@garboard/db/ids';
import type { z } from 'zod';
import type { Ctx } from '../context.ts';
import { recordEvent } from '../events/record-event.ts';
import { writableSurvey } from '../findings/writable-survey.ts';
import { wrongState } from '../problems.ts';
import { dateOf, presentInventoryItem } from './present-inventory-item.ts';
import { refuseImpossibleDates } from './refuse-impossible-dates.ts';

/**
 * Records a piece of equipment. With an id that this survey already has, answers what is kept under it: a phone
 * that didn't hear the first answer may ask again.
 *
 * @throws Refusal `invalid-input` for impossible dates; `wrong-state` when the id names something else
 */
export async function createInventoryItem(
  ctx: Ctx,
  input: { surveyId: string; item: z.output<typeof inventoryCreate> },
): Promise<InventoryItem> {
  const { survey, role } = await writableSurvey(ctx, input.surveyId, 'inventory.write');
  const { id = newId(), madeOn, expiresOn, ...fields } = input.item;
  const at = { firmId: survey.firmId, surveyId: survey.id };
  const kept = () => ctx.tx.inventoryItem.findFirst({ where: { id, surveyId: survey.id } });
  const before = input.item.id ? await kept() : null;
  if (before) return presentInventoryItem(ctx, before, survey);
  refuseImpossibleDates(ctx, survey.timeZone, { madeOn, expiresOn });
  const now = ctx.clock();
  const dates = { madeOn: dateOf(madeOn), expiresOn: dateOf(expiresOn), createdAt: now, updatedAt: now };
  // The id may name a row that this actor can't see, even another firm's: that must not break the transaction.
  await ctx.tx.inventoryItem.createMany({ data: [{ id, ...at, ...fields, ...dates }], skipDuplicates: true });
  const row = await kept();
  if (!row) throw wrongState('This id already names something else. Make a new one and send it again.');
  await recordEvent(ctx, { ...at, kind: 'inventory.added', role, data: { name: fields.name } });
  return presentInventoryItem(ctx, row, survey);
}
