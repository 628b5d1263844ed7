import { evaluate } from '@garboard/trade/worksheets/core/evaluate';
import { findWorksheet } from '@garboard/trade/worksheets/registry';
import { describe, expect, it } from 'vitest';
import { leastMs } from '../support/least-time.ts';
import { allChecks } from './checks/all.ts';

const maps = new Set(['moisture-map', 'sounding-map']);

describe('an evaluation, drawing included', () => {
  it.each(allChecks.filter(({ kind }) => !maps.has(kind)))(
    '$kind takes less than a millisecond',
    ({ kind, checks }) => {
      const worksheet = findWorksheet(kind);
      const check = checks.find((c) => !c.refused);
      if (!worksheet || !check) throw new Error(kind);
      expect(leastMs(60, () => evaluate(worksheet, check.inputs))).toBeLessThan(1);
    },
  );

  // A wet region in the middle, and a spread that repeats: the same map at every run.
  const reading = (x: number, y: number) =>
    10 + ((Math.round(x) * 7 + Math.round(y) * 13) % 5) + (Math.hypot(x - 50, y - 40) < 15 ? 15 : 0);

  const grid = {
    readings: Array.from({ length: 100 }, (_, y) => Array.from({ length: 100 }, (__, x) => reading(x, y))),
    spacingAlong: 0.1,
  };
  const { floor, sin } = Math;
  /** Off the crossings of the grid by up to a third of its spacing either way. */
  const points = Array.from({ length: 10_000 }, (_, i) => {
    const [x, y] = [(i % 100) + sin(i * 12.9898) / 3, floor(i / 100) + sin(i * 78.233) / 3];
    return { forward: x / 10, toPort: y / 10, reading: reading(x, y) };
  });

  // Free points take 44 ms in the server's process; vitest's wrapping of modules adds to their many small steps.
  it.each([
    ['on a grid', 50, grid],
    ['at free points', 150, { points }],
  ])('of a moisture map of 10 000 readings %s takes less than %d milliseconds', (_, most, inputs) => {
    const worksheet = findWorksheet('moisture-map');
    if (!worksheet) throw new Error('moisture-map');
    expect(evaluate(worksheet, inputs).outputs.regions?.value).toBe(1);
    expect(leastMs(16, () => evaluate(worksheet, inputs))).toBeLessThan(most);
  });
});
