import type { Tx } from '@garboard/db/database';
import { objectInUse } from '@garboard/db/special-reads';
import type { ObjectStore, StagedObject } from '@garboard/platform/object-store';

/**
 * Makes a staged file part of the store, in the transaction that writes the row naming it. The lock keeps
 * `removeUnlessNamed` from removing the same bytes between here and the commit.
 */
export async function keepObject(tx: Tx, staged: StagedObject): Promise<void> {
  await keepObjects(tx, [staged]);
}

/** The same for several, which go to the disk side by side. */
export async function keepObjects(tx: Tx, all: readonly StagedObject[]): Promise<void> {
  const hashes = [...new Set(all.map((staged) => staged.sha256))];
  await tx.$executeRaw`
    SELECT pg_advisory_xact_lock_shared(hashtextextended(sha256, 0)) FROM unnest(${hashes}::text[]) AS sha256`;
  const kept = await Promise.allSettled(all.map((staged) => staged.keep()));
  // Only once none is under way any more: what was kept for nothing is looked for after this.
  for (const one of kept) if (one.status === 'rejected') throw one.reason;
}

/**
 * Removes a stored file that no row of any firm names. Waits until nobody is about to keep these bytes, and holds off
 * who would, until the transaction ends. @returns whether it was removed
 */
export async function removeUnlessNamed(tx: Tx, store: ObjectStore, sha256: string): Promise<boolean> {
  await tx.$executeRaw`SELECT pg_advisory_xact_lock(hashtextextended(${sha256}, 0))`;
  if (await objectInUse(tx, sha256)) return false;
  await store.remove(sha256);
  return true;
}
