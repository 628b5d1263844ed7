import type { CatalogueEntry, CatalogueOrigin } from '@garboard/contract/catalogue';
import { diagrams } from '@garboard/trade/catalogue/diagrams';
import { slotAsked, slotsOf } from '@garboard/trade/catalogue/slots';
import type { Harm, System, Urgency } from '@garboard/trade/vocabulary';
import { findWorksheet } from '@garboard/trade/worksheets/registry';
import type { Ctx } from '../context.ts';
import type { EntryWords, ShownEntry } from './load-entry.ts';

/** The titles under which the firm reads these entries; those that are gone are left out. */
export async function titlesOf(
  ctx: Ctx,
  firmId: string,
  keys: readonly string[],
): Promise<Map<string, string>> {
  const wanted = { key: { in: [...new Set(keys)] } };
  const select = { key: true, title: true };
  const ours = await ctx.tx.catalogueEntry.findMany({ where: wanted, select });
  const own = await ctx.tx.firmCatalogueEntry.findMany({
    where: { ...wanted, firmId, current: true },
    select,
  });
  return new Map([...ours, ...own].map((row) => [row.key, row.title]));
}

/** The words of an entry, with the titles of what it refers to. */
export function presentWords(words: EntryWords, origin: CatalogueOrigin, titles: Map<string, string>) {
  return {
    key: words.key,
    system: words.system as System,
    title: words.title,
    lookFor: words.lookFor,
    observed: words.observed,
    consequence: words.consequence,
    recommendation: words.recommendation,
    urgency: words.urgency as Urgency,
    withinDays: words.withinDays,
    raise: words.raise,
    lower: words.lower,
    harms: words.harms as Harm[],
    references: words.references,
    worksheets: words.worksheets.flatMap((kind) => {
      const worksheet = findWorksheet(kind);
      return worksheet ? [{ kind, title: worksheet.title }] : [];
    }),
    cautions: words.cautions,
    related: words.related.flatMap((key) => {
      const title = titles.get(key);
      return title === undefined ? [] : [{ key, title }];
    }),
    alsoCalled: words.alsoCalled,
    origin,
    version: words.version,
  };
}

/** An entry as the firm reads it. */
export async function presentEntry(
  ctx: Ctx,
  firm: { firmId: string; mayWrite: boolean },
  entry: ShownEntry,
): Promise<CatalogueEntry> {
  const { words, origin } = entry;
  const titles = await titlesOf(ctx, firm.firmId, words.related);
  const drawing = entry.diagram === null ? undefined : diagrams[entry.diagram];
  return {
    ...presentWords(words, origin, titles),
    diagram: drawing ?? null,
    slots: slotsOf([words.observed, words.consequence, words.recommendation].join('\n')).map(slotAsked),
    may: { edit: firm.mayWrite },
  };
}
