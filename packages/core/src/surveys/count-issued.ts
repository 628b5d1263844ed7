import { decidedFindingStates } from '@garboard/trade/states';
import type { Ctx } from '../context.ts';
import type { SurveyRow } from './present-survey.ts';
import { presentSurvey } from './present-survey.ts';
import { costsOf } from './survey-costs.ts';

/** Of one survey: findings issued, those still to be cleared, and the soonest day by which one is due. */
export interface IssuedCounts {
  issued: number;
  open: number;
  nextDueOn: string | null;
}

/** Presents surveys with what their rows don't hold, in three queries for the whole page. */
export async function presentSurveys(ctx: Ctx, rows: SurveyRow[]) {
  const ids = rows.map((row) => row.id);
  const decided = [...decidedFindingStates];
  const counted = await ctx.tx.$queryRaw<{ id: string; issued: number; open: number; next: Date | null }[]>`
    SELECT survey_id AS id,
           count(*)::int AS issued,
           (count(*) FILTER (WHERE clearing AND state <> ALL (${decided})))::int AS open,
           min(due_on) FILTER (WHERE clearing AND state <> ALL (${decided})) AS next
      FROM findings
     WHERE survey_id = ANY (${ids}::uuid[]) AND state <> 'draft'
     GROUP BY survey_id`;
  const counts = new Map<string, IssuedCounts>(
    counted.map((c) => [
      c.id,
      { issued: c.issued, open: c.open, nextDueOn: c.next?.toISOString().slice(0, 10) ?? null },
    ]),
  );
  const costs = await costsOf(ctx, rows);
  const surveyorIds = [...new Set(rows.flatMap((row) => row.surveyorId ?? []))];
  const people = await ctx.tx.person.findMany({
    where: { id: { in: surveyorIds } },
    select: { id: true, name: true },
  });
  const names = new Map(people.map((p) => [p.id, p.name]));
  return rows.map((row) => presentSurvey(ctx, row, counts.get(row.id), costs.get(row.id) ?? [], names));
}
