import type { CatalogueEntry, CatalogueWording } from '@garboard/contract/catalogue';
import { newId } from '@garboard/db/ids';
import { cautionedSystems } from '@garboard/trade/catalogue/cautioned-systems';
import { systemLabels } from '@garboard/trade/vocabulary';
import { findWorksheet } from '@garboard/trade/worksheets/registry';
import { actorId, actorName } from '../access/actor.ts';
import type { Ctx } from '../context.ts';
import { invalidField, staleVersion } from '../problems.ts';
import { entryFirm, mustWrite } from './catalogue-firm.ts';
import { getCatalogueEntry } from './get-entry.ts';
import { keyForm, shownEntry } from './load-entry.ts';
import { lockEntry } from './lock-entry.ts';
import { titlesOf } from './present-entry.ts';

export interface PutEntry {
  key: string;
  firmId?: string | undefined;
  wording: CatalogueWording;
  ifMatch?: number | undefined;
}

/**
 * Saves an entry of the firm's own, or the firm's words over ours, as a new version that is read from now on.
 * Findings keep the words they have.
 *
 * @throws Refusal `not-allowed`, `invalid-input`, `stale-version` when `ifMatch` isn't the version read now
 */
export async function putCatalogueEntry(ctx: Ctx, input: PutEntry): Promise<CatalogueEntry> {
  const { key, wording, ifMatch } = input;
  const firm = entryFirm(ctx, input.firmId);
  mustWrite(firm);
  const { firmId } = firm;
  if (!keyForm.test(key) || key.length > 80) {
    throw invalidField(
      '/key',
      'A key is two or more words in small letters and digits joined by hyphens, 80 characters at most.',
    );
  }
  await refuseUnknown(ctx, { key, firmId, wording });
  await lockEntry(ctx, firmId, key);
  const now = await shownEntry(ctx, firmId, key);
  if (ifMatch !== undefined && ifMatch !== now?.words.version) throw staleVersion('entry');
  const { _max: last } = await ctx.tx.firmCatalogueEntry.aggregate({
    where: { firmId, key },
    _max: { version: true },
  });
  await ctx.tx.firmCatalogueEntry.updateMany({
    where: { firmId, key, current: true },
    data: { current: false },
  });
  await ctx.tx.firmCatalogueEntry.create({
    data: {
      id: newId(),
      firmId,
      key,
      ...wording,
      version: Math.max(last.version ?? 0, now?.words.version ?? 0) + 1,
      savedAt: ctx.clock(),
      savedById: actorId(ctx.actor),
      savedBy: actorName(ctx.actor),
    },
    select: { id: true },
  });
  return getCatalogueEntry(ctx, { key, firmId });
}

/** Everything an entry refers to must be there, and what can hurt must be said. */
async function refuseUnknown(
  ctx: Ctx,
  { key, firmId, wording }: { key: string; firmId: string; wording: CatalogueWording },
): Promise<void> {
  for (const [at, kind] of wording.worksheets.entries()) {
    if (!findWorksheet(kind)) {
      throw invalidField(
        `/worksheets/${at}`,
        `There is no worksheet of kind “${kind}”; GET /v1/worksheet-kinds lists them.`,
      );
    }
  }
  const titles = await titlesOf(ctx, firmId, wording.related);
  for (const [at, related] of wording.related.entries()) {
    if (related === key) throw invalidField(`/related/${at}`, 'An entry can’t be related to itself.');
    if (!titles.has(related)) {
      throw invalidField(`/related/${at}`, `There is no entry “${related}” in your catalogue.`);
    }
  }
  if (cautionedSystems.includes(wording.system) && wording.cautions.length === 0) {
    throw invalidField(
      '/cautions',
      `Say what can hurt while testing: an entry of the system “${systemLabels[wording.system]}” needs a caution.`,
    );
  }
}
