import type { Survey } from '@garboard/contract/surveys';
import { decidedFindingStates } from '@garboard/trade/states';
import { type Urgency, urgencies } from '@garboard/trade/vocabulary';
import { isStaff, may } from '../access/policy.ts';
import type { Ctx } from '../context.ts';
import type { SurveyRow } from './present-survey.ts';

type Total = Survey['costs'][number];
interface Row extends Omit<Total, 'urgency'> {
  id: string;
  urgency: string;
}

/**
 * What the findings of these surveys may cost, by urgency and currency, in one query: for the firm as it is being
 * written, for parties as it was issued, and only where the firm prints costs. Findings decided on cost nothing more.
 */
export async function costsOf(ctx: Ctx, surveys: readonly SurveyRow[]): Promise<Map<string, Total[]>> {
  const own = surveys.filter((s) => isStaff(ctx.actor, s)).map((s) => s.id);
  const issued = surveys
    .filter((s) => !isStaff(ctx.actor, s) && s.printCosts && may(ctx.actor, s, 'report.read'))
    .map((s) => s.id);
  const decided = [...decidedFindingStates];
  const rows = await ctx.tx.$queryRaw<Row[]>`
    SELECT survey_id AS id, urgency, currency, sum(low)::float8 AS low, sum(high)::float8 AS high,
           count(*)::int AS findings, (count(*) FILTER (WHERE basis = 'opinion'))::int AS opinions
      FROM (
        SELECT survey_id, urgency, cost_currency AS currency, cost_low AS low, cost_high AS high, cost_basis AS basis
          FROM findings
         WHERE survey_id = ANY (${own}::uuid[]) AND cost_low IS NOT NULL AND state <> ALL (${decided})
        UNION ALL
        SELECT survey_id, issued->>'urgency', issued->'cost'->>'currency', (issued->'cost'->>'low')::int,
               (issued->'cost'->>'high')::int, issued->'cost'->>'basis'
          FROM findings
         WHERE survey_id = ANY (${issued}::uuid[]) AND issued->'cost'->>'low' IS NOT NULL
           AND state <> 'draft' AND state <> ALL (${decided})
      ) AS costed
     GROUP BY survey_id, urgency, currency
     ORDER BY currency`;
  const totals = new Map<string, Total[]>();
  for (const urgency of urgencies satisfies readonly Urgency[]) {
    for (const { id, ...row } of rows.filter((r) => r.urgency === urgency)) {
      totals.set(id, [...(totals.get(id) ?? []), { ...row, urgency }]);
    }
  }
  return totals;
}
