import { Pool, type PoolClient } from 'pg';
import type { Database, Sight } from './database.ts';
import { Prisma } from './generated/client.ts';
import { bindingTo } from './sight.ts';

/** What a transaction that only reads can do; every `Tx` can do it too. */
export interface ReadTx {
  /** Whether statements can be sent without waiting for the answers of those before. */
  readonly pipelined?: true;
  $queryRaw<T = unknown>(query: TemplateStringsArray | Prisma.Sql, ...values: unknown[]): Promise<T>;
}

/** Connections for reads: statements are prepared once, and sent one after the other without waiting for answers. */
export type Reads = Pool;

/** @param options settings of each connection, as `-c name=value`; those of `openDatabase`, its role among them */
export function openReads(url: string, connections: number, options: string | undefined): Reads {
  const pool = new Pool({
    connectionString: url,
    max: connections,
    options,
    pipeline: true,
    connectionTimeoutMillis: 10_000,
  });
  // A connection that ends is replaced at the next need, and whoever reads on it is told by the statement; without these
  // its end would end the process: that of an idle one, and that of one which somebody reads on.
  pool.on('error', () => undefined);
  pool.on('connect', (client) => client.on('error', () => undefined));
  return pool;
}

/** Plans kept by each connection; a caller who asks for one combination of filters after the other gets no more. */
const mostStatements = 200;
const statementNames = new Map<string, string>();

/**
 * The name under which a connection keeps a statement. Those of parties have names of their own: a plan holds for one
 * role, and would be made anew whenever the role changes.
 */
function statementName(text: string, role: 'staff' | 'party'): string | undefined {
  const key = `${role} ${text}`;
  const known = statementNames.get(key);
  if (known !== undefined || statementNames.size >= mostStatements) return known;
  const name = `${role}-${statementNames.size}`;
  statementNames.set(key, name);
  return name;
}

/** @param role whose plan of the statement is kept; null keeps none, as behind a pooler, where the next has another connection */
async function run<T>(
  client: Pool | PoolClient,
  sql: Prisma.Sql,
  role: 'staff' | 'party' | null,
): Promise<T[]> {
  const { text, values } = sql;
  const { rows } = await client.query({ name: role ? statementName(text, role) : undefined, text, values });
  return rows as T[];
}

/**
 * How many rows at most, written into the statement: a plan that is kept for all values would expect a tenth of all
 * rows, and sort them where an index has them in order. Callers ask for few different numbers.
 */
export const atMost = (rows: number): Prisma.Sql => Prisma.raw(`LIMIT ${Math.trunc(rows)}`);

/** One statement outside any transaction, for what needs no sight. */
export const readAlone = <T>(db: Database, sql: Prisma.Sql): Promise<T[]> =>
  run<T>(db.reads, sql, db.pooled ? null : 'staff');

/**
 * Runs reads in one read-only transaction that sees what this sight covers. Its beginning, the sight and the first
 * statements of `work` travel together: what `work` asks for before it awaits anything costs one round trip.
 *
 * Values come as `pg` reads them: `bigint` and `numeric` as text; cast a `date` to text.
 */
export async function inReading<T>(db: Database, sight: Sight, work: (tx: ReadTx) => Promise<T>): Promise<T> {
  const role = db.pooled ? null : sight.asParty ? 'party' : 'staff';
  const client = await db.reads.connect();
  let ended = false;
  const tx: ReadTx = {
    pipelined: true,
    $queryRaw: async <R>(query: TemplateStringsArray | Prisma.Sql, ...values: unknown[]) => {
      // What was left behind by a failure must not read in the transaction of the next.
      if (ended) throw new Error('This reading has ended.');
      return (await run(
        client,
        query instanceof Prisma.Sql ? query : Prisma.sql(query, ...values),
        role,
      )) as R;
    },
  };
  const begun = Promise.all([client.query('BEGIN READ ONLY'), run(client, bindingTo(sight), role)]);
  try {
    const result = await work(tx);
    await begun;
    return result;
  } finally {
    ended = true;
    begun.catch(() => undefined);
    // Nobody has to wait for the end of what changed nothing. A statement that failed is undone by it as well.
    client.query('COMMIT').then(
      () => client.release(),
      (error: Error) => client.release(error),
    );
  }
}

/** Reads that don't need each other: in a reading they travel together, in another transaction they follow each other. */
export async function together<const R extends readonly (() => Promise<unknown>)[]>(
  tx: ReadTx,
  reads: R,
): Promise<{ -readonly [K in keyof R]: Awaited<ReturnType<R[K]>> }> {
  const answers: unknown[] = [];
  if (tx.pipelined) answers.push(...(await Promise.all(reads.map((read) => read()))));
  else for (const read of reads) answers.push(await read());
  return answers as { -readonly [K in keyof R]: Awaited<ReturnType<R[K]>> };
}
