import type { JobFilter } from '@garboard/contract/job-list';
import { Prisma } from '@garboard/db/database';
import { type JobStage, jobStages } from '@garboard/trade/job-stages';
import { type Actor, actorId, firmRole, staffFirmIds } from '../access/actor.ts';
import type { Ctx } from '../context.ts';
import { likeOf } from '../recommendations/sight.ts';

/** Firms in which the actor has one of these roles. */
function firmsAs(actor: Actor, roles: readonly string[]): string[] {
  return staffFirmIds(actor).filter((firmId) => roles.includes(firmRole(actor, firmId) ?? ''));
}

/** Days of attendances matter only until the boat has been seen. */
const beforeTheBoat = Prisma.sql`s.state IN ('enquiry', 'booked')`;

/**
 * Every job of the firms the actor works for, as a subquery with what lists filter, sort and count by: its stage, the
 * next day that counts and whether it has `passed`, what of it is `undecided`, `sent` and `overdue`, and who has to do
 * the next thing (`w_office`, `w_surveyor`, `w_reviewer`, `w_owner`, `w_insurer`, `w_me`). Recommendations are counted
 * from an index that holds only undecided ones.
 */
export function jobRows(ctx: Ctx): Prisma.Sql {
  const { actor } = ctx;
  const firms = staffFirmIds(actor);
  const me = actorId(actor);
  return Prisma.sql`
    SELECT waits.*,
           (w_office AND firm_id = ANY (${firmsAs(actor, ['office', 'principal'])}::uuid[]))
             OR (w_surveyor AND surveyor_id = ${me}::uuid)
             OR (w_reviewer AND (reviewer_id = ${me}::uuid OR reviewer_id IS NULL AND asked_by_id <> ${me}::uuid
                 AND firm_id = ANY (${firmsAs(actor, ['surveyor', 'principal'])}::uuid[]))) AS w_me
      FROM (
        SELECT job.*,
               stage IN ('enquiry', 'issued') OR stage = 'booked' AND next_on IS NULL AS w_office,
               stage IN ('attended', 'drafting') OR stage = 'booked' AND passed
                 OR sent > 0 AND decider = 'surveyor' AS w_surveyor,
               stage = 'in-review' AS w_reviewer,
               undecided > sent AS w_owner,
               sent > 0 AND decider = 'insurer' AS w_insurer
          FROM (
            SELECT staged.*, next_on < today AS passed FROM (
              SELECT s.id, s.firm_id, s.vessel_id, s.number, s.purpose, s.requested_by, s.surveyor_id, s.issued_at,
                     s.updated_at, s.clearance_decided_by AS decider, r.reviewer_id, r.reviewer_name, r.asked_by_id,
                     CASE WHEN s.state = 'issued' AND u.undecided > 0 THEN 'in-clearance' ELSE s.state END AS stage,
                     coalesce(u.undecided, 0)::int AS undecided, coalesce(u.sent, 0)::int AS sent,
                     coalesce(u.due, a.next, a.last) AS next_on,
                     u.due IS NOT NULL AS recommends, t.today,
                     CASE WHEN u.due < t.today THEN u.overdue ELSE 0 END::int AS overdue
                FROM surveys s
                CROSS JOIN LATERAL (
                  SELECT (${ctx.clock()}::timestamptz AT TIME ZONE s.time_zone)::date AS today) AS t
                LEFT JOIN (
                  SELECT f.survey_id, count(*) AS undecided, count(*) FILTER (WHERE f.state = 'evidence-sent') AS sent,
                         min(f.due_on) AS due,
                         count(*) FILTER (WHERE f.due_on < ${ctx.clock()}::timestamptz::date) AS overdue
                    FROM findings f
                   WHERE f.firm_id = ANY (${firms}::uuid[]) AND f.clearing
                     AND f.state IN ('open', 'evidence-sent', 'returned')
                   GROUP BY f.survey_id) AS u ON u.survey_id = s.id AND s.state = 'issued'
                LEFT JOIN LATERAL (
                  SELECT min(d.date) FILTER (WHERE d.date >= t.today) AS next, max(d.date) AS last
                    FROM attendances d WHERE d.survey_id = s.id AND ${beforeTheBoat}) AS a ON ${beforeTheBoat}
                LEFT JOIN reviews r ON r.survey_id = s.id AND r.state = 'asked' AND s.state = 'in-review'
               WHERE s.firm_id = ANY (${firms}::uuid[])
            ) AS staged
          ) AS job
      ) AS waits`;
}

const waitColumns = {
  office: Prisma.sql`j.w_office`,
  surveyor: Prisma.sql`j.w_surveyor`,
  reviewer: Prisma.sql`j.w_reviewer`,
  owner: Prisma.sql`j.w_owner`,
  insurer: Prisma.sql`j.w_insurer`,
  me: Prisma.sql`j.w_me`,
};

const isClosed = Prisma.sql`j.stage IN ('closed', 'cancelled')`;

/** What narrows the list, as `WHERE …`; about jobs `j` and, with `q`, vessels `v`. */
export function jobConditions(filter: JobFilter): Prisma.Sql {
  const like = filter.q ? likeOf(filter.q) : null;
  const given = [
    Prisma.sql`true`,
    filter.stage ? Prisma.sql`j.stage = ${filter.stage}` : null,
    filter.closed === 'yes' ? isClosed : null,
    filter.closed === 'no' ? Prisma.sql`NOT ${isClosed}` : null,
    filter.due === 'overdue' ? Prisma.sql`j.passed` : null,
    filter.due === 'this-week' ? Prisma.sql`j.next_on BETWEEN j.today AND j.today + 7` : null,
    filter.waitingFor ? waitColumns[filter.waitingFor] : null,
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
const stages: readonly JobStage[] = jobStages;

/** Orders of the list; `newest` goes down, the others up. */
export const jobOrder = {
  due: { key: due, type: Prisma.sql`date`, cursor: cursorOf('\\d{4}-[01]\\d-[0-3]\\d') },
  newest: { key: Prisma.sql`0`, type: Prisma.sql`int`, cursor: cursorOf('0') },
  stage: {
    key: Prisma.sql`array_position(${[...stages]}::text[], j.stage) * 10000000 + (${due} - '2000-01-01'::date)`,
    type: Prisma.sql`int`,
    cursor: cursorOf('\\d{1,9}'),
  },
  vessel: {
    key: Prisma.sql`lower(v.name) || ' ' || j.number`,
    type: Prisma.sql`text`,
    cursor: cursorOf('[^\\p{Cc}]{1,300}'),
  },
};
