import { queueOf } from '@garboard/contract/jobs';
import { handOverAgain, jobsUnderWay, markDone } from '@garboard/core/outbox/dispatch';
import { inTransaction } from '@garboard/db/database';
import type { QueueName, RelayOptions } from './relay.ts';

/** A queue that was given a job so long ago has it, or has lost it. */
const settledSeconds = 20;
const mostAtOnce = 1_000;

/**
 * Looks for jobs that a queue was given and no longer knows, because it was emptied or came back with less than it had,
 * and has them handed over again under the same id. What the queue says has ended is noted as done.
 *
 * @returns how many were lost. @throws Error when a queue can't be reached.
 */
export async function recoverLost({ db, queues, clock }: RelayOptions): Promise<number> {
  const limits = { seconds: settledSeconds, limit: mostAtOnce };
  const rows = await inTransaction(db, [], (tx) => jobsUnderWay(tx, limits));
  const byQueue = new Map<QueueName, string[]>();
  for (const { id, job } of rows) byQueue.set(queueOf[job], [...(byQueue.get(queueOf[job]) ?? []), id]);
  const [lost, over]: [string[], string[]] = [[], []];
  for (const [name, ids] of byQueue) {
    const standings = await queues[name].standings(ids);
    for (const [at, id] of ids.entries()) {
      if (standings[at] === 'lost') lost.push(id);
      else if (standings[at] === 'ended') over.push(id);
    }
  }
  if (lost.length + over.length > 0) {
    await inTransaction(db, [], async (tx) => {
      await handOverAgain(tx, lost);
      await markDone(tx, over, clock());
    });
  }
  return lost.length;
}
