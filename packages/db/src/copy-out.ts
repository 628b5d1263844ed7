import type { Readable } from 'node:stream';
import { Client } from 'pg';
import { to } from 'pg-copy-streams';

/** A table of ours and those of its columns that are written, not worked out. */
export interface CopiedTable {
  name: string;
  columns: string[];
}

/** Where a sequence stands. */
export interface SequenceState {
  name: string;
  value: string;
  called: boolean;
}

/** The whole database as it was at one moment; the service goes on meanwhile. */
export interface DatabaseCopy {
  /** When that was, by the database's clock. */
  at: Date;
  /** Names of the migrations that were applied. */
  migrations: string[];
  /** In an order in which they can be filled: what a row refers to comes first. */
  tables: CopiedTable[];
  sequences: SequenceState[];
  /** A table's rows as PostgreSQL's COPY writes them, and, once these are read, how many they were. */
  rowsOf(table: CopiedTable): { stream: Readable; count: () => number };
  /** What stands in these columns, each once, in its order, many at a time. */
  valuesOf(columns: readonly (readonly [table: string, column: string])[]): AsyncGenerator<string[]>;
}

/** Tables of the queue, which is filled anew from the outbox, and the list of migrations are not copied. */
const ours = `t.relkind = 'r' AND t.relnamespace = 'public'::regnamespace AND t.relname !~ '^(bullmq|_prisma_migrations)'`;

/**
 * Copies the database as of one moment. Every table is held against changes of its form meanwhile, not against writes.
 *
 * @param url address of the database's owner, whom no policy binds
 */
export async function copyDatabase<T>(url: string, work: (copy: DatabaseCopy) => Promise<T>): Promise<T> {
  const client = new Client({ connectionString: url });
  await client.connect();
  try {
    await client.query('BEGIN ISOLATION LEVEL REPEATABLE READ READ ONLY');
    const { rows } = await client.query<{ at: Date }>('SELECT clock_timestamp() AS at');
    const tables = await tablesInOrder(client);
    const names = tables.map(({ name }) => `"${name}"`).join(', ');
    await client.query(`LOCK TABLE ${names} IN ACCESS SHARE MODE`);
    const { rows: migrations } = await client.query<{ name: string }>(
      `SELECT migration_name AS name FROM _prisma_migrations
       WHERE finished_at IS NOT NULL AND rolled_back_at IS NULL ORDER BY 1`,
    );
    return await work({
      at: rows[0]?.at ?? new Date(),
      migrations: migrations.map(({ name }) => name),
      tables,
      sequences: await sequenceStates(client),
      rowsOf(table) {
        const stream = client.query(to(`COPY "${table.name}" (${listOf(table)}) TO STDOUT`));
        return { stream, count: () => stream.rowCount ?? 0 };
      },
      async *valuesOf(columns) {
        const parts = columns.map(
          ([t, c]) => `SELECT "${c}"::text AS value FROM "${t}" WHERE "${c}" IS NOT NULL`,
        );
        await client.query(`DECLARE named NO SCROLL CURSOR FOR ${parts.join(' UNION ')} ORDER BY 1`);
        for (;;) {
          const { rows: some } = await client.query<{ value: string }>('FETCH 5000 FROM named');
          if (some.length === 0) break;
          yield some.map(({ value }) => value);
        }
        await client.query('CLOSE named');
      },
    });
  } finally {
    await client.end();
  }
}

/** A table's columns as a list for a statement. */
export const listOf = ({ columns }: CopiedTable): string => columns.map((name) => `"${name}"`).join(', ');

/** Our tables, those that others refer to first. @throws Error when two refer to each other */
export async function tablesInOrder(client: Client): Promise<CopiedTable[]> {
  const { rows } = await client.query<CopiedTable & { refers: string[] }>(`
    SELECT t.relname AS name,
      ARRAY(SELECT a.attname::text FROM pg_attribute AS a
        WHERE a.attrelid = t.oid AND a.attnum > 0 AND NOT a.attisdropped AND a.attgenerated = '' ORDER BY a.attnum) AS columns,
      ARRAY(SELECT DISTINCT r.relname::text FROM pg_constraint AS c JOIN pg_class AS r ON r.oid = c.confrelid
        WHERE c.conrelid = t.oid AND c.contype = 'f' AND c.confrelid <> t.oid) AS refers
    FROM pg_class AS t WHERE ${ours} ORDER BY t.relname`);
  const ordered: CopiedTable[] = [];
  let left = rows;
  while (left.length > 0) {
    const free = left.filter(({ refers }) => !left.some(({ name }) => refers.includes(name)));
    if (free.length === 0) {
      throw new Error(`These tables refer to each other: ${left.map(({ name }) => name).join(', ')}.`);
    }
    ordered.push(...free.map(({ name, columns }) => ({ name, columns })));
    left = left.filter((table) => !free.includes(table));
  }
  return ordered;
}

async function sequenceStates(client: Client): Promise<SequenceState[]> {
  const { rows } = await client.query<{ name: string }>(
    `SELECT sequencename AS name FROM pg_sequences WHERE schemaname = 'public' AND sequencename !~ '^bullmq'`,
  );
  const states: SequenceState[] = [];
  for (const { name } of rows) {
    const { rows: state } = await client.query<{ value: string; called: boolean }>(
      `SELECT last_value::text AS value, is_called AS called FROM "${name}"`,
    );
    if (state[0]) states.push({ name, ...state[0] });
  }
  return states;
}
