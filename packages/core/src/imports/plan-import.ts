import { createHash } from 'node:crypto';
import { columnOf, plainWord } from '@garboard/trade/finding-columns';
import { shownEntry } from '../catalogue/load-entry.ts';
import { startedFrom } from '../catalogue/started-from.ts';
import type { Ctx } from '../context.ts';
import { dueByHandColumns } from '../findings/clearing-columns.ts';
import { Refusal } from '../problems.ts';
import type { LoadedSurvey } from '../surveys/load-survey.ts';
import { choicesOf, type ImportRow, sheetOf } from './load-import.ts';
import { type NamedPhoto, namesIn, photoFinder } from './photo-names.ts';
import type { Sheet } from './read-sheet.ts';
import { isOther, type Remark, type RowCells, rowCells } from './row-cells.ts';
import { columnBehind, type EntryTexts, type NewFinding, rowFinding } from './row-finding.ts';

/** The most photos that one finding shows. */
const mostPhotos = 60;

/** What a row becomes. */
export interface PlannedRow {
  line: number;
  cells: string[];
  title: string;
  /** Null when it can't become one. */
  finding: NewFinding | null;
  /** Of the entry it begins from. */
  catalogueVersion: number | null;
  photos: NamedPhoto[];
  fingerprint: string;
  /** The finding that this very row is already. */
  there: { id: string; number: number; state: string } | null;
  problems: Remark[];
  remarks: Remark[];
}

export interface Plan {
  rows: PlannedRow[];
  missingPhotos: string[];
  /** Headings that we don't know, with something below them. */
  otherColumns: string[];
  /** Names of given photos that a row names. */
  named: Set<string>;
}

/** Works out what each row of an import becomes in its survey as that is now. Nothing is written. */
export async function planImport(ctx: Ctx, row: ImportRow, survey: LoadedSurvey): Promise<Plan> {
  const sheet = sheetOf(row);
  const appendOthers = choicesOf(row).otherColumns === 'append';
  const find = await finderFor(ctx, row);
  const there = await rowsThere(ctx, survey.id);
  const entries = await entriesOf(ctx, survey.firmId, sheet);
  const missing = new Set<string>();
  const named = new Set<string>();
  const seen = new Map<string, number>();
  const rows = sheet.rows.map(({ line, cells: raw }) => {
    const cells = rowCells(sheet, raw);
    const entry = entries.get(cells.cell('catalogueKey').trim());
    const { finding, problems } = rowFinding(cells, { entry: entry?.words ?? null, appendOthers });
    if (finding) checkAgainstSurvey(ctx, { survey, finding, cells, entry, problems });
    const text = wordsOf(sheet, raw);
    const before = seen.get(text) ?? 0;
    seen.set(text, before + 1);
    const fingerprint = createHash('sha256').update(`${before}\n${text}`).digest('hex');
    const remarks: Remark[] = [];
    if (before > 0) {
      remarks.push({
        column: '',
        detail: 'This row stands in the sheet more than once; each becomes a finding.',
      });
    }
    const photos = photosOf(cells, find, { missing, remarks });
    for (const photo of photos) named.add(photo.name);
    if (photos.length > mostPhotos) {
      const detail = `A finding shows at most ${mostPhotos} photos; this row names ${photos.length}.`;
      problems.push({ column: cells.heading('photos'), detail });
    }
    return {
      ...{ line, cells: raw, title: finding?.title ?? cells.cell('title').trim(), photos, fingerprint },
      ...{ catalogueVersion: entry?.version ?? null, there: there.get(fingerprint) ?? null },
      ...{ finding: problems.length > 0 ? null : finding, problems, remarks },
    };
  });
  await remarkTwins(ctx, survey.id, rows);
  return { rows, missingPhotos: [...missing], named, otherColumns: othersOf(sheet) };
}

/** What of a finding only the firm's catalogue and today can say. */
function checkAgainstSurvey(
  ctx: Ctx,
  given: {
    survey: LoadedSurvey;
    finding: NewFinding;
    cells: RowCells;
    entry: Entry | undefined;
    problems: Remark[];
  },
): void {
  const { survey, finding, cells, entry, problems } = given;
  const { dueOnSet, urgency } = finding;
  const at = { issuedAt: null, timeZone: survey.timeZone, now: ctx.clock() };
  try {
    if (entry?.refusal) throw entry.refusal;
    dueByHandColumns({ dueOnSet, urgency, ...at });
  } catch (error) {
    if (!(error instanceof Refusal)) throw error;
    problems.push({ column: columnBehind(cells, error.errors?.[0]?.pointer ?? ''), detail: error.message });
  }
}

interface Entry {
  words: EntryTexts | null;
  version: number | null;
  refusal: Refusal | null;
}

/** The catalogue's entry of each key in the sheet, asked for once. */
async function entriesOf(ctx: Ctx, firmId: string, sheet: Sheet): Promise<Map<string, Entry>> {
  const entries = new Map<string, Entry>();
  for (const { cells: raw } of sheet.rows) {
    const cells = rowCells(sheet, raw);
    const key = cells.cell('catalogueKey').trim();
    if (!key || entries.has(key)) continue;
    const wished = cells.cell('catalogueVersion').trim();
    const words = (await shownEntry(ctx, firmId, key))?.words ?? null;
    const version = /^\d{1,9}$/.test(wished) ? Number(wished) : null;
    try {
      entries.set(key, { words, version: await startedFrom(ctx, { firmId, key, version }), refusal: null });
    } catch (error) {
      if (!(error instanceof Refusal)) throw error;
      entries.set(key, { words, version: null, refusal: error });
    }
  }
  return entries;
}

async function finderFor(ctx: Ctx, row: ImportRow) {
  const { id: importId, surveyId } = row;
  const given = await ctx.tx.importPhoto.findMany({
    where: { importId, problem: null },
    select: { name: true, photoId: true },
    orderBy: { ordinal: 'asc' },
  });
  const ofSurvey = await ctx.tx.photo.findMany({ where: { surveyId }, select: { id: true, fileName: true } });
  return photoFinder(
    given,
    ofSurvey.map(({ id, fileName }) => ({ name: fileName, photoId: id })),
  );
}

function photosOf(
  cells: RowCells,
  find: ReturnType<typeof photoFinder>,
  { missing, remarks }: { missing: Set<string>; remarks: Remark[] },
): NamedPhoto[] {
  const photos: NamedPhoto[] = [];
  const say = (detail: string) => remarks.push({ column: cells.heading('photos'), detail });
  for (const name of namesIn(cells.cell('photos'), find)) {
    const found = find(name);
    if ('photo' in found) {
      if (!photos.includes(found.photo)) photos.push(found.photo);
    } else if ('several' in found) {
      say(
        `“${name}” is the name of several photos: ${found.several.slice(0, 4).join(', ')}. Write the folder too.`,
      );
    } else {
      missing.add(name);
      say(
        `There is no photo “${name}”. The finding comes in without it; bring the sheet in again once it is there.`,
      );
    }
  }
  return photos;
}

/** Findings that rows became before and that are still there, by the row's fingerprint. */
async function rowsThere(ctx: Ctx, surveyId: string) {
  const rows = await ctx.tx.$queryRaw<{ fingerprint: string; id: string; number: number; state: string }[]>`
    SELECT r.fingerprint, f.id, f.number, f.state FROM imported_rows r JOIN findings f ON f.id = r.finding_id
    WHERE r.survey_id = ${surveyId}::uuid`;
  return new Map(rows.map(({ fingerprint, ...finding }) => [fingerprint, finding]));
}

/**
 * What a row says, whatever the order of its columns. Photos aren't part of it, so that the same sheet with further
 * photos adds these to the findings it made before.
 */
function wordsOf({ headings }: Sheet, cells: readonly string[]): string {
  const said = cells.flatMap((cell, at) => {
    const heading = headings[at] ?? '';
    const key = columnOf(heading) ?? (isOther(heading) ? plainWord(heading) : null);
    const text = cell.normalize('NFC').trim();
    return key && key !== 'photos' && text ? [`${key}\u0000${text}`] : [];
  });
  return said.sort().join('\u0001');
}

async function remarkTwins(ctx: Ctx, surveyId: string, rows: readonly PlannedRow[]): Promise<void> {
  const findings = await ctx.tx.finding.findMany({
    where: { surveyId },
    select: { title: true, number: true },
  });
  const numbers = new Map(findings.map(({ title, number }) => [plainWord(title), number]));
  for (const { there, title, remarks } of rows) {
    const number = numbers.get(plainWord(title));
    if (there || number === undefined) continue;
    remarks.push({
      column: '',
      detail: `Finding ${number} of this survey has the same title, but says something else.`,
    });
  }
}

function othersOf({ headings, rows }: Sheet): string[] {
  return headings.filter(
    (heading, at) => heading && isOther(heading) && rows.some(({ cells }) => (cells[at] ?? '').trim() !== ''),
  );
}
