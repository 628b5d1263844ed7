import type { Finding } from '@garboard/contract/findings';
import { Prisma } from '@garboard/db/database';
import type { Verdict } from '@garboard/trade/vocabulary';
import type { ReadCtx } from '../context.ts';

type Named = Finding['worksheets'][number];
interface Row {
  id: string;
  finding_id: string;
  kind: string;
  title: string;
  verdict: string;
}

const working = Prisma.sql`w.finding_id, w.title, w.verdict`;
const frozen = Prisma.sql`(w.issued->>'findingId')::uuid AS finding_id, w.issued->>'title' AS title,
  w.issued->'result'->>'verdict' AS verdict`;

/** The worksheets of each finding of one survey, in one query; for parties those issued. */
export async function worksheetsOfFindings(
  ctx: ReadCtx,
  input: { survey: Prisma.Sql; staff: boolean },
): Promise<Map<string, Named[]>> {
  const byFinding = new Map<string, Named[]>();
  const rows = await ctx.tx.$queryRaw<Row[]>`
    SELECT s.id, s.finding_id, s.kind, s.title, s.verdict
      FROM (SELECT w.id, w.kind, ${input.staff ? working : frozen} FROM worksheets w
             WHERE w.survey_id = ${input.survey}
               AND ${input.staff ? Prisma.sql`true` : Prisma.sql`w.issued IS NOT NULL`}) s
     WHERE s.finding_id IS NOT NULL
     ORDER BY s.id`;
  for (const { id, finding_id, kind, title, verdict } of rows) {
    const named = { id, kind, title, verdict: verdict as Verdict };
    byFinding.set(finding_id, [...(byFinding.get(finding_id) ?? []), named]);
  }
  return byFinding;
}
