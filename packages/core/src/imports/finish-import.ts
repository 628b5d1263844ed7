import { Prisma } from '@garboard/db/database';
import { newId } from '@garboard/db/ids';
import type { Ctx } from '../context.ts';
import { recordEvents } from '../events/record-event.ts';
import { appendPhoto } from '../findings/append-photo.ts';
import { dueByHandColumns, itemColumns } from '../findings/clearing-columns.ts';
import { costColumns, gradingColumns } from '../findings/cost-columns.ts';
import { beforeDrafting } from '../findings/create-finding.ts';
import { writableSurvey } from '../findings/writable-survey.ts';
import { enqueue } from '../outbox/enqueue.ts';
import { wrongState } from '../problems.ts';
import type { LoadedSurvey } from '../surveys/load-survey.ts';
import { choicesOf, lockImport, type RowOutcome } from './load-import.ts';
import { type PlannedRow, planImport } from './plan-import.ts';

/** The most photos that one finding shows. */
const mostPhotos = 60;

type MadeRow = PlannedRow & { id: string; number: number };

/**
 * Makes the findings of an import, all in this transaction, once its photos are there. Rows that became findings before
 * get the photos that they name and that their finding doesn't show yet. Done already, it does nothing.
 *
 * @returns how many findings were made
 * @throws Refusal `not-allowed`, `wrong-state` when survey or sheet no longer allow it
 */
export async function finishImport(ctx: Ctx, id: string): Promise<number> {
  const { row, survey: seen } = await lockImport(ctx, id);
  if (row.state !== 'running') return 0;
  const { survey, role } = await writableSurvey(ctx, seen.id, 'finding.write');
  const plan = await planImport(ctx, row, survey);
  const bad = plan.rows.filter(({ finding, there }) => !finding && !there);
  if (bad.length > 0 && !choicesOf(row).leaveOutBadRows) {
    throw wrongState('Rows that were in order no longer are. Look at the sheet again, then bring it in.');
  }
  const last = await ctx.tx.finding.aggregate({ where: { surveyId: survey.id }, _max: { number: true } });
  const first = (last._max.number ?? 0) + 1;
  const made = plan.rows
    .filter(({ finding, there }) => finding && !there)
    .map((planned, at): MadeRow => ({ ...planned, id: newId(), number: first + at }));
  await ctx.tx.finding.createMany({ data: made.map((one) => findingRow(ctx, survey, one)) });
  await showPhotos(ctx, survey, made, plan.rows);
  await keepFingerprints(ctx, survey, made);
  await ctx.tx.survey.update({
    where: { id: survey.id },
    data: {
      findingCount: { increment: made.length },
      ...(beforeDrafting.includes(survey.state) && made.length > 0 ? { state: 'drafting' } : {}),
    },
  });
  const idOf = new Map(made.map((one) => [one.line, one.id]));
  const outcome = plan.rows.map(({ line, there, problems }): RowOutcome => {
    const findingId = idOf.get(line) ?? there?.id ?? null;
    return { line, findingId, made: idOf.has(line), problems: findingId ? [] : problems };
  });
  await ctx.tx.surveyImport.update({
    where: { id },
    data: {
      ...{ state: 'done', zipSha256: null, updatedAt: ctx.clock() },
      outcome: outcome as unknown as Prisma.InputJsonArray,
    },
  });
  if (row.zipSha256) await enqueue(ctx.tx, 'object.collect', { sha256: row.zipSha256 });
  const photos = await ctx.tx.importPhoto.count({ where: { importId: id, photoId: { not: null } } });
  const at = { firmId: survey.firmId, surveyId: survey.id, role };
  await recordEvents(ctx, [
    ...made.map(({ id: findingId, title }) => ({
      ...{ ...at, findingId, kind: 'finding.created' as const, data: { title } },
    })),
    {
      ...{ ...at, kind: 'survey.brought-in' },
      data: { fileName: row.fileName, findings: made.length, photos },
    },
  ]);
  return made.length;
}

function findingRow(ctx: Ctx, survey: LoadedSurvey, row: MadeRow): Prisma.FindingCreateManyInput {
  if (!row.finding) throw new Error('A row that can’t become a finding was not left out.');
  const { id: _id, photoIds: _photos, ...finding } = row.finding;
  const { position, cost, grading, catalogueVersion: _version, items, dueOnSet, ...fields } = finding;
  const due = { dueOnSet, urgency: fields.urgency, issuedAt: null };
  return {
    ...{ id: row.id, firmId: survey.firmId, surveyId: survey.id, number: row.number, ...fields },
    catalogueVersion: row.catalogueVersion,
    position: position ?? Prisma.DbNull,
    ...costColumns(cost),
    ...gradingColumns(grading),
    ...itemColumns(items),
    ...dueByHandColumns({ ...due, timeZone: survey.timeZone, now: ctx.clock() }),
  };
}

/** Shows the photos that rows name: of new findings all, of drafts made before those that are missing. */
async function showPhotos(
  ctx: Ctx,
  survey: LoadedSurvey,
  made: readonly MadeRow[],
  rows: readonly PlannedRow[],
): Promise<void> {
  const idsOf = ({ photos }: PlannedRow) => [...new Set(photos.flatMap(({ photoId }) => photoId ?? []))];
  const wanted = [...new Set(rows.flatMap(idsOf))];
  const found = await ctx.tx.photo.findMany({
    where: { id: { in: wanted }, surveyId: survey.id },
    select: { id: true },
  });
  // One that was deleted since it came can't be shown.
  const there = new Set(found.map(({ id }) => id));
  await ctx.tx.findingPhoto.createMany({
    data: made.flatMap((row) =>
      idsOf(row)
        .filter((photoId) => there.has(photoId))
        .map((photoId, ordinal) => ({ firmId: survey.firmId, findingId: row.id, photoId, ordinal })),
    ),
  });
  for (const row of rows) {
    if (row.there?.state !== 'draft') continue;
    const findingId = row.there.id;
    const shows = await ctx.tx.findingPhoto.count({ where: { findingId } });
    for (const photoId of idsOf(row).slice(0, Math.max(0, mostPhotos - shows))) {
      if (there.has(photoId)) await appendPhoto(ctx, { surveyId: survey.id, findingId, photoId });
    }
  }
}

async function keepFingerprints(ctx: Ctx, survey: LoadedSurvey, made: readonly MadeRow[]): Promise<void> {
  const fingerprints = made.map(({ fingerprint }) => fingerprint);
  // Of findings that were deleted since.
  await ctx.tx.importedRow.deleteMany({
    where: { surveyId: survey.id, fingerprint: { in: fingerprints } },
  });
  await ctx.tx.importedRow.createMany({
    data: made.map(({ fingerprint, id }) => ({
      ...{ firmId: survey.firmId, surveyId: survey.id, fingerprint, findingId: id },
    })),
  });
}
