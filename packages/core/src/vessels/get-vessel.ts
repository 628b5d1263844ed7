import type { Vessel } from '@garboard/contract/vessels';
import { visibleVessels } from '../access/scopes.ts';
import type { Ctx } from '../context.ts';
import { notFound } from '../problems.ts';
import { presentVessel } from './present-vessel.ts';

/** A vessel the actor may see. @throws Refusal `not-found` */
export async function getVessel(ctx: Ctx, id: string): Promise<Vessel> {
  const row = await ctx.tx.vessel.findFirst({ where: { AND: [{ id }, visibleVessels(ctx.actor)] } });
  if (!row) throw notFound('vessel');
  return presentVessel(row);
}
