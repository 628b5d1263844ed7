import { type JobData, type JobName, jobs } from '@garboard/contract/jobs';
import type { Prisma, Tx } from '@garboard/db/database';
import { newId } from '@garboard/db/ids';

/** Longer than any worker stays silent, in milliseconds. */
export const lostAfterMs = 3 * 60_000;

export interface Requeued {
  reports: number;
  photos: number;
  quotations: number;
}

/**
 * Asks again for work that seems to have been lost: reports without a sign of life, photos that still have no
 * pictures, accepted quotations that still have no PDF. Asking once too often does no harm, as the handlers are
 * idempotent; each is asked for at most once in `lostAfterMs`.
 */
export async function requeueLost(tx: Tx, now: Date): Promise<Requeued> {
  const before = new Date(now.getTime() - lostAfterMs);
  const reports = await tx.report.updateManyAndReturn({
    where: {
      state: { in: ['queued', 'rendering'] },
      // Whoever waited for a preview of one finding has gone by now.
      findingId: null,
      OR: [{ heartbeatAt: { lt: before } }, { heartbeatAt: null, createdAt: { lt: before } }],
    },
    data: { heartbeatAt: now },
    select: { id: true, firmId: true },
  });
  const photos = await tx.$queryRaw<{ id: string; firmId: string }[]>`
    SELECT p.id, p.firm_id AS "firmId" FROM photos p
    WHERE p.state = 'processing' AND p.created_at < ${before}
      AND NOT EXISTS (
        SELECT 1 FROM outbox o
        WHERE o.job = 'photo.derive' AND o.data->>'photoId' = p.id::text AND o.created_at >= ${before})
    LIMIT 500`;
  const quotations = await tx.$queryRaw<{ id: string; firmId: string }[]>`
    SELECT q.id, q.firm_id AS "firmId" FROM quotations q
    WHERE q.state = 'accepted' AND q.pdf_sha256 IS NULL AND q.decided_at < ${before}
      AND NOT EXISTS (
        SELECT 1 FROM outbox o
        WHERE o.job = 'quotation.print' AND o.data->>'quotationId' = q.id::text AND o.created_at >= ${before})
    LIMIT 100`;
  await tx.outbox.createMany({
    data: [
      ...reports.map((r) => row('report.render', { firmId: r.firmId, reportId: r.id }, now)),
      ...photos.map((p) => row('photo.derive', { firmId: p.firmId, photoId: p.id }, now)),
      ...quotations.map((q) => row('quotation.print', { firmId: q.firmId, quotationId: q.id }, now)),
    ],
  });
  return { reports: reports.length, photos: photos.length, quotations: quotations.length };
}

function row<N extends JobName>(job: N, data: JobData<N>, createdAt: Date): Prisma.OutboxCreateManyInput {
  return { id: newId(), job, data: jobs[job].parse(data), createdAt };
}
