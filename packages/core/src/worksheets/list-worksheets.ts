import type { WorksheetListed, worksheetQuery } from '@garboard/contract/worksheets';
import { Prisma } from '@garboard/db/database';
import type { System, Verdict } from '@garboard/trade/vocabulary';
import type { z } from 'zod';
import { isStaff } from '../access/policy.ts';
import type { Ctx } from '../context.ts';
import { cutPage, decodeCursor, type Page, uuidForm } from '../paging.ts';
import { loadSurvey } from '../surveys/load-survey.ts';
import { isOutdated } from './newer-result.ts';
import { mayEditWorksheets } from './present-worksheet.ts';
import { viewCondition, worksheetView } from './visible-worksheets.ts';

interface Row {
  id: string;
  finding_id: string | null;
  kind: string;
  title: string;
  printed: boolean;
  issued: boolean;
  row_version: number;
  created_at: Date;
  updated_at: Date;
  // Of the result.
  version: number;
  system: string;
  verdict: string;
  reasons: string[];
  outputs: WorksheetListed['outputs'];
}

const working = Prisma.sql`w.finding_id, w.title, w.printed, w.result`;
const frozen = Prisma.sql`(w.issued->>'findingId')::uuid AS finding_id, w.issued->>'title' AS title,
  true AS printed, w.issued->'result' AS result`;

/**
 * A survey's worksheets in the order in which they were made, parties get those issued. Of the results only what a
 * list shows leaves the database: drawings and working can be large. @throws Refusal `not-found`
 */
export async function listWorksheets(
  ctx: Ctx,
  query: z.output<typeof worksheetQuery> & { surveyId: string },
): Promise<Page<WorksheetListed>> {
  const after = decodeCursor(query.cursor, uuidForm);
  const survey = await loadSurvey(ctx, query.surveyId);
  const staff = isStaff(ctx.actor, survey);
  const shown = viewCondition(ctx.actor, worksheetView(ctx.actor, survey));
  const rows = await ctx.tx.$queryRaw<Row[]>`
    SELECT s.id, s.finding_id, s.kind, s.title, s.printed, s.issued, s.row_version, s.created_at, s.updated_at,
           r.version, r.system, r.verdict, r.reasons, r.outputs
      FROM (SELECT w.id, w.kind, w.issued IS NOT NULL AS issued, w.version AS row_version, w.created_at,
                   w.updated_at, ${staff ? working : frozen}
              FROM worksheets w
             WHERE w.survey_id = ${survey.id}::uuid AND ${shown}
               AND ${after ? Prisma.sql`w.id > ${after}::uuid` : Prisma.sql`true`}) s
     CROSS JOIN LATERAL json_to_record(s.result)
        AS r (version int, system text, verdict text, reasons json, outputs json)
     WHERE ${query.findingId ? Prisma.sql`s.finding_id = ${query.findingId}::uuid` : Prisma.sql`true`}
     ORDER BY s.id
     LIMIT ${query.limit + 1}`;
  const page = cutPage(rows, query.limit, (row) => row.id);
  const edit = mayEditWorksheets(ctx, survey);
  const items = page.items.map((row) => ({
    id: row.id,
    surveyId: survey.id,
    findingId: row.finding_id,
    kind: row.kind,
    title: row.title,
    worksheetVersion: row.version,
    printed: row.printed,
    issued: row.issued,
    may: { edit },
    createdAt: row.created_at.toISOString(),
    updatedAt: row.updated_at.toISOString(),
    version: row.row_version,
    system: row.system as System,
    verdict: row.verdict as Verdict,
    reasons: row.reasons,
    outputs: row.outputs,
    outdated: staff && isOutdated({ kind: row.kind, kindVersion: row.version }),
  }));
  return { items, next: page.next };
}
