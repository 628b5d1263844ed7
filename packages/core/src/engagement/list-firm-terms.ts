import type { firmTerms } from '@garboard/contract/quotations';
import type { z } from 'zod';
import type { Ctx } from '../context.ts';
import { loadFirm } from '../firms/load-firm.ts';
import { cutPage, decodeCursor, type Page, type PageInput } from '../paging.ts';

export type FirmTermsView = z.output<typeof firmTerms>;

/** Presents a version of the firm's terms. */
export const presentTerms = (row: { version: number; text: string; savedAt: Date; savedBy: string }) => ({
  version: row.version,
  text: row.text,
  savedAt: row.savedAt.toISOString(),
  savedBy: row.savedBy,
});

/** The firm's terms of business, newest version first. @throws Refusal `not-found` */
export async function listFirmTerms(
  ctx: Ctx,
  input: PageInput & { firmId: string },
): Promise<Page<FirmTermsView>> {
  await loadFirm(ctx, input.firmId);
  const before = decodeCursor(input.cursor, /^\d{1,9}$/);
  const rows = await ctx.tx.firmTerms.findMany({
    where: { firmId: input.firmId, ...(before ? { version: { lt: Number(before) } } : {}) },
    orderBy: { version: 'desc' },
    take: input.limit + 1,
  });
  const page = cutPage(rows, input.limit, (row) => String(row.version));
  return { items: page.items.map(presentTerms), next: page.next };
}
