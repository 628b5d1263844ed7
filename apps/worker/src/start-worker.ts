import { setTimeout as sleep } from 'node:timers/promises';
import { queueNames } from '@garboard/contract/jobs';
import {
  type JobQueue,
  type JobWorker,
  openQueue,
  openWorker,
  type QueueConnection,
} from '@garboard/platform/queue';
import type { JobDeps } from './job-deps.ts';
import { type OrphanRounds, startOrphanRounds } from './orphan-rounds.ts';
import { doJob } from './registry.ts';
import { type QueueName, type Queues, startRelay } from './relay.ts';
import { startSweeps } from './sweeps.ts';

/** How many jobs of a queue at once: printing and drawing use a whole core each. */
const concurrency: Record<QueueName, number> = {
  reports: 1,
  previews: 1,
  images: 2,
  errands: 2,
  webhooks: 8,
  archives: 1,
};
const retryMs = 2_000;

export interface WorkerOptions extends JobDeps {
  queue: QueueConnection;
  /** How often the outbox is looked at when idle, in milliseconds; default 250. */
  pollMs?: number;
  /** When files that no row names are looked for; not at all unless given. */
  orphans?: OrphanRounds;
}

export interface RunningWorker {
  /** Resolves when jobs of every queue are being taken. */
  ready: Promise<void>;
  queues: Readonly<Record<QueueName, JobQueue<unknown>>>;
  /** Takes no more jobs, finishes those under way, ends the browser. The database and the store stay open. */
  close(): Promise<void>;
}

/** Starts doing jobs: relay, sweeps and one taker a queue. A queue that is away is tried again until it is there. */
export async function startWorker({
  queue,
  pollMs,
  orphans,
  ...deps
}: WorkerOptions): Promise<RunningWorker> {
  const { log } = deps;
  const queues = Object.fromEntries(
    queueNames.map((name) => [name, openQueue<unknown>(queue, name, log)]),
  ) as unknown as Queues & Record<QueueName, JobQueue<unknown>>;
  const stopping = new AbortController();
  const takers = queueNames.map((name) => keepTaking(name));
  const relay = startRelay({ db: deps.db, queues, clock: deps.clock, log, pollMs });
  const sweeps = startSweeps(deps);
  const rounds = orphans && startOrphanRounds(deps, orphans);

  /** Opens the taking side of a queue, again and again until it answers. */
  async function keepTaking(name: QueueName): Promise<JobWorker | undefined> {
    while (!stopping.signal.aborted) {
      const taker = openWorker<unknown>(queue, name, (job) => doJob(deps, job), {
        concurrency: concurrency[name],
        log,
      });
      try {
        await taker.ready();
        return taker;
      } catch (error) {
        log.warn({ err: error, queue: name }, 'the queue does not answer, tried again soon');
        await taker.close().catch(() => undefined);
        await sleep(retryMs, undefined, { signal: stopping.signal }).catch(() => undefined);
      }
    }
    return undefined;
  }

  return {
    queues,
    ready: Promise.all(takers).then(() => undefined),
    async close() {
      stopping.abort();
      await Promise.all([relay.stop(), sweeps.stop(), rounds?.stop()]);
      await Promise.all(takers.map(async (taker) => (await taker)?.close()));
      await Promise.all(queueNames.map((name) => queues[name].close()));
      await deps.browser.close();
    },
  };
}
