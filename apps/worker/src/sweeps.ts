import { endLimits } from '@garboard/core/clearance/end-limits';
import type { Ctx } from '@garboard/core/context';
import { sweepDeleted } from '@garboard/core/findings/sweep-deleted';
import { sweepExports } from '@garboard/core/firm-exports/sweep-exports';
import { sweepImports } from '@garboard/core/imports/run-import';
import { gatherDue, resendDue } from '@garboard/core/notices/gather-mail';
import { remindDue } from '@garboard/core/notices/remind-due';
import { remindOverdue } from '@garboard/core/notices/remind-overdue';
import { type Requeued, requeueLost } from '@garboard/core/outbox/requeue-lost';
import { tidy } from '@garboard/core/outbox/tidy';
import { sweepPreviews } from '@garboard/core/reports/sweep-previews';
import { abandonedMs, stagingMs, tidyUploads } from '@garboard/core/uploads/tidy-uploads';
import { redeliverDue } from '@garboard/core/webhooks/deliver';
import { inTransaction } from '@garboard/db/database';
import { allFirmIds } from '@garboard/db/special-reads';
import type { JobDeps } from './job-deps.ts';

/** Parts outlive their row by a day, so that none is missing while its row says it is there. */
const partsMs = abandonedMs + stagingMs;

type SweepDeps = Pick<JobDeps, 'db' | 'store' | 'log' | 'clock'>;

/** What is looked for, by what the log calls it. Each answers how many it found. */
function looksOf(
  { db, store, log, clock }: SweepDeps,
  firmIds: string[],
): Record<string, () => Promise<number>> {
  const actor = { kind: 'system', firmIds } as const;
  const inFirms = (look: (ctx: Ctx) => Promise<number>) => () =>
    inTransaction(db, firmIds, (tx) => look({ actor, tx, store, clock, log }));
  return {
    'pieces of work that seemed lost': inFirms(({ tx }) => requeueLost(tx, clock()).then(sumOf)),
    'deleted drafts': inFirms(({ tx }) => sweepDeleted(tx, clock())),
    'printed drafts': inFirms(({ tx }) => sweepPreviews(tx, clock())),
    'archives kept long enough, or whose making was lost': inFirms(sweepExports),
    'spent rows': () => inTransaction(db, [], (tx) => tidy(tx, clock())),
    'uploads in parts given up': inFirms(({ tx }) => tidyUploads(tx, clock())),
    'sheets to bring in, lost or given up': inFirms(sweepImports),
    'limits that ended': inFirms(endLimits),
    'due dates to remind of': inFirms(remindDue),
    'surveys with something overdue': inFirms(remindOverdue),
    'people with mail to be gathered': inFirms((ctx) => gatherDue(ctx, firmIds)),
    'mails to be sent again': () => inTransaction(db, [], (tx) => resendDue({ tx, clock })),
    'messages to be delivered again': inFirms(redeliverDue),
    'files of parts': () => store.sweepParts(partsMs),
    'abandoned uploads': () => store.sweepStaging(stagingMs),
  };
}

const sumOf = (found: Requeued) => found.reports + found.photos + found.quotations;

/** Looks once for lost work, for what is due, and for what can be thrown away. One look that fails stops no other. */
export async function sweep(deps: SweepDeps): Promise<void> {
  const firmIds = await allFirmIds(deps.db);
  for (const [what, look] of Object.entries(looksOf(deps, firmIds))) {
    try {
      const found = await look();
      if (found > 0) deps.log.info({ what, found }, 'swept');
    } catch (error) {
      deps.log.warn({ err: error, what }, 'sweep failed, tried again in a minute');
    }
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
