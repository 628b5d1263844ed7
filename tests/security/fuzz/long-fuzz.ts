import { type RouteName, routes } from '@garboard/contract/routes';
import { expect, inject, it } from 'vitest';
import { type Failure, type Fuzzed, printed, runFuzz } from './run-fuzz.ts';
import { buildFuzzWorld } from './world.ts';

// The long form, started by main.ts. Four fifths of the requests find the same world each time and are undone, so that
// what fails can be made small; the others change a world of their own, which is made anew after some thousands.

declare module 'vitest' {
  interface ProvidedContext {
    fuzz: { requests: number; seed: number; only: RouteName[] };
  }
}

const slowMs = 10_000;
/** What a worker has to see can't be undone. */
const kept: RouteName = 'previewFinding';
/** After these a person of the living world couldn't ask anything more. */
const endings = new Set<RouteName>([
  ...(['deleteSession', 'endSession', 'endOtherSessions', 'changePassword', 'eraseMe'] as const),
  ...(['confirmSecondFactor', 'createSession', 'useWelcome'] as const),
]);
const livingWorld = 2500;

const said = ({ request, fault }: Failure) => `${fault}\n  ${printed(request)}`;

function add(total: Fuzzed, part: Fuzzed): void {
  total.requests += part.requests;
  total.slowestMs = Math.max(total.slowestMs, part.slowestMs);
  for (const [status, n] of Object.entries(part.byStatus)) {
    total.byStatus[Number(status)] = (total.byStatus[Number(status)] ?? 0) + n;
  }
  total.failures.push(...part.failures);
}

it('answers whatever it is asked with what the contract says or a problem in words', async () => {
  const { requests, seed, only } = inject('fuzz');
  const all = only.length > 0 ? only : (Object.keys(routes) as RouteName[]);
  const total: Fuzzed = { requests: 0, byStatus: {}, slowestMs: 0, failures: [] };
  const begun = Date.now();
  const onProgress = (done: number) =>
    console.log(`${done} requests, ${Math.round((Date.now() - begun) / 1000)} s`);

  const onFailure = (failure: Failure) => console.log(said(failure));

  const still = await buildFuzzWorld(slowMs);
  try {
    still.undo = true;
    const undoable = all.filter((name) => name !== kept);
    const most = Math.round(requests * 0.8);
    add(
      total,
      await runFuzz(still.target, still.offer, {
        requests: most,
        seed,
        lanes: 8,
        only: undoable,
        onProgress,
        onFailure,
      }),
    );
    still.undo = false;
    if (all.includes(kept)) {
      add(
        total,
        await runFuzz(still.target, still.offer, { requests: 100, seed, lanes: 2, only: [kept], onFailure }),
      );
    }
  } finally {
    await still.close();
  }

  const lasting = all.filter((name) => !endings.has(name) && name !== kept);
  for (let turn = 0; turn * livingWorld < requests * 0.2 && lasting.length > 0; turn++) {
    const living = await buildFuzzWorld(slowMs);
    try {
      const options = {
        requests: livingWorld,
        seed: seed + 1 + turn,
        lanes: 8,
        only: lasting,
        living: true,
        onFailure,
      };
      add(total, await runFuzz(living.target, living.offer, options));
    } finally {
      await living.close();
    }
  }

  const { failures, ...figures } = total;
  console.log(JSON.stringify({ seed, seconds: Math.round((Date.now() - begun) / 1000), ...figures }));
  expect(failures.map(said).sort()).toEqual([]);
});
