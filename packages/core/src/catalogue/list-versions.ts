import type { CatalogueVersion, catalogueVersionQuery } from '@garboard/contract/catalogue';
import type { z } from 'zod';
import type { Ctx } from '../context.ts';
import { cutPage, decodeCursor, type Page } from '../paging.ts';
import { notFound } from '../problems.ts';
import { entryFirm } from './catalogue-firm.ts';
import { keyForm } from './load-entry.ts';
import { presentWords, titlesOf } from './present-entry.ts';

const versionForm = /^\d{1,9}$/;

/**
 * Every wording of an entry that the firm has saved, also of one it has retired, and ours as it is now: newest number
 * first. @throws Refusal `not-found`
 */
export async function listCatalogueVersions(
  ctx: Ctx,
  query: z.output<typeof catalogueVersionQuery> & { key: string },
): Promise<Page<CatalogueVersion>> {
  const below = Number(decodeCursor(query.cursor, versionForm) ?? Number.MAX_SAFE_INTEGER);
  const { firmId } = entryFirm(ctx, query.firmId);
  const { key } = query;
  const known = keyForm.test(key);
  const ours = known ? await ctx.tx.catalogueEntry.findUnique({ where: { key } }) : null;
  const saved = known
    ? await ctx.tx.firmCatalogueEntry.findMany({
        where: { firmId, key, ...(query.cursor ? { version: { lt: below } } : {}) },
        orderBy: { version: 'desc' },
        take: query.limit + 1,
      })
    : [];
  if (!(ours || saved.length || query.cursor)) throw notFound('entry in the catalogue');
  const oursRead = ours !== null && !(await hasOwnWords(ctx, firmId, key));
  const rows = [
    ...saved.map((words) => ({
      words,
      origin: ours ? ('firm-wording' as const) : ('firm' as const),
      savedAt: words.savedAt,
      savedBy: words.savedBy,
      current: words.current,
      retiredAt: words.retiredAt?.toISOString() ?? null,
      retiredBy: words.retiredBy,
    })),
    ...(ours && ours.version < below
      ? [
          {
            words: ours,
            origin: 'garboard' as const,
            savedAt: ours.updatedAt,
            savedBy: 'Garboard',
            current: oursRead,
            retiredAt: null,
            retiredBy: null,
          },
        ]
      : []),
  ].sort((a, b) => b.words.version - a.words.version);
  const page = cutPage(rows, query.limit, (row) => String(row.words.version));
  const titles = await titlesOf(
    ctx,
    firmId,
    page.items.flatMap((row) => row.words.related),
  );
  const items = page.items.map(({ words, origin, savedAt, ...rest }) => ({
    ...presentWords(words, origin, titles),
    savedAt: savedAt.toISOString(),
    ...rest,
  }));
  return { items, next: page.next };
}

async function hasOwnWords(ctx: Ctx, firmId: string, key: string): Promise<boolean> {
  return (await ctx.tx.firmCatalogueEntry.count({ where: { firmId, key, current: true } })) > 0;
}
