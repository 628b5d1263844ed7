import { Pool } from 'pg';
import { runBatch, type Statement } from './batch.ts';
import type { Database, Sight } from './database.ts';
import { Prisma } from './generated/client.ts';
import { bindings } from './sight.ts';

/** What a transaction that only reads can do; every `Tx` can do it too. */
export interface ReadTx {
  /** Whether statements can be sent without waiting for the answers of those before. */
  readonly pipelined?: true;
  $queryRaw<T = unknown>(query: TemplateStringsArray | Prisma.Sql, ...values: unknown[]): Promise<T>;
}

/** Connections for reads, on which statements are prepared once and travel in batches. */
export type Reads = Pool;

/** @param options settings of each connection, as `-c name=value`; those of `openDatabase`, its role among them */
export function openReads(url: string, connections: number, options: string | undefined): Reads {
  const pool = new Pool({
    connectionString: url,
    max: connections,
    options,
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
const statementNames = { staff: new Map<string, string>(), party: new Map<string, string>() };

/**
 * The name under which a connection keeps a statement. Those of parties have names of their own: a plan holds for one
 * role, and would be made anew whenever the role changes.
 */
function statementName(text: string, role: 'staff' | 'party'): string | undefined {
  const names = statementNames[role];
  const known = names.get(text);
  if (known !== undefined || names.size >= mostStatements) return known;
  const name = `${role}-${names.size}`;
  names.set(text, name);
  return name;
}

/** @param role whose plan of the statement is kept; null keeps none, as behind a pooler, where the next has another connection */
const statement = ({ text, values }: Prisma.Sql, role: 'staff' | 'party' | null): Statement => ({
  text,
  values,
  name: role ? statementName(text, role) : undefined,
});

/**
 * How many rows at most, written into the statement: a plan that is kept for all values would expect a tenth of all
 * rows, and sort them where an index has them in order. Callers ask for few different numbers.
 */
export const atMost = (rows: number): Prisma.Sql => Prisma.raw(`LIMIT ${Math.trunc(rows)}`);

/** One statement outside any transaction, for what needs no sight. */
export async function readAlone<T>(db: Database, sql: Prisma.Sql): Promise<T[]> {
  const client = await db.reads.connect();
  const [rows] = await runBatch(client, [statement(sql, db.pooled ? null : 'staff')]);
  return rows as T[];
}

interface Asked {
  statement: Statement;
  resolve(rows: unknown): void;
  reject(error: unknown): void;
}

/** What is asked together with the first reads; what it finds may reject them all. */
export interface Ahead {
  /** The rows it reads from. Where there are none, no sight is bound, and the reads behind it see nothing. */
  from: Prisma.Sql;
  /** @throws whatever the reads behind it are to fail with */
  see(rows: readonly unknown[]): void;
}

/**
 * Runs reads that see what this sight covers. What `work` asks for before it awaits anything travels in one message,
 * behind the sight, and is one transaction that can only read; what it asks for afterwards, in the next. Each statement
 * sees what was committed when it began, as in any transaction of ours.
 *
 * Values come as `pg` reads them: `bigint` and `numeric` as text; cast a `date` to text.
 */
export function inReading<T>(
  db: Database,
  sight: Sight,
  work: (tx: ReadTx) => Promise<T>,
  ahead?: Ahead,
): Promise<T> {
  const role = db.pooled ? null : sight.asParty ? 'party' : 'staff';
  const sightOnly = bindings(sight, { readOnly: true });
  const bound = (from: Prisma.Sql | undefined) =>
    statement(
      from ? Prisma.sql`SELECT asked.*, ${sightOnly} FROM ${from} AS asked` : Prisma.sql`SELECT ${sightOnly}`,
      role,
    );
  let waiting: Asked[] = [];
  let first = ahead;
  const send = async () => {
    const asked = waiting;
    waiting = [];
    try {
      const client = await db.reads.connect();
      const [seen = [], ...rows] = await runBatch(client, [
        bound(first?.from),
        ...asked.map((one) => one.statement),
      ]);
      first?.see(seen);
      first = undefined;
      for (const [at, { resolve }] of asked.entries()) resolve(rows[at]);
    } catch (error) {
      for (const { reject } of asked) reject(error);
    }
  };
  return work({
    pipelined: true,
    $queryRaw: <R>(query: TemplateStringsArray | Prisma.Sql, ...values: unknown[]) =>
      new Promise<R>((resolve, reject) => {
        const sql = query instanceof Prisma.Sql ? query : Prisma.sql(query, ...values);
        // Sent once everything that runs now has asked.
        if (waiting.length === 0) process.nextTick(() => void send());
        waiting.push({
          statement: statement(sql, role),
          resolve: (rows) => resolve(rows as R),
          reject,
        });
      }),
  });
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
