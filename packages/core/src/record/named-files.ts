import { Prisma, type Tx } from '@garboard/db/database';
import { fileColumns } from './file-columns.ts';
import type { Reads } from './verify-record.ts';

/** A file of the store, and a column that names it. */
export interface NamedFile {
  sha256: string;
  namedBy: string;
}

/** Blocks of a table read by one statement: at most some tens of thousands of rows. */
const blocks = 512;

/**
 * Every file that a row names, some thousand at a time, table by table in the order of their blocks, so that neither
 * memory nor time for a page grows with a table. A file that several rows name comes several times. The reads must see
 * all firms; a row changed meanwhile may be missed.
 */
export async function* namedFiles(read: Reads): AsyncGenerator<NamedFile[]> {
  for (const table of new Set(fileColumns.map(([name]) => name))) {
    const columns = fileColumns.filter(([name]) => name === table).map(([, column]) => column);
    const end = await read((tx) => blocksOf(tx, table));
    for (let from = 0; from < end; from += blocks) {
      yield await read((tx) => namedBetween(tx, table, columns, from));
    }
  }
}

async function blocksOf(tx: Tx, table: string): Promise<number> {
  const rows = await tx.$queryRaw<{ blocks: number }[]>`
    SELECT (pg_relation_size(${table}::regclass) / current_setting('block_size')::bigint)::int AS blocks`;
  return rows[0]?.blocks ?? 0;
}

async function namedBetween(tx: Tx, table: string, columns: string[], from: number): Promise<NamedFile[]> {
  const named = columns.map((column) => Prisma.sql`(${`${table}.${column}`}, ${Prisma.raw(`"${column}"`)})`);
  return tx.$queryRaw<NamedFile[]>`
    SELECT DISTINCT ON (named.hash) named.hash AS sha256, named.by AS "namedBy"
      FROM ${Prisma.raw(`"${table}"`)} AS t
     CROSS JOIN LATERAL (VALUES ${Prisma.join(named)}) AS named (by, hash)
     WHERE t.ctid >= ${`(${from},0)`}::tid AND t.ctid < ${`(${from + blocks},0)`}::tid AND named.hash IS NOT NULL`;
}
