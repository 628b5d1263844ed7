import type { Ctx } from '../context.ts';
import { recordEvents } from '../events/record-event.ts';

/** How many days before its due date people are reminded of a recommendation. */
const reminderDays = [14, 3];

/** How many reminders one look writes at most; the next goes on. */
const batchSize = 500;

interface Due {
  firm_id: string;
  survey_id: string;
  finding_id: string;
  due_on: Date;
  left: number;
}

/**
 * Reminds of recommendations that are due in 14 and in 3 days by the survey's own calendar, once each for a due date;
 * those that were given less time when they were issued or extended are reminded of only what lies ahead of that. To
 * be called for all firms.
 *
 * @returns how many reminders were written into the record
 */
export async function remindDue(ctx: Ctx): Promise<number> {
  let written = 0;
  for (const days of reminderDays) {
    const next = reminderDays.find((other) => other < days) ?? -1;
    const due = await ctx.tx.$queryRaw<Due[]>`
      WITH near AS (
        SELECT f.firm_id, f.survey_id, f.id AS finding_id, f.due_on,
          f.due_on - (${ctx.clock()}::timestamptz AT TIME ZONE s.time_zone)::date AS left
        FROM findings f JOIN surveys s ON s.id = f.survey_id
        WHERE f.clearing AND f.state IN ('open', 'returned', 'evidence-sent')
          AND f.due_on BETWEEN ${ctx.clock()}::date - 1 AND ${ctx.clock()}::date + ${days + 1}::int
          AND f.due_on - ${days}::int >= coalesce(f.due_extended_at, s.issued_at)::date
          AND NOT EXISTS (
            SELECT FROM due_reminders r
            WHERE r.finding_id = f.id AND r.due_on = f.due_on AND r.days = ${days}::int)
      ), told AS (
        INSERT INTO due_reminders (firm_id, finding_id, due_on, days)
        SELECT firm_id, finding_id, due_on, ${days}::int FROM near
        WHERE near.left > ${next}::int AND near.left <= ${days}::int
        ORDER BY finding_id LIMIT ${batchSize}
        ON CONFLICT DO NOTHING RETURNING finding_id
      )
      SELECT near.* FROM near JOIN told USING (finding_id) ORDER BY near.due_on, near.finding_id`;
    await recordEvents(
      ctx,
      due.map((row) => ({
        firmId: row.firm_id,
        surveyId: row.survey_id,
        findingId: row.finding_id,
        kind: 'finding.due-soon' as const,
        role: 'system',
        data: { dueOn: row.due_on.toISOString().slice(0, 10), days: row.left },
      })),
    );
    written += due.length;
  }
  return written;
}
