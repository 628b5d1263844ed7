import { evaluate, InputsRefused } from '@garboard/trade/worksheets/core/evaluate';
import { convert, type Unit } from '@garboard/trade/worksheets/core/units';
import { findWorksheet } from '@garboard/trade/worksheets/registry';
import { expect } from 'vitest';
import type { Check, Expected } from './check.ts';

function expectOutput(key: string, found: { value: unknown; unit?: string } | undefined, expected: Expected) {
  expect(found, `output ${key}`).toBeDefined();
  if (expected === null || typeof expected !== 'object') {
    if (typeof expected !== 'number') return expect(found?.value, key).toBe(expected);
    return expect(
      Math.abs(Number(found?.value) - expected),
      `${key}: ${found?.value} for ${expected}`,
    ).toBeLessThanOrEqual(Math.abs(expected) * 1e-9 + 1e-12);
  }
  const value = expected.unit
    ? convert(Number(found?.value), found?.unit as Unit, expected.unit)
    : Number(found?.value);
  const wanted = 'near' in expected ? expected.near : Number(expected.printed.replaceAll(',', ''));
  const decimals = 'near' in expected ? 0 : (expected.printed.split('.')[1]?.length ?? 0);
  const within = 'near' in expected ? expected.within : 0.5 * 10 ** -decimals * (1 + 1e-9);
  return expect(Math.abs(value - wanted), `${key}: ${value} for ${wanted}`).toBeLessThanOrEqual(within);
}

/** Works the worksheet and compares. Fails when a check names nothing to compare. */
export function runCheck(kind: string, check: Check): void {
  const worksheet = findWorksheet(kind);
  if (!worksheet) throw new Error(`no worksheet ${kind}`);
  if (check.refused) {
    let problems: string[] = [];
    try {
      evaluate(worksheet, check.inputs);
    } catch (error) {
      if (!(error instanceof InputsRefused)) throw error;
      problems = error.problems.map((problem) => problem.field);
    }
    expect(problems.sort()).toEqual([...check.refused].sort());
    return;
  }
  if (!check.outputs && !check.verdict) throw new Error(`${check.name}: nothing to compare`);
  const result = evaluate(worksheet, check.inputs);
  for (const [key, expected] of Object.entries(check.outputs ?? {})) {
    expectOutput(key, result.outputs[key], expected);
  }
  if (check.verdict) expect(result.verdict, result.reasons.join(' ')).toBe(check.verdict);
}
