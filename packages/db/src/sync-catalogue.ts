import type { Logger } from '@garboard/platform/logger';
import { Client } from 'pg';

/** One of our entries as the code has it. */
export interface OurEntry {
  key: string;
  system: string;
  title: string;
  lookFor: string;
  observed: string;
  consequence: string;
  recommendation: string;
  urgency: string;
  withinDays?: number;
  raise?: string;
  lower?: string;
  harms: readonly string[];
  references: readonly string[];
  worksheets: readonly string[];
  cautions: readonly string[];
  related: readonly string[];
  diagram?: string;
  alsoCalled?: readonly string[];
}

const columns: Record<Exclude<keyof OurEntry, 'key'>, string> = {
  system: 'system',
  title: 'title',
  lookFor: 'look_for',
  observed: 'observed',
  consequence: 'consequence',
  recommendation: 'recommendation',
  urgency: 'urgency',
  withinDays: 'within_days',
  raise: 'raise',
  lower: 'lower',
  harms: 'harms',
  references: 'references',
  worksheets: 'worksheets',
  cautions: 'cautions',
  related: 'related',
  diagram: 'diagram',
  alsoCalled: 'also_called',
};
const names = Object.values(columns).map((name) => `"${name}"`);
const of = (table: string) => names.map((name) => `${table}.${name}`).join(', ');
const aboveEveryFirm = `(SELECT max(f.version) FROM firm_catalogue_entries AS f WHERE f.key = given.key)`;

// The rows as JSON become rows of the table itself, so that types are the table's own.
const write = `
  INSERT INTO catalogue_entries AS kept (key, ${names.join(', ')}, version)
  SELECT given.key, ${of('given')}, coalesce(${aboveEveryFirm}, 0) + 1
    FROM json_populate_recordset(NULL::catalogue_entries, $1) AS given
      ON CONFLICT (key) DO UPDATE
     SET (${names.join(', ')}) = ROW (${of('excluded')}),
         version = greatest(kept.version + 1, excluded.version), updated_at = now()
   WHERE (${of('kept')}) IS DISTINCT FROM (${of('excluded')})`;

const rewriteWords = `
  INSERT INTO catalogue_words (word)
  SELECT DISTINCT word
    FROM catalogue_entries AS e
   CROSS JOIN LATERAL garboard_words_of(
           ARRAY[e.title, e.look_for, e.observed, e.consequence, e.recommendation] || e.also_called) AS word`;

const lockKey = 7_261_126;

/**
 * Brings our entries in the database to those of the code: new ones are added, changed ones get their next version,
 * those no longer in the code disappear. Nothing is written when nothing changed.
 *
 * @param options.url of the database's owner: the application may only read them.
 */
export async function syncCatalogue(options: {
  url: string;
  entries: readonly OurEntry[];
  log?: Pick<Logger, 'info'>;
}): Promise<{ written: number; removed: number }> {
  const rows = options.entries.map((entry) =>
    Object.fromEntries([
      ['key', entry.key],
      ...Object.entries(columns).map(([field, name]) => [
        name,
        entry[field as keyof OurEntry] ?? nothing(field),
      ]),
    ]),
  );
  const client = new Client({ connectionString: options.url });
  await client.connect();
  try {
    await client.query('BEGIN');
    await client.query('SELECT pg_advisory_xact_lock($1)', [lockKey]);
    const { rowCount: written } = await client.query(write, [JSON.stringify(rows)]);
    const { rowCount: removed } = await client.query('DELETE FROM catalogue_entries WHERE key <> ALL ($1)', [
      options.entries.map((entry) => entry.key),
    ]);
    if (written || removed) {
      await client.query('DELETE FROM catalogue_words');
      await client.query(rewriteWords);
      options.log?.info({ written, removed }, 'catalogue brought up to date');
    }
    await client.query('COMMIT');
    return { written: written ?? 0, removed: removed ?? 0 };
  } finally {
    // Ending the session undoes what wasn't committed.
    await client.end();
  }
}

const nothing = (field: string) => (field === 'alsoCalled' ? [] : null);
