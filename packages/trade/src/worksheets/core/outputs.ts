import { type Money, moneyText } from './money.ts';
import { withUnit } from './quantity.ts';
import { convert, settle, type Unit } from './units.ts';
import { formatNumber } from './working.ts';

/** One result: the value for programs (an amount of money as a decimal string), the text for people. */
export interface Output {
  label: string;
  value: number | string | boolean | null;
  /** Unit of a number, or currency of an amount; absent on words and plain numbers. */
  unit?: string;
  text: string;
}

/** Rows of results, such as a renewal list or the regions of a map. */
export interface ResultTable {
  title: string;
  columns: string[];
  rows: string[][];
}

interface Shown {
  /** Significant digits of the text; 3 unless told. */
  digits?: number;
  /** A second unit, printed in parentheses for the readers who think in it. */
  also?: Unit;
}

/** A number with its unit. `null` where it can't be told. */
export function measured(label: string, value: number | null, unit: Unit, shown: Shown = {}): Output {
  if (value === null || Number.isNaN(value)) return { label, value: null, unit, text: 'not determined' };
  const digits = shown.digits ?? 3;
  const main = withUnit(formatNumber(value, digits), unit);
  const also = shown.also
    ? ` (${withUnit(formatNumber(convert(value, unit, shown.also), digits), shown.also)})`
    : '';
  return { label, value: Number.isFinite(value) ? settle(value) : null, unit, text: main + also };
}

/** A plain number: a count, a ratio, a score. */
export const number = (label: string, value: number | null, digits = 3): Output =>
  value === null || Number.isNaN(value)
    ? { label, value: null, text: 'not determined' }
    : { label, value: Number.isFinite(value) ? settle(value) : null, text: formatNumber(value, digits) };

/** Words, or a key with its words. */
export const said = (
  label: string,
  value: string | null,
  text: string = value ?? 'not determined',
): Output => ({
  label,
  value,
  text,
});

/** Yes or no. */
export const yes = (label: string, value: boolean): Output => ({ label, value, text: value ? 'Yes' : 'No' });

/** An amount of money, rounded half up to hundredths. `null` where it can't be told. */
export const amount = (label: string, value: Money | null, currency: string): Output => ({
  label,
  value: value?.toDecimalPlaces(2).toFixed(2) ?? null,
  unit: currency,
  text: value ? moneyText(value, currency) : 'not determined',
});
