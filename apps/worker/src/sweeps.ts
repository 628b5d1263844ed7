import { endLimits } from '@garboard/core/clearance/end-limits';
import { sweepDeleted } from '@garboard/core/findings/sweep-deleted';
import { gatherDue, resendDue } from '@garboard/core/notices/gather-mail';
import { remindDue } from '@garboard/core/notices/remind-due';
import { remindOverdue } from '@garboard/core/notices/remind-overdue';
import { requeueLost } from '@garboard/core/outbox/requeue-lost';
import { tidy } from '@garboard/core/outbox/tidy';
import { sweepPreviews } from '@garboard/core/reports/sweep-previews';
import { abandonedMs, tidyUploads } from '@garboard/core/uploads/tidy-uploads';
import { redeliverDue } from '@garboard/core/webhooks/deliver';
import { inTransaction } from '@garboard/db/database';
import { allFirmIds } from '@garboard/db/special-reads';
import type { JobDeps } from './job-deps.ts';

/** Uploads that were begun and never kept are removed after a day. */
const stagingMs = 24 * 60 * 60_000;

/** Parts outlive their row by a day, so that none is missing while its row says it is there. */
const partsMs = abandonedMs + stagingMs;

type SweepDeps = Pick<JobDeps, 'db' | 'store' | 'log' | 'clock'>;

/** Looks once for lost work and for what can be thrown away. */
export async function sweep({ db, store, log, clock }: SweepDeps): Promise<void> {
  const firmIds = await allFirmIds(db);
  const found = await inTransaction(db, firmIds, (tx) => requeueLost(tx, clock()));
  if (found.reports + found.photos + found.quotations > 0)
    log.warn(found, 'work seemed lost and was asked for again');
  const gone = await inTransaction(db, firmIds, (tx) => sweepDeleted(tx, clock()));
  if (gone > 0) log.info({ findings: gone }, 'deleted drafts removed for good');
  const drafts = await inTransaction(db, firmIds, (tx) => sweepPreviews(tx, clock()));
  if (drafts > 0) log.info({ drafts }, 'drafts of yesterday removed');
  await inTransaction(db, [], (tx) => tidy(tx, clock()));
  const abandoned = await inTransaction(db, firmIds, (tx) => tidyUploads(tx, clock()));
  if (abandoned > 0) log.info({ abandoned }, 'uploads in parts given up');
  const opened = await inTransaction(db, firmIds, (tx) =>
    endLimits({ actor: { kind: 'system', firmIds }, tx, store, clock, log }),
  );
  if (opened > 0) log.info({ opened }, 'findings open again, their limit having ended');
  await remind({ db, store, log, clock }, firmIds);
  await inTransaction(db, firmIds, (tx) => gatherDue({ tx, clock }, firmIds));
  await inTransaction(db, [], (tx) => resendDue({ tx, clock }));
  await inTransaction(db, firmIds, (tx) => redeliverDue({ tx, clock }));
  await store.sweepParts(partsMs);
  const staged = await store.sweepStaging(stagingMs);
  if (staged > 0) log.info({ staged }, 'abandoned uploads removed');
}

async function remind({ db, store, log, clock }: SweepDeps, firmIds: string[]): Promise<void> {
  const actor = { kind: 'system', firmIds } as const;
  for (const look of [remindDue, remindOverdue]) {
    const told = await inTransaction(db, firmIds, (tx) => look({ actor, tx, store, clock, log }));
    if (told > 0)
      log.info({ told }, look === remindDue ? 'reminded of due dates' : 'told of what is overdue');
  }
}

/** Sweeps at once and then every minute until stopped. */
export function startSweeps(deps: SweepDeps, everyMs = 60_000): { stop(): Promise<void> } {
  let running: Promise<void> = Promise.resolve();
  let busy = false;
  const once = () => {
    if (busy) return;
    busy = true;
    running = sweep(deps)
      .catch((error: unknown) => deps.log.warn({ err: error }, 'sweep failed, tried again in a minute'))
      .finally(() => {
        busy = false;
      });
  };
  once();
  const timer = setInterval(once, everyMs);
  return {
    async stop() {
      clearInterval(timer);
      await running;
    },
  };
}
