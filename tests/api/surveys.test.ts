import { buildFirm } from '@garboard/seed/builders';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type Caller, startServer, type TestServer } from '../support/server.ts';

let server: TestServer;
let firm: Awaited<ReturnType<typeof buildFirm<'surveyor' | 'office'>>>;
let surveyor: Caller;
beforeAll(async () => {
  server = await startServer();
  firm = await buildFirm(server.db, ['surveyor', 'office']);
  surveyor = server.as(firm.surveyor);
});
afterAll(() => server.close());

const vessel = { name: 'Quillback', lengthOverallM: 10.4, hullMaterial: 'grp', propulsion: 'inboard-diesel' };
const attendances = [{ date: '2026-05-04', place: 'Hard 3', condition: 'ashore' }];

async function newSurvey(extra: Record<string, unknown> = {}) {
  const made = await surveyor.post('/v1/vessels').send(vessel).expect(201);
  const body = { vesselId: made.body.id, purpose: 'insurance', attendances, ...extra };
  return (await surveyor.post('/v1/surveys').send(body).expect(201)).body;
}
const finding = (n: number) => ({
  system: 'hull',
  title: `Defect ${n}`,
  observed: 'Seen.',
  recommendation: 'Mend.',
  urgency: 'note',
});

describe('vessels', () => {
  it('are created, read, listed by page, found and edited at the version seen', async () => {
    const made = await surveyor.post('/v1/vessels').send(vessel).expect(201);
    expect(made.headers.etag).toBe('"1"');
    const path = `/v1/vessels/${made.body.id}`;
    await surveyor.patch(path).set('if-match', '"1"').send({ beamM: 3.4 }).expect(200);
    const stale = await surveyor.patch(path).set('if-match', '"1"').send({ beamM: 3.5 }).expect(412);
    expect(stale.body.detail).toMatch(/Load it again/);
    expect((await surveyor.get(path)).body.beamM).toBe(3.4);
    await surveyor.post('/v1/vessels').send({ name: 'Second Quillback' }).expect(201);
    const first = await surveyor.get('/v1/vessels?limit=1&q=quillback').expect(200);
    expect(first.body.items).toHaveLength(1);
    expect(first.headers.link).toContain('rel="next"');
    const rest = await surveyor.get(`/v1/vessels?q=quillback&cursor=${first.body.next}`).expect(200);
    expect(rest.body.items.map((v: { id: string }) => v.id)).not.toContain(first.body.items[0].id);
  });

  it('point to each field that is wrong', async () => {
    const bad = await surveyor
      .post('/v1/vessels')
      .send({ name: '', lengthOverallM: -3, yearBuilt: 12, colour: 'blue' })
      .expect(422);
    const pointers = bad.body.errors.map((e: { pointer: string }) => e.pointer);
    expect(pointers).toEqual(expect.arrayContaining(['/name', '/lengthOverallM', '/yearBuilt']));
    await surveyor.post('/v1/vessels').set('content-type', 'application/json').send('{"name":').expect(400);
    await surveyor.post('/v1/vessels').set('content-type', 'text/plain').send('x').expect(415);
    await surveyor.get('/v1/vessels?cursor=bm9uc2Vuc2U').expect(422);
    await surveyor.post('/v1/vessels').send({ name: 'a\u0000b' }).expect(422);
  });
});

describe('surveys', () => {
  it('are numbered per firm and year without gaps, also when opened at once', async () => {
    const made = await Promise.all(Array.from({ length: 6 }, () => newSurvey()));
    const year = new Date().getUTCFullYear();
    const numbers = made.map((s) => Number(s.number.split('-')[1])).sort((a, b) => a - b);
    expect(made.every((s) => s.number.startsWith(`${year}-`))).toBe(true);
    const first = numbers[0] ?? 0;
    expect(numbers).toEqual(numbers.map((_, i) => first + i));
  });

  it('repeat under one Idempotency-Key without doubling, and refuse the key for another request', async () => {
    const key = 'survey-key-1';
    const made = await surveyor.post('/v1/vessels').set('idempotency-key', key).send(vessel).expect(201);
    const again = await surveyor.post('/v1/vessels').set('idempotency-key', key).send(vessel).expect(201);
    expect(again.body).toEqual(made.body);
    expect(again.headers['idempotency-replayed']).toBe('true');
    await surveyor.post('/v1/vessels').set('idempotency-key', key).send({ name: 'Other' }).expect(422);
    const both = await Promise.all(
      [1, 2].map(() => surveyor.post('/v1/vessels').set('idempotency-key', 'at-once').send({ name: 'Twin' })),
    );
    expect(both.map((r) => r.status)).toEqual([201, 201]);
    expect(both[0]?.body.id).toBe(both[1]?.body.id);
  });

  it('move by hand only where the work goes, never to issued', async () => {
    const survey = await newSurvey();
    expect(survey.state).toBe('booked');
    const path = `/v1/surveys/${survey.id}`;
    const refused = await surveyor.patch(path).send({ state: 'issued' }).expect(409);
    expect(refused.body.detail).toContain('Issue the report');
    await surveyor.patch(path).send({ state: 'cancelled' }).expect(200);
    const closed = await surveyor.patch(path).send({ scope: 'More.' }).expect(409);
    expect(closed.body.detail).toContain('Reopen');
    const events = await surveyor.get(`${path}/events`).expect(200);
    expect(events.body.items[0]).toMatchObject({ kind: 'survey.moved', actor: { role: 'surveyor' } });
  });

  it('are refused with no vessel of the firm, an unknown zone or an impossible day', async () => {
    const survey = await newSurvey();
    const post = (body: object) => surveyor.post('/v1/surveys').send({ purpose: 'insurance', ...body });
    await post({ vesselId: survey.id }).expect(422);
    await post({ vesselId: survey.vesselId, timeZone: 'Mars/Olympus' }).expect(422);
    const odd = [{ date: '2026-02-30', place: 'x', condition: 'ashore' }];
    await post({ vesselId: survey.vesselId, attendances: odd }).expect(422);
    await surveyor.get('/v1/surveys/not-an-id').expect(404);
  });
});

describe('findings', () => {
  it('are numbered, reordered, edited, deleted with the gap closed', async () => {
    const survey = await newSurvey();
    const path = `/v1/surveys/${survey.id}/findings`;
    const made = await Promise.all([1, 2, 3].map((n) => surveyor.post(path).send(finding(n)).expect(201)));
    const byNumber = made.map((r) => r.body).sort((a, b) => a.number - b.number);
    expect(byNumber.map((f) => f.number)).toEqual([1, 2, 3]);
    const ids = byNumber.map((f) => f.id).reverse();
    await surveyor.put(`${path}/order`).send({ ids }).expect(204);
    await surveyor
      .put(`${path}/order`)
      .send({ ids: ids.slice(1) })
      .expect(422);
    const listed = await surveyor.get(path).expect(200);
    expect(listed.body.items.map((f: { id: string }) => f.id)).toEqual(ids);
    await surveyor.delete(`/v1/findings/${ids[0]}`).expect(204);
    const left = await surveyor.get(path).expect(200);
    expect(left.body.items.map((f: { number: number }) => f.number)).toEqual([1, 2]);
    const counted = await surveyor.get(`/v1/surveys/${survey.id}`);
    expect(counted.body).toMatchObject({ findingCount: 2, state: 'drafting' });
  });

  it('changed by two people: the second gets 412 and the first edit stands', async () => {
    const survey = await newSurvey();
    const made = await surveyor.post(`/v1/surveys/${survey.id}/findings`).send(finding(1)).expect(201);
    const path = `/v1/findings/${made.body.id}`;
    const etag = made.headers.etag ?? '';
    await surveyor.patch(path).set('if-match', etag).send({ observed: 'First.' }).expect(200);
    await surveyor.patch(path).set('if-match', etag).send({ observed: 'Second.' }).expect(412);
    expect((await surveyor.get(path)).body.observed).toBe('First.');
  });

  it('state days with within-days and only then', async () => {
    const survey = await newSurvey();
    const path = `/v1/surveys/${survey.id}/findings`;
    await surveyor
      .post(path)
      .send({ ...finding(1), urgency: 'within-days' })
      .expect(422);
    await surveyor
      .post(path)
      .send({ ...finding(1), withinDays: 5 })
      .expect(422);
    const made = await surveyor
      .post(path)
      .send({ ...finding(1), urgency: 'within-days', withinDays: 30 })
      .expect(201);
    const note = await surveyor.patch(`/v1/findings/${made.body.id}`).send({ urgency: 'note' }).expect(200);
    expect(note.body.withinDays).toBeNull();
    await surveyor.patch(`/v1/findings/${made.body.id}`).send({ urgency: 'within-days' }).expect(422);
  });

  it('are not for the office to write, and keep markup as text', async () => {
    const survey = await newSurvey();
    const path = `/v1/surveys/${survey.id}/findings`;
    await server.as(firm.office).post(path).send(finding(1)).expect(403);
    const title = '<script>alert(1)</script>';
    const made = await surveyor
      .post(path)
      .send({ ...finding(1), title })
      .expect(201);
    expect(made.body.title).toBe(title);
  });
});

describe('the description', () => {
  it('is OpenAPI 3.1, covers every route and is readable at /docs', async () => {
    const document = await server.as(null).get('/openapi.json').expect(200);
    expect(document.body.openapi).toMatch(/^3\.1/);
    const documented = Object.entries<object>(document.body.paths).flatMap(([path, item]) =>
      Object.keys(item).map((method) => `${method.toUpperCase()} ${path}`),
    );
    const { routes } = await import('@garboard/contract/routes');
    expect(documented.sort()).toEqual(
      Object.values(routes)
        .map((r) => `${r.method} ${r.path}`)
        .sort(),
    );
    const docs = await server.as(null).get('/docs/').expect(200);
    expect(docs.text).toContain('<html');
    await server.as(null).get('/health/ready').expect(200);
    await server.as(null).get('/v1/nothing').expect(404);
  });
});
