import type { Prisma } from '@garboard/db/database';
import type { Ctx } from '../context.ts';
import { enqueue, enqueueAll } from '../outbox/enqueue.ts';

/** Longer than any worker stays silent, in milliseconds. */
const silentMs = 3 * 60_000;

/** Gives up archives that are ready, and has their files removed. @returns how many */
export async function removeArchives(
  { tx }: Pick<Ctx, 'tx'>,
  where: Prisma.FirmExportWhereInput,
): Promise<number> {
  const ready = await tx.firmExport.findMany({
    where: { ...where, state: 'ready' },
    select: { id: true, sha256: true },
  });
  await tx.firmExport.updateMany({
    where: { id: { in: ready.map(({ id }) => id) }, state: 'ready' },
    data: { state: 'removed', sha256: null, keptUntil: null },
  });
  await enqueueAll(
    tx,
    'object.collect',
    ready.flatMap(({ sha256 }) => (sha256 ? [{ sha256 }] : [])),
  );
  return ready.length;
}

/** Removes archives that were kept for their days, and asks again for those whose worker fell silent. */
export async function sweepExports({ tx, clock }: Pick<Ctx, 'tx' | 'clock'>): Promise<number> {
  const now = clock();
  const removed = await removeArchives({ tx }, { keptUntil: { lt: now } });
  const before = new Date(now.getTime() - silentMs);
  const lost = await tx.firmExport.updateManyAndReturn({
    where: {
      state: { in: ['queued', 'making'] },
      OR: [{ heartbeatAt: { lt: before } }, { heartbeatAt: null, askedAt: { lt: before } }],
    },
    data: { heartbeatAt: now },
    select: { id: true, firmId: true },
  });
  for (const { id, firmId } of lost) await enqueue(tx, 'firm.export', { firmId, exportId: id });
  return removed + lost.length;
}
