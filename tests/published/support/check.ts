import type { Verdict } from '@garboard/trade/vocabulary';
import { evaluate, InputsRefused } from '@garboard/trade/worksheets/core/evaluate';
import { convert, type Unit } from '@garboard/trade/worksheets/core/units';
import { findWorksheet } from '@garboard/trade/worksheets/registry';
import { expect } from 'vitest';

/** A figure as a source prints it: met when the computed value rounds to it, to its own last digit. */
export interface Printed {
  printed: string;
  unit?: Unit;
}

/** Printed figures with their unit; the output is converted to it first. */
export const printed = (figure: string, unit?: Unit): Printed => ({
  printed: figure,
  ...(unit ? { unit } : {}),
});

/** A figure to be met within so much, for sources that round their inputs. Say why beside it. */
export const near = (value: number, within: number, unit?: Unit) => ({
  near: value,
  within,
  ...(unit ? { unit } : {}),
});

type Expected = Printed | ReturnType<typeof near> | number | string | boolean | null;

/** One check of a worksheet against something outside it. */
export interface Check {
  /** What is checked, in a few words. */
  name: string;
  /** Document, section, table or page; for a figure of our own arithmetic, the formula and whose it is. */
  source: string;
  /**
   * `printed`: the figure stands in the source. `computed`: worked by hand or by another program from the source's
   * formula. `edge`: at the limit of a band, or just beside it.
   */
  basis: 'printed' | 'computed' | 'edge';
  inputs: Record<string, unknown>;
  /** Expected outputs by key. Plain numbers are met to nine digits. */
  outputs?: Record<string, Expected>;
  verdict?: Verdict;
  /** Fields whose refusal is expected instead of a result. */
  refused?: string[];
}

/** The checks of one worksheet. */
export interface CheckedWorksheet {
  kind: string;
  checks: Check[];
  /** What stays without a published check, and why; printed in DEVELOPERS.md. */
  unverified?: string[];
}

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
