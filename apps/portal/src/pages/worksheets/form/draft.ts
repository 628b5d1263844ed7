import type { FieldSpec } from './fieldSpec.ts';
import { usualUnit } from './usualUnits.ts';

/** What stands in one field: text as typed, a unit beside it, or rows of fields. */
export interface Entry {
  text: string;
  unit?: string;
  rows?: Row[];
}

/** One row of a list. `row` only tells it from the others on the screen. */
export interface Row {
  row: number;
  cells: Draft;
}

/** A form as it is being filled in, by field. */
export type Draft = Record<string, Entry>;

export const emptyEntry: Entry = { text: '' };

/** The rows with one more to be filled in; its measures carry on in the units of the row before. */
export function withRow(columns: readonly FieldSpec[], rows: readonly Row[]): Row[] {
  const row = Math.max(-1, ...rows.map((r) => r.row)) + 1;
  return [...rows, { row, cells: emptyCells(columns, rows.at(-1)?.cells) }];
}

function emptyCells(columns: readonly FieldSpec[], before?: Draft): Draft {
  return Object.fromEntries(
    columns.map((column) => [
      column.key,
      {
        ...entryOf(column, undefined),
        ...(column.field === 'measure' && before?.[column.key]?.unit
          ? { unit: before[column.key]?.unit }
          : {}),
      },
    ]),
  );
}

/** The form filled from saved inputs, or empty with its usual units and its first rows. */
export function draftOf(fields: readonly FieldSpec[], inputs: Record<string, unknown> | null): Draft {
  return Object.fromEntries(
    fields.map((field) => [
      field.key,
      inputs === null && field.field === 'rows' && field.required
        ? { text: '', rows: firstRows(field) }
        : entryOf(field, inputs?.[field.key]),
    ]),
  );
}

const firstRows = (field: FieldSpec): Row[] =>
  Array.from({ length: field.leastRows }, (_, row) => ({ row, cells: emptyCells(field.columns) }));

function entryOf(field: FieldSpec, value: unknown): Entry {
  switch (field.field) {
    case 'measure':
      if (value !== null && typeof value === 'object') {
        const given = value as { value: number; unit: string };
        return { text: String(given.value), unit: given.unit };
      }
      return value === undefined || value === null
        ? { text: '', unit: usualUnit(field) }
        : { text: String(value), unit: field.unit };
    case 'yesNo':
      return { text: value === true ? 'yes' : value === false ? 'no' : '' };
    case 'rows':
      return {
        text: '',
        rows: ((value as Record<string, unknown>[] | undefined) ?? []).map((given, row) => ({
          row,
          cells: draftOf(field.columns, given),
        })),
      };
    case 'grid':
      return {
        text: ((value as (number | null)[][] | undefined) ?? [])
          .map((row) => row.map((cell) => cell ?? '-').join(' '))
          .join('\n'),
      };
    default:
      return { text: value === undefined || value === null ? '' : String(value) };
  }
}

/** The inputs that a draft says, leaving out what is empty. What isn't a number goes as typed: the server says why not. */
export function inputsOf(fields: readonly FieldSpec[], draft: Draft): Record<string, unknown> {
  const inputs: Record<string, unknown> = {};
  for (const field of fields) {
    const value = entered(field, draft[field.key] ?? emptyEntry);
    if (value !== undefined) inputs[field.key] = value;
  }
  return inputs;
}

function entered(field: FieldSpec, entry: Entry): unknown {
  if (field.field === 'rows') {
    const rows = (entry.rows ?? []).map(({ cells }) => inputsOf(field.columns, cells));
    return rows.length === 0 && !field.required ? undefined : rows;
  }
  const text = entry.text.trim();
  if (text === '') return undefined;
  switch (field.field) {
    case 'measure':
      return { value: numberOf(text), unit: entry.unit ?? field.unit };
    case 'number':
    case 'count':
      return numberOf(text);
    case 'money':
      return text
        .replace(/[\s\u00a0’']/g, '')
        .replace(/,(?=\d{3}(?:\D|$))/g, '')
        .replace(',', '.');
    case 'yesNo':
      return text === 'yes';
    case 'grid':
      return text.split('\n').map((row) =>
        row
          .trim()
          .split(/[\s;]+/)
          .map(cellOf),
      );
    default:
      return text;
  }
}

/** A typed number; a single comma is a decimal comma, a true minus a minus. */
function numberOf(text: string): number | string {
  const plain = text.replace(/−/g, '-').replace(/^([^,.]*),([^,.]*)$/, '$1.$2');
  const value = Number(plain);
  return Number.isFinite(value) ? value : text;
}

const cellOf = (text: string): number | string | null =>
  text === '-' || text === '–' ? null : numberOf(text);

/** The labels of required fields that are still empty. */
export function missingFrom(fields: readonly FieldSpec[], draft: Draft): string[] {
  return fields.flatMap((field) => {
    const entry = draft[field.key] ?? emptyEntry;
    if (field.field === 'rows') {
      const rows = entry.rows ?? [];
      if (!field.required && rows.length === 0) return [];
      if (rows.length < field.leastRows) return [`${field.label}: ${field.each} ${rows.length + 1}`];
      return rows.flatMap(({ cells }, at) =>
        missingFrom(field.columns, cells).map((label) => `${field.label}, ${field.each} ${at + 1}: ${label}`),
      );
    }
    return field.required && entry.text.trim() === '' ? [field.label] : [];
  });
}
