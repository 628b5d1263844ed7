import type { Ctx } from '../context.ts';
import { type NewEvent, recordEvents } from '../events/record-event.ts';

/** How many surveys one look goes through at most; the next goes on. */
const batchSize = 300;

interface Overdue {
  firm_id: string;
  survey_id: string;
  findings: { id: string; dueOn: string; atYard: boolean }[];
}

/**
 * Tells of what is overdue, once a week for each survey: on Monday by the survey's own calendar, or on Tuesday when
 * Garboard didn't run. A yard is told of each finding assigned to it. To be called for all firms.
 *
 * @returns how many surveys were told of
 */
export async function remindOverdue(ctx: Ctx): Promise<number> {
  const now = ctx.clock();
  const rows = await ctx.tx.$queryRaw<Overdue[]>`
    WITH late AS (
      SELECT f.firm_id, f.survey_id, f.id, f.due_on,
        date_trunc('week', ${now}::timestamptz AT TIME ZONE s.time_zone)::date AS week
      FROM findings f JOIN surveys s ON s.id = f.survey_id
      WHERE f.clearing AND f.state IN ('open', 'returned', 'evidence-sent') AND f.due_on < ${now}::date + 1
        AND f.due_on < (${now}::timestamptz AT TIME ZONE s.time_zone)::date
        AND extract(isodow FROM ${now}::timestamptz AT TIME ZONE s.time_zone) <= 2
        AND s.state NOT IN ('closed', 'cancelled')
    ), begun AS (
      INSERT INTO overdue_rounds (firm_id, survey_id, week)
      SELECT DISTINCT l.firm_id, l.survey_id, l.week FROM late l
      WHERE NOT EXISTS (
        SELECT FROM overdue_rounds o WHERE o.survey_id = l.survey_id AND o.week = l.week)
      ORDER BY l.survey_id LIMIT ${batchSize}
      ON CONFLICT DO NOTHING RETURNING survey_id
    )
    SELECT late.firm_id, late.survey_id, json_agg(json_build_object(
        'id', late.id, 'dueOn', late.due_on,
        'atYard', EXISTS (SELECT FROM finding_yards y WHERE y.finding_id = late.id)
      ) ORDER BY late.due_on, late.id) AS findings
    FROM late JOIN begun USING (survey_id) GROUP BY late.firm_id, late.survey_id`;
  await recordEvents(ctx, rows.flatMap(eventsOf));
  return rows.length;
}

function eventsOf({ firm_id: firmId, survey_id: surveyId, findings }: Overdue): NewEvent[] {
  const shared = { firmId, surveyId, role: 'system' };
  const since = findings[0]?.dueOn ?? '';
  return [
    { ...shared, kind: 'survey.overdue', data: { count: findings.length, since } },
    ...findings
      .filter((finding) => finding.atYard)
      .map(({ id, dueOn }) => ({
        ...shared,
        findingId: id,
        kind: 'finding.overdue' as const,
        data: { dueOn },
      })),
  ];
}
