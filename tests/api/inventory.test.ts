import type { Expiry, InventoryItem } from '@garboard/contract/inventory';
import { newId } from '@garboard/db/ids';
import { buildFirm, buildPerson } from '@garboard/seed/builders';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type Caller, startServer, type TestServer } from '../support/server.ts';

let server: TestServer;
let firm: Awaited<ReturnType<typeof buildFirm<'surveyor' | 'office'>>>;
let surveyor: Caller;
let path: string;
/** Where the survey is, it is already the 26th. */
const clock = () => new Date('2026-11-25T13:00:00Z');

async function newVessel(name: string): Promise<string> {
  return (await surveyor.post('/v1/vessels').send({ name }).expect(201)).body.id;
}
async function newSurvey(vesselId: string, as = surveyor): Promise<string> {
  const body = { vesselId, purpose: 'condition', timeZone: 'Pacific/Auckland' };
  return `/v1/surveys/${(await as.post('/v1/surveys').send(body).expect(201)).body.id}`;
}

beforeAll(async () => {
  server = await startServer({ clock });
  firm = await buildFirm(server.db, ['surveyor', 'office']);
  surveyor = server.as(firm.surveyor);
  path = await newSurvey(await newVessel('Hazel Dunnock'));
});
afterAll(() => server.close());

const raft = { system: 'life-saving', name: 'Liferaft' };
const keep = async (fields: object = {}, at = path): Promise<InventoryItem> =>
  (
    await surveyor
      .post(`${at}/inventory`)
      .send({ ...raft, ...fields })
      .expect(201)
  ).body;
type Pointed = { body: { detail: string; errors: { pointer: string; detail: string }[] } };
const pointers = (answer: Pointed) => answer.body.errors.map((e) => e.pointer);

describe('equipment', () => {
  it('is recorded, listed, edited at the version seen and taken off', async () => {
    const fields = {
      ...{ maker: 'Ebbtide Safety', serialNumber: 'ΔRX-00412', place: 'Cockpit locker', count: 2 },
      ...{ madeOn: '2019-03-01', expiresOn: '2026-11-25', note: 'Six persons.\nשנתי' },
    };
    const made = await keep(fields);
    // Its last day was yesterday there, though it is still today in UTC.
    expect(made).toMatchObject({ ...raft, ...fields, expired: true, version: 1, may: { edit: true } });
    const at = `/v1/inventory/${made.id}`;
    expect((await surveyor.get(at).expect(200)).body).toEqual(made);
    expect((await surveyor.get(`${path}/inventory`).expect(200)).body.items).toEqual([made]);
    const renewed = await surveyor
      .patch(at)
      .set('if-match', '"1"')
      .send({ expiresOn: '2026-11-26', maker: null })
      .expect(200);
    expect(renewed.body).toMatchObject({ ...fields, expiresOn: '2026-11-26', maker: null, expired: false });
    expect(renewed.headers.etag).toBe('"2"');
    await surveyor.patch(at).set('if-match', '"1"').send({ count: 3 }).expect(412);
    await surveyor.delete(at).expect(204);
    await surveyor.get(at).expect(404);
    await surveyor.delete(at).expect(404);
    const events = (await surveyor.get(`${path}/events`)).body.items;
    expect(events.slice(0, 3).map((e: { summary: string }) => e.summary)).toEqual([
      'Equipment taken off the list: Liferaft',
      'Equipment edited: Liferaft',
      'Equipment recorded: Liferaft',
    ]);
  });

  it('refuses dates that can’t be, with a sentence at each', async () => {
    const post = (dates: object) => surveyor.post(`${path}/inventory`).send({ ...raft, ...dates });
    const refused = async (dates: object, fields: string[], words: string) => {
      const answer = await post(dates).expect(422);
      expect(pointers(answer)).toEqual(fields);
      expect(answer.body.detail).toContain(words);
    };
    await refused({ madeOn: '2026-11-27' }, ['/madeOn'], 'in the future');
    await refused({ madeOn: '1815-06-18' }, ['/madeOn'], '150 years ago');
    await refused({ expiresOn: '2077-01-01' }, ['/expiresOn'], '50 years from now');
    await refused({ expiresOn: '0024-05-01' }, ['/expiresOn'], '150 years ago');
    await refused({ madeOn: '2020-05-02', expiresOn: '2020-05-01' }, ['/expiresOn'], 'before it was made');
    const both = { madeOn: '2030-01-01', expiresOn: '2999-01-01' };
    await refused(both, ['/madeOn', '/expiresOn'], 'in the future');
    for (const madeOn of ['2026-02-30', '2026-13-01', '04/05/2026', '2026', '']) {
      expect(pointers(await post({ madeOn }).expect(422))).toEqual(['/madeOn']);
    }
    // The limits themselves are taken: today where the survey is, a last day that is the first.
    await keep({ madeOn: '2026-11-26', expiresOn: '2026-11-26' });
    await keep({ expiresOn: '2076-11-26' });
    const kept = await keep({ madeOn: '2024-02-29' });
    const edit = (dates: object) => surveyor.patch(`/v1/inventory/${kept.id}`).send(dates);
    // An edit is judged together with what stays.
    expect(pointers(await edit({ expiresOn: '2024-02-28' }).expect(422))).toEqual(['/expiresOn']);
    await edit({ expiresOn: '2024-02-28', madeOn: null }).expect(200);
    expect(pointers(await edit({ madeOn: '2025-01-01' }).expect(422))).toEqual(['/expiresOn']);
  });

  it('refuses what says nothing', async () => {
    const post = (fields: object) => surveyor.post(`${path}/inventory`).send({ ...raft, ...fields });
    expect(pointers(await post({ name: ' ' }).expect(422))).toEqual(['/name']);
    expect(pointers(await post({ count: 0 }).expect(422))).toEqual(['/count']);
    expect(pointers(await post({ system: 'galley' }).expect(422))).toEqual(['/system']);
    expect(pointers(await post({ note: 'x'.repeat(10_000) }).expect(422))).toEqual(['/note']);
    await post({ colour: 'red' }).expect(422);
  });

  it('is kept once under an id that the client made', async () => {
    const other = await newSurvey(await newVessel('Other'));
    const id = newId();
    const body = { ...raft, id, serialNumber: '7' };
    const sends = await Promise.all([1, 2, 3].map(() => surveyor.post(`${path}/inventory`).send(body)));
    expect(sends.map((s) => s.status)).toEqual([201, 201, 201]);
    for (const sent of sends) expect(sent.body).toEqual(sends[0]?.body);
    const list = (await surveyor.get(`${path}/inventory?limit=200`)).body.items;
    expect(list.filter((i: InventoryItem) => i.id === id)).toHaveLength(1);
    // Edited meanwhile: the second sending doesn't put the first words back.
    await surveyor.patch(`/v1/inventory/${id}`).send({ serialNumber: '8' }).expect(200);
    const late = await surveyor.post(`${path}/inventory`).send(body).expect(201);
    expect(late.body).toMatchObject({ id, serialNumber: '8', version: 2 });
    const elsewhere = await surveyor.post(`${other}/inventory`).send(body).expect(409);
    expect(elsewhere.body.detail).toContain('already names something else');
    // Another firm learns no more than that.
    const strangers = await buildFirm(server.db, ['surveyor']);
    const stranger = server.as(strangers.surveyor);
    const vessel = await stranger.post('/v1/vessels').send({ name: 'Far' }).expect(201);
    const far = await newSurvey(vessel.body.id, stranger);
    const refused = await stranger.post(`${far}/inventory`).send(body).expect(409);
    expect(refused.body.detail).toBe(elsewhere.body.detail);
    expect((await surveyor.get(`/v1/inventory/${id}`).expect(200)).body.serialNumber).toBe('8');
  });

  it('is written by all staff, read by staff alone, closed with the survey', async () => {
    const at = await newSurvey(await newVessel('Shut'));
    const owner = await buildPerson(server.db);
    const { name, email } = owner;
    await surveyor.post(`${at}/parties`).send({ role: 'owner', name, email, released: true }).expect(201);
    const made = await server.as(firm.office).post(`${at}/inventory`).send(raft).expect(201);
    for (const method of ['get', 'delete'] as const) {
      await server.as(owner)[method](`/v1/inventory/${made.body.id}`).expect(403);
    }
    await server.as(owner).get(`${at}/inventory`).expect(403);
    await surveyor.patch(at).send({ state: 'cancelled' }).expect(200);
    await surveyor.post(`${at}/inventory`).send(raft).expect(409);
    await surveyor.patch(`/v1/inventory/${made.body.id}`).send({ count: 2 }).expect(409);
    await surveyor.delete(`/v1/inventory/${made.body.id}`).expect(409);
    expect((await surveyor.get(`/v1/inventory/${made.body.id}`)).body.may).toEqual({ edit: false });
  });
});

describe('what expires on the boats of a firm', () => {
  let caller: Caller;
  const list = async (query = ''): Promise<Expiry[]> =>
    (await caller.get(`/v1/expiries${query}`).expect(200)).body.items;
  const named = (items: Expiry[]) => items.map((i) => `${i.vesselName} ${i.name}`);

  it('comes soonest first, page by page, of each boat’s latest survey with equipment', async () => {
    const fleet = await buildFirm(server.db, ['surveyor']);
    caller = server.as(fleet.surveyor);
    const boat = async (name: string) =>
      (await caller.post('/v1/vessels').send({ name }).expect(201)).body.id as string;
    const add = (at: string, name: string, expiresOn: string | null) =>
      caller
        .post(`${at}/inventory`)
        .send({ ...raft, name, expiresOn })
        .expect(201);
    const [a, b] = [await boat('Alder'), await boat('Birch')];
    const before = await newSurvey(a, caller);
    await add(before, 'old raft', '2020-01-01');
    const now = await newSurvey(a, caller);
    await add(now, 'raft', '2027-06-01');
    await add(now, 'flares', '2026-11-25');
    await add(now, 'rigging', null);
    await newSurvey(a, caller);
    const lapsed = await newSurvey(a, caller);
    await add(lapsed, 'of a cancelled visit', '2026-12-01');
    await caller.patch(lapsed).send({ state: 'cancelled' }).expect(200);
    const other = await newSurvey(b, caller);
    await add(other, 'hose', '2027-01-31');
    await add(other, 'beacon', '2027-06-01');
    const all = ['Alder flares', 'Birch hose', 'Alder raft', 'Birch beacon'];
    const items = await list();
    expect(named(items)).toEqual(all);
    expect(items.map((i) => i.expired)).toEqual([true, false, false, false]);
    expect(items[0]).toMatchObject({ vesselId: a, surveyId: now.split('/').at(-1), expiresOn: '2026-11-25' });
    expect(named(await list('?before=2027-06-01'))).toEqual(all.slice(0, 2));
    expect(named(await list('?before=2027-06-02'))).toEqual(all);
    const paged: Expiry[] = [];
    let cursor: string | null = '';
    do {
      const page: { items: Expiry[]; next: string | null } = (
        await caller.get(`/v1/expiries?limit=1${cursor ? `&cursor=${cursor}` : ''}`).expect(200)
      ).body;
      paged.push(...page.items);
      cursor = page.next;
    } while (cursor);
    expect(paged).toEqual(items);
    await caller.get('/v1/expiries?before=soon').expect(422);
    await caller.get('/v1/expiries?cursor=bm9uc2Vuc2U').expect(422);
    // Nobody else's list shows them, not even that of the boat's owner.
    const owner = await buildPerson(server.db);
    const { name, email } = owner;
    await caller.post(`${now}/parties`).send({ role: 'owner', name, email, released: true }).expect(201);
    expect((await server.as(owner).get('/v1/expiries').expect(200)).body.items).toEqual([]);
    expect((await surveyor.get('/v1/expiries')).body.items.map((i: Expiry) => i.vesselName)).not.toContain(
      'Alder',
    );
  });
});
