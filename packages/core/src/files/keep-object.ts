import type { Tx } from '@garboard/db/database';
import type { StagedObject } from '@garboard/platform/object-store';

/**
 * Makes a staged file part of the store, in the transaction that writes the row naming it. The lock keeps
 * `object.collect` from removing the same bytes between here and the commit.
 */
export async function keepObject(tx: Tx, staged: StagedObject): Promise<void> {
  await tx.$executeRaw`SELECT pg_advisory_xact_lock_shared(hashtextextended(${staged.sha256}, 0))`;
  await staged.keep();
}

/** Waits until nobody is about to keep these bytes, and holds off who would, until the transaction ends. */
export async function lockObject(tx: Tx, sha256: string): Promise<void> {
  await tx.$executeRaw`SELECT pg_advisory_xact_lock(hashtextextended(${sha256}, 0))`;
}
