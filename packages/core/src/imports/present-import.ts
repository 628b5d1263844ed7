import type { SurveyImportRecord } from '@garboard/contract/imports';
import type { Ctx } from '../context.ts';
import type { LoadedSurvey } from '../surveys/load-survey.ts';
import { type ImportRow, isOpen, outcomeOf, sheetOf } from './load-import.ts';
import { type Plan, planImport } from './plan-import.ts';

/** An import as it stands; with what each row would become as long as nothing was brought in. */
export async function presentImport(
  ctx: Ctx,
  row: ImportRow,
  survey: LoadedSurvey,
): Promise<SurveyImportRecord> {
  const plan = isOpen(row) ? await planImport(ctx, row, survey) : null;
  const photos = await ctx.tx.importPhoto.findMany({
    where: { importId: row.id },
    select: { name: true, photoId: true, problem: true },
    orderBy: { ordinal: 'asc' },
  });
  const sheet = sheetOf(row);
  return {
    ...{ id: row.id, surveyId: row.surveyId, fileName: row.fileName, zipName: row.zipName },
    state: row.state as SurveyImportRecord['state'],
    remarks: sheet.remarks,
    otherColumns: plan?.otherColumns ?? [],
    rows: plan ? plan.rows.map(presentRow) : [],
    counts: {
      rows: sheet.rows.length,
      ...(plan ? plannedCounts(plan) : madeCounts(row)),
      photos: photos.length,
      photosDone: photos.filter(({ photoId, problem }) => photoId !== null || problem !== null).length,
      photosNamed: plan ? photos.filter(({ name }) => plan.named.has(name)).length : 0,
    },
    missingPhotos: plan?.missingPhotos ?? [],
    refusedPhotos: photos.flatMap(({ name, problem }) => (problem === null ? [] : [{ name, problem }])),
    problem: row.problem,
    createdAt: row.createdAt.toISOString(),
  };
}

function presentRow(row: Plan['rows'][number]): SurveyImportRecord['rows'][number] {
  const { line, title, finding, there, problems, remarks } = row;
  return {
    ...{ line, title, system: finding?.system ?? null, urgency: finding?.urgency ?? null },
    ...{ withinDays: finding?.withinDays ?? null, photos: row.photos.length },
    finding: there && { id: there.id, number: there.number },
    problems: there ? [] : problems,
    remarks,
  };
}

function plannedCounts({ rows }: Plan) {
  const there = rows.filter((row) => row.there).length;
  const leftOut = rows.filter((row) => !row.there && !row.finding).length;
  return { findings: rows.length - there - leftOut, there, leftOut };
}

function madeCounts(row: ImportRow) {
  const outcome = outcomeOf(row);
  return {
    findings: outcome.filter(({ made }) => made).length,
    there: outcome.filter(({ made, findingId }) => !made && findingId !== null).length,
    leftOut: outcome.filter(({ findingId }) => findingId === null).length,
  };
}
