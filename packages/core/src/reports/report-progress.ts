import type { Ctx } from '../context.ts';

export interface ReportProgress {
  reportId: string;
  claim: string;
  /** From 0 to 100. */
  progress: number;
  /** What is being done, in words. */
  stage: string;
}

/** Shows how far a rendering has come and that it is alive. False when another attempt has taken it over. */
export async function reportProgress(ctx: Ctx, input: ReportProgress): Promise<boolean> {
  const { reportId, claim, stage } = input;
  const progress = Math.max(0, Math.min(100, Math.round(input.progress)));
  const mine = await ctx.tx.report.updateMany({
    where: { id: reportId, claim, state: 'rendering' },
    data: { progress, stage, heartbeatAt: ctx.clock() },
  });
  return mine.count === 1;
}
