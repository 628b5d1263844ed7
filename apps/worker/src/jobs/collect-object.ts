import type { JobData } from '@garboard/contract/jobs';
import { lockObject } from '@garboard/core/files/keep-object';
import { inTransaction } from '@garboard/db/database';
import { objectInUse } from '@garboard/db/special-reads';
import type { JobDeps } from '../job-deps.ts';

/** Removes a stored file that no row names any more. */
export async function collectObjectJob(
  deps: Pick<JobDeps, 'db' | 'store'>,
  { sha256 }: JobData<'object.collect'>,
): Promise<void> {
  await inTransaction(deps.db, [], async (tx) => {
    await lockObject(tx, sha256);
    if (!(await objectInUse(tx, sha256))) await deps.store.remove(sha256);
  });
}
