import { type JobName, jobs } from '@garboard/contract/jobs';
import type { Tx } from '@garboard/db/database';

export interface WaitingJob {
  id: string;
  job: JobName;
  data: unknown;
}

/**
 * The oldest jobs not yet handed to the queue, held until the transaction ends; what another relay holds is left
 * out. Jobs of names this version doesn't know wait for a version that does.
 */
export async function takeWaiting(tx: Tx, limit: number): Promise<WaitingJob[]> {
  return tx.$queryRaw<WaitingJob[]>`
    SELECT id, job, data FROM outbox
    WHERE dispatched_at IS NULL AND job = ANY(${Object.keys(jobs)})
    ORDER BY id LIMIT ${limit}
    FOR UPDATE SKIP LOCKED`;
}

/** The trace of whoever asked for a job; null when it wasn't traced, or didn't come through the outbox. */
export async function traceparentOf(tx: Tx, jobId: string): Promise<string | null> {
  const row = await tx.outbox.findUnique({ where: { id: jobId }, select: { traceparent: true } });
  return row?.traceparent ?? null;
}

/** Notes that the queue has them; to be called in the transaction that took them, after the queue has answered. */
export async function markDispatched(tx: Tx, ids: readonly string[], at: Date): Promise<void> {
  await tx.outbox.updateMany({ where: { id: { in: [...ids] } }, data: { dispatchedAt: at } });
}
