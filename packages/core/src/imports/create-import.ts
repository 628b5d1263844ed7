import { readFile } from 'node:fs/promises';
import type { SurveyImportRecord } from '@garboard/contract/imports';
import { importLimits } from '@garboard/contract/limits';
import type { Prisma } from '@garboard/db/database';
import { newId } from '@garboard/db/ids';
import { actorId, actorName } from '../access/actor.ts';
import type { Ctx } from '../context.ts';
import { cleanFileName } from '../files/file-name.ts';
import { keepObject } from '../files/keep-object.ts';
import type { AcceptedFile, Upload } from '../files/received-file.ts';
import { refuseUpload } from '../files/refuse-upload.ts';
import { writableSurvey } from '../findings/writable-survey.ts';
import { invalidField, Refusal } from '../problems.ts';
import { loadSurvey } from '../surveys/load-survey.ts';
import { authoriseImport } from './load-import.ts';
import { presentImport } from './present-import.ts';
import { readSheet } from './read-sheet.ts';
import { lookIntoZip, readWhole, type ZipContents, type ZippedFile } from './zip-photos.ts';

/** Whether a sheet may be brought in, asked before its bytes are read. @returns the survey's zone */
export async function mayImport(ctx: Ctx, surveyId: string): Promise<{ timeZone: string }> {
  const survey = await loadSurvey(ctx, surveyId);
  authoriseImport(ctx, survey);
  await writableSurvey(ctx, surveyId);
  return { timeZone: survey.timeZone };
}

/**
 * Keeps a sheet of findings, and the ZIP of photos that came with it, to be looked at; nothing is brought in yet.
 *
 * @throws Refusal `not-found`, `not-allowed`, `wrong-state`; `files-refused`, `too-large`; `invalid-input` for a sheet
 *   that can't be read, with the line
 */
export async function createImport(
  ctx: Ctx,
  { surveyId, upload }: { surveyId: string; upload: Upload },
): Promise<SurveyImportRecord> {
  const survey = await loadSurvey(ctx, surveyId);
  authoriseImport(ctx, survey);
  if (upload.refused.length > 0) throw refuseUpload(upload.refused);
  const { csv, zip } = sortOut(upload.accepted);
  const contents = zip && (await lookIntoZip(zip.staged.localPath, zip.name));
  const { name, bytes } = await sheetBytes(csv, zip, contents);
  const sheet = readSheet(bytes);
  if (contents && contents.others.length > 0) sheet.remarks.push(leftInZip(contents.others));
  const now = ctx.clock();
  const row = await ctx.tx.surveyImport.create({
    data: {
      ...{ id: newId(), firmId: survey.firmId, surveyId, fileName: cleanFileName(name) },
      sheet: sheet as unknown as Prisma.InputJsonObject,
      ...{ zipName: zip?.name ?? null, zipSha256: zip?.staged.sha256 ?? null },
      ...{ madeById: actorId(ctx.actor) ?? '', madeByName: actorName(ctx.actor) },
      ...{ createdAt: now, updatedAt: now },
    },
  });
  if (zip && contents) {
    await keepObject(ctx.tx, zip.staged);
    await ctx.tx.importPhoto.createMany({
      data: contents.photos.map((photo, ordinal) => ({
        ...{ firmId: survey.firmId, importId: row.id, name: photo.name, ordinal, bytes: photo.bytes },
      })),
    });
  }
  return presentImport(ctx, row, survey);
}

function sortOut(files: readonly AcceptedFile[]) {
  const of = (mediaType: string) => files.filter((file) => file.mediaType === mediaType);
  const [csvs, zips] = [of('text/csv'), of('application/zip')];
  if (csvs.length > 1 || zips.length > 1) {
    const what = csvs.length > 1 ? 'sheets of findings' : 'ZIPs';
    throw new Refusal(
      'files-refused',
      `Send one sheet of findings and at most one ZIP; these are several ${what}.`,
    );
  }
  return { csv: csvs[0], zip: zips[0] };
}

async function sheetBytes(
  csv: AcceptedFile | undefined,
  zip: AcceptedFile | undefined,
  contents: ZipContents | undefined,
): Promise<{ name: string; bytes: Buffer }> {
  if (csv) return { name: csv.name, bytes: await readFile(csv.staged.localPath) };
  const [sheet, other] = contents?.sheets ?? [];
  if (!zip || !sheet) {
    throw invalidField('/file', 'No sheet of findings came. Choose the CSV file, or put it into the ZIP.');
  }
  if (other) {
    const names = contents?.sheets.map(({ name }) => name).join(', ');
    throw invalidField(
      '/file',
      `The ZIP holds several sheets: ${names}. Leave one, or choose the CSV beside the ZIP.`,
    );
  }
  const bytes = await readWhole(zip.staged.localPath, zip.name, sheet.name, importLimits.csvBytes);
  return { name: sheet.name, bytes };
}

function leftInZip(others: readonly ZippedFile[]): string {
  const names = others.slice(0, 5).map(({ name }) => name);
  const more = others.length > 5 ? ` and ${others.length - 5} more` : '';
  return `Not photos, so they stay out: ${names.join(', ')}${more}.`;
}
