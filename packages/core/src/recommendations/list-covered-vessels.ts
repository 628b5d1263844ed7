import type { CoveredVessel, coveredVesselQuery } from '@garboard/contract/recommendations';
import { Prisma } from '@garboard/db/database';
import type { z } from 'zod';
import type { Ctx } from '../context.ts';
import { cutPage, decodeCursor, type Page } from '../paging.ts';
import { likeOf, mySurveys, seenRecommendation } from './sight.ts';

type Query = z.output<typeof coveredVesselQuery>;

const uuid = '[0-9a-f]{8}(?:-[0-9a-f]{4}){3}-[0-9a-f]{12}';
const orders = {
  due: {
    key: Prisma.sql`coalesce("nextDueOn", '9999-12-31'::date)`,
    type: Prisma.sql`date`,
    cursor: new RegExp(`^\\d{4}-[01]\\d-[0-3]\\d_${uuid}$`, 'u'),
  },
  vessel: {
    key: Prisma.sql`lower(name)`,
    type: Prisma.sql`text`,
    cursor: new RegExp(`^[^\\p{Cc}]{1,300}_${uuid}$`, 'u'),
  },
};

const only = {
  undecided: Prisma.sql`undecided > 0`,
  overdue: Prisma.sql`overdue > 0`,
  'this-week': Prisma.sql`"dueThisWeek" > 0`,
  'waiting-for-me': Prisma.sql`"waitingForMe" > 0`,
  unreleased: Prisma.sql`NOT released`,
};

/** The vessels of every survey that the actor may see, each with what is to be cleared on it, over all its surveys. */
export async function listCoveredVessels(ctx: Ctx, query: Query): Promise<Page<CoveredVessel>> {
  const order = orders[query.sort];
  const after = decodeCursor(query.cursor, order.cursor);
  const terms = [
    ...(query.firmId ? [Prisma.sql`"firmId" = ${query.firmId}::uuid`] : []),
    ...(query.only ? [only[query.only]] : []),
    ...(query.q ? [Prisma.sql`name ILIKE ${likeOf(query.q)}`] : []),
    ...(after
      ? [Prisma.sql`(${order.key}, id) > (${after.slice(0, -37)}::${order.type}, ${after.slice(-36)}::uuid)`]
      : []),
  ];
  const rows = await ctx.tx.$queryRaw<(CoveredVessel & { key: string })[]>`
    WITH by_survey AS (
      SELECT m.id, m.vessel_id, m.number, m.sees OR m.assigned AS released, m.issued_at IS NOT NULL AS issued, r.*
        FROM (${mySurveys(ctx)}) AS m
        LEFT JOIN LATERAL (
          SELECT count(*) FILTER (WHERE open) AS undecided,
                 count(*) FILTER (WHERE NOT open) AS decided,
                 count(*) FILTER (WHERE open AND due_on < m.today) AS overdue,
                 count(*) FILTER (WHERE open AND due_on BETWEEN m.today AND m.today + 7) AS soon,
                 count(*) FILTER (WHERE sent AND m.decides) AS mine,
                 min(due_on) FILTER (WHERE open) AS next
            FROM (SELECT f.due_on, f.state = 'evidence-sent' AS sent,
                         f.state IN ('open', 'evidence-sent', 'returned') AS open
                    FROM findings f WHERE f.survey_id = m.id AND ${seenRecommendation(ctx)}) AS seen
        ) AS r ON true),
    vessel AS (
      SELECT v.id, v.name, firms.id AS "firmId", firms.name AS "firmName",
             (array_agg(b.id ORDER BY b.id DESC))[1] AS "latestSurveyId",
             (array_agg(b.number ORDER BY b.id DESC))[1] AS "latestSurveyNumber",
             bool_or(b.released) AS released, bool_or(b.issued) AS issued,
             sum(b.undecided)::int AS undecided, sum(b.decided)::int AS decided, sum(b.overdue)::int AS overdue,
             sum(b.soon)::int AS "dueThisWeek", sum(b.mine)::int AS "waitingForMe", min(b.next) AS "nextDueOn"
        FROM by_survey b
        JOIN vessels v ON v.id = b.vessel_id
        JOIN firms ON firms.id = v.firm_id
       GROUP BY v.id, firms.id)
    SELECT id, name, "firmId", "firmName", "latestSurveyId", "latestSurveyNumber", released, issued, undecided,
           decided, overdue, "dueThisWeek", "waitingForMe", "nextDueOn"::text AS "nextDueOn",
           (${order.key})::text AS key
      FROM vessel
      ${terms.length > 0 ? Prisma.sql`WHERE ${Prisma.join(terms, ' AND ')}` : Prisma.empty}
     ORDER BY ${order.key}, id
     LIMIT ${query.limit + 1}`;
  return cutPage(rows, query.limit, (row) => `${row.key}_${row.id}`);
}
