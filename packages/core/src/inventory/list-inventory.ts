import type { InventoryItem } from '@garboard/contract/inventory';
import { authorise } from '../access/policy.ts';
import type { Ctx } from '../context.ts';
import { cutPage, decodeCursor, type Page, type PageInput, uuidForm } from '../paging.ts';
import { loadSurvey } from '../surveys/load-survey.ts';
import { readersOnly } from './load-inventory-item.ts';
import { presentInventoryItem } from './present-inventory-item.ts';

/** A survey's equipment in the order it was recorded. @throws Refusal `not-found`, `not-allowed` */
export async function listInventory(
  ctx: Ctx,
  query: PageInput & { surveyId: string },
): Promise<Page<InventoryItem>> {
  const after = decodeCursor(query.cursor, uuidForm);
  const survey = await loadSurvey(ctx, query.surveyId);
  authorise(ctx.actor, survey, 'inventory.read', readersOnly);
  const rows = await ctx.tx.inventoryItem.findMany({
    where: { surveyId: survey.id, ...(after ? { id: { gt: after } } : {}) },
    orderBy: { id: 'asc' },
    take: query.limit + 1,
  });
  const page = cutPage(rows, query.limit, (row) => row.id);
  return { items: page.items.map((row) => presentInventoryItem(ctx, row, survey)), next: page.next };
}
