import { mkdtemp, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { keepResults, openBench, type Result, type Round, tableOf } from './harness.ts';
import { run as reads } from './reads.ts';
import { run as writes } from './writes.ts';

let folder: string;
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'garboard-bench-test-'));
});
afterAll(() => rm(folder, { recursive: true, force: true }));

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

it('measures reads and writes of a small office and keeps what it found', async () => {
  const { found, bench } = opened(1);
  await reads(bench);
  await writes(bench);
  const file = join(folder, 'results.json');
  await keepResults(found, file);
  const kept = JSON.parse(await readFile(file, 'utf8'));
  expect(kept.results.map(({ what }: Result) => what)).toEqual([
    ...[
      'findings of a survey',
      'search in the catalogue',
      'the firm’s jobs',
      'the insurer’s recommendations',
    ],
    ...['a decision', 'a finding with photos', 'evidence'],
  ]);
  expect(kept.machine).toMatchObject({
    cores: expect.any(Number),
    node: process.version,
    postgres: expect.stringMatching(/^18/),
  });
  for (const { ours, floor } of found.results) {
    expect(ours).toBeGreaterThan(0);
    expect(floor).toBeGreaterThan(0);
  }
}, 240_000);
