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
const columns = Prisma.sql`f.id, f.survey_id, f.firm_id, f.number, f.issued_title, f.issued_system, f.issued_urgency,
  f.state, f.due_on`;
/** For how long a person is taken to be party to as many surveys as before, which decides on nothing but the way of reading. */
const keptMs = 10 * 60_000;
/** Whether people are party to many surveys, by their ids and keys. */
const many = new Map<string, { yes: boolean; until: number }>();

/**
 * Whether a page of the undecided can be read in the order of their index. It can when nothing else is asked for; of a
 * party to few of very many surveys nearly all rows of the index would be passed over, so for them the surveys are
 * gone through: what either way costs is equal where the surveys are the root of twelve times all.
 */
export async function readsInOrder(ctx: ReadCtx, filter: RecommendationFilter): Promise<boolean> {
  const { decided, ...others } = filter;
  if (decided !== 'no' || Object.values(others).some((value) => value !== undefined)) return false;
  const { asParty, personId, key } = sightOf(ctx.actor);
  if (!asParty) return true;
  const who = `${personId} ${key?.firmId ?? ''}`;
  const now = ctx.clock().getTime();
  const known = many.get(who);
  if (known && now < known.until && known.until - now <= keptMs) return known.yes;
  const [parts] = await ctx.tx.$queryRaw<{ many: boolean }[]>`
    SELECT (SELECT count(*) FROM (
              SELECT FROM parties p WHERE ${ownPartiesSql(ctx.actor)} LIMIT most.surveys) AS own) >= most.surveys AS many
      FROM (SELECT ceil(sqrt(12 * greatest(reltuples, 1)))::int AS surveys
              FROM pg_class WHERE oid = 'surveys'::regclass) AS most`;
  const yes = parts?.many ?? false;
  if (many.size >= 10_000) many.clear();
  many.set(who, { yes, until: now + keptMs });
  return yes;
}

/**
 * The undecided recommendations that the actor sees, soonest due first, as `listRecommendations` reads them. Nothing is
 * joined before the page is cut: of a party all comes from one view that is bound to the person (`my_undecided`).
 */
export function soonestRecommendations(ctx: ReadCtx, after: After | null, limit: number): Prisma.Sql {
  const staff = staffFirmIds(ctx.actor);
  const { due: day, id } = after ?? { due: '0001-01-01', id: '00000000-0000-0000-0000-000000000000' };
  const own = Prisma.sql`
    SELECT w.*, s.number AS survey_number, s.clearance_decided_by AS decider, s.time_zone,
           v.id AS vessel_id, v.name AS vessel_name, firms.name AS firm_name
      FROM unnest(${staff}::uuid[]) AS firm (id)
     CROSS JOIN LATERAL (
       SELECT ${columns}, ${due} AS due FROM findings f
        WHERE f.firm_id = firm.id AND f.clearing AND ${undecided} AND (${due}, f.id) > (${day}::date, ${id}::uuid)
          AND coalesce((SELECT s.state <> 'cancelled' FROM surveys s WHERE s.id = f.survey_id), false)
        ORDER BY ${due}, f.id ${atMost(limit)}) AS w
      JOIN surveys s ON s.id = w.survey_id
      JOIN vessels v ON v.id = s.vessel_id
      JOIN firms ON firms.id = w.firm_id`;
  const shared = Prisma.sql`
    (SELECT ${columns}, f.due, f.survey_number, f.decider, f.time_zone, f.vessel_id, f.vessel_name, f.firm_name
       FROM my_undecided f
      WHERE f.firm_id <> ALL (${staff}::uuid[]) AND (f.due, f.id) > (${day}::date, ${id}::uuid)
      ORDER BY f.due, f.id ${atMost(limit)})`;
  const parts = sightOf(ctx.actor).asParty ? [shared] : [own];
  if (sightOf(ctx.actor).asParty && staff.length > 0) parts.push(own);
  const decides = Prisma.sql`CASE f.decider
    WHEN 'surveyor' THEN f.firm_id = ANY (${decidingFirms(ctx.actor)}::uuid[])
    ELSE f.firm_id <> ALL (${staff}::uuid[]) AND f.state = 'evidence-sent' AND coalesce((
      SELECT true FROM parties p WHERE p.survey_id = f.survey_id AND ${ownPartiesSql(ctx.actor)} AND p.released
         AND NOT p.held AND p.role = ANY (${decidingParties}::text[]) LIMIT 1), false) END`;
  return Prisma.sql`
    SELECT f.*, f.due AS key, ${decides} AS decides, (${ctx.clock()}::timestamptz AT TIME ZONE f.time_zone)::date AS today
      FROM (${Prisma.join(parts, ' UNION ALL ')}) AS f
     ORDER BY f.due, f.id ${atMost(limit)}`;
}
