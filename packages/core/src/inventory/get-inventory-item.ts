import type { InventoryItem } from '@garboard/contract/inventory';
import type { Ctx } from '../context.ts';
import { loadInventoryItem } from './load-inventory-item.ts';
import { presentInventoryItem } from './present-inventory-item.ts';

/** One piece of equipment. @throws Refusal `not-found`, `not-allowed` */
export async function getInventoryItem(ctx: Ctx, id: string): Promise<InventoryItem> {
  const row = await loadInventoryItem(ctx, id);
  return presentInventoryItem(ctx, row, row.survey);
}
