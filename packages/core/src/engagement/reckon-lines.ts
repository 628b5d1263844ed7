import type { lineInput } from '@garboard/contract/quotations';
import { type Line, largestTotal, reckonLine, totalsOf } from '@garboard/trade/fees';
import type { z } from 'zod';
import { invalidField } from '../problems.ts';

/** Lines as they are kept, with their sums. @throws Refusal `invalid-input` when they come to less than nothing, or too much */
export function reckonLines(input: readonly z.output<typeof lineInput>[]) {
  const lines: Line[] = input.map(reckonLine);
  const totals = totalsOf(lines);
  if (totals.net < 0 || totals.total < 0) {
    throw invalidField('/lines', 'Together the lines come to less than nothing; take a reduction off.');
  }
  const far = lines.some((line) => Math.abs(line.net) > largestTotal);
  if (far || totals.total > largestTotal) {
    throw invalidField('/lines', 'Together the lines come to more than can be written here.');
  }
  return { lines: lines.map((line) => ({ ...line })), ...totals };
}
