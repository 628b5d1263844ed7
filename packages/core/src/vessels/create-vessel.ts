import type { Vessel, vesselCreate } from '@garboard/contract/vessels';
import { newId } from '@garboard/db/ids';
import type { z } from 'zod';
import { workingFirm } from '../access/working-firm.ts';
import type { Ctx } from '../context.ts';
import { presentVessel } from './present-vessel.ts';

/** Records a vessel for the actor's firm. @throws Refusal `not-allowed` for people outside a firm. */
export async function createVessel(ctx: Ctx, input: z.output<typeof vesselCreate>): Promise<Vessel> {
  const { firmId: wished, ...fields } = input;
  const { firmId } = workingFirm(ctx.actor, wished, 'vessel.write');
  const row = await ctx.tx.vessel.create({ data: { id: newId(), firmId, ...fields } });
  return presentVessel(row);
}
