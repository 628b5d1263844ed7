import type { Expiry, expiryQuery } from '@garboard/contract/inventory';
import { Prisma } from '@garboard/db/database';
import type { System } from '@garboard/trade/vocabulary';
import type { z } from 'zod';
import { staffFirmIds } from '../access/actor.ts';
import type { Ctx } from '../context.ts';
import { cutPage, decodeCursor, type Page } from '../paging.ts';

interface Row {
  id: string;
  survey_id: string;
  system: string;
  name: string;
  maker: string | null;
  serial_number: string | null;
  place: string | null;
  count: number;
  made: string | null;
  expires: string;
  expired: boolean;
  survey_number: string;
  vessel_id: string;
  vessel_name: string;
}

const cursorForm = /^\d{4}-\d\d-\d\d_[0-9a-f-]{36}$/;

/**
 * Equipment that expires, over the boats of the actor's firms, soonest first. Of each boat the latest survey that
 * recorded equipment counts: a visit that recorded none doesn't hide what is known. Keyset by (day, id).
 */
export async function listExpiries(ctx: Ctx, query: z.output<typeof expiryQuery>): Promise<Page<Expiry>> {
  const after = decodeCursor(query.cursor, cursorForm)?.split('_');
  const conditions = [
    Prisma.sql`i.expires_on IS NOT NULL AND i.firm_id = ANY (${staffFirmIds(ctx.actor)}::uuid[])`,
    Prisma.sql`s.state <> 'cancelled' AND NOT EXISTS (
      SELECT 1 FROM surveys later
       WHERE later.vessel_id = s.vessel_id AND later.id > s.id AND later.state <> 'cancelled'
         AND EXISTS (SELECT 1 FROM inventory_items l WHERE l.survey_id = later.id))`,
    ...(query.before ? [Prisma.sql`i.expires_on < ${query.before}::date`] : []),
    ...(after ? [Prisma.sql`(i.expires_on, i.id) > (${after[0]}::date, ${after[1]}::uuid)`] : []),
  ];
  const rows = await ctx.tx.$queryRaw<Row[]>`
    SELECT i.id, i.survey_id, i.system, i.name, i.maker, i.serial_number, i.place, i.count,
           i.made_on::text AS made, i.expires_on::text AS expires,
           i.expires_on < (${ctx.clock()}::timestamptz AT TIME ZONE s.time_zone)::date AS expired,
           s.number AS survey_number, v.id AS vessel_id, v.name AS vessel_name
      FROM inventory_items i
      JOIN surveys s ON s.id = i.survey_id
      JOIN vessels v ON v.id = s.vessel_id
     WHERE ${Prisma.join(conditions, ' AND ')}
     ORDER BY i.expires_on, i.id
     LIMIT ${query.limit + 1}`;
  const page = cutPage(rows, query.limit, (row) => `${row.expires}_${row.id}`);
  const items = page.items.map((row) => ({
    id: row.id,
    surveyId: row.survey_id,
    system: row.system as System,
    name: row.name,
    maker: row.maker,
    serialNumber: row.serial_number,
    place: row.place,
    count: row.count,
    madeOn: row.made,
    expiresOn: row.expires,
    expired: row.expired,
    surveyNumber: row.survey_number,
    vesselId: row.vessel_id,
    vesselName: row.vessel_name,
  }));
  return { items, next: page.next };
}
