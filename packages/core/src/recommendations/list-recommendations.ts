import type {
  Clearer,
  Recommendation,
  RecommendationFilter,
  recommendationSorts,
} from '@garboard/contract/recommendations';
import { Prisma } from '@garboard/db/database';
import { atMost } from '@garboard/db/reading';
import type { FindingState, System, Urgency } from '@garboard/trade/vocabulary';
import type { ReadCtx } from '../context.ts';
import { cutPage, decodeCursor, type PageInput } from '../paging.ts';
import { recommendationConditions, recommendationOrder } from './recommendation-terms.ts';
import { mySurveys, seenRecommendation } from './sight.ts';
import { readsInOrder, soonestRecommendations } from './soonest-recommendations.ts';

export interface ListRecommendations extends RecommendationFilter, PageInput {
  sort: (typeof recommendationSorts)[number];
  total?: 'yes' | 'no';
}

interface Row {
  id: string;
  key: string;
  total: number | null;
  number: number;
  title: string;
  system: string;
  urgency: string;
  state: string;
  due_on: string | null;
  overdue: boolean;
  waiting_for: string | null;
  decides: boolean;
  clearance_id: string | null;
  sent_at: Date | null;
  sent_by: string | null;
  survey_id: string;
  survey_number: string;
  vessel_id: string;
  vessel_name: string;
  firm_id: string;
  firm_name: string;
}

/**
 * Findings that require clearing, over every survey of the actor's firms or released to the actor; how many there are
 * in all when that is asked for. Words are those that were issued. One statement: the actor's recommendations are read
 * from an index, without their texts, put in order, and only those of the page are then fetched whole. The undecided,
 * soonest due first, stand in their index in order (`soonestRecommendations`).
 */
export async function listRecommendations(
  ctx: ReadCtx,
  { limit, cursor, sort, total, ...filter }: ListRecommendations,
): Promise<{ items: Recommendation[]; next: string | null; total: number | null }> {
  const order = recommendationOrder[sort];
  const cut = decodeCursor(cursor, order.cursor);
  const after = cut === undefined ? null : { due: cut.slice(0, -37), id: cut.slice(-36) };
  const counts = total === 'yes';
  const rows =
    sort === 'due' && !counts && (await readsInOrder(ctx, filter))
      ? await ctx.tx.$queryRaw<Row[]>`
          SELECT ${columns}, NULL::int AS total
            FROM (${soonestRecommendations(ctx, after, limit + 1)}) AS f ${evidence}
           ORDER BY f.key, f.id`
      : await ctx.tx.$queryRaw<Row[]>`
          WITH mine AS MATERIALIZED (${mySurveys(ctx)}),
          found AS MATERIALIZED (
            SELECT f.id, ${order.key} AS key, m.number AS survey_number, m.vessel_id, m.decides, m.decider, m.today
              FROM mine m
              JOIN findings f ON f.survey_id = m.id
              ${sort === 'vessel' || filter.q ? Prisma.sql`JOIN vessels v ON v.id = m.vessel_id` : Prisma.empty}
              ${sort === 'sent' ? Prisma.sql`LEFT JOIN clearances c ON c.finding_id = f.id AND c.state = 'sent'` : Prisma.empty}
             WHERE ${seenRecommendation(ctx)} ${recommendationConditions(filter)}),
          page AS (
            SELECT * FROM found
             ${after ? Prisma.sql`WHERE (key, id) > (${after.due}::${order.type}, ${after.id}::uuid)` : Prisma.empty}
             ORDER BY key, id ${atMost(limit + 1)})
          SELECT ${columns}, ${counts ? Prisma.sql`(SELECT count(*) FROM found)::int` : Prisma.sql`NULL::int`} AS total
            FROM (SELECT page.*, f.survey_id, f.firm_id, f.number, f.issued_title, f.issued_system, f.issued_urgency,
                         f.state, f.due_on, v.name AS vessel_name, firms.name AS firm_name
                    FROM page
                    JOIN findings f ON f.id = page.id
                    JOIN vessels v ON v.id = page.vessel_id
                    JOIN firms ON firms.id = f.firm_id) AS f ${evidence}
           ORDER BY f.key, f.id`;
  const page = cutPage(rows, limit, (row) => `${row.key}_${row.id}`);
  const none = counts ? 0 : null;
  return { items: page.items.map(present), next: page.next, total: rows[0]?.total ?? none };
}

/** Of a row `f` of the page with what is shown of its survey, boat and firm. */
const columns = Prisma.sql`
  f.id, f.key::text AS key, f.number, f.issued_title AS title, f.issued_system AS system, f.issued_urgency AS urgency,
  f.state, f.due_on::text AS due_on,
  coalesce(f.state IN ('open', 'evidence-sent', 'returned') AND f.due_on < f.today, false) AS overdue,
  CASE WHEN f.state IN ('open', 'returned') THEN 'owner' WHEN f.state = 'evidence-sent' THEN f.decider END AS waiting_for,
  f.decides, c.id AS clearance_id, c.sent_at, c.sent_by_name AS sent_by, f.survey_id, f.survey_number,
  f.vessel_id, f.vessel_name, f.firm_id, f.firm_name`;
const evidence = Prisma.sql`
  LEFT JOIN clearances c ON c.finding_id = f.id AND c.state = 'sent'`;

function present(row: Row): Recommendation {
  const waits = row.state === 'evidence-sent' && row.clearance_id !== null && row.sent_at !== null;
  return {
    id: row.id,
    number: row.number,
    title: row.title,
    system: row.system as System,
    urgency: row.urgency as Urgency,
    state: row.state as FindingState,
    dueOn: row.due_on,
    overdue: row.overdue,
    waitingFor: row.waiting_for as Clearer | null,
    evidence: waits
      ? {
          clearanceId: row.clearance_id ?? '',
          sentAt: row.sent_at?.toISOString() ?? '',
          sentBy: row.sent_by ?? '',
        }
      : null,
    mayDecide: waits && row.decides,
    surveyId: row.survey_id,
    surveyNumber: row.survey_number,
    vesselId: row.vessel_id,
    vesselName: row.vessel_name,
    firmId: row.firm_id,
    firmName: row.firm_name,
  };
}
