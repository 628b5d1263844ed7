import { randomUUID } from 'node:crypto';
import { type ReportSnapshot, reportSnapshot } from '@garboard/contract/report-snapshot';
import type { Ctx } from '../context.ts';
import { keepPictures } from './keep-pictures.ts';

export interface ClaimedReport {
  /** Names this attempt: only its holder may report progress, finish or fail. */
  claim: string;
  snapshot: ReportSnapshot;
  /** The one finding to be printed, of a preview of one; null for a whole document. */
  findingId: string | null;
}

/**
 * Takes a report for rendering. A job handed out again after its worker died takes over from it: the old claim is
 * replaced, so a worker that was only slow can't finish any more. The photos' pictures are kept as they are now.
 *
 * @returns null when nothing is left to do: issued, failed, or gone.
 */
export async function claimReport(ctx: Ctx, reportId: string): Promise<ClaimedReport | null> {
  const claim = randomUUID();
  const claimed = await ctx.tx.report.updateMany({
    where: { id: reportId, state: { in: ['queued', 'rendering'] } },
    data: { state: 'rendering', claim, heartbeatAt: ctx.clock(), progress: 0, stage: 'Gathering photos' },
  });
  if (claimed.count === 0) return null;
  const row = await ctx.tx.report.findUniqueOrThrow({
    where: { id: reportId },
    select: { snapshot: true, findingId: true },
  });
  const snapshot = reportSnapshot.parse(row.snapshot);
  if (!snapshot.preview) await keepPictures(ctx, reportId);
  return { claim, snapshot, findingId: row.findingId };
}
