import type { JobFilter } from '@garboard/contract/job-list';
import { Prisma } from '@garboard/db/database';
import { atMost } from '@garboard/db/reading';
import { staffFirmIds } from '../access/actor.ts';
import type { ReadCtx } from '../context.ts';
import { undecided } from '../recommendations/sight.ts';

/** Whether nothing is asked for but the jobs that are not closed: then a page is read by `soonestJobs`. */
export function asksOnlyForOpen(filter: JobFilter): boolean {
  const { closed, ...others } = filter;
  return closed === 'no' && Object.values(others).every((value) => value === undefined);
}

const undated = Prisma.sql`'9999-12-31'::date`;

/**
 * A page of the jobs that are not closed, soonest day first, with the columns of `found` in `listJobs`. Where a day is
 * due, recommendations stand in an index in that order: of each survey the first is taken as it is met. (What is asked
 * of each is a subquery's value: of an equality the planner would expect one row in all, and sort everything.) Jobs before
 * the boat was seen, which are as many as a firm has in hand, are all looked at; those without any day come last and
 * are read only when the page reaches them.
 */
export function soonestJobs(
  ctx: ReadCtx,
  after: { key: string; id: string } | null,
  limit: number,
): Prisma.Sql {
  const firms = staffFirmIds(ctx.actor);
  const { key, id } = after ?? { key: '0001-01-01', id: '00000000-0000-0000-0000-000000000000' };
  const from = Prisma.sql`(${key}::date, ${id}::uuid)`;
  const today = Prisma.sql`(${ctx.clock()}::timestamptz AT TIME ZONE s.time_zone)::date`;
  return Prisma.sql`
    WITH dated AS (
      SELECT * FROM (
        SELECT s.id, a.key
          FROM surveys s
         CROSS JOIN LATERAL (
           SELECT coalesce(min(d.date) FILTER (WHERE d.date >= ${today}), max(d.date)) AS key
             FROM attendances d WHERE d.survey_id = s.id) AS a
         WHERE s.firm_id = ANY (${firms}::uuid[]) AND s.state IN ('enquiry', 'booked') AND (a.key, s.id) > ${from}
         UNION ALL
        SELECT w.* FROM unnest(${firms}::uuid[]) AS firm (id)
         CROSS JOIN LATERAL (
           SELECT f.survey_id AS id, f.due_on AS key
             FROM (SELECT f.id, f.survey_id, f.due_on FROM findings f
                    WHERE f.firm_id = firm.id AND f.clearing AND ${undecided} AND f.due_on IS NOT NULL
                      AND (f.due_on, f.survey_id) > ${from}
                    ORDER BY f.due_on, f.survey_id OFFSET 0) AS f
            WHERE coalesce((SELECT s.state = 'issued' FROM surveys s WHERE s.id = f.survey_id), false)
              AND coalesce((SELECT false FROM findings g
                             WHERE g.survey_id = f.survey_id AND g.clearing
                               AND g.state IN ('open', 'evidence-sent', 'returned')
                               AND (g.due_on, g.id) < (f.due_on, f.id) LIMIT 1), true)
            ORDER BY f.due_on, f.survey_id ${atMost(limit)}) AS w) AS either
       ORDER BY key, id ${atMost(limit)}),
    page AS (
      SELECT * FROM dated
       UNION ALL
      (SELECT s.id, ${undated} AS key
         FROM surveys s
        WHERE s.firm_id = ANY (${firms}::uuid[]) AND (${undated}, s.id) > ${from}
          AND s.state IN ('enquiry', 'booked', 'attended', 'drafting', 'in-review', 'issued')
          AND CASE WHEN s.state IN ('enquiry', 'booked')
                   THEN NOT EXISTS (SELECT FROM attendances d WHERE d.survey_id = s.id)
                   WHEN s.state = 'issued'
                   THEN NOT EXISTS (SELECT FROM findings f WHERE f.survey_id = s.id AND f.clearing AND ${undecided}
                                       AND f.due_on IS NOT NULL)
                   ELSE true END
        ORDER BY s.id LIMIT (SELECT ${limit} - count(*) FROM dated)))
    SELECT page.id, page.key, nullif(page.key, ${undated}) AS next_on, u.due IS NOT NULL AS recommends,
           CASE WHEN u.undecided > 0 THEN 'in-clearance' ELSE s.state END AS stage,
           coalesce(u.undecided, 0)::int AS undecided, coalesce(u.sent, 0)::int AS sent
      FROM page
     -- Each looked up for itself: joined, the planner would gather all surveys of the firm for them.
     CROSS JOIN LATERAL (SELECT s.id, s.state FROM surveys s WHERE s.id = page.id OFFSET 0) AS s
      LEFT JOIN LATERAL (
        SELECT count(*) AS undecided, count(*) FILTER (WHERE f.state = 'evidence-sent') AS sent, min(f.due_on) AS due
          FROM findings f
         WHERE f.survey_id = s.id AND f.clearing AND ${undecided}) AS u ON s.state = 'issued'`;
}
