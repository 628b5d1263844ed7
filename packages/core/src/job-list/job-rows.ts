import type { JobFilter } from '@garboard/contract/job-list';
import { Prisma } from '@garboard/db/database';
import { jobStages } from '@garboard/trade/job-stages';
import { type Actor, actorId, firmRole, staffFirmIds } from '../access/actor.ts';
import type { ReadCtx } from '../context.ts';
import { likeOf } from '../recommendations/sight.ts';

/** Days of attendances matter only until the boat has been seen. */
const beforeTheBoat = Prisma.sql`s.state IN ('enquiry', 'booked')`;

/**
 * Every job of the firms the actor works for, as a subquery of what lists filter, sort and count by: `stage`, `undecided`
 * and `sent` recommendations, `next_on` (the soonest day by which one of these is due, `recommends`; before the boat has
 * been seen the next attendance, else the last) and `today` in the survey's zone. What of it a list doesn't name costs
 * nothing; recommendations are counted from an index that holds the undecided ones alone.
 */
export function jobRows(ctx: ReadCtx): Prisma.Sql {
  const firms = staffFirmIds(ctx.actor);
  const today = Prisma.sql`(${ctx.clock()}::timestamptz AT TIME ZONE s.time_zone)::date`;
  return Prisma.sql`
    SELECT s.id, s.firm_id, s.vessel_id, s.number, s.purpose, s.requested_by, s.surveyor_id,
           s.clearance_decided_by AS decider, s.held, ${today} AS today,
           CASE WHEN u.undecided > 0 THEN 'in-clearance' ELSE s.state END AS stage,
           coalesce(u.undecided, 0)::int AS undecided, coalesce(u.sent, 0)::int AS sent,
           coalesce(u.due, a.next, a.last) AS next_on, u.due IS NOT NULL AS recommends
      FROM surveys s
      LEFT JOIN (
        SELECT f.survey_id, count(*) AS undecided, count(*) FILTER (WHERE f.state = 'evidence-sent') AS sent,
               min(f.due_on) AS due
          FROM findings f
         WHERE f.firm_id = ANY (${firms}::uuid[]) AND f.clearing
           AND f.state IN ('open', 'evidence-sent', 'returned')
         GROUP BY f.survey_id) AS u ON u.survey_id = s.id AND s.state = 'issued'
      LEFT JOIN LATERAL (
        SELECT min(d.date) FILTER (WHERE d.date >= ${today}) AS next, max(d.date) AS last
          FROM attendances d WHERE d.survey_id = s.id AND ${beforeTheBoat}) AS a ON ${beforeTheBoat}
     WHERE s.firm_id = ANY (${firms}::uuid[])`;
}

/** Whether a job `j` has let its next day pass. */
export const passed = Prisma.sql`j.next_on < j.today`;
/** Whether its next day is near. */
export const soon = Prisma.sql`j.next_on BETWEEN j.today AND j.today + 7`;
export const isClosed = Prisma.sql`j.stage IN ('closed', 'cancelled')`;

const quoted = Prisma.sql`EXISTS (SELECT FROM quotations q WHERE q.survey_id = j.id AND q.state = 'sent')`;

/**
 * Who has to do the next thing in a job `j`; several may at once. Of a report that is withheld nobody outside knows
 * anything yet: the office has to hand it over.
 */
export const waits = {
  office: Prisma.sql`(j.stage IN ('enquiry', 'booked') AND j.next_on IS NULL AND NOT ${quoted}
    OR j.stage = 'issued' OR j.stage = 'in-clearance' AND j.held)`,
  client: Prisma.sql`(j.stage IN ('enquiry', 'booked') AND ${quoted})`,
  surveyor: Prisma.sql`(j.stage IN ('attended', 'drafting') OR j.stage = 'booked' AND coalesce(${passed}, false)
    OR j.sent > 0 AND j.decider = 'surveyor')`,
  reviewer: Prisma.sql`(j.stage = 'in-review')`,
  owner: Prisma.sql`(j.undecided > j.sent AND NOT j.held)`,
  insurer: Prisma.sql`(j.sent > 0 AND j.decider = 'insurer' AND NOT j.held)`,
};

/** Firms in which the actor has one of these roles. */
function firmsAs(actor: Actor, roles: readonly string[]): string[] {
  return staffFirmIds(actor).filter((firmId) => roles.includes(firmRole(actor, firmId) ?? ''));
}

/** Whether the actor has to do the next thing: as its surveyor, as who was asked to review it, or for the office. */
export function waitsForMe({ actor }: ReadCtx): Prisma.Sql {
  const me = actorId(actor);
  return Prisma.sql`(
    ${waits.office} AND j.firm_id = ANY (${firmsAs(actor, ['office', 'principal'])}::uuid[])
    OR j.surveyor_id = ${me}::uuid AND ${waits.surveyor}
    OR ${waits.reviewer} AND EXISTS (
      SELECT FROM reviews r
       WHERE r.survey_id = j.id AND r.state = 'asked'
         AND (r.reviewer_id = ${me}::uuid OR r.reviewer_id IS NULL AND r.asked_by_id <> ${me}::uuid
              AND j.firm_id = ANY (${firmsAs(actor, ['surveyor', 'principal'])}::uuid[]))))`;
}

/** What narrows the list, as `WHERE …`; about jobs `j` and, with `q`, vessels `v`. */
export function jobConditions(ctx: ReadCtx, filter: JobFilter): Prisma.Sql {
  const like = filter.q ? likeOf(filter.q) : null;
  const wait = filter.waitingFor;
  const given = [
    Prisma.sql`true`,
    filter.stage ? Prisma.sql`j.stage = ${filter.stage}` : null,
    filter.closed === 'yes' ? isClosed : null,
    filter.closed === 'no' || filter.due ? Prisma.sql`NOT ${isClosed}` : null,
    filter.due === 'overdue' ? passed : null,
    filter.due === 'this-week' ? soon : null,
    wait ? (wait === 'me' ? waitsForMe(ctx) : waits[wait]) : null,
    filter.surveyorId ? Prisma.sql`j.surveyor_id = ${filter.surveyorId}::uuid` : null,
    filter.purpose ? Prisma.sql`j.purpose = ${filter.purpose}` : null,
    filter.firmId ? Prisma.sql`j.firm_id = ${filter.firmId}::uuid` : null,
    like
      ? Prisma.sql`(j.number ILIKE ${like} OR v.name ILIKE ${like} OR j.requested_by ILIKE ${like})`
      : null,
  ].filter((term) => term !== null);
  return Prisma.sql`WHERE ${Prisma.join(given, ' AND ')}`;
}

const uuid = '[0-9a-f]{8}(?:-[0-9a-f]{4}){3}-[0-9a-f]{12}';
const cursorOf = (key: string) => new RegExp(`^${key}_${uuid}$`, 'u');
const due = Prisma.sql`coalesce(j.next_on, '9999-12-31'::date)`;

/** Orders of the list; `newest` goes down, the others up. */
export const jobOrder = {
  due: { key: due, type: Prisma.sql`date`, cursor: cursorOf('\\d{4}-[01]\\d-[0-3]\\d') },
  newest: { key: Prisma.sql`0`, type: Prisma.sql`int`, cursor: cursorOf('0') },
  stage: {
    key: Prisma.sql`array_position(${[...jobStages]}::text[], j.stage) * 10000000 + (${due} - '2000-01-01'::date)`,
    type: Prisma.sql`int`,
    cursor: cursorOf('\\d{1,9}'),
  },
  vessel: {
    key: Prisma.sql`lower(v.name) || ' ' || j.number`,
    type: Prisma.sql`text`,
    cursor: cursorOf('[^\\p{Cc}]{1,300}'),
  },
};
