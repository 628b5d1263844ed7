import { Prisma } from '@garboard/db/database';
import { grantFor } from '@garboard/trade/permissions';
import { firmRoles, partyRoles } from '@garboard/trade/vocabulary';
import { type Actor, actorId, firmRole, staffFirmIds } from '../access/actor.ts';
import type { ReadCtx } from '../context.ts';

const decidingStaff = firmRoles.filter((role) => grantFor('evidence.decide', role));
/** Roles of parties that decide where the survey leaves that to the insurer. */
export const decidingParties = partyRoles.filter((role) => grantFor('evidence.decide', role));

/** Firms in which the actor decides on evidence where the survey leaves that to its surveyors. */
export const decidingFirms = (actor: Actor): string[] =>
  staffFirmIds(actor).filter((firmId) => {
    const role = firmRole(actor, firmId);
    return role !== null && decidingStaff.includes(role);
  });

/**
 * The actor's surveys, as a subquery with these columns: `id, firm_id, vessel_id, number, state, issued_at, decider,
 * today` (the day in the survey's zone), `sees` (all that was issued), `assigned` (only the findings assigned to
 * them as a yard) and `decides` (on evidence). A survey of which nothing was released is in it, with all three false.
 */
export function mySurveys(ctx: ReadCtx): Prisma.Sql {
  const staff = staffFirmIds(ctx.actor);
  const personId = actorId(ctx.actor);
  const columns = Prisma.sql`s.id, s.firm_id, s.vessel_id, s.number, s.state, s.issued_at,
    s.clearance_decided_by AS decider, (${ctx.clock()}::timestamptz AT TIME ZONE s.time_zone)::date AS today`;
  const own = Prisma.sql`
    SELECT ${columns}, true AS sees, false AS assigned,
           s.clearance_decided_by = 'surveyor' AND s.firm_id = ANY (${decidingFirms(ctx.actor)}::uuid[]) AS decides
      FROM surveys s
     WHERE s.firm_id = ANY (${staff}::uuid[]) AND s.state <> 'cancelled'`;
  if (!personId) return own;
  const key = ctx.actor.kind === 'person' ? ctx.actor.key : undefined;
  const part = key ? Prisma.sql`AND firm_id = ${key.firmId}::uuid AND role = ${key.role}` : Prisma.empty;
  const shared = Prisma.sql`
    SELECT ${columns}, p.sees, p.assigned,
           s.clearance_decided_by = 'insurer' AND p.decides AS decides
      FROM (SELECT survey_id,
                   bool_or(released AND NOT held AND role <> 'yard') AS sees,
                   bool_or(released AND NOT held AND role = 'yard') AS assigned,
                   bool_or(released AND NOT held AND role = ANY (${decidingParties}::text[])) AS decides
              FROM parties
             WHERE person_id = ${personId}::uuid AND firm_id <> ALL (${staff}::uuid[]) ${part}
             GROUP BY survey_id) AS p
      JOIN surveys s ON s.id = p.survey_id
     WHERE s.state <> 'cancelled'`;
  return staff.length > 0 ? Prisma.sql`${own} UNION ALL ${shared}` : shared;
}

/** Which findings `f` of the actor's surveys `m` are recommendations that the actor sees. */
export function seenRecommendation(ctx: ReadCtx): Prisma.Sql {
  return Prisma.sql`f.clearing AND f.state <> 'draft' AND (m.sees OR m.assigned AND EXISTS (
    SELECT FROM finding_yards y WHERE y.finding_id = f.id AND y.person_id = ${actorId(ctx.actor)}::uuid))`;
}

/** As the partial index has it; literal, so that the planner can tell. */
export const undecided = Prisma.sql`f.state IN ('open', 'evidence-sent', 'returned')`;

/** Part of a text, sought with `ILIKE`. */
export const likeOf = (q: string): string => `%${q.replace(/[\\%_]/g, '\\$&')}%`;
