import type { InventoryItem, inventoryPatch } from '@garboard/contract/inventory';
import type { z } from 'zod';
import type { Ctx } from '../context.ts';
import { recordEvent } from '../events/record-event.ts';
import { writableSurvey } from '../findings/writable-survey.ts';
import { staleVersion } from '../problems.ts';
import { getInventoryItem } from './get-inventory-item.ts';
import { loadInventoryItem } from './load-inventory-item.ts';
import { dateOf, dayOf } from './present-inventory-item.ts';
import { refuseImpossibleDates } from './refuse-impossible-dates.ts';

export interface UpdateInventoryItem {
  id: string;
  patch: z.output<typeof inventoryPatch>;
  ifMatch?: number | undefined;
}

/** Edits a piece of equipment. @throws Refusal `stale-version`; `invalid-input` for impossible dates */
export async function updateInventoryItem(
  ctx: Ctx,
  { id, patch, ifMatch }: UpdateInventoryItem,
): Promise<InventoryItem> {
  const { firmId, surveyId } = await loadInventoryItem(ctx, id);
  const { survey, role } = await writableSurvey(ctx, surveyId, 'inventory.write');
  // Read again now that the survey is held: the dates must fit together as they are, not as they were.
  const item = await loadInventoryItem(ctx, id);
  const { madeOn = dayOf(item.madeOn), expiresOn = dayOf(item.expiresOn), ...fields } = patch;
  if (ifMatch !== undefined && ifMatch !== item.version) throw staleVersion('piece of equipment');
  if (patch.madeOn !== undefined || patch.expiresOn !== undefined) {
    refuseImpossibleDates(ctx, survey.timeZone, { madeOn, expiresOn });
  }
  const changed = await ctx.tx.inventoryItem.updateMany({
    where: { id, version: item.version },
    data: {
      ...fields,
      madeOn: dateOf(madeOn),
      expiresOn: dateOf(expiresOn),
      updatedAt: ctx.clock(),
      version: { increment: 1 },
    },
  });
  if (changed.count === 0) throw staleVersion('piece of equipment');
  const name = fields.name ?? item.name;
  await recordEvent(ctx, { firmId, surveyId, kind: 'inventory.edited', role, data: { name } });
  return getInventoryItem(ctx, id);
}
