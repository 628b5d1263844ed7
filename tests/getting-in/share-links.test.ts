import { inTransaction } from '@garboard/db/database';
import { buildFirm, buildJpeg, buildPerson, type Signed } from '@garboard/seed/builders';
import supertest from 'supertest';
import { afterAll, beforeAll, beforeEach, describe, expect, it, vi } from 'vitest';
import { answerAllCoverage } from '../support/coverage.ts';
import { startServer, type TestServer } from '../support/server.ts';
import { startTestWorker, type TestWorker } from '../support/worker.ts';

const attendances = [{ date: '2026-05-04', place: 'Ropewalk Yard', condition: 'ashore' }];

const finding = {
  system: 'gas',
  title: 'Gas line loses pressure',
  urgency: 'note',
  observed: 'Seen.',
  recommendation: 'Renew.',
};

let now = Date.now();
const slowly = { timeout: 90_000, interval: 300 };
let server: TestServer;
let worker: TestWorker;
let firm: Awaited<ReturnType<typeof buildFirm<'principal' | 'surveyor'>>>;
/** The owner pays and so is the client; the broker sees, and doesn't pay. */
let owner: Signed;
let broker: Signed;
let surveyId: string;
let reportId: string;
let photoId: string;
let ownerParty: string;
beforeAll(async () => {
  server = await startServer({ clock: () => new Date(now) });
  worker = await startTestWorker(server);
  firm = await buildFirm(server.db, ['principal', 'surveyor']);
  owner = await buildPerson(server.db, { name: 'Orla Fennimore' });
  broker = await buildPerson(server.db);
  const api = server.as(firm.surveyor);
  const vessel = await api.post('/v1/vessels').send({ name: 'Tansy Rook' }).expect(201);
  const survey = await api
    .post('/v1/surveys')
    .send({ vesselId: vessel.body.id, purpose: 'condition', attendances })
    .expect(201);
  surveyId = survey.body.id;
  const path = `/v1/surveys/${surveyId}`;
  const photo = await api
    .post(`${path}/photos`)
    .attach('file', await buildJpeg(3), 'a.jpg')
    .expect(201);
  photoId = photo.body.items[0].id;
  await api
    .post(`${path}/findings`)
    .send({ ...finding, photoIds: [photoId] })
    .expect(201);
  await answerAllCoverage(api, surveyId);
  for (const [role, { name, email }] of Object.entries({ owner, broker })) {
    const party = { role, name, email, released: true, client: role === 'owner' };
    const made = await api.post(`${path}/parties`).send(party).expect(201);
    if (role === 'owner') ownerParty = made.body.id;
  }
  await api.patch(path).send({ state: 'drafting' }).expect(200);
  const photos = async () => (await api.get(`${path}/photos`).expect(200)).body.items;
  await vi.waitFor(async () => expect((await photos())[0].state).toBe('ready'), slowly);
  reportId = (await api.post(`${path}/reports`).send({ kind: 'full' }).expect(202)).body.id;
  const report = async () => (await api.get(`/v1/reports/${reportId}`).expect(200)).body;
  await vi.waitFor(async () => expect((await report()).state).toBe('issued'), slowly);
}, 180_000);
afterAll(async () => {
  await worker?.close();
  await server?.close();
});
beforeEach(async () => {
  now = Date.now();
  await server.db.prisma.attemptCount.deleteMany();
});

async function linkOf(person: Signed, fields: object = {}) {
  const made = await server
    .as(person)
    .post(`/v1/reports/${reportId}/share-links`)
    .send({ label: 'Yard manager', days: 7, ...fields })
    .expect(201);
  const token = (made.body.url as string).split('#token=')[1] ?? '';
  return { ...(made.body as { id: string; url: string; works: boolean }), token };
}

/** One reader's browser: it keeps the cookie it is given. */
const reader = () => supertest.agent(server.url);
const open = (agent: ReturnType<typeof reader>, token: string, passcode?: string) =>
  agent.post('/v1/shared-reports').send({ token, ...(passcode === undefined ? {} : { passcode }) });

describe('a share link', () => {
  it('shows one issued report to whoever holds it, and nothing else', async () => {
    const link = await linkOf(firm.surveyor);
    const looked = await reader().post('/v1/share-links/lookup').send({ token: link.token }).expect(200);
    expect(looked.body).toMatchObject({ passcodeNeeded: false, viewsLeft: null });
    const agent = reader();
    const shared = await open(agent, link.token).expect(201);
    expect(shared.body).toMatchObject({
      ...{ vesselName: 'Tansy Rook', firmName: firm.name, kind: 'full', revision: 1, superseded: false },
      sharedBy: firm.surveyor.name,
    });
    const path = `/v1/shared-reports/${shared.body.id}`;
    await agent.get(path).expect(200);
    const data = await agent.get(`${path}/data`).expect(200);
    expect(data.body.findings[0].title).toBe('Gas line loses pressure');
    const pdf = await agent.get(`${path}/pdf`).expect(200);
    expect(pdf.headers['content-type']).toBe('application/pdf');
    expect(pdf.body.subarray(0, 5).toString()).toBe('%PDF-');
    const picture = await agent.get(`${path}/photos/${photoId}/image?size=screen`).expect(200);
    expect(picture.headers['cache-control']).toBe('private, no-cache');
    await agent.get(`${path}/photos/${surveyId}/image`).expect(404);
    // Nothing else: neither with the cookie of the viewing nor with the link's secret.
    for (const elsewhere of [
      `/v1/reports/${reportId}`,
      `/v1/reports/${reportId}/pdf`,
      `/v1/surveys/${surveyId}`,
      `/v1/surveys/${surveyId}/findings`,
      `/v1/photos/${photoId}/image`,
    ]) {
      await agent.get(elsewhere).expect(401);
      await agent.get(elsewhere).set('authorization', `Bearer ${link.token}`).expect(401);
    }
    // A viewing is its reader's own: without the cookie, or with another's, there is nothing.
    await reader().get(path).expect(410);
    const another = reader();
    const second = await open(another, link.token).expect(201);
    await agent.get(`/v1/shared-reports/${second.body.id}/data`).expect(410);
  });

  it('counts views, stops at its limit even for two at once, and is written into the history', async () => {
    const link = await linkOf(firm.surveyor, { viewLimit: 2, label: 'Two looks' });
    const all = await Promise.all([1, 2, 3, 4].map(() => open(reader(), link.token)));
    expect(all.map((answer) => answer.status).sort()).toEqual([201, 201, 410, 410]);
    await reader().post('/v1/share-links/lookup').send({ token: link.token }).expect(410);
    const list = await server.as(firm.surveyor).get(`/v1/reports/${reportId}/share-links`).expect(200);
    expect(list.body.items[0]).toMatchObject({ id: link.id, views: 2, viewLimit: 2, works: false });
    const views = await server.as(firm.surveyor).get(`/v1/share-links/${link.id}/views`).expect(200);
    expect(views.body.items).toHaveLength(2);
    const events = await server.as(firm.surveyor).get(`/v1/surveys/${surveyId}/events`).expect(200);
    const opened = events.body.items.filter((e: { summary: string }) => e.summary.includes('Two looks'));
    expect(opened.map((e: { kind: string }) => e.kind)).toEqual([
      'report.opened-by-link',
      'report.opened-by-link',
      'report.shared',
    ]);
  });

  it('asks for its passcode, which can’t be guessed at leisure', async () => {
    const link = await linkOf(firm.surveyor, { passcode: 'heron-17', viewLimit: 3 });
    const looked = await reader().post('/v1/share-links/lookup').send({ token: link.token }).expect(200);
    expect(looked.body.passcodeNeeded).toBe(true);
    expect((await open(reader(), link.token).expect(401)).body.type).toBe('/problems/wrong-passcode');
    for (let n = 0; n < 10; n += 1) await open(reader(), link.token, `guess-${n}`).expect(n < 9 ? 401 : 429);
    const held = await open(reader(), link.token, 'heron-17').expect(429);
    expect(Number(held.headers['retry-after'])).toBeGreaterThan(0);
    now += 16 * 60_000;
    await open(reader(), link.token, 'heron-17').expect(201);
    const list = await server.as(firm.surveyor).get(`/v1/reports/${reportId}/share-links`).expect(200);
    // Wrong passcodes are no views, and the passcode itself is told to nobody.
    expect(list.body.items[0]).toMatchObject({ views: 1, passcodeSet: true });
    expect(JSON.stringify(list.body)).not.toContain('heron');
  });

  it('ends when it runs out and when it is ended, in the middle of reading too', async () => {
    const link = await linkOf(firm.surveyor, { days: 1 });
    const agent = reader();
    const shared = await open(agent, link.token).expect(201);
    const path = `/v1/shared-reports/${shared.body.id}/data`;
    now += 25 * 3_600_000;
    await agent.get(path).expect(410);
    await open(reader(), link.token).expect(410);
    now = Date.now();
    await agent.get(path).expect(200);
    await server.as(firm.surveyor).delete(`/v1/share-links/${link.id}`).expect(204);
    await agent.get(path).expect(410);
    const gone = await open(reader(), link.token).expect(410);
    // The same words as for a link that never was.
    const never = await open(reader(), 'x'.repeat(43)).expect(410);
    expect(never.body.detail).toBe(gone.body.detail);
    await server.as(firm.surveyor).delete(`/v1/share-links/${link.id}`).expect(204);
  });

  it('is made by the firm and the client, and by nobody else', async () => {
    const path = `/v1/reports/${reportId}/share-links`;
    const body = { label: 'x', days: 7 };
    await server.as(broker).get(`/v1/reports/${reportId}`).expect(200);
    await server.as(broker).post(path).send(body).expect(403);
    await server.as(broker).get(path).expect(403);
    const stranger = await buildPerson(server.db);
    await server.as(stranger).post(path).send(body).expect(404);
    const link = await linkOf(owner, { label: 'My brother' });
    await server.as(broker).delete(`/v1/share-links/${link.id}`).expect(404);
    await server.as(stranger).delete(`/v1/share-links/${link.id}`).expect(404);
    await server.as(stranger).get(`/v1/share-links/${link.id}/views`).expect(404);
    await open(reader(), link.token).expect(201);
    const views = await server.as(owner).get(`/v1/share-links/${link.id}/views`).expect(200);
    expect(views.body.items).toHaveLength(1);
    await server.as(owner).delete(`/v1/share-links/${link.id}`).expect(204);
    for (const wrong of [
      { label: '', days: 7 },
      { label: 'x', days: 91 },
      { label: 'x', days: 7, passcode: '12345' },
      { label: 'x', days: 7, viewLimit: 0 },
    ]) {
      await server.as(owner).post(path).send(wrong).expect(422);
    }
  });

  it('ends with its maker’s own sight, and while the report is withheld', async () => {
    const [theirs, ours] = [await linkOf(owner), await linkOf(firm.surveyor)];
    const held = (value: boolean) =>
      inTransaction(server.db, [firm.id], (tx) =>
        tx.survey.update({ where: { id: surveyId }, data: { held: value } }),
      );
    await held(true);
    await open(reader(), ours.token).expect(410);
    await open(reader(), theirs.token).expect(410);
    const path = `/v1/reports/${reportId}/share-links`;
    await server.as(firm.surveyor).post(path).send({ label: 'x', days: 7 }).expect(409);
    await held(false);
    await open(reader(), theirs.token).expect(201);
    const agent = reader();
    const shared = await open(agent, theirs.token).expect(201);
    await server.as(firm.surveyor).delete(`/v1/surveys/${surveyId}/parties/${ownerParty}`).expect(204);
    await open(reader(), theirs.token).expect(410);
    await agent.get(`/v1/shared-reports/${shared.body.id}/data`).expect(410);
    await open(reader(), ours.token).expect(201);
  });
});
