import { setTimeout as sleep } from 'node:timers/promises';
import { attemptsOf, queueOf } from '@garboard/contract/jobs';
import { markDispatched, takeWaiting } from '@garboard/core/outbox/dispatch';
import { type Database, inTransaction } from '@garboard/db/database';
import type { Logger } from '@garboard/platform/logger';
import type { JobQueue, NewJob } from '@garboard/platform/queue';
import { recoverLost } from './lost-jobs.ts';

export type QueueName = (typeof queueOf)[keyof typeof queueOf];
export type Queues = Readonly<Record<QueueName, Pick<JobQueue<unknown>, 'add' | 'standings'>>>;

const batchSize = 100;
const longestWaitMs = 10_000;
/** How often queues are asked whether they still know what they were given. */
const recoverEveryMs = 15_000;

export interface RelayOptions {
  db: Database;
  queues: Queues;
  clock: () => Date;
  log: Pick<Logger, 'warn' | 'info'>;
  /** Wait when there was nothing to do, in milliseconds; default 250. */
  pollMs?: number;
}

/**
 * Hands one batch of committed jobs to their queues. The queue gets each under its outbox id, which it takes only
 * once; the rows are marked in the same transaction, so that when it fails after the queue has answered the batch
 * is merely handed over again.
 *
 * @returns how many were handed over. @throws Error when a queue can't be reached: the rows stay as they are.
 */
export async function relayBatch({ db, queues, clock }: RelayOptions): Promise<number> {
  return inTransaction(db, [], async (tx) => {
    const rows = await takeWaiting(tx, batchSize);
    if (rows.length === 0) return 0;
    const batches = new Map<QueueName, NewJob<unknown>[]>();
    for (const { id, job, data } of rows) {
      const batch = batches.get(queueOf[job]) ?? [];
      batch.push({ id, name: job, data, attempts: attemptsOf(job), backoffMs: 2_000 });
      batches.set(queueOf[job], batch);
    }
    for (const [name, batch] of batches) await queues[name].add(batch);
    await markDispatched(
      tx,
      rows.map((row) => row.id),
      clock(),
    );
    return rows.length;
  });
}

/** Relays until stopped; when the queue or the database is away it waits longer each time, up to 10 s. */
export function startRelay(options: RelayOptions): { stop(): Promise<void> } {
  const pollMs = options.pollMs ?? 250;
  const stopping = new AbortController();
  const pause = (ms: number) => sleep(ms, undefined, { signal: stopping.signal }).catch(() => undefined);
  const loop = async () => {
    let failures = 0;
    let recoverAt = performance.now();
    while (!stopping.signal.aborted) {
      try {
        const moved = await relayBatch(options);
        if (failures > 0) options.log.info('the job queue takes jobs again');
        failures = 0;
        if (performance.now() >= recoverAt) {
          recoverAt = performance.now() + recoverEveryMs;
          const lost = await recoverLost(options);
          if (lost > 0) options.log.warn({ lost }, 'a queue has lost jobs, they are handed over again');
        }
        if (moved < batchSize) await pause(pollMs);
      } catch (error) {
        if (failures === 0)
          options.log.warn({ err: error }, 'jobs wait in the outbox: they cannot be handed over');
        await pause(Math.min(longestWaitMs, pollMs * 2 ** failures));
        failures = Math.min(failures + 1, 10);
      }
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
