import { writeFile } from 'node:fs/promises';
import { type Route, routes } from '@garboard/contract/routes';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { startServer, type TestServer } from '../support/server.ts';
import { startTestWorker, type TestWorker } from '../support/worker.ts';
import { expected, isAboutPlace, type Outcome, ownExpected } from './expected.ts';
import { statusOf } from './requests.ts';
import { undone } from './undone.ts';
import { type Asker, buildAskers, buildPlace, buildStaffedFirm, type Place } from './world.ts';

// Every route of the interface, asked by every role, of its own survey, the same with its contents withheld, another
// survey of the firm, another firm's, and without signing in. What is to come of it is read from the permission table.

const all = Object.entries(routes) as [string, Route][];
/** Answered with something that a worker has to see, so these can't be undone. */
const kept = new Set(['previewFinding']);

let server: TestServer;
let worker: TestWorker;
let askers: Asker[];
let places: Place[];
let undoing = false;
/** How many requests came to what, and which routes were asked. */
const counts: Record<string, number> = {};
const asked = new Set<string>();

beforeAll(async () => {
  server = await startServer({ wrap: (db) => undone(db, () => undoing), checkAnswers: false });
  const [firm, other] = [await buildStaffedFirm(server), await buildStaffedFirm(server)];
  askers = await buildAskers(server, firm);
  const parties = askers.slice(3);
  places = [
    await buildPlace(server, firm, { name: 'own', decidedBy: 'insurer', held: false, askers: parties }),
    await buildPlace(server, firm, { name: 'withheld', decidedBy: 'insurer', held: true, askers: parties }),
    await buildPlace(server, firm, { name: 'same firm', decidedBy: 'surveyor', held: false, askers: [] }),
    await buildPlace(server, other, { name: 'other firm', decidedBy: 'surveyor', held: false, askers: [] }),
  ];
  // Only now: it would take the reports over that the places issue without printing.
  worker = await startTestWorker(server);
}, 180_000);
afterAll(async () => {
  const total = Object.values(counts).reduce((sum, n) => sum + n, 0);
  const summary = { routes: asked.size, roles: askers.length, places: places.length, total, counts };
  console.log(`Matrix: ${JSON.stringify(summary)}`);
  await writeFile('tests/artefacts/matrix.json', `${JSON.stringify(summary, null, 2)}\n`);
  await worker?.close();
  await server?.close();
});

const outcomeOf = (status: number): Outcome | 500 =>
  status === 401 || status === 403 || status === 404
    ? status
    : status >= 500 && status !== 503
      ? 500
      : 'passes';

interface Question {
  asker: Asker | null;
  place: Place | undefined;
  expected: readonly (Outcome | 500)[];
}

/** Asks all of these, six at a time; answers those that came to something else, in words. */
async function surprises(name: string, route: Route, questions: readonly Question[]): Promise<string[]> {
  const wrong: string[] = [];
  const waiting = [...questions];
  undoing = !kept.has(name);
  const one = async () => {
    for (let q = waiting.pop(); q; q = waiting.pop()) {
      const person = q.asker?.person ?? null;
      const status = await statusOf(server, { name, route, person, ids: q.place?.ids ?? {} });
      const kind = status < 300 ? 'done' : String(status);
      counts[kind] = (counts[kind] ?? 0) + 1;
      if (q.expected.some((outcome) => outcome === status || outcome === outcomeOf(status))) continue;
      const who = q.asker?.name ?? 'nobody signed in';
      wrong.push(`${who}, ${q.place?.name ?? 'no survey'}: ${status} instead of ${q.expected.join(' or ')}`);
    }
  };
  await Promise.all(Array.from({ length: 6 }, one));
  undoing = false;
  asked.add(name);
  return wrong.sort();
}

const about = all.filter(([name, route]) => isAboutPlace(name, route));
const own = all.filter(([, route]) => route.permission === 'own-account');
const open = all.filter(([, route]) => route.access === 'public');
const firmWide = all.filter(
  ([name, route]) => ![...about, ...own, ...open].some(([n]) => n === name && route),
);

describe('what is of a survey or a firm', () => {
  it.each(about)('%s', { timeout: 120_000 }, async (name, route) => {
    const questions = places.flatMap((place) => [
      { asker: null, place, expected: [401 as const] },
      ...askers.map((asker) => ({ asker, place, expected: [expected(name, route, asker, place)] })),
    ]);
    expect(await surprises(name, route, questions)).toEqual([]);
  });
});

describe('what is of the firm one works for', () => {
  it.each(firmWide)('%s', { timeout: 60_000 }, async (name, route) => {
    const home = places[0] as Place;
    const questions: Question[] = askers.map((asker) => {
      const outcome = expected(name, { ...route, path: '/v1/firms/{id}' }, asker, home);
      return { asker, place: home, expected: [outcome === 404 ? 403 : outcome] };
    });
    questions.push({ asker: null, place: home, expected: [401] });
    expect(await surprises(name, route, questions)).toEqual([]);
  });
});

describe('what is one’s own', () => {
  it.each(own)('%s', { timeout: 60_000 }, async (name, route) => {
    // With an id it names something that is somebody else's.
    const mine: Outcome = route.path.includes('{id}') ? 404 : 'passes';
    const questions: Question[] = askers.map((asker) => ({
      ...{ asker, place: places[0], expected: [ownExpected(name, asker) ?? mine] },
    }));
    questions.push({ asker: null, place: places[0], expected: [401] });
    expect(await surprises(name, route, questions)).toEqual([]);
  });
});

describe('what is open to anybody', () => {
  it.each(open)('%s', { timeout: 60_000 }, async (name, route) => {
    undoing = true;
    const stranger = outcomeOf(
      await statusOf(server, { name, route, person: null, ids: places[0]?.ids ?? {} }),
    );
    expect(stranger).not.toBe(500);
    const questions = [null, ...askers].map((asker) => ({ asker, place: places[0], expected: [stranger] }));
    expect(await surprises(name, route, questions)).toEqual([]);
  });
});

it('covers every route', () => {
  expect([...asked].sort()).toEqual(all.map(([name]) => name).sort());
});
