import { actorName } from '../access/actor.ts';
import type { Ctx } from '../context.ts';
import { notFound, staleVersion, wrongState } from '../problems.ts';
import { entryFirm, mustWrite } from './catalogue-firm.ts';
import { keyForm, loadEntry } from './load-entry.ts';
import { lockEntry } from './lock-entry.ts';

/**
 * Takes the firm's words back: ours are read again, or the firm's own entry is retired. Its versions stay on record.
 *
 * @throws Refusal `not-found`, `not-allowed`, `wrong-state` when ours are read already, `stale-version`
 */
export async function deleteCatalogueEntry(
  ctx: Ctx,
  input: { key: string; firmId?: string | undefined; ifMatch?: number | undefined },
): Promise<void> {
  const firm = entryFirm(ctx, input.firmId);
  const { key } = input;
  if (!keyForm.test(key)) throw notFound('entry in the catalogue');
  await lockEntry(ctx, firm.firmId, key);
  const { firmRow } = await loadEntry(ctx, firm.firmId, key);
  mustWrite(firm);
  if (!firmRow) {
    throw wrongState('These are Garboard’s own words: your firm has none of its own over them to take back.');
  }
  if (input.ifMatch !== undefined && input.ifMatch !== firmRow.version) throw staleVersion('entry');
  await ctx.tx.firmCatalogueEntry.updateMany({
    where: { id: firmRow.id },
    data: { current: false, retiredAt: ctx.clock(), retiredBy: actorName(ctx.actor) },
  });
}
