import { Decimal } from 'decimal.js';
import { z } from 'zod';
import { moneyText } from './money.ts';
import { Quantity } from './quantity.ts';
import { dayText, formatNumber } from './working.ts';
import type { FieldSet } from './worksheet.ts';

/** An input as people read it: a line, or a table for a list of rows. Nothing for a field left out. */
export interface ShownInput {
  key: string;
  label: string;
  text: string;
  table?: { columns: string[]; rows: string[][] };
}

/** Rows beyond this are counted, not listed: nobody reads a thousand readings as a table. */
const mostRows = 60;

/** The field inside `optional` and `fallback`. */
export function unwrapped(field: z.ZodType): z.ZodType {
  return field instanceof z.ZodOptional || field instanceof z.ZodPrefault
    ? unwrapped(field.unwrap() as z.ZodType)
    : field;
}

function valueText(field: z.ZodType, value: unknown): string {
  if (value === undefined || value === null) return '–';
  if (value instanceof Quantity) return value.text(6);
  if (value instanceof Decimal) return moneyText(value, '').trim();
  if (typeof value === 'boolean') return value ? 'Yes' : 'No';
  if (typeof value === 'number') return formatNumber(value, 6);
  const meta = unwrapped(field).meta();
  if (meta?.['x-field'] === 'day') return dayText(String(value));
  const choices = meta?.['x-choices'] as Array<{ key: string; label: string }> | undefined;
  return choices?.find((choice) => choice.key === value)?.label ?? String(value);
}

/** The fields of one row of a `rows` field; none for other fields. */
export function rowColumns(field: z.ZodType): FieldSet {
  const list = unwrapped(field);
  const row = list instanceof z.ZodArray ? (list.element as z.ZodType) : undefined;
  return row instanceof z.ZodObject ? (row.shape as FieldSet) : {};
}

function showRows(field: z.ZodType, given: ReadonlyArray<Record<string, unknown>>) {
  // A column that no row fills says nothing.
  const columns = Object.entries(rowColumns(field)).filter(([key]) =>
    given.some((row) => row[key] !== undefined),
  );
  return {
    columns: columns.map(([key, column]) => unwrapped(column).meta()?.title ?? key),
    rows: given.slice(0, mostRows).map((row) => columns.map(([key, column]) => valueText(column, row[key]))),
  };
}

/** A worksheet's parsed inputs in words, in the order of its fields. */
export function showInputs(fields: FieldSet, values: Record<string, unknown>): ShownInput[] {
  return Object.entries(fields).flatMap(([key, field]): ShownInput[] => {
    const value = values[key];
    if (value === undefined) return [];
    const meta = unwrapped(field).meta();
    const label = meta?.title ?? key;
    if (meta?.['x-field'] === 'grid') {
      const readings = value as Array<Array<number | null>>;
      return [
        {
          key,
          label,
          text: `${readings.length} row${readings.length === 1 ? '' : 's'} of ${readings[0]?.length ?? 0} readings`,
        },
      ];
    }
    if (Array.isArray(value)) {
      const each = String(meta?.['x-each'] ?? 'row');
      const text = `${value.length} ${each}${value.length === 1 ? '' : 's'}`;
      const table = showRows(field, value);
      if (table.columns.length === 1 && value.length <= mostRows) {
        return [{ key, label, text: table.rows.flat().join(', ') || text }];
      }
      return [{ key, label, text, table }];
    }
    return [{ key, label, text: valueText(field, value) }];
  });
}
