import type { firm, firmPatch, MeasureSystem, Paper } from '@garboard/contract/people';
import type { z } from 'zod';
import type { Ctx } from '../context.ts';
import { staleVersion } from '../problems.ts';
import { loadFirm, mustBePrincipal } from './load-firm.ts';

export type FirmView = z.output<typeof firm>;

/** The firm's particulars. @throws Refusal `not-found` */
export async function getFirm(ctx: Ctx, id: string): Promise<FirmView> {
  return presentFirm(await loadFirm(ctx, id));
}

/** Changes the firm's particulars. @throws Refusal `not-found`, `not-allowed`, `stale-version` */
export async function updateFirm(
  ctx: Ctx,
  input: { id: string; patch: z.output<typeof firmPatch>; ifMatch?: number | undefined },
): Promise<FirmView> {
  await loadFirm(ctx, input.id);
  mustBePrincipal(ctx, input.id);
  const changed = await ctx.tx.firm.updateMany({
    where: { id: input.id, ...(input.ifMatch === undefined ? {} : { version: input.ifMatch }) },
    data: { ...input.patch, version: { increment: 1 } },
  });
  if (changed.count === 0) throw staleVersion('firm');
  return presentFirm(await ctx.tx.firm.findUniqueOrThrow({ where: { id: input.id } }));
}

type FirmRow = Awaited<ReturnType<typeof loadFirm>>;

const presentFirm = (row: FirmRow): FirmView => ({
  ...row,
  paper: row.paper as Paper,
  measures: row.measures as MeasureSystem,
});
