import type { Vessel, vesselQuery } from '@garboard/contract/vessels';
import type { z } from 'zod';
import { visibleVessels } from '../access/scopes.ts';
import type { Ctx } from '../context.ts';
import { cutPage, decodeCursor, type Page, uuidForm } from '../paging.ts';
import { presentVessel } from './present-vessel.ts';

/** Vessels the actor may see, newest first; `q` finds part of a name, hull number or home port. */
export async function listVessels(ctx: Ctx, query: z.output<typeof vesselQuery>): Promise<Page<Vessel>> {
  const before = decodeCursor(query.cursor, uuidForm);
  const like = query.q ? { contains: query.q, mode: 'insensitive' as const } : undefined;
  const rows = await ctx.tx.vessel.findMany({
    where: {
      AND: [
        visibleVessels(ctx.actor),
        before ? { id: { lt: before } } : {},
        like ? { OR: [{ name: like }, { hullNumber: like }, { homePort: like }] } : {},
      ],
    },
    orderBy: { id: 'desc' },
    take: query.limit + 1,
  });
  const page = cutPage(rows, query.limit, (row) => row.id);
  return { items: page.items.map(presentVessel), next: page.next };
}
