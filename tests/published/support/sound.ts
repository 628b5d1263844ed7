import type { Verdict } from '@garboard/trade/vocabulary';
import type { WorksheetResult } from '@garboard/trade/worksheets/core/evaluate';
import fc from 'fast-check';
import { expect } from 'vitest';

export const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
export const answer = fc.constantFrom('yes', 'no', 'not-examined');
export const value = (result: WorksheetResult, key: string) => Number(result.outputs[key]?.value);

/** Best first. */
const order: Verdict[] = ['satisfactory', 'attention', 'indeterminate', 'unsatisfactory'];
export const grade = (result: WorksheetResult) => order.indexOf(result.verdict);

/** Whatever was accepted gives a result that a person can be shown: no NaN, nothing infinite, a reason. */
export function expectSound(result: WorksheetResult): void {
  for (const output of Object.values(result.outputs)) {
    if (typeof output.value === 'number') expect(Number.isFinite(output.value), output.label).toBe(true);
  }
  const texts = [
    ...Object.values(result.outputs).map((output) => output.text),
    ...result.reasons,
    ...result.working,
    ...result.tables.flatMap((table) => table.rows.flat()),
    ...result.drawings.map((drawing) => drawing.svg + drawing.description),
  ];
  expect(texts.join(' ')).not.toMatch(/NaN|undefined|Infinity|null/);
  expect(result.reasons.length).toBeGreaterThan(0);
}

/** Two results that should be the same but for the rounding of a converted unit: numbers, words and verdict. */
export function expectSame(one: WorksheetResult, other: WorksheetResult, within = 1e-6): void {
  expect(other.verdict).toBe(one.verdict);
  expect(Object.keys(other.outputs)).toEqual(Object.keys(one.outputs));
  for (const [key, a] of Object.entries(one.outputs)) {
    const b = other.outputs[key];
    if (typeof a.value !== 'number' || typeof b?.value !== 'number') expect(b?.value, key).toBe(a.value);
    else
      expect(Math.abs(b.value - a.value), `${key}: ${a.value} and ${b.value}`).toBeLessThanOrEqual(
        Math.abs(a.value) * within + within,
      );
  }
}
