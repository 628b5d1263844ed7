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

  it('of a moisture map of 10 000 readings takes less than 50 milliseconds', () => {
    const worksheet = findWorksheet('moisture-map');
    if (!worksheet) throw new Error('moisture-map');
    // A wet region in the middle, and a spread that repeats: the same map at every run.
    const reading = (x: number, y: number) =>
      10 + ((x * 7 + y * 13) % 5) + (Math.hypot(x - 50, y - 40) < 15 ? 15 : 0);
    const readings = Array.from({ length: 100 }, (_, y) =>
      Array.from({ length: 100 }, (__, x) => reading(x, y)),
    );
    const inputs = { readings, spacingAlong: 0.1 };
    expect(evaluate(worksheet, inputs).outputs.regions?.value).toBe(1);
    expect(best(12, () => evaluate(worksheet, inputs))).toBeLessThan(50);
  });
});
