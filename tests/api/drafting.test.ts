import { sweepDeleted } from '@garboard/core/findings/sweep-deleted';
import { inTransaction } from '@garboard/db/database';
import { newId } from '@garboard/db/ids';
import { buildFirm, buildJpeg, buildPerson } from '@garboard/seed/builders';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type Caller, startServer, type TestServer } from '../support/server.ts';

let server: TestServer;
let firm: Awaited<ReturnType<typeof buildFirm<'surveyor' | 'office'>>>;
let surveyor: Caller;
let now = Date.parse('2026-11-25T10:00:00Z');

const words = {
  ...{ system: 'gas', title: 'Hose past its date', urgency: 'before-use' },
  ...{ observed: 'Dated 2009.', recommendation: 'Renew it.' },
};
const cost = { low: 12_000, high: 18_050, currency: 'EUR', basis: 'opinion', note: 'Fitting included' };

async function newSurvey(body: object = {}): Promise<string> {
  const vessel = await surveyor.post('/v1/vessels').send({ name: 'Tansy Rook' }).expect(201);
  const survey = { vesselId: vessel.body.id, purpose: 'pre-purchase', ...body };
  return (await surveyor.post('/v1/surveys').send(survey).expect(201)).body.id;
}
const record = async (surveyId: string, body: object = {}) =>
  (
    await surveyor
      .post(`/v1/surveys/${surveyId}/findings`)
      .send({ ...words, ...body })
      .expect(201)
  ).body;
const numbered = async (surveyId: string) =>
  (await surveyor.get(`/v1/surveys/${surveyId}/findings`).expect(200)).body.items.map(
    (f: { number: number; title: string }) => `${f.number} ${f.title}`,
  );
type Pointed = { body: { detail: string; errors?: { pointer: string }[] } };
const pointers = (answer: Pointed) => answer.body.errors?.map((e) => e.pointer);

beforeAll(async () => {
  server = await startServer({ clock: () => new Date(now) });
  firm = await buildFirm(server.db, ['surveyor', 'office']);
  surveyor = server.as(firm.surveyor);
});
afterAll(() => server.close());

describe('an id made by the client', () => {
  it('records a finding once, however often it is sent', async () => {
    const [surveyId, id] = [await newSurvey(), newId()];
    const first = await record(surveyId, { id });
    const again = await record(surveyId, { id, title: 'Sent again' });
    expect(first).toMatchObject({ id, number: 1 });
    expect(again).toEqual(first);
    // Sent at once from two requests: one finding, both answered.
    const both = newId();
    const answers = await Promise.all([record(surveyId, { id: both }), record(surveyId, { id: both })]);
    expect(answers[0]).toEqual(answers[1]);
    expect(await numbered(surveyId)).toHaveLength(2);
    const survey = await surveyor.get(`/v1/surveys/${surveyId}`);
    expect(survey.body.findingCount).toBe(2);
  });

  it('keeps a worksheet once', async () => {
    const [surveyId, id] = [await newSurvey(), newId()];
    const gas = { startPressure: 250, endPressure: 250, holdTime: 5, gaugeResolution: 1, noLiquid: true };
    const body = { id, kind: 'gas-leak-down', inputs: gas };
    const first = await surveyor.post(`/v1/surveys/${surveyId}/worksheets`).send(body).expect(201);
    const again = await surveyor.post(`/v1/surveys/${surveyId}/worksheets`).send(body).expect(201);
    expect(again.body).toEqual(first.body);
    expect((await surveyor.get(`/v1/surveys/${surveyId}/worksheets`)).body.items).toHaveLength(1);
    const elsewhere = await surveyor.post(`/v1/surveys/${await newSurvey()}/worksheets`).send(body);
    expect(elsewhere.status).toBe(409);
  });

  it('is refused for another survey, another firm’s record and when it isn’t of version 7', async () => {
    const [surveyId, other, id] = [await newSurvey(), await newSurvey(), newId()];
    await record(surveyId, { id });
    const taken = await surveyor.post(`/v1/surveys/${other}/findings`).send({ ...words, id });
    expect(taken.status).toBe(409);
    expect(taken.body).toMatchObject({ type: '/problems/wrong-state' });
    expect(taken.body.detail).toContain('Make a new id');
    const stranger = server.as((await buildFirm(server.db, ['surveyor'])).surveyor);
    const vessel = await stranger.post('/v1/vessels').send({ name: 'Else' }).expect(201);
    const theirs = await stranger
      .post('/v1/surveys')
      .send({ vesselId: vessel.body.id, purpose: 'condition' });
    const foreign = await stranger
      .post(`/v1/surveys/${theirs.body.id}/findings`)
      .send({ ...words, id })
      .expect(409);
    expect(foreign.body.detail).toBe(taken.body.detail);
    const v4 = crypto.randomUUID();
    expect(pointers(await surveyor.post(`/v1/surveys/${other}/findings`).send({ ...words, id: v4 }))).toEqual(
      ['/id'],
    );
  });
});

describe('costs and grading', () => {
  it('are kept with the finding and totalled by urgency and currency', async () => {
    const surveyId = await newSurvey();
    const first = await record(surveyId, { cost, grading: { severity: 2, probability: 'C' } });
    expect(first).toMatchObject({ cost, grading: { severity: 2, probability: 'C' }, urgency: 'before-use' });
    const quotation = { low: 5000, high: 5000, currency: 'EUR', basis: 'quotation' };
    await record(surveyId, { cost: quotation });
    await record(surveyId, { cost: { ...quotation, currency: 'JPY' }, urgency: 'note' });
    await record(surveyId);
    const { body } = await surveyor.get(`/v1/surveys/${surveyId}`).expect(200);
    expect(body.printCosts).toBe(false);
    expect(body.costs).toEqual([
      { urgency: 'before-use', currency: 'EUR', low: 17_000, high: 23_050, findings: 2, opinions: 1 },
      { urgency: 'note', currency: 'JPY', low: 5000, high: 5000, findings: 1, opinions: 0 },
    ]);
    const listed = await surveyor.get('/v1/surveys?limit=1').expect(200);
    expect(listed.body.items[0].costs).toEqual(body.costs);
    const without = await surveyor
      .patch(`/v1/findings/${first.id}`)
      .send({ cost: null, grading: null })
      .expect(200);
    expect(without.body).toMatchObject({ cost: null, grading: null, title: first.title });
  });

  it.each([
    ['/cost/high', { cost: { ...cost, low: 20_000 } }],
    ['/cost/currency', { cost: { ...cost, currency: 'XQQ' } }],
    ['/cost/currency', { cost: { ...cost, currency: 'eur' } }],
    ['/cost/low', { cost: { ...cost, low: -1 } }],
    ['/cost/low', { cost: { ...cost, low: 10.5 } }],
    ['/cost/basis', { cost: { ...cost, basis: 'guess' } }],
    ['/grading/severity', { grading: { severity: 5, probability: 'A' } }],
    ['/grading/probability', { grading: { severity: 1, probability: 'G' } }],
    ['/catalogueKey', { catalogueKey: 'no-such-entry' }],
    ['/catalogueKey', { catalogueKey: '../../etc' }],
    ['/catalogueVersion', { catalogueVersion: 3 }],
  ])('point to %s when it is wrong', async (pointer, body) => {
    const surveyId = await newSurvey();
    const bad = await surveyor
      .post(`/v1/surveys/${surveyId}/findings`)
      .send({ ...words, ...body })
      .expect(422);
    expect(pointers(bad)).toEqual([pointer]);
    expect(bad.body.detail).toMatch(/[.]$/);
    const kept = await record(surveyId);
    const edit = await surveyor.patch(`/v1/findings/${kept.id}`).send(body).expect(422);
    expect(pointers(edit)).toEqual([pointer]);
  });

  it('keep the entry that a finding began from, and its version', async () => {
    const surveyId = await newSurvey();
    const listed = await surveyor.get('/v1/catalogue?limit=1').expect(200);
    const { key } = listed.body.items[0];
    const entry = (await surveyor.get(`/v1/catalogue/${key}`).expect(200)).body;
    const begun = await record(surveyId, { catalogueKey: key });
    expect(begun).toMatchObject({ catalogueKey: key, catalogueVersion: entry.version });
    const path = `/v1/findings/${begun.id}`;
    const same = { catalogueKey: key, catalogueVersion: entry.version, title: 'Reworded' };
    expect((await surveyor.patch(path).send(same).expect(200)).body).toMatchObject(same);
    const blank = (await surveyor.patch(path).send({ catalogueKey: null }).expect(200)).body;
    expect(blank).toMatchObject({ catalogueKey: null, catalogueVersion: null });
  });
});

describe('a deleted finding', () => {
  it('is brought back to its place with its photos and worksheets; numbers have no gaps', async () => {
    const surveyId = await newSurvey();
    const photos = await surveyor
      .post(`/v1/surveys/${surveyId}/photos`)
      .attach('file', await buildJpeg(1), 'a.jpg')
      .attach('file', await buildJpeg(2), 'b.jpg')
      .expect(201);
    const photoIds = photos.body.items.map((p: { id: string }) => p.id).reverse();
    await record(surveyId, { title: 'First' });
    const second = await record(surveyId, {
      ...{ title: 'Second', photoIds, cost, grading: { severity: 1, probability: 'B' } },
      ...{
        position: { along: 0.5, height: 0.2, side: 'port' },
        harms: ['flooding'],
        references: ['ISO 9093'],
      },
    });
    await record(surveyId, { title: 'Third' });
    const gas = { startPressure: 250, endPressure: 250, holdTime: 5, gaugeResolution: 1, noLiquid: true };
    await surveyor
      .post(`/v1/surveys/${surveyId}/worksheets`)
      .send({ kind: 'gas-leak-down', inputs: gas, findingId: second.id })
      .expect(201);
    const before = (await surveyor.get(`/v1/findings/${second.id}`)).body;
    await surveyor.delete(`/v1/findings/${second.id}`).expect(204);
    await surveyor.get(`/v1/findings/${second.id}`).expect(404);
    expect(await numbered(surveyId)).toEqual(['1 First', '2 Third']);
    const deleted = await surveyor.get(`/v1/surveys/${surveyId}/findings/deleted`).expect(200);
    expect(deleted.body.items).toEqual([
      {
        ...{ id: second.id, number: 2, title: 'Second', system: 'gas', urgency: 'before-use' },
        ...{ deletedAt: new Date(now).toISOString(), deletedBy: firm.surveyor.name, removedOn: '2026-12-25' },
      },
    ]);
    const sent = await surveyor.post(`/v1/surveys/${surveyId}/findings`).send({ ...words, id: second.id });
    expect(sent.status).toBe(409);
    expect(sent.body.detail).toContain('Restore it');

    const back = await surveyor.post(`/v1/findings/${second.id}/restore`).expect(200);
    const { updatedAt: _, ...same } = before;
    expect(back.body).toMatchObject(same);
    expect(back.headers.etag).toBe(`"${before.version}"`);
    expect(await numbered(surveyId)).toEqual(['1 First', '2 Second', '3 Third']);
    expect((await surveyor.get(`/v1/surveys/${surveyId}`)).body.findingCount).toBe(3);
    expect((await surveyor.get(`/v1/surveys/${surveyId}/findings/deleted`)).body.items).toEqual([]);
    // Asked twice, as when the answer was lost.
    expect((await surveyor.post(`/v1/findings/${second.id}/restore`).expect(200)).body).toEqual(back.body);
    const events = (await surveyor.get(`/v1/surveys/${surveyId}/events`)).body.items;
    expect(events[0].summary).toBe('Deleted finding brought back: Second');
  });

  it('comes back without a photo deleted meanwhile, and last when its number is beyond the end', async () => {
    const surveyId = await newSurvey();
    const photos = await surveyor
      .post(`/v1/surveys/${surveyId}/photos`)
      .attach('file', await buildJpeg(5), 'a.jpg')
      .expect(201);
    const [first, second] = [
      await record(surveyId),
      await record(surveyId, { title: 'Last', photoIds: [photos.body.items[0].id] }),
    ];
    await surveyor.delete(`/v1/findings/${second.id}`).expect(204);
    await surveyor.delete(`/v1/findings/${first.id}`).expect(204);
    await surveyor.delete(`/v1/photos/${photos.body.items[0].id}`).expect(204);
    const back = await surveyor.post(`/v1/findings/${second.id}/restore`).expect(200);
    expect(back.body).toMatchObject({ number: 1, photoIds: [] });
  });

  it('is listed by page and seen by the firm only', async () => {
    const surveyId = await newSurvey();
    const ids: string[] = [];
    for (const title of ['One', 'Two', 'Three']) ids.push((await record(surveyId, { title })).id);
    for (const id of ids) {
      now += 1000;
      await surveyor.delete(`/v1/findings/${id}`).expect(204);
    }
    const path = `/v1/surveys/${surveyId}/findings/deleted`;
    const titles = (answer: { body: { items: { title: string }[] } }) =>
      answer.body.items.map((item) => item.title);
    const page = await surveyor.get(`${path}?limit=2`).expect(200);
    expect(titles(page)).toEqual(['Three', 'Two']);
    expect(titles(await surveyor.get(`${path}?cursor=${page.body.next}`))).toEqual(['One']);
    await server.as(firm.office).get(path).expect(200);
    await server.as(firm.office).post(`/v1/findings/${ids[0]}/restore`).expect(403);
    const owner = await buildPerson(server.db);
    const party = { role: 'owner', name: owner.name, email: owner.email, released: true };
    await surveyor.post(`/v1/surveys/${surveyId}/parties`).send(party).expect(201);
    await server.as(owner).get(path).expect(404);
    await server.as(owner).post(`/v1/findings/${ids[0]}/restore`).expect(404);
    const other = server.as((await buildFirm(server.db, ['surveyor'])).surveyor);
    await other.post(`/v1/findings/${ids[0]}/restore`).expect(404);
  });

  it('is gone for good after 30 days', async () => {
    const surveyId = await newSurvey();
    const { id } = await record(surveyId);
    await surveyor.delete(`/v1/findings/${id}`).expect(204);
    const sweep = () => inTransaction(server.db, [firm.id], (tx) => sweepDeleted(tx, new Date(now)));
    const kept = () =>
      inTransaction(server.db, [firm.id], (tx) => tx.deletedFinding.count({ where: { surveyId } }));
    now += 30 * 86_400_000 - 1000;
    await sweep();
    expect(await kept()).toBe(1);
    now += 2000;
    // Also before the sweep has come by.
    await surveyor.post(`/v1/findings/${id}/restore`).expect(404);
    await sweep();
    expect(await kept()).toBe(0);
  });
});

describe('texts', () => {
  it('of 10 000 characters, empty and from right to left come back as they were', async () => {
    const surveyId = await newSurvey();
    const long = 'Osmotic blisters over the port quarter. '.repeat(250).trim();
    const hebrew = 'סדק בצינור הגז ליד המחיצה';
    const kept = await record(surveyId, {
      observed: long,
      consequence: '',
      recommendation: hebrew,
      title: hebrew,
    });
    expect(kept).toMatchObject({ observed: long, consequence: '', recommendation: hebrew, title: hebrew });
  });

  it('saved while they are typed make one line in the history', async () => {
    const surveyId = await newSurvey();
    const { id } = await record(surveyId);
    for (const observed of ['C', 'Cr', 'Cra']) {
      await surveyor.patch(`/v1/findings/${id}`).send({ observed }).expect(200);
    }
    const kinds = async () =>
      (await surveyor.get(`/v1/findings/${id}/events`)).body.items.map((e: { kind: string }) => e.kind);
    expect(await kinds()).toEqual(['finding.created']);
    now += 16 * 60_000;
    for (const observed of ['Crack', 'Cracks']) {
      await surveyor.patch(`/v1/findings/${id}`).send({ observed }).expect(200);
    }
    expect(await kinds()).toEqual(['finding.edited', 'finding.created']);
  });
});
