import { unnamedAmong } from '@garboard/db/special-reads';
import type { ObjectStore } from '@garboard/platform/object-store';
import type { Reads } from '../record/verify-record.ts';
import { removeUnlessNamed } from './keep-object.ts';

/** Objects of the listing that are looked up with one statement. */
const batchSize = 1_000;

export interface OrphanSweep {
  store: ObjectStore;
  /** Younger ones are left alone, in milliseconds: whoever kept them may be about to say what for. */
  olderThanMs: number;
  now: Date;
  /** Called after each batch, with what was found by then. */
  onBatch?: (so: Orphans) => Promise<void>;
  /** Ends the sweep after the batch under way. */
  signal?: AbortSignal;
}

export interface Orphans {
  /** Objects listed. */
  seen: number;
  /** Objects that no row named, and their bytes. */
  removed: number;
  bytes: number;
}

/**
 * Removes objects of the store that no row names, as a process leaves them that is killed between keeping a file and
 * committing its row. The listing is read as it comes, so memory doesn't grow with the store; each object is removed
 * in a transaction of its own, under the lock that uploads of the same bytes take.
 */
export async function sweepOrphans(within: Reads, sweep: OrphanSweep): Promise<Orphans> {
  const before = sweep.now.getTime() - sweep.olderThanMs;
  const found: Orphans = { seen: 0, removed: 0, bytes: 0 };
  let old = new Map<string, number>();
  const settle = async () => {
    const unnamed = old.size > 0 ? await within((tx) => unnamedAmong(tx, [...old.keys()])) : [];
    for (const sha256 of unnamed) {
      if (!(await within((tx) => removeUnlessNamed(tx, sweep.store, sha256)))) continue;
      found.removed += 1;
      found.bytes += old.get(sha256) ?? 0;
    }
    old = new Map();
    await sweep.onBatch?.({ ...found });
  };
  for await (const { sha256, bytes, keptAt } of sweep.store.objects()) {
    if (sweep.signal?.aborted) return found;
    found.seen += 1;
    if (keptAt.getTime() <= before) old.set(sha256, bytes);
    if (found.seen % batchSize === 0) await settle();
  }
  await settle();
  return found;
}
