import { performance } from 'node:perf_hooks';
import { buildFirm, buildPerson } from '@garboard/seed/builders';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { loadLongLists } from '../support/long-lists.ts';
import { type Caller, startServer, type TestServer } from '../support/server.ts';

// A tenth of the size that `npm run bench` measures: a list that takes its time here has lost its index.
let server: TestServer;
let insurer: Caller;
let office: Caller;

beforeAll(async () => {
  server = await startServer();
  const busy = await buildFirm(server.db, ['office', 'surveyor']);
  const covers = [
    await buildFirm(server.db, ['surveyor']),
    await buildFirm(server.db, ['surveyor']),
  ] as const;
  const [person, owner] = [await buildPerson(server.db), await buildPerson(server.db)];
  const people = {
    ...{ busyFirm: busy.id, surveyor: busy.surveyor.id, insurer: person.id, owner: owner.id },
    coverFirms: [covers[0].id, covers[1].id] as [string, string],
  };
  const today = new Date().toISOString().slice(0, 10);
  await loadLongLists(server.databaseUrl, { jobs: 5000, covered: 500, boats: 40 }, people, today);
  insurer = server.as(person);
  office = server.as(busy.office);
}, 120_000);
afterAll(() => server.close());

it.each([
  ['insurer', '/v1/recommendations?decided=no'],
  ['insurer', '/v1/recommendations?waitingFor=me&sort=sent'],
  ['insurer', '/v1/recommendations?sort=vessel&q=hose'],
  ['insurer', '/v1/recommendations/counts'],
  ['insurer', '/v1/recommendations/vessels'],
  ['office', '/v1/jobs?closed=no'],
  ['office', '/v1/jobs?sort=vessel'],
  ['office', '/v1/jobs/counts'],
])('%s: %s', async (who, path) => {
  const caller = who === 'insurer' ? insurer : office;
  let fastest = Number.POSITIVE_INFINITY;
  for (let i = 0; i < 5; i++) {
    const begun = performance.now();
    await caller.get(path).expect(200);
    fastest = Math.min(fastest, performance.now() - begun);
  }
  expect(fastest).toBeLessThan(300);
});

it('the counts are those of the lists', async () => {
  const { body: counts } = await insurer.get('/v1/recommendations/counts').expect(200);
  const total = async (query: string) =>
    (await insurer.get(`/v1/recommendations?limit=1&${query}`).expect(200)).body.total;
  expect(counts.undecided + counts.decided).toBe(5000);
  expect(await total('decided=no')).toBe(counts.undecided);
  expect(await total('due=overdue')).toBe(counts.overdue);
  expect(await total('due=this-week')).toBe(counts.dueThisWeek);
  expect(await total('waitingFor=me')).toBe(counts.waitingForMe);
  expect(counts.vessels).toBe(40);
});
