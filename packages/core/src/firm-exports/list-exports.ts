import type { FirmExport } from '@garboard/contract/archive';
import type { Ctx } from '../context.ts';
import { loadFirm, mustBePrincipal } from '../firms/load-firm.ts';
import { cutPage, decodeCursor, type Page, type PageInput, uuidForm } from '../paging.ts';
import { presentExport } from './present-export.ts';

/** The archives asked for of a firm, newest first. @throws Refusal `not-found`, `not-allowed` */
export async function listExports(
  ctx: Ctx,
  { firmId, limit, cursor }: PageInput & { firmId: string },
): Promise<Page<FirmExport>> {
  const before = decodeCursor(cursor, uuidForm);
  await loadFirm(ctx, firmId);
  mustBePrincipal(ctx, firmId);
  const rows = await ctx.tx.firmExport.findMany({
    where: { firmId, ...(before ? { id: { lt: before } } : {}) },
    orderBy: { id: 'desc' },
    take: limit + 1,
  });
  const page = cutPage(rows, limit, (row) => row.id);
  return { items: page.items.map(presentExport), next: page.next };
}
