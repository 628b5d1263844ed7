import type { JobData } from '@garboard/contract/jobs';
import { fanOut } from '@garboard/core/notices/fan-out';
import { fanOutWebhooks } from '@garboard/core/webhooks/fan-out';
import { inTransaction } from '@garboard/db/database';
import type { JobDeps } from '../job-deps.ts';

/** Tells people and their own systems of an event; done again it tells nobody twice. */
export async function fanOutEventJob(
  { db, store, clock, log }: JobDeps,
  { firmId, eventId, personIds = [] }: JobData<'event.fan-out'>,
): Promise<void> {
  const actor = { kind: 'system', firmIds: [firmId] } as const;
  await inTransaction(db, [firmId], async (tx) => {
    const ctx = { actor, tx, store, clock, log };
    await fanOut(ctx, { eventId, personIds });
    await fanOutWebhooks(ctx, { firmId, eventId });
  });
}
