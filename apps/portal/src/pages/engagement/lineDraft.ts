import { decimalsOf } from '@garboard/trade/costs';
import { type Line, type LineInput, reckonLine } from '@garboard/trade/fees';
import { amountOf, minorOf, wholeOf } from '../../app/money.ts';

/** A line as it is being written, figures as people write them. `key` only tells rows apart on the screen. */
export interface LineDraft {
  key: number;
  text: string;
  quantity: string;
  unit: string;
  price: string;
  /** In percent. */
  tax: string;
}

let lastKey = 0;

/** Thousandths as people write them: 11280 as `11.28`. */
export const figureOf = (thousandths: number): string => String(thousandths / 1_000);

/** A fresh line at the firm's usual rate of tax. */
export function freshLine(taxRate: number): LineDraft {
  lastKey += 1;
  return { key: lastKey, text: '', quantity: '1', unit: '', price: '', tax: figureOf(taxRate) };
}

/** A kept line as it is written. */
export function draftOfLine(line: LineInput, currency: string): LineDraft {
  const price = `${line.price < 0 ? '-' : ''}${amountOf(Math.abs(line.price), currency)}`;
  const { text, unit } = line;
  return { ...freshLine(line.taxRate), text, unit, quantity: figureOf(line.quantity), price };
}

/** The line as the API wants it; undefined while a figure of it can't be read. */
export function lineFrom(draft: LineDraft, currency: string): LineInput | undefined {
  const negative = /^\s*[-−]/.test(draft.price);
  const amount = minorOf(draft.price.replace(/^\s*[-−]/, ''), currency);
  const quantity = wholeOf(draft.quantity, 3);
  const taxRate = wholeOf(draft.tax, 3);
  if (amount === undefined || !quantity || taxRate === undefined || draft.text.trim() === '')
    return undefined;
  return {
    text: draft.text,
    unit: draft.unit.trim(),
    quantity,
    price: negative ? -amount : amount,
    taxRate,
  };
}

/** What is wrong with a line, in a sentence. */
export function lineProblem(draft: LineDraft, currency: string): string | undefined {
  if (lineFrom(draft, currency)) return undefined;
  if (draft.text.trim() === '') return 'Say what it is for.';
  if (!wholeOf(draft.quantity, 3)) return 'Write the quantity in figures, such as 11.28.';
  if (wholeOf(draft.tax, 3) === undefined) return 'Write the tax in percent, such as 20 or 8.875.';
  const example = (12.5).toFixed(decimalsOf(currency));
  return `Write the price in figures, such as ${example}; with a minus for a reduction.`;
}

/** All of them reckoned; undefined while one can't be read. */
export function linesFrom(drafts: readonly LineDraft[], currency: string): Line[] | undefined {
  const lines = drafts.map((draft) => lineFrom(draft, currency));
  return lines.every((line) => line !== undefined) ? lines.map(reckonLine) : undefined;
}

/** Lines without what is reckoned from them, as the API takes them. */
export const inputsOf = (lines: readonly Line[]): LineInput[] =>
  lines.map(({ text, quantity, unit, price, taxRate }) => ({ text, quantity, unit, price, taxRate }));
