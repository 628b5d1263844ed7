import { type JobData, type JobName, jobs } from '@garboard/contract/jobs';
import type { Tx } from '@garboard/db/database';
import { newId } from '@garboard/db/ids';

/** Asks for a job: it reaches the queue if, and only if, this transaction commits. Its id is the outbox row's. */
export async function enqueue<N extends JobName>(tx: Tx, job: N, data: JobData<N>): Promise<string> {
  const id = newId();
  await tx.outbox.create({ data: { id, job, data: jobs[job].parse(data) } });
  return id;
}
