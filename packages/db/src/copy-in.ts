import type { Readable } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import { Client } from 'pg';
import { from } from 'pg-copy-streams';
import { type CopiedTable, listOf, type SequenceState, tablesInOrder } from './copy-out.ts';
import { migrate } from './migrate.ts';
import { readMigrations } from './schema-engine.ts';

export interface CopyToFill {
  at: Date;
  migrations: string[];
  tables: CopiedTable[];
  sequences: SequenceState[];
  /** A table's rows as `copyDatabase` gave them. */
  rowsOf(table: CopiedTable): Readable;
}

/** Migrations of a copy that this code doesn't have: it was made by a newer version. */
export async function unknownMigrations(names: readonly string[]): Promise<string[]> {
  const { migrationDirectories } = await readMigrations();
  return names.filter((name) => !migrationDirectories.some(({ path }) => path === name));
}

/** Whether anybody has an account or any firm is there, and how many other sessions the database has. */
export async function standingOf(url: string): Promise<{ empty: boolean; sessions: number }> {
  return withClient(url, async (client) => {
    const { rows } = await client.query<{ there: boolean; sessions: number }>(`
      SELECT to_regclass('public.people') IS NOT NULL AS there,
        (SELECT count(*)::int FROM pg_stat_activity
          WHERE datname = current_database() AND pid <> pg_backend_pid() AND backend_type = 'client backend') AS sessions`);
    const { there = false, sessions = 0 } = rows[0] ?? {};
    if (!there) return { empty: true, sessions };
    const found = await client.query('SELECT FROM people UNION ALL SELECT FROM firms LIMIT 1');
    return { empty: found.rowCount === 0, sessions };
  });
}

/**
 * Fills a database with a copy, in place of whatever it holds: brings its form to that of the copy, then writes all rows
 * in one transaction, then applies the migrations that came since.
 *
 * @param url address of the database's owner
 * @returns the migrations that came since
 */
export async function fillDatabase(url: string, copy: CopyToFill): Promise<{ applied: string[] }> {
  await withClient(url, async (client) => {
    if (await isNewer(client, copy.migrations))
      await client.query('DROP SCHEMA public CASCADE; CREATE SCHEMA public');
  });
  await migrate({ url, only: copy.migrations });
  await withClient(url, async (client) => {
    await client.query('BEGIN');
    const tables = await tablesInOrder(client);
    const names = tables.map(({ name }) => `"${name}"`);
    await client.query(`TRUNCATE ${[...names, ...(await queueTables(client))].join(', ')}`);
    // What triggers work out is in the copy; the record's chain above all is taken as it was written.
    for (const name of names) await client.query(`ALTER TABLE ${name} DISABLE TRIGGER USER`);
    for (const { name } of tables) {
      const table = copy.tables.find((one) => one.name === name);
      if (!table) continue;
      await pipeline(copy.rowsOf(table), client.query(from(`COPY "${name}" (${listOf(table)}) FROM STDIN`)));
    }
    for (const name of names) await client.query(`ALTER TABLE ${name} ENABLE TRIGGER USER`);
    for (const { name, value, called } of copy.sequences) {
      await client.query('SELECT setval(quote_ident($1)::regclass, $2, $3)', [name, value, called]);
    }
    // The queue isn't part of a copy: what was lately handed to it is handed over again, which does no harm. Parts of
    // uploads aren't either: their browsers send them from the beginning.
    await client.query(
      `UPDATE outbox SET dispatched_at = NULL WHERE dispatched_at > $1::timestamptz - interval '1 hour'`,
      [copy.at],
    );
    await client.query(`UPDATE photo_uploads SET received = 0 WHERE state = 'receiving'`);
    await client.query('COMMIT');
    await client.query('ANALYZE');
  });
  return migrate({ url });
}

/** Whether the database has migrations that the copy lacks. */
async function isNewer(client: Client, migrations: readonly string[]): Promise<boolean> {
  const { rows: there } = await client.query(
    `SELECT to_regclass('public._prisma_migrations') IS NOT NULL AS yes`,
  );
  if (!there[0]?.yes) return false;
  const { rows } = await client.query<{ name: string }>(
    'SELECT migration_name AS name FROM _prisma_migrations',
  );
  return rows.some(({ name }) => !migrations.includes(name));
}

async function queueTables(client: Client): Promise<string[]> {
  const { rows } = await client.query<{ name: string }>(
    `SELECT quote_ident(tablename) AS name FROM pg_tables WHERE schemaname = 'public' AND tablename ~ '^bullmq'`,
  );
  return rows.map(({ name }) => name);
}

async function withClient<T>(url: string, work: (client: Client) => Promise<T>): Promise<T> {
  const client = new Client({ connectionString: url });
  await client.connect();
  try {
    return await work(client);
  } finally {
    // Ending the session undoes what wasn't committed.
    await client.end();
  }
}
