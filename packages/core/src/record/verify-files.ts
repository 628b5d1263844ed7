import { createHash } from 'node:crypto';
import { pipeline } from 'node:stream/promises';
import { Prisma } from '@garboard/db/database';
import { ObjectMissingError, type ObjectStore } from '@garboard/platform/object-store';
import { fileColumns } from './file-columns.ts';
import type { Reads } from './verify-record.ts';

export interface CheckedFiles {
  files: number;
  broken: { sha256: string /** The column that names it. */; namedBy: string; problem: string } | null;
}

/**
 * Reads every file that a row names and compares its SHA-256 with its name, in the order of the columns and hashes;
 * stops at the first that is missing or changed. The reads must see all firms.
 */
export async function verifyFiles(read: Reads, store: ObjectStore): Promise<CheckedFiles> {
  const seen = new Set<string>();
  for (const [table, column] of fileColumns) {
    const name = Prisma.raw(`"${column}"`);
    const rows = await read(
      (tx) => tx.$queryRaw<{ sha256: string }[]>`
        SELECT DISTINCT ${name} AS sha256 FROM ${Prisma.raw(`"${table}"`)}
        WHERE ${name} IS NOT NULL ORDER BY 1`,
    );
    for (const { sha256 } of rows) {
      if (seen.has(sha256)) continue;
      seen.add(sha256);
      const problem = await problemOf(store, sha256);
      if (problem) {
        return { files: seen.size, broken: { sha256, namedBy: `${table}.${column}`, problem } };
      }
    }
  }
  return { files: seen.size, broken: null };
}

async function problemOf(store: ObjectStore, sha256: string): Promise<string | null> {
  try {
    const { stream } = await store.read(sha256);
    const hash = createHash('sha256');
    await pipeline(stream, hash);
    return hash.digest('hex') === sha256 ? null : 'Its content was changed.';
  } catch (error) {
    if (error instanceof ObjectMissingError) return 'It is missing.';
    return `It can’t be read: ${error instanceof Error ? error.message : String(error)}`;
  }
}
