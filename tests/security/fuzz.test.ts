import type { RouteName } from '@garboard/contract/routes';
import { routes } from '@garboard/contract/routes';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { ask, faultOf } from './fuzz/ask.ts';
import { pastFailures } from './fuzz/past-failures.ts';
import { printed, runFuzz } from './fuzz/run-fuzz.ts';
import { buildFuzzWorld, type FuzzWorld } from './fuzz/world.ts';

// A short walk over what `npm run fuzz` does at length: requests made up from the contract's own schemas, at every route.

/** Far more than any answer takes: what is looked for here is work that a request can make endless. */
const slowMs = 60_000;
/** Answered with something that a worker has to see, so it can't be undone. */
const kept: RouteName = 'previewFinding';

let world: FuzzWorld;
beforeAll(async () => {
  world = await buildFuzzWorld(slowMs);
}, 300_000);
afterAll(() => world?.close());

it('answers whatever it is asked with what the contract says or a problem in words', {
  timeout: 480_000,
}, async () => {
  world.undo = true;
  const only = (Object.keys(routes) as RouteName[]).filter((name) => name !== kept);
  const fuzzed = await runFuzz(world.target, world.offer, {
    requests: 500,
    seed: 20_261_130,
    lanes: 6,
    only,
  });
  world.undo = false;
  const previews = await runFuzz(world.target, world.offer, { requests: 8, seed: 1, lanes: 2, only: [kept] });
  const { requests, byStatus, slowestMs } = fuzzed;
  console.log(`Fuzz: ${JSON.stringify({ requests, byStatus, slowestMs: Math.round(slowestMs) })}`);
  const found = [...fuzzed.failures, ...previews.failures].map(
    ({ request, fault }) => `${fault}\n  ${printed(request)}`,
  );
  expect(found.sort()).toEqual([]);
});

it.each(pastFailures)('$was', async ({ request }) => {
  world.undo = true;
  const fault = faultOf(request, await ask(world.target, request), slowMs);
  world.undo = false;
  expect(fault).toBeNull();
});
