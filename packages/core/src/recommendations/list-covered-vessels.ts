import type { CoveredVessel, coveredVesselQuery } from '@garboard/contract/recommendations';
import { Prisma } from '@garboard/db/database';
import type { z } from 'zod';
import type { ReadCtx } from '../context.ts';
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
export async function listCoveredVessels(ctx: ReadCtx, query: Query): Promise<Page<CoveredVessel>> {
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
    WITH mine AS MATERIALIZED (${mySurveys(ctx)}),
    counted AS (
      SELECT vessel_id, count(*) FILTER (WHERE open)::int AS undecided,
             count(*) FILTER (WHERE NOT open)::int AS decided,
             count(*) FILTER (WHERE open AND due_on < today)::int AS overdue,
             count(*) FILTER (WHERE open AND due_on BETWEEN today AND today + 7)::int AS soon,
             count(*) FILTER (WHERE sent AND decides)::int AS mine,
             min(due_on) FILTER (WHERE open) AS next
        FROM (SELECT m.vessel_id, m.today, m.decides, f.due_on, f.state = 'evidence-sent' AS sent,
                     f.state IN ('open', 'evidence-sent', 'returned') AS open
                FROM mine m JOIN findings f ON f.survey_id = m.id
               WHERE ${seenRecommendation(ctx)}) AS seen
       GROUP BY vessel_id),
    surveyed AS (
      SELECT vessel_id, (array_agg(id ORDER BY id DESC))[1] AS latest, bool_or(sees OR assigned) AS released,
             bool_or(issued_at IS NOT NULL) AS issued
        FROM mine GROUP BY vessel_id),
    vessel AS (
      SELECT v.id, v.name, firms.id AS "firmId", firms.name AS "firmName", latest.id AS "latestSurveyId",
             latest.number AS "latestSurveyNumber", s.released, s.issued,
             coalesce(c.undecided, 0) AS undecided, coalesce(c.decided, 0) AS decided,
             coalesce(c.overdue, 0) AS overdue, coalesce(c.soon, 0) AS "dueThisWeek",
             coalesce(c.mine, 0) AS "waitingForMe", c.next AS "nextDueOn"
        FROM surveyed s
        JOIN mine latest ON latest.id = s.latest
        JOIN vessels v ON v.id = s.vessel_id
        JOIN firms ON firms.id = v.firm_id
        LEFT JOIN counted c ON c.vessel_id = s.vessel_id)
    SELECT id, name, "firmId", "firmName", "latestSurveyId", "latestSurveyNumber", released, issued, undecided,
           decided, overdue, "dueThisWeek", "waitingForMe", "nextDueOn"::text AS "nextDueOn",
           (${order.key})::text AS key
      FROM vessel
      ${terms.length > 0 ? Prisma.sql`WHERE ${Prisma.join(terms, ' AND ')}` : Prisma.empty}
     ORDER BY ${order.key}, id
     LIMIT ${query.limit + 1}`;
  return cutPage(rows, query.limit, (row) => `${row.key}_${row.id}`);
}
