import type { Ctx } from '../context.ts';
import { enqueue } from '../outbox/enqueue.ts';
import { wrongState } from '../problems.ts';
import { lockImport } from './load-import.ts';

/** Forgets a sheet; what was brought in stays. @throws Refusal `not-found`, `wrong-state` while it is brought in */
export async function discardImport(ctx: Ctx, id: string): Promise<void> {
  const { row } = await lockImport(ctx, id);
  if (row.state === 'queued' || row.state === 'running') {
    throw wrongState('This sheet is being brought in just now. Wait until that is done.');
  }
  await ctx.tx.surveyImport.delete({ where: { id } });
  if (row.zipSha256) await enqueue(ctx.tx, 'object.collect', { sha256: row.zipSha256 });
}
