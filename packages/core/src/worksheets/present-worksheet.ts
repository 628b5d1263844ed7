import type { Worksheet } from '@garboard/contract/worksheets';
import { surveyIsEditable } from '@garboard/trade/states';
import type { SurveyState } from '@garboard/trade/vocabulary';
import type { WorksheetResult } from '@garboard/trade/worksheets/core/evaluate';
import { isStaff, may, type Standing } from '../access/policy.ts';
import type { Ctx } from '../context.ts';
import type { LoadedWorksheet } from './load-worksheet.ts';
import { newerResult } from './newer-result.ts';

/** Whether the actor may now edit the worksheets of this survey. */
export const mayEditWorksheets = (ctx: Ctx, survey: Standing & { state: string }): boolean =>
  may(ctx.actor, survey, 'worksheet.write') && surveyIsEditable(survey.state as SurveyState);

/** A worksheet as the caller sees it: the working copy for the firm, what was issued for everyone else. */
export function presentWorksheet(ctx: Ctx, row: LoadedWorksheet): Worksheet {
  const issued = isStaff(ctx.actor, row.survey) ? null : row.issued;
  const result = issued?.result ?? (row.result as unknown as WorksheetResult);
  return {
    id: row.id,
    surveyId: row.surveyId,
    findingId: issued ? issued.findingId : row.findingId,
    kind: row.kind,
    title: issued?.title ?? row.title,
    inputs: issued ? null : (row.inputs as Record<string, unknown>),
    result,
    worksheetVersion: result.version,
    printed: issued ? true : row.printed,
    issued: row.issued !== null,
    newer: issued ? null : newerResult(row),
    may: { edit: mayEditWorksheets(ctx, row.survey) },
    createdAt: row.createdAt.toISOString(),
    updatedAt: row.updatedAt.toISOString(),
    version: row.version,
  };
}
