import type { CatalogueListed, CatalogueOrigin, catalogueQuery } from '@garboard/contract/catalogue';
import { Prisma } from '@garboard/db/database';
import { atMost } from '@garboard/db/reading';
import { type Harm, type System, systems, type Urgency } from '@garboard/trade/vocabulary';
import type { z } from 'zod';
import type { ReadCtx } from '../context.ts';
import { cutPage, decodeCursor, type Page } from '../paging.ts';
import { catalogueFirm } from './catalogue-firm.ts';
import { asWritten, forgiving, type Reading, type Sought } from './read-typed.ts';

interface Row {
  key: string;
  system: string;
  title: string;
  urgency: string;
  harms: string[];
  origin: CatalogueOrigin;
  diagram: string | null;
  /** Place in the order of systems, or how well it fits: whatever the list is ordered by before the key. */
  rank: string;
}
type Query = z.output<typeof catalogueQuery>;
type CataloguePage = Page<CatalogueListed> & { readAs: string | null };

// How the words were read, then the rank and the key of the last row.
const cursorForm = /^(written|forgiving|any|browse)\|([-+.e\d]{1,24})\|([a-z0-9-]{1,200})$/;

/**
 * Known defects as the firm reads them. With words, those that fit best come first: in the title before the rest.
 * Words that no entry has are read as the nearest that some entry has; when none has all of them, any will do.
 */
export async function listCatalogue(ctx: ReadCtx, query: Query): Promise<CataloguePage> {
  const { firmId } = catalogueFirm(ctx, query.firmId);
  const [, reading, rank, key] = cursorForm.exec(decodeCursor(query.cursor, cursorForm) ?? '') ?? [];
  const after = rank === undefined || key === undefined ? null : { rank: Number(rank), key };
  const typed = query.q ?? '';
  const written = reading === 'browse' ? null : asWritten(typed);
  const page = (sought: Sought | null) => readPage(ctx, { ...query, firmId, after, sought });
  if (written) {
    if (!reading || reading === 'written') {
      const rows = await page(written);
      if (rows.length > 0 || reading) return present(rows, query, 'written', null);
    }
    if (reading || (await saysSomething(ctx, written))) {
      const forgiven = await forgiving(ctx, firmId, typed);
      for (const attempt of ['forgiving', 'any'] as const) {
        if (reading && reading !== attempt) continue;
        const rows = await page(forgiven[attempt]);
        if (rows.length > 0) return present(rows, query, attempt, forgiven[attempt].readAs);
      }
      return { items: [], next: null, readAs: null };
    }
  }
  return present(await page(null), query, 'browse', null);
}

/** Words such as “the” say nothing that could be sought. */
async function saysSomething(ctx: ReadCtx, { tsquery }: Sought): Promise<boolean> {
  const [row] = await ctx.tx.$queryRaw<{ nodes: number }[]>`
    SELECT numnode(to_tsquery('garboard_english', ${tsquery})) AS nodes`;
  return (row?.nodes ?? 0) > 0;
}

interface PageOf extends Pick<Query, 'system' | 'standard' | 'limit'> {
  firmId: string;
  sought: Sought | null;
  after: { rank: number; key: string } | null;
}

const always = Prisma.sql`true`;

/** How well an entry fits: a word of the title counts most, one of the advice least. */
const fit = Prisma.sql`-(ts_rank('{0.05, 0.2, 0.4, 1}', e.search, q) + ts_rank('{0.05, 0.2, 0.4, 1}', e.search, x))`;

/** One row more than a page, in order: by fit, or by system where nothing is sought. */
async function readPage(ctx: ReadCtx, { firmId, sought, after, ...query }: PageOf): Promise<Row[]> {
  const standard = query.standard?.match(/[\p{L}\p{N}]/u) ? query.standard : null;
  const conditions = Prisma.sql`
    ${query.system ? Prisma.sql`e.system = ${query.system}` : always}
    AND ${
      standard
        ? Prisma.sql`e.standards LIKE (SELECT '%' || garboard_designations(ARRAY[${standard}]) || '%')`
        : always
    }
    AND ${sought ? Prisma.sql`e.search @@ q` : always}`;
  // Read once for the whole list, not for each entry.
  const queries = sought
    ? Prisma.sql`, to_tsquery('garboard_english', ${sought.tsquery}) AS q, to_tsquery('garboard_english', ${sought.exact}) AS x`
    : Prisma.empty;
  const rank = sought ? fit : Prisma.sql`array_position(${systems}::text[], e.system)::float4`;
  return ctx.tx.$queryRaw<Row[]>`
    SELECT key, system, title, urgency, harms, origin, diagram, rank::text
      FROM (SELECT e.key, e.system, e.title, e.urgency, e.harms, ours.diagram, ${rank} AS rank,
                   CASE WHEN ours.key IS NULL THEN 'firm' ELSE 'firm-wording' END AS origin
              FROM firm_catalogue_entries AS e LEFT JOIN catalogue_entries AS ours ON ours.key = e.key${queries}
             WHERE e.firm_id = ${firmId}::uuid AND e.current AND ${conditions}
             UNION ALL
            SELECT e.key, e.system, e.title, e.urgency, e.harms, e.diagram, ${rank}, 'garboard'
              FROM catalogue_entries AS e${queries}
             WHERE ${conditions}
               AND e.key NOT IN (SELECT own.key FROM firm_catalogue_entries AS own
                                  WHERE own.firm_id = ${firmId}::uuid AND own.current)) AS shown
     WHERE ${after ? Prisma.sql`(rank, key) > (${after.rank}::float4, ${after.key})` : always}
     ORDER BY shown.rank, key
     ${atMost(query.limit + 1)}`;
}

function present(
  rows: Row[],
  query: Query,
  reading: Reading | 'browse',
  readAs: string | null,
): CataloguePage {
  const page = cutPage(rows, query.limit, (row) => `${reading}|${row.rank}|${row.key}`);
  const items = page.items.map((row) => ({
    key: row.key,
    system: row.system as System,
    title: row.title,
    urgency: row.urgency as Urgency,
    harms: row.harms as Harm[],
    origin: row.origin,
    hasDiagram: row.diagram !== null,
  }));
  return { items, next: page.next, readAs };
}
