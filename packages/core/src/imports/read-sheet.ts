import { importLimits } from '@garboard/contract/limits';
import { columnOf, findingColumns, headingOf } from '@garboard/trade/finding-columns';
import { CsvError, parse } from 'csv-parse/sync';
import iconv from 'iconv-lite';
import { invalidField } from '../problems.ts';

/** A sheet as it was read: cells are text, whatever they look like. */
export interface Sheet {
  headings: string[];
  rows: { /** Of the file, from 1, where the row begins. */ line: number; cells: string[] }[];
  /** What to know of the file as a whole. */
  remarks: string[];
}

const refuse = (detail: string) => invalidField('/file', detail);
const lineEnds = ['\r\n', '\n', '\r'];
const separators = [',', ';', '\t', '|'];

/**
 * Reads a sheet of findings: UTF-8 or UTF-16 with or without a byte order mark, else Windows-1252; cells parted by
 * commas, semicolons, tabs or upright strokes, in quotes where they hold such a sign or a line break.
 *
 * @throws Refusal `invalid-input` for what isn't such a sheet, naming the line where there is one
 */
export function readSheet(bytes: Buffer): Sheet {
  const { text, remark } = decode(bytes);
  const remarks = remark ? [remark] : [];
  // A spreadsheet may say on a line of its own what parts the cells.
  const said = /^sep=(.)\r?\n/i.exec(text);
  const body = said ? text.slice(said[0].length) : text;
  const separator = said?.[1] ?? separatorOf(body);
  const records = parseRecords(body, separator, said ? 1 : 0);
  const [head, ...rest] = records;
  if (!head)
    throw refuse('The sheet is empty. Its first line must hold the headings, such as Title and System.');
  const headings = trimEnd(head.cells.map((cell) => cell.trim()));
  checkHeadings(headings);
  if (rest.length === 0) throw refuse('The sheet holds headings, but no row below them.');
  if (rest.length > importLimits.rows) {
    throw refuse(
      `The sheet has ${rest.length} rows; at most ${importLimits.rows} can be brought in at once.`,
    );
  }
  return { headings, rows: rest, remarks };
}

function parseRecords(body: string, separator: string, linesBefore: number): Sheet['rows'] {
  let records: { info: { lines: number }; record: string[] }[];
  try {
    records = parse(body, {
      delimiter: separator,
      info: true,
      record_delimiter: lineEnds,
      relax_column_count: true,
      // “5" hose” stands in many a sheet without the quotes being doubled.
      relax_quotes: true,
      max_record_size: importLimits.csvBytes,
    }) as unknown as typeof records;
  } catch (error) {
    if (error instanceof CsvError) throw refuse(unreadable(error));
    throw error;
  }
  let next = linesBefore + 1;
  return records.flatMap(({ info, record }) => {
    const line = next;
    next = info.lines + linesBefore + 1;
    return record.some((cell) => cell.trim() !== '') ? [{ line, cells: record.map(plainCell) }] : [];
  });
}

function unreadable(error: CsvError): string {
  if (error.code === 'CSV_QUOTE_NOT_CLOSED') {
    return 'A quote is opened and never closed, so the rest of the sheet can’t be read. Look for a single " and close or remove it.';
  }
  return `The sheet can’t be read as CSV: ${error.message}. Save it from the spreadsheet as CSV (UTF-8) again.`;
}

/**
 * A cell as text. The apostrophe before what a spreadsheet would take for a formula is its mark for text, ours too, and
 * goes; line ends become plain ones.
 */
const plainCell = (cell: string): string => cell.replace(/\r\n?/g, '\n').replace(/^'(?='*[=+\-@\t\n])/, '');

/** The reverse: what must be written so that a spreadsheet computes nothing and we read the same again. */
export const guardedCell = (cell: string): string => (/^'*[=+\-@\t\n\r]/.test(cell) ? `'${cell}` : cell);

function trimEnd(cells: string[]): string[] {
  const last = cells.findLastIndex((cell) => cell !== '');
  return cells.slice(0, last + 1);
}

/** The sign by which most of the first line's headings are known. */
function separatorOf(body: string): string {
  const scored = separators.map((separator) => {
    const first = headOf(body, separator);
    const known = first.filter((cell) => columnOf(cell) !== null).length;
    return { separator, known, cells: first.length };
  });
  scored.sort((a, b) => b.known - a.known || b.cells - a.cells);
  return scored[0]?.separator ?? ',';
}

function headOf(body: string, delimiter: string): string[] {
  try {
    const options = {
      delimiter,
      to: 1,
      relax_quotes: true,
      relax_column_count: true,
      skip_empty_lines: true,
    };
    return (parse(body, options) as string[][])[0] ?? [];
  } catch (error) {
    if (error instanceof CsvError) return [];
    throw error;
  }
}

function checkHeadings(headings: readonly string[]): void {
  if (headings.length > importLimits.columns) {
    throw refuse(`The sheet has ${headings.length} columns; at most ${importLimits.columns} are read.`);
  }
  const keys = headings.map(columnOf);
  const twice = findingColumns.find(({ key }) => keys.filter((one) => one === key).length > 1);
  if (twice) {
    const both = headings.filter((heading) => columnOf(heading) === twice.key).join('” and “');
    throw refuse(`The columns “${both}” mean the same, “${twice.heading}”. Rename or join them.`);
  }
  if (keys.includes('catalogueKey')) return;
  const missing = (['title', 'system', 'urgency'] as const).filter((key) => !keys.includes(key));
  if (missing.length === 0) return;
  const named = missing.map((key) => `“${headingOf(key)}”`).join(', ');
  throw refuse(
    `The first line has no column ${named}. It must hold the headings; download the sample to see them all.`,
  );
}

function decode(bytes: Buffer): { text: string; remark: string } {
  const read = (encoding: string, from = bytes) => new TextDecoder(encoding, { fatal: true }).decode(from);
  try {
    const wide = wideEncoding(bytes);
    const text = read(wide ?? 'utf-8');
    // NUL is in no text; it tells of a program's own file.
    if (text.includes('\0'))
      throw refuse('The file is no plain text. Save the sheet as CSV (UTF-8) and choose that.');
    return { text, remark: '' };
  } catch (error) {
    if (!(error instanceof TypeError)) throw error;
  }
  if (bytes.includes(0))
    throw refuse('The file is no plain text. Save the sheet as CSV (UTF-8) and choose that.');
  return {
    text: iconv.decode(bytes, 'windows-1252'),
    remark:
      'The sheet isn’t in UTF-8; it was read as Windows-1252. Look at accented letters, or save it as CSV (UTF-8).',
  };
}

/** UTF-16 by its mark, or because every other byte at the beginning is nought. */
function wideEncoding(bytes: Buffer): string | null {
  const [first, second] = bytes;
  if (first === 0xff && second === 0xfe) return 'utf-16le';
  if (first === 0xfe && second === 0xff) return 'utf-16be';
  const head = bytes.subarray(0, 200);
  const noughts = (from: number) => head.filter((byte, at) => at % 2 === from && byte === 0).length;
  if (head.length >= 8 && noughts(1) > head.length * 0.35 && noughts(0) === 0) return 'utf-16le';
  if (head.length >= 8 && noughts(0) > head.length * 0.35 && noughts(1) === 0) return 'utf-16be';
  return null;
}
