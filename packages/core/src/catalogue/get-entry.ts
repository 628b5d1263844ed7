import type { CatalogueEntry } from '@garboard/contract/catalogue';
import type { Ctx } from '../context.ts';
import { entryFirm } from './catalogue-firm.ts';
import { loadEntry } from './load-entry.ts';
import { presentEntry } from './present-entry.ts';

/** A known defect as the firm reads it. @throws Refusal `not-found` */
export async function getCatalogueEntry(
  ctx: Ctx,
  input: { key: string; firmId?: string | undefined },
): Promise<CatalogueEntry> {
  const firm = entryFirm(ctx, input.firmId);
  return presentEntry(ctx, firm, await loadEntry(ctx, firm.firmId, input.key));
}
