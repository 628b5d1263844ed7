import type { Ctx } from '../context.ts';

export interface FinishPreview {
  reportId: string;
  claim: string;
  sha256: string;
  pages: number;
  bytes: number;
  /** What made the pages, with versions. */
  renderer: string;
}

/** Notes that a draft can be looked at; nothing else comes of it. False when another attempt has taken it over. */
export async function finishPreview(ctx: Ctx, input: FinishPreview): Promise<boolean> {
  const { reportId, claim, ...file } = input;
  const mine = await ctx.tx.report.updateMany({
    where: { id: reportId, claim, state: 'rendering', preview: true },
    data: { ...file, state: 'ready', progress: 100, stage: 'Ready to look at', problem: null },
  });
  return mine.count === 1;
}
