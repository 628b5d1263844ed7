import type { JobData } from '@garboard/contract/jobs';
import { removeUnlessNamed } from '@garboard/core/files/keep-object';
import { inTransaction } from '@garboard/db/database';
import type { JobDeps } from '../job-deps.ts';

/** Removes a stored file that no row names any more. */
export async function collectObjectJob(
  deps: Pick<JobDeps, 'db' | 'store'>,
  { sha256 }: JobData<'object.collect'>,
): Promise<void> {
  await inTransaction(deps.db, [], (tx) => removeUnlessNamed(tx, deps.store, sha256));
}
