import { evaluate } from '@garboard/trade/worksheets/core/evaluate';
import { findWorksheet } from '@garboard/trade/worksheets/registry';
import { describe, expect, it } from 'vitest';
import { allChecks } from './checks/all.ts';

const maps = new Set(['moisture-map', 'sounding-map']);

/** The best of many times, in milliseconds: what the work itself takes, whatever else the machine is doing. */
function best(times: number, work: () => void): number {
  let least = Number.POSITIVE_INFINITY;
  for (let i = 0; i < times; i++) {
    const start = performance.now();
    work();
    least = Math.min(least, performance.now() - start);
  }
  return least;
}

describe('an evaluation, drawing included', () => {
  it.each(allChecks.filter(({ kind }) => !maps.has(kind)))(
    '$kind takes less than a millisecond',
    ({ kind, checks }) => {
      const worksheet = findWorksheet(kind);
      const check = checks.find((c) => !c.refused);
      if (!worksheet || !check) throw new Error(kind);
      expect(best(60, () => evaluate(worksheet, check.inputs))).toBeLessThan(1);
    },
  );
});
