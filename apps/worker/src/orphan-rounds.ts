import { setTimeout as sleep } from 'node:timers/promises';
import { sweepOrphans } from '@garboard/core/files/sweep-orphans';
import { endRound, goOnWithRound, takeRound } from '@garboard/core/outbox/sweep-rounds';
import { inTransaction, type Tx } from '@garboard/db/database';
import type { JobDeps } from './job-deps.ts';

const round = 'orphans';
/** How often it is asked whether a round is due. */
const askMs = 5 * 60_000;

export interface OrphanRounds {
  /** Files that no row names are removed when they are older than this, in milliseconds. */
  olderThanMs: number;
  /** A whole listing of the store can take hours: one worker of all begins it, this long after the last, in ms. */
  everyMs: number;
}

type RoundDeps = Pick<JobDeps, 'db' | 'store' | 'log' | 'clock'>;

/** Makes one round unless another worker is at it or it isn't due. @returns how many were removed; null: not ours */
export async function orphanRound(
  { db, store, log, clock }: RoundDeps,
  { olderThanMs, everyMs }: OrphanRounds,
  signal?: AbortSignal,
): Promise<number | null> {
  const within = <T>(work: (tx: Tx) => Promise<T>) => inTransaction(db, [], work);
  if (!(await within((tx) => takeRound(tx, round, everyMs)))) return null;
  const onBatch = () => within((tx) => goOnWithRound(tx, round));
  const found = await sweepOrphans(within, { store, olderThanMs, now: clock(), onBatch, signal });
  if (!signal?.aborted) await within((tx) => endRound(tx, round));
  log.info({ what: 'files that no row names', ...found }, 'swept');
  return found.removed;
}

/** Asks again and again whether a round is due, until stopped; a round under way ends after its batch. */
export function startOrphanRounds(deps: RoundDeps, options: OrphanRounds): { stop(): Promise<void> } {
  const stopping = new AbortController();
  const { signal } = stopping;
  const loop = async () => {
    while (!signal.aborted) {
      await orphanRound(deps, options, signal).catch((error: unknown) =>
        deps.log.warn({ err: error }, 'looking for files that no row names failed, tried again later'),
      );
      await sleep(askMs, undefined, { signal }).catch(() => undefined);
    }
  };
  const running = loop();
  return {
    async stop() {
      stopping.abort();
      await running;
    },
  };
}
