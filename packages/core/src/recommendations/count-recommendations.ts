import type { recommendationCounts } from '@garboard/contract/recommendations';
import type { z } from 'zod';
import type { ReadCtx } from '../context.ts';
import { mySurveys, seenRecommendation } from './sight.ts';

type Counts = z.input<typeof recommendationCounts>;

/** How the actor's recommendations stand, in one statement over one index. */
export async function countRecommendations(ctx: ReadCtx): Promise<Counts> {
  const rows = await ctx.tx.$queryRaw<(Omit<Counts, 'waitingFor'> & Counts['waitingFor'])[]>`
    WITH mine AS MATERIALIZED (${mySurveys(ctx)}),
    counted AS (
      SELECT count(*) FILTER (WHERE open)::int AS undecided,
             count(*) FILTER (WHERE NOT open)::int AS decided,
             count(*) FILTER (WHERE open AND due_on < today)::int AS overdue,
             count(*) FILTER (WHERE open AND due_on BETWEEN today AND today + 7)::int AS "dueThisWeek",
             count(*) FILTER (WHERE sent AND decides)::int AS "waitingForMe",
             count(*) FILTER (WHERE open AND NOT sent)::int AS owner,
             count(*) FILTER (WHERE sent AND decider = 'insurer')::int AS insurer,
             count(*) FILTER (WHERE sent AND decider = 'surveyor')::int AS surveyor
        FROM (SELECT f.due_on, m.today, m.decides, m.decider, f.state = 'evidence-sent' AS sent,
                     f.state IN ('open', 'evidence-sent', 'returned') AS open
                FROM mine m JOIN findings f ON f.survey_id = m.id
               WHERE ${seenRecommendation(ctx)}) AS seen)
    SELECT counted.*,
           (SELECT count(DISTINCT vessel_id) FROM mine)::int AS vessels,
           (SELECT count(*) FROM mine WHERE NOT (sees OR assigned))::int AS unreleased,
           (SELECT coalesce(json_agg(json_build_object('id', id, 'name', name) ORDER BY name), '[]')
              FROM firms WHERE id IN (SELECT firm_id FROM mine)) AS firms
      FROM counted`;
  const row = rows[0];
  if (!row) throw new Error('Counting answered no row.');
  const { owner, insurer, surveyor, ...rest } = row;
  return { ...rest, waitingFor: { owner, insurer, surveyor } };
}
