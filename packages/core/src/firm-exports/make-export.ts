import { randomUUID } from 'node:crypto';
import type { Ctx } from '../context.ts';

/** For how long an archive can be downloaded, in milliseconds. */
const keptMs = 7 * 24 * 60 * 60_000;

/** Names one attempt at an archive: only its holder may report progress, finish or fail. */
export interface ClaimedExport {
  exportId: string;
  claim: string;
}

/** Takes an archive to be made, from a worker that fell silent too. @returns null when nothing is left to do */
export async function claimExport(ctx: Ctx, exportId: string): Promise<ClaimedExport | null> {
  const claim = randomUUID();
  const claimed = await ctx.tx.firmExport.updateMany({
    where: { id: exportId, state: { in: ['queued', 'making'] } },
    data: { state: 'making', claim, heartbeatAt: ctx.clock(), progress: 0, stage: 'Writing rows' },
  });
  return claimed.count === 1 ? { exportId, claim } : null;
}

/** Gives a sign of life. @returns whether this attempt still holds the archive */
export async function noteProgress(
  ctx: Ctx,
  { exportId, claim }: ClaimedExport,
  so?: { progress: number; stage: string },
): Promise<boolean> {
  const noted = await ctx.tx.firmExport.updateMany({
    where: { id: exportId, claim, state: 'making' },
    data: { heartbeatAt: ctx.clock(), ...so },
  });
  return noted.count === 1;
}

/** Notes the finished archive. @returns whether this attempt still held it */
export async function finishExport(
  ctx: Ctx,
  { exportId, claim }: ClaimedExport,
  file: { sha256: string; bytes: number },
): Promise<boolean> {
  const now = ctx.clock();
  const done = await ctx.tx.firmExport.updateMany({
    where: { id: exportId, claim, state: 'making' },
    data: {
      ...{ state: 'ready', progress: 100, stage: '', sha256: file.sha256, bytes: file.bytes },
      ...{ claim: null, readyAt: now, keptUntil: new Date(now.getTime() + keptMs) },
    },
  });
  return done.count === 1;
}

/** Notes that it could not be made, and why, in a sentence. */
export async function failExport(
  ctx: Ctx,
  { exportId, claim }: ClaimedExport,
  problem: string,
): Promise<void> {
  await ctx.tx.firmExport.updateMany({
    where: { id: exportId, claim, state: 'making' },
    data: { state: 'failed', stage: '', problem, claim: null },
  });
}
