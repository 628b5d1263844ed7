import type { Prisma, Tx } from '@garboard/db/database';
import { enqueue } from '../outbox/enqueue.ts';

const dayMs = 24 * 60 * 60_000;

/** Removes drafts that were asked for more than a day ago, with their files. Answers how many there were. */
export async function sweepPreviews(tx: Tx, now: Date): Promise<number> {
  return removePreviews(tx, { createdAt: { lt: new Date(now.getTime() - dayMs) } });
}

/** Removes these drafts, with their files. Answers how many there were. */
export async function removePreviews(tx: Tx, where: Prisma.ReportWhereInput): Promise<number> {
  const of = { ...where, preview: true };
  const rows = await tx.report.findMany({ where: of, select: { id: true, sha256: true } });
  const { count } = await tx.report.deleteMany({
    where: { id: { in: rows.map((r) => r.id) }, preview: true },
  });
  for (const sha256 of new Set(rows.flatMap((r) => r.sha256 ?? []))) {
    await enqueue(tx, 'object.collect', { sha256 });
  }
  return count;
}
