import { type JobData, type JobName, jobs } from '@garboard/contract/jobs';
import type { Tx } from '@garboard/db/database';
import { newId } from '@garboard/db/ids';
import { currentTraceparent } from '@garboard/platform/tracing';

/** Asks for a job: it reaches the queue if, and only if, this transaction commits. Its id is the outbox row's. */
export async function enqueue<N extends JobName>(tx: Tx, job: N, data: JobData<N>): Promise<string> {
  const id = newId();
  await tx.outbox.create({
    data: { id, job, data: jobs[job].parse(data), traceparent: currentTraceparent() },
  });
  return id;
}

/** The same for several jobs of a kind, in this order. */
export async function enqueueAll<N extends JobName>(
  tx: Tx,
  job: N,
  all: readonly JobData<N>[],
): Promise<void> {
  if (all.length === 0) return;
  const traceparent = currentTraceparent();
  await tx.outbox.createMany({
    data: all.map((data) => ({ id: newId(), job, data: jobs[job].parse(data), traceparent })),
  });
}
