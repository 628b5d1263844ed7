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

/** A job that a queue was given long enough ago to know it for sure, and of which nobody has said that it is done. */
export interface JobUnderWay {
  id: string;
  job: JobName;
}

/**
 * Jobs handed over at least `seconds` ago and not yet done, the oldest first, by the database's clock. Those with a time
 * to come are among them: they were noted by a clock that has been set back since.
 */
export async function jobsUnderWay(
  tx: Tx,
  { seconds, limit }: { seconds: number; limit: number },
): Promise<JobUnderWay[]> {
  return tx.$queryRaw<JobUnderWay[]>`
    SELECT id, job FROM outbox
    WHERE done_at IS NULL AND dispatched_at IS NOT NULL AND job = ANY(${Object.keys(jobs)})
      AND (dispatched_at < now() - make_interval(secs => ${seconds}) OR dispatched_at > now() + interval '1 minute')
    ORDER BY dispatched_at LIMIT ${limit}`;
}

/** Notes that these need not be done any more: they were, or have failed for good. Ids that name no row are no error. */
export async function markDone(tx: Tx, ids: readonly string[], at: Date): Promise<void> {
  await tx.outbox.updateMany({ where: { id: { in: [...ids] }, doneAt: null }, data: { doneAt: at } });
}

/** Has jobs handed over once more that their queue has lost. */
export async function handOverAgain(tx: Tx, ids: readonly string[]): Promise<void> {
  await tx.outbox.updateMany({ where: { id: { in: [...ids] }, doneAt: null }, data: { dispatchedAt: null } });
}
