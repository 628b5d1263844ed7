import type { RecommendationFilter } from '@garboard/contract/recommendations';
import { Prisma } from '@garboard/db/database';
import { atMost } from '@garboard/db/reading';
import { sightOf, staffFirmIds } from '../access/actor.ts';
import { ownPartiesSql } from '../access/scopes.ts';
import type { ReadCtx } from '../context.ts';
import { decidingFirms, decidingParties, undecided } from './sight.ts';

/** A place in the order of the list: after this day and this id. */
export interface After {
  due: string;
  id: string;
}

const due = Prisma.sql`coalesce(f.due_on, '9999-12-31'::date)`;
const notCancelled = Prisma.sql`
  coalesce((SELECT s.state <> 'cancelled' FROM surveys s WHERE s.id = f.survey_id), false)`;
const columns = Prisma.sql`f.id, f.survey_id, f.firm_id, f.number, f.issued_title, f.issued_system, f.issued_urgency,
  f.state, f.due_on`;

/**
 * Whether a page of the undecided can be read in the order of their index. It can when nothing else is asked for; of a
 * party to few of very many surveys nearly all rows of the index would be passed over, so for them the surveys are
 * gone through: what either way costs is equal where the surveys are the root of twelve times all.
 */
export async function readsInOrder(ctx: ReadCtx, filter: RecommendationFilter): Promise<boolean> {
  const { decided, ...others } = filter;
  if (decided !== 'no' || Object.values(others).some((value) => value !== undefined)) return false;
  if (!sightOf(ctx.actor).asParty) return true;
  const [parts] = await ctx.tx.$queryRaw<{ many: boolean }[]>`
    SELECT (SELECT count(*) FROM (
              SELECT FROM parties p WHERE ${ownPartiesSql(ctx.actor)} LIMIT most.surveys) AS own) >= most.surveys AS many
      FROM (SELECT ceil(sqrt(12 * greatest(reltuples, 1)))::int AS surveys
              FROM pg_class WHERE oid = 'surveys'::regclass) AS most`;
  return parts?.many ?? false;
}

/** The undecided recommendations that the actor sees, soonest due first, as `listRecommendations` reads them. */
export function soonestRecommendations(ctx: ReadCtx, after: After | null, limit: number): Prisma.Sql {
  const staff = staffFirmIds(ctx.actor);
  const { due: day, id } = after ?? { due: '0001-01-01', id: '00000000-0000-0000-0000-000000000000' };
  const own = Prisma.sql`
    SELECT w.* FROM unnest(${staff}::uuid[]) AS firm (id)
     CROSS JOIN LATERAL (
       SELECT ${columns}, ${due} AS key FROM findings f
        WHERE f.firm_id = firm.id AND f.clearing AND ${undecided} AND (${due}, f.id) > (${day}::date, ${id}::uuid)
          AND ${notCancelled}
        ORDER BY ${due}, f.id ${atMost(limit)}) AS w`;
  const shared = Prisma.sql`
    (SELECT ${columns}, f.due AS key FROM my_undecided f
      WHERE f.firm_id <> ALL (${staff}::uuid[]) AND (f.due, f.id) > (${day}::date, ${id}::uuid)
      ORDER BY f.due, f.id ${atMost(limit)})`;
  const parts = sightOf(ctx.actor).asParty ? [shared] : [own];
  if (sightOf(ctx.actor).asParty && staff.length > 0) parts.push(own);
  const decides = Prisma.sql`CASE s.clearance_decided_by
    WHEN 'surveyor' THEN s.firm_id = ANY (${decidingFirms(ctx.actor)}::uuid[])
    ELSE s.firm_id <> ALL (${staff}::uuid[]) AND EXISTS (
      SELECT FROM parties p WHERE p.survey_id = s.id AND ${ownPartiesSql(ctx.actor)} AND p.released AND NOT p.held
         AND p.role = ANY (${decidingParties}::text[])) END`;
  return Prisma.sql`
    SELECT f.*, s.number AS survey_number, s.vessel_id, s.clearance_decided_by AS decider, ${decides} AS decides,
           (${ctx.clock()}::timestamptz AT TIME ZONE s.time_zone)::date AS today
      FROM (SELECT * FROM (${Prisma.join(parts, ' UNION ALL ')}) AS either
             ORDER BY key, id ${atMost(limit)}) AS f
      JOIN surveys s ON s.id = f.survey_id`;
}
