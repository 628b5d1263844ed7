import { queueNames } from '@garboard/contract/jobs';
import { outboxStanding } from '@garboard/core/outbox/outbox-standing';
import { type Database, inTransaction } from '@garboard/db/database';
import { durations, Gauge, Histogram, type openMetrics } from '@garboard/platform/metrics';
import type { JobQueue } from '@garboard/platform/queue';

type Registry = ReturnType<typeof openMetrics>;

/** Times jobs; called with how each ended. */
export function measureJobs(
  registry: Registry,
): (job: string, outcome: 'done' | 'failed', ms: number) => void {
  const seconds = new Histogram({
    name: 'garboard_job_seconds',
    help: 'Time a job took in this worker',
    labelNames: ['job', 'outcome'],
    buckets: durations,
    registers: [registry],
  });
  return (job, outcome, ms) => seconds.observe({ job, outcome }, ms / 1000);
}

/** How much waits, looked up whenever the figures are asked for. */
export function measureQueues(
  registry: Registry,
  { db, queues }: { db: Database; queues: Readonly<Record<string, Pick<JobQueue<unknown>, 'counts'>>> },
): void {
  new Gauge({
    name: 'garboard_queue_jobs',
    help: 'Jobs of each queue by state',
    labelNames: ['queue', 'state'],
    registers: [registry],
    async collect() {
      for (const queue of queueNames) {
        const { completed: _, ...counts } = (await queues[queue]?.counts()) ?? { completed: 0 };
        for (const [state, count] of Object.entries(counts)) this.set({ queue, state }, count);
      }
    },
  });
  const oldest = new Gauge({
    name: 'garboard_outbox_oldest_seconds',
    help: 'Age of the oldest job not yet handed to its queue; nothing when none waits',
    registers: [registry],
  });
  new Gauge({
    name: 'garboard_outbox_waiting',
    help: 'Jobs not yet handed to their queue',
    registers: [registry],
    async collect() {
      const standing = await inTransaction(db, [], (tx) => outboxStanding(tx));
      this.set(standing.waiting);
      oldest.set(standing.oldestSeconds);
    },
  });
}
