import { PassThrough } from 'node:stream';
import type { JobData } from '@garboard/contract/jobs';
import { ArchiveRefused } from '@garboard/core/archive/archive-refused';
import { writeArchive } from '@garboard/core/archive/write-archive';
import type { Ctx } from '@garboard/core/context';
import { keepObject } from '@garboard/core/files/keep-object';
import { claimExport, failExport, finishExport, noteProgress } from '@garboard/core/firm-exports/make-export';
import { inTransaction } from '@garboard/db/database';
import type { Attempt, JobDeps } from '../job-deps.ts';

const signOfLifeMs = 30_000;
const unexpected = 'Something went wrong on the server. Ask again; when it fails again, ask whoever runs it.';

/** Makes the archive of everything a firm has and keeps it in the store for its principal to download. */
export async function exportFirmJob(
  deps: Pick<JobDeps, 'db' | 'store' | 'clock' | 'log'>,
  { firmId, exportId }: JobData<'firm.export'>,
  { lastAttempt }: Attempt,
): Promise<void> {
  const { db, store, clock, log } = deps;
  const actor = { kind: 'system', firmIds: [firmId] } as const;
  const within = <T>(work: (ctx: Ctx) => Promise<T>) =>
    inTransaction(db, [firmId], (tx) => work({ actor, tx, store, clock, log }));
  const claimed = await within((ctx) => claimExport(ctx, exportId));
  if (!claimed) return;
  const life = setInterval(
    () => void within((ctx) => noteProgress(ctx, claimed)).catch(() => undefined),
    signOfLifeMs,
  );
  try {
    const pipe = new PassThrough();
    const [staged, written] = await Promise.allSettled([
      store.stage(pipe, { maxBytes: Number.MAX_SAFE_INTEGER }),
      writeArchive(
        {
          ...{ db, store, firmId },
          onProgress: async (progress, stage) => {
            if (await within((ctx) => noteProgress(ctx, claimed, { progress, stage }))) return;
            throw new Error('Another worker has taken this archive over.');
          },
        },
        pipe,
      ),
    ]);
    if (written.status === 'rejected' || staged.status === 'rejected') {
      if (staged.status === 'fulfilled') await staged.value.discard();
      throw written.status === 'rejected' ? written.reason : (staged as PromiseRejectedResult).reason;
    }
    const file = staged.value;
    try {
      await within(async (ctx) => {
        if (await finishExport(ctx, claimed, file)) await keepObject(ctx.tx, file);
      });
    } finally {
      await file.discard();
    }
  } catch (error) {
    const refused = error instanceof ArchiveRefused;
    if (refused || lastAttempt) {
      await within((ctx) => failExport(ctx, claimed, refused ? error.message : unexpected));
    }
    if (!refused) throw error;
    log.warn({ err: error, firmId }, 'an archive can’t be made');
  } finally {
    clearInterval(life);
  }
}
