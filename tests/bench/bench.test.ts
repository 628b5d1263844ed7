import { expect, it } from 'vitest';
import { openBench, type Result, type Round, tableOf } from './harness.ts';

const opened = (rounds: number) => {
  const found = { results: [] as Result[], notes: {} as Record<string, string | number> };
  return { found, bench: openBench('test', { sizes: [400], rounds, connections: 4, seconds: 1 }, found) };
};
const given = (...values: number[]) => {
  const left = values.map((value): Round => ({ value, p99: 100 / value }));
  return async () => left.shift() as Round;
};

it('sets ours against the floor round by round: the median of the ratios, their spread, and whether it is enough', async () => {
  const { found, bench } = opened(3);
  const shared = { unit: 'req/s', target: 0.6, targetP99: 2 };
  await bench.compare([
    { what: 'steady', ...shared, ours: given(60, 70, 65), floor: given(100, 100, 100) },
    { what: 'slow', ...shared, ours: given(30, 90, 50), floor: given(100, 100, 100) },
    { what: 'time', unit: 'ms', lessIsBetter: true, ours: given(20, 20, 20), floor: given(10, 20, 5) },
  ]);
  bench.figure({ what: 'growth', unit: '×', values: [1.4], atMost: 1.3 });
  const told = found.results.map(({ what, ratio, spread, met }) => ({ what, ratio, spread, met }));
  expect(told).toEqual([
    { what: 'steady', ratio: 0.65, spread: [0.6, 0.7], met: true },
    { what: 'slow', ratio: 0.5, spread: [0.3, 0.9], met: false },
    { what: 'time', ratio: 0.5, spread: [0.25, 1], met: null },
    { what: 'growth', ratio: null, spread: [1.4, 1.4], met: false },
  ]);
  const [head = '', ...rows] = tableOf(found.results).split('\n');
  expect(new Set([head, ...rows].map((row) => row.length)).size).toBe(1);
});
