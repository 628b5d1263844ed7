import { type Route, routes } from '@garboard/contract/routes';
import { buildFirm, buildPerson, type Signed } from '@garboard/seed/builders';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { loadOffice, officeId } from '../support/office.ts';
import { type Caller, startServer, type TestServer } from '../support/server.ts';
import { readWhole, statementsOf } from '../support/statements.ts';

// Two offices alike but for their size. What the larger asks of the database more than the smaller would grow on.
const sizes = [200, 1500] as const;

interface Office {
  server: TestServer;
  firm: { id: string; surveyor: Signed; office: Signed };
  insurer: Signed;
  owner: Signed;
  as: Record<'surveyor' | 'office' | 'insurer' | 'owner', Caller>;
}
let offices: Office[];

async function openOffice(surveys: number): Promise<Office> {
  const server = await startServer();
  const firm = await buildFirm(server.db, ['surveyor', 'office']);
  const others = [await buildFirm(server.db, ['surveyor']), await buildFirm(server.db, ['surveyor'])];
  const [insurer, owner] = [await buildPerson(server.db), await buildPerson(server.db)];
  const firms = [firm, ...others].map(({ id, surveyor }) => ({ id, surveyor: surveyor.id }));
  const size = { surveys, findings: 12, photos: 1 };
  await loadOffice(server.databaseUrl, size, { firms, insurer: insurer.id, owner: owner.id });
  const { surveyor, office } = firm;
  const as = {
    ...{ surveyor: server.as(surveyor), office: server.as(office) },
    ...{ insurer: server.as(insurer), owner: server.as(owner) },
  };
  return { server, firm, insurer, owner, as };
}

beforeAll(async () => {
  offices = [await openOffice(sizes[0]), await openOffice(sizes[1])];
}, 240_000);
afterAll(async () => {
  for (const { server } of offices ?? []) await server.close();
});
const large = () => offices[1] as Office;

type Listed = { items: { id: string }[]; next: string | null };

/** The ids of a list, page by page to its end. */
async function idsOf(caller: Caller, path: string): Promise<string[]> {
  const ids: string[] = [];
  for (let cursor = ''; ; ) {
    const { body } = await caller.get(`${path}&limit=200${cursor}`).expect(200);
    const { items, next } = body as Listed;
    ids.push(...items.map(({ id }) => id));
    if (!next) return ids;
    cursor = `&cursor=${next}`;
  }
}

describe('lists over many surveys', () => {
  it('the counts are those of the lists', async () => {
    const { insurer } = large().as;
    const { body: counts } = await insurer.get('/v1/recommendations/counts').expect(200);
    const total = async (query: string) =>
      (await insurer.get(`/v1/recommendations?limit=1&total=yes&${query}`).expect(200)).body.total;
    expect(counts.undecided + counts.decided).toBe(await total('sort=due'));
    expect(await total('decided=no')).toBe(counts.undecided);
    expect(await total('due=overdue')).toBe(counts.overdue);
    expect(await total('due=this-week')).toBe(counts.dueThisWeek);
    expect(await total('waitingFor=me')).toBe(counts.waitingForMe);
  });

  // Asking for the total reads the whole list; without it a page comes from an index in its order.
  it.each([
    ['insurer', '/v1/recommendations?decided=no'],
    ['owner', '/v1/recommendations?decided=no'],
    ['office', '/v1/recommendations?decided=no'],
    ['office', '/v1/jobs?closed=no'],
    ['surveyor', '/v1/jobs?closed=no'],
  ] as const)('%s: %s has the same rows in the same order, read either way', async (who, path) => {
    const caller = large().as[who];
    const inOrder = await idsOf(caller, path);
    expect(inOrder.length).toBeGreaterThan(200);
    expect(inOrder).toEqual(await idsOf(caller, `${path}&total=yes`));
    const { body: quick } = await caller.get(path).expect(200);
    const { body: whole } = await caller.get(`${path}&total=yes`).expect(200);
    expect(quick).toEqual({ ...whole, total: null });
    expect(whole.total).toBe(inOrder.length);
  });
});

/** A survey of the busy firm that was issued, with a finding of it that was cleared or waits. */
const survey = officeId('survey', 0);
const finding = officeId('finding', 0);

/** Every list that is asked for page by page, where it needs no other id than a survey's, a finding's or a vessel's. */
const lists = Object.entries(routes as Record<string, Route>).flatMap(([name, route]) => {
  if (route.method !== 'GET' || !route.query || !('limit' in route.query.shape)) return [];
  const path = route.path
    .replace('/v1/surveys/{id}', `/v1/surveys/${survey}`)
    .replace('/v1/findings/{id}', `/v1/findings/${finding}`)
    .replace('/v1/vessels/{id}', `/v1/vessels/${officeId('vessel', 0)}`);
  return path.includes('{') ? [] : [[name, path] as const];
});

describe('what lists ask of the database', () => {
  it('is looked at for the lists of every noun', () => {
    expect(lists.length).toBeGreaterThan(20);
  });

  it.each(lists)('%s asks no more often the more rows it has', async (_name, path) => {
    const asked: number[] = [];
    for (const { as } of offices) {
      // What is prepared or looked up once in a process is not counted.
      await as.office.get(`${path}?limit=1`);
      for (const limit of [1, 100]) {
        const sent = await statementsOf(() => as.office.get(`${path}?limit=${limit}`));
        asked.push(sent.length);
      }
    }
    const [one = 0] = asked;
    expect(one).toBeGreaterThan(0);
    expect(Math.max(...asked)).toBeLessThanOrEqual(one + 1);
  });

  // Of those that are long in an office of this size. Without its index each would be read whole.
  const long = ['findings', 'photos', 'finding_photos', 'clearances'];
  it.each([
    ['surveyor', `/v1/surveys/${survey}/findings`],
    ['owner', `/v1/surveys/${survey}/findings`],
    ['office', '/v1/jobs?closed=no'],
    ['office', '/v1/recommendations?decided=no'],
    ['insurer', '/v1/recommendations?decided=no'],
    ['insurer', '/v1/recommendations?decided=no&deep'],
  ] as const)('%s: %s reads no long table from end to end', async (who, path) => {
    const { as, server } = large();
    const [address = '', deep] = path.split('&deep');
    let cursor = '';
    for (let page = 0; deep !== undefined && page < 5; page++) {
      cursor = `&cursor=${(await as[who].get(`${address}${cursor}`).expect(200)).body.next}`;
    }
    const sent = await statementsOf(() => as[who].get(address + cursor).expect(200));
    expect(sent.length).toBeLessThan(12);
    const whole = await readWhole(server.databaseUrl, sent);
    expect(whole.filter((table) => long.includes(table))).toEqual([]);
  });
});
