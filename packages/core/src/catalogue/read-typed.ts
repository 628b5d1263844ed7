import { Prisma } from '@garboard/db/database';
import { withSynonyms } from '@garboard/trade/catalogue/synonyms';
import type { ReadCtx } from '../context.ts';
import { exchanged, nearestWords, soughtWords } from './sought-words.ts';

/**
 * How the words typed are taken: as `written`; with misspelt ones read as their nearest (`forgiving`); or, when no
 * entry has them all, as any of them.
 */
export type Reading = 'written' | 'forgiving' | 'any';

/** A question for PostgreSQL's full text search in the form of `to_tsquery`. */
export interface Sought {
  tsquery: string;
  /** The same without unfinished words: entries that have the very words come before those with longer ones. */
  exact: string;
  /** What misspelt words were read as; null when none was. */
  readAs: string | null;
}

/** One word, and what else may stand for it; `begun` also finds longer words that begin so. */
function term(words: readonly string[], begun: boolean): string {
  const lexemes = words.flatMap((word) => withSynonyms(word)).map((word) => `'${word}'${begun ? ':*' : ''}`);
  return `(${lexemes.join(' | ')})`;
}

/** Reads what was typed as it is written: every word, the last one perhaps unfinished. */
export function asWritten(typed: string): Sought | null {
  const words = soughtWords(typed);
  if (words.length === 0) return null;
  const finished = /\s$/.test(typed);
  const whole = words.map((word) => term([word], false));
  const last = words.at(-1) ?? '';
  const terms = finished ? whole : [...whole.slice(0, -1), term([last], true)];
  return { tsquery: terms.join(' & '), exact: whole.join(' & '), readAs: null };
}

/**
 * Reads it forgivingly: words that no entry has are taken for their nearest, and every word may be unfinished. To be
 * sought all together, or any of them.
 */
export async function forgiving(
  ctx: ReadCtx,
  firmId: string,
  typed: string,
): Promise<Record<'forgiving' | 'any', Sought>> {
  const words = soughtWords(typed);
  const known = await knownWords(ctx, firmId, words);
  const read: string[][] = [];
  for (const [at, word] of words.entries()) {
    const nearest = known[at] ? [] : await nearestOf(ctx, firmId, word, at === words.length - 1);
    read.push(nearest.length > 0 ? nearest : [word]);
  }
  const first = read.map((alternatives) => alternatives[0]).join(' ');
  const readAs = first === words.join(' ') ? null : first;
  const joined = (by: string, begun: boolean) => read.map((words) => term(words, begun)).join(by);
  return {
    forgiving: { tsquery: joined(' & ', true), exact: joined(' & ', false), readAs },
    any: { tsquery: joined(' | ', true), exact: joined(' | ', false), readAs },
  };
}

/** Whether some entry has each word, or one that begins so. Words too common to be sought count as known. */
async function knownWords(ctx: ReadCtx, firmId: string, words: readonly string[]): Promise<boolean[]> {
  const terms = words.map((word) => term([word], true));
  const rows = await ctx.tx.$queryRaw<{ known: boolean }[]>`
    SELECT numnode(q) = 0
        OR EXISTS (SELECT FROM catalogue_entries WHERE search @@ q)
        OR EXISTS (SELECT FROM firm_catalogue_entries
                    WHERE firm_id = ${firmId}::uuid AND current AND search @@ q) AS known
      FROM unnest(${terms}::text[]) WITH ORDINALITY AS t (term, place)
     CROSS JOIN LATERAL to_tsquery('garboard_english', term) AS q
     ORDER BY place`;
  return rows.map((row) => row.known);
}

/** The words of the catalogue that are most like one that it doesn't have. */
async function nearestOf(ctx: ReadCtx, firmId: string, word: string, last: boolean): Promise<string[]> {
  const swaps = exchanged(word);
  const rows = await ctx.tx.$queryRaw<{ word: string }[]>(Prisma.sql`
    (SELECT word FROM catalogue_words ORDER BY word <-> ${word} LIMIT 30)
    UNION
    (SELECT word FROM firm_catalogue_words WHERE firm_id = ${firmId}::uuid ORDER BY word <-> ${word} LIMIT 30)
    UNION
    SELECT word FROM catalogue_words WHERE word = ANY (${swaps}::text[])
    UNION
    SELECT word FROM firm_catalogue_words WHERE firm_id = ${firmId}::uuid AND word = ANY (${swaps}::text[])`);
  return nearestWords(
    word,
    rows.map((row) => row.word),
    last,
  );
}
