import { inputJsonSchema } from '@garboard/trade/worksheets/core/describe';
import { evaluate, InputsRefused } from '@garboard/trade/worksheets/core/evaluate';
import { findWorksheet, worksheets } from '@garboard/trade/worksheets/registry';
import Ajv2020 from 'ajv/dist/2020.js';
import addFormats from 'ajv-formats';
import { describe, expect, it } from 'vitest';
import { allChecks } from './checks/all.ts';
import type { Check } from './support/check.ts';

const ajv = new Ajv2020({ strict: false });
addFormats(ajv);
const accepted = (checks: Check[]) => checks.filter((check) => !check.refused);
const worksheetOf = (kind: string) => {
  const worksheet = findWorksheet(kind);
  if (!worksheet) throw new Error(kind);
  return worksheet;
};

describe.each(allChecks)('$kind', ({ kind, checks }) => {
  const worksheet = worksheetOf(kind);

  it('accepts by its published JSON Schema what it accepts itself', () => {
    const valid = ajv.compile(inputJsonSchema(worksheet));
    for (const check of accepted(checks)) {
      expect(valid(check.inputs), `${check.name}: ${ajv.errorsText(valid.errors)}`).toBe(true);
    }
    expect(valid({ ...accepted(checks)[0]?.inputs, neverHeardOf: 1 })).toBe(false);
  });

  it('gives the same result for the same inputs, complete and in words', () => {
    for (const check of accepted(checks)) {
      const result = evaluate(worksheet, check.inputs);
      expect(evaluate(worksheet, structuredClone(check.inputs))).toEqual(result);
      expect(JSON.parse(JSON.stringify(result))).toEqual(result);
      expect(result.reasons.length, check.name).toBeGreaterThan(0);
      expect(
        result.reasons.every((reason) => /^[A-Z0-9“‘(].*[.!?)]$/su.test(reason)),
        result.reasons.join('\n'),
      ).toBe(true);
      if (result.verdict !== 'indeterminate') expect(result.working.length, check.name).toBeGreaterThan(0);
      const labels = Object.values(result.outputs).map((output) => output.label);
      expect(new Set(labels).size, labels.join(', ')).toBe(labels.length);
      const text = JSON.stringify({ ...result, drawings: [] });
      expect(text).not.toMatch(/NaN|undefined|Infinity|\[object/);
      for (const drawing of result.drawings) {
        expect(drawing.svg, drawing.key).not.toMatch(/NaN|undefined|Infinity/);
        expect(drawing.description.length).toBeGreaterThan(10);
      }
    }
  });

  it('names cautions, sources and what it covers', () => {
    expect(worksheet.applicability.length).toBeGreaterThan(20);
    expect(worksheet.cautions.every((caution) => caution.length > 20)).toBe(true);
    const unsaid = worksheet.sources.filter(
      ({ citation, standing, note }) =>
        (standing === 'memory' && !/from memory/i.test(`${citation} ${note}`)) ||
        (standing === 'practice' && !/common practice|no source/i.test(`${citation} ${note}`)),
    );
    expect(unsaid).toEqual([]);
  });
});

describe('refusals', () => {
  it.each(worksheets.map((worksheet) => [worksheet.kind, worksheet] as const))(
    '%s refuses nothing, an array and an unknown field, each with a sentence',
    (_kind, worksheet) => {
      for (const inputs of [{}, [], null, 'x', { noSuchField: 1 }]) {
        try {
          evaluate(worksheet, inputs);
          expect.unreachable(JSON.stringify(inputs));
        } catch (error) {
          if (!(error instanceof InputsRefused)) throw error;
          expect(error.problems.every((problem) => /\.$/.test(problem.message))).toBe(true);
        }
      }
    },
  );
});
