import type { Vessel, vesselPatch } from '@garboard/contract/vessels';
import { grantFor } from '@garboard/trade/permissions';
import type { z } from 'zod';
import { firmRole } from '../access/actor.ts';
import { visibleVessels } from '../access/scopes.ts';
import type { Ctx } from '../context.ts';
import { notAllowed, notFound, staleVersion } from '../problems.ts';
import { presentVessel } from './present-vessel.ts';

export interface UpdateVessel {
  id: string;
  patch: z.output<typeof vesselPatch>;
  ifMatch?: number | undefined;
}

/** Changes particulars. @throws Refusal `not-found`, `not-allowed`, `stale-version` */
export async function updateVessel(ctx: Ctx, { id, patch, ifMatch }: UpdateVessel): Promise<Vessel> {
  const vessel = await ctx.tx.vessel.findFirst({ where: { AND: [{ id }, visibleVessels(ctx.actor)] } });
  if (!vessel) throw notFound('vessel');
  const role = firmRole(ctx.actor, vessel.firmId);
  if (!role || grantFor('vessel.write', role) !== 'yes') {
    throw notAllowed('Only the survey firm may change a vessel’s particulars.');
  }
  const changed = await ctx.tx.vessel.updateMany({
    where: { id, ...(ifMatch === undefined ? {} : { version: ifMatch }) },
    data: { ...patch, version: { increment: 1 } },
  });
  if (changed.count === 0) throw staleVersion('vessel');
  return presentVessel(await ctx.tx.vessel.findUniqueOrThrow({ where: { id } }));
}
