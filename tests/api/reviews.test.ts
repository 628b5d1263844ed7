import { inTransaction } from '@garboard/db/database';
import { newId } from '@garboard/db/ids';
import { buildFirm, buildJpeg, buildPerson, type Signed } from '@garboard/seed/builders';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { answerAllCoverage } from '../support/coverage.ts';
import { type Caller, startServer, type TestServer } from '../support/server.ts';

let server: TestServer;
let firm: Awaited<ReturnType<typeof buildFirm<'surveyor' | 'office' | 'principal'>>>;
let surveyor: Caller;
let second: Caller;
let colleague: Signed;
beforeAll(async () => {
  server = await startServer();
  firm = await buildFirm(server.db, ['surveyor', 'office', 'principal']);
  surveyor = server.as(firm.surveyor);
  second = server.as(firm.principal);
  colleague = await buildPerson(server.db, { name: 'Odile Marrack' });
  await inTransaction(server.db, [firm.id], (tx) =>
    tx.firmMember.create({
      data: { id: newId(), firmId: firm.id, personId: colleague.id, role: 'surveyor' },
    }),
  );
});
afterAll(() => server.close());

/** A survey that is ready to be issued, with one finding that shows a photo. */
async function ready() {
  const vessel = await surveyor.post('/v1/vessels').send({ name: 'Tansy Rook' }).expect(201);
  const survey = await surveyor
    .post('/v1/surveys')
    .send({
      ...{ vesselId: vessel.body.id, purpose: 'condition' },
      attendances: [{ date: '2026-05-04', place: 'Ropewalk Yard', condition: 'ashore' }],
    })
    .expect(201);
  const path = `/v1/surveys/${survey.body.id}`;
  await surveyor.patch(path).send({ state: 'drafting' }).expect(200);
  await answerAllCoverage(surveyor, survey.body.id);
  const photo = await surveyor
    .post(`${path}/photos`)
    .attach('file', await buildJpeg(31), 'a.jpg')
    .expect(201);
  const photoId: string = photo.body.items[0].id;
  const finding = await surveyor
    .post(`${path}/findings`)
    .send({
      ...{ system: 'gas', title: 'Hose past its date', urgency: 'before-use', photoIds: [photoId] },
      ...{ observed: 'Dated 2009.', recommendation: 'Renew it.' },
    })
    .expect(201);
  return { path, surveyId: survey.body.id as string, photoId, findingId: finding.body.id as string };
}
const requireReview = async (reviewRequired: boolean) => {
  await server.as(firm.principal).patch(`/v1/firms/${firm.id}`).send({ reviewRequired }).expect(200);
};
const standing = async (path: string, who = second) => (await who.get(`${path}/review`).expect(200)).body;
async function approve(path: string) {
  await surveyor.post(`${path}/review`).send({}).expect(201);
  const { record } = await standing(path);
  await second.post(`${path}/review/decision`).send({ decision: 'approve', record }).expect(200);
}
const issue = (path: string) => surveyor.post(`${path}/reports`).send({ kind: 'full' });

describe('a review', () => {
  it('is asked for, commented on, sent back, asked for again and approved', async () => {
    const { path, findingId } = await ready();
    const comments = `${path}/review/comments`;
    await second.post(comments).send({ text: 'Too early.' }).expect(409);
    await server.as(firm.office).post(`${path}/review`).send({}).expect(403);
    const own = await surveyor.post(`${path}/review`).send({ reviewerId: firm.surveyor.id }).expect(422);
    expect(own.body.errors[0].pointer).toBe('/reviewerId');
    await surveyor.post(`${path}/review`).send({ reviewerId: firm.office.id }).expect(422);
    const ask = { reviewerId: firm.principal.id, note: 'The gas.' };
    const asked = await surveyor.post(`${path}/review`).send(ask).expect(201);
    expect(asked.body).toMatchObject({
      state: 'asked',
      reviewer: { id: firm.principal.id },
      note: 'The gas.',
    });
    await surveyor.post(`${path}/review`).send({}).expect(409);
    expect((await surveyor.get(path)).body.state).toBe('in-review');
    expect(await standing(path)).toMatchObject({
      may: { ask: false, decide: true, comment: true },
      required: false,
      stands: false,
    });
    expect((await standing(path, surveyor)).may).toEqual({ ask: false, decide: false, comment: true });
    expect((await standing(path, server.as(firm.office))).may).toEqual({
      ask: false,
      decide: false,
      comment: false,
    });

    const first = await second.post(comments).send({ findingId, text: 'Which hose?' }).expect(201);
    const reply = await surveyor.post(comments).send({ replyTo: first.body.id, text: 'The inner.' });
    expect(reply.body).toMatchObject({ findingId, replyTo: first.body.id });
    await second.post(comments).send({ text: 'The scope is thin.' }).expect(201);
    await second.post(comments).send({ findingId: newId(), text: 'x' }).expect(422);
    await second.post(comments).send({ replyTo: reply.body.id, text: 'x' }).expect(422);
    await server.as(firm.office).post(comments).send({ text: 'x' }).expect(403);
    expect((await standing(path)).openThreads).toBe(2);
    const on = await surveyor.get(`${comments}?findingId=${findingId}`).expect(200);
    expect(on.body.items.map((c: { text: string }) => c.text)).toEqual(['Which hose?', 'The inner.']);
    const settle = (id: string, settled: boolean) =>
      surveyor.patch(`/v1/review-comments/${id}`).send({ settled });
    await settle(reply.body.id, true).expect(409);
    expect((await settle(first.body.id, true).expect(200)).body.settledBy).toBe(firm.surveyor.name);
    expect((await standing(path)).openThreads).toBe(1);
    // A reply opens the thread again.
    await second.post(comments).send({ replyTo: first.body.id, text: 'Say so, then.' }).expect(201);
    expect((await standing(path)).openThreads).toBe(2);

    const decision = `${path}/review/decision`;
    await second.post(decision).send({ decision: 'send-back' }).expect(422);
    await second.post(decision).send({ decision: 'approve' }).expect(422);
    await surveyor.post(decision).send({ decision: 'send-back', reason: 'x' }).expect(403);
    await server.as(firm.office).post(decision).send({ decision: 'send-back', reason: 'x' }).expect(403);
    const back = { decision: 'send-back', reason: 'Name the hose.' };
    expect((await second.post(decision).send(back).expect(200)).body).toMatchObject({
      state: 'sent-back',
      reason: 'Name the hose.',
      decidedBy: firm.principal.name,
    });
    await second.post(decision).send(back).expect(409);
    expect((await surveyor.get(path)).body.state).toBe('drafting');

    await surveyor.post(`${path}/review`).send({}).expect(201);
    const { record } = await standing(path);
    await surveyor.patch(`/v1/findings/${findingId}`).send({ observed: 'The inner hose.' }).expect(200);
    const stale = await second.post(decision).send({ decision: 'approve', record }).expect(412);
    expect(stale.body.detail).toContain('changed after you opened it');
    const now = (await standing(path)).record;
    expect(now).not.toBe(record);
    await second.post(decision).send({ decision: 'approve', record: now }).expect(200);
    expect(await standing(path)).toMatchObject({ stands: true, latest: { state: 'approved' } });
    const events = await surveyor.get(`${path}/events`).expect(200);
    expect(events.body.items.map((e: { summary: string }) => e.summary)).toEqual(
      expect.arrayContaining([
        `Review asked of ${firm.principal.name}`,
        'Sent back by the reviewer: Name the hose.',
        'Record approved by the reviewer',
      ]),
    );
    const notices = await inTransaction(server.db, [], (tx) =>
      tx.outbox.findMany({ where: { job: 'event.fan-out' }, orderBy: { id: 'asc' } }),
    );
    const told = notices.flatMap(({ data }) => {
      const { personIds } = data as { personIds?: string[] };
      return personIds ? [personIds] : [];
    });
    expect(told).toEqual([[firm.principal.id], [firm.surveyor.id], [], [firm.surveyor.id]]);
  });

  it('is nobody’s affair outside the firm, and ends when the record is taken back by hand', async () => {
    const { path } = await ready();
    const owner = await buildPerson(server.db);
    const invited = { role: 'owner', name: owner.name, email: owner.email, released: true };
    await surveyor.post(`${path}/parties`).send(invited).expect(201);
    await surveyor.post(`${path}/review`).send({}).expect(201);
    const outside = server.as(owner);
    await outside.get(`${path}/review`).expect(403);
    await outside.get(`${path}/review/comments`).expect(403);
    await outside.get(`${path}/changes`).expect(403);
    await outside.post(`${path}/review/comments`).send({ text: 'x' }).expect(403);
    await surveyor.patch(path).send({ state: 'drafting' }).expect(200);
    expect((await standing(path)).latest.state).toBe('withdrawn');
    expect((await standing(path, surveyor)).may.ask).toBe(true);
  });
});

describe('a firm that requires it', () => {
  it('issues nothing until somebody else has approved the record as it stands', async () => {
    const { path, findingId, photoId } = await ready();
    await server.as(firm.surveyor).patch(`/v1/firms/${firm.id}`).send({ reviewRequired: true }).expect(403);
    await requireReview(true);
    try {
      expect((await issue(path).expect(409)).body.detail).toContain('Ask for a review first');
      await surveyor.post(`${path}/review`).send({}).expect(201);
      expect((await issue(path).expect(409)).body.detail).toContain('not decided yet');
      const back = { decision: 'send-back', reason: 'Name the hose.' };
      await second.post(`${path}/review/decision`).send(back).expect(200);
      expect((await issue(path).expect(409)).body.detail).toContain('Name the hose.');

      // Every kind of edit voids an approval.
      const edits = [
        () => surveyor.patch(`/v1/findings/${findingId}`).send({ consequence: `Gas ${Math.random()}` }),
        () => surveyor.patch(path).send({ scope: `The hull ${Math.random()}` }),
        () => surveyor.patch(`/v1/photos/${photoId}`).send({ caption: `Hose ${Math.random()}` }),
        () => surveyor.patch(`/v1/photos/${photoId}`).send({ quarterTurns: 2 }),
        () => surveyor.put(`${path}/coverage/hull`).send({ reached: 'partly', reason: 'Ice.' }),
        () => surveyor.post(`${path}/inventory`).send({ system: 'life-saving', name: 'Liferaft' }),
      ];
      for (const edit of edits) {
        await approve(path);
        expect((await standing(path)).stands).toBe(true);
        expect((await edit()).status).toBeLessThan(300);
        expect((await standing(path)).stands).toBe(false);
        expect((await issue(path).expect(409)).body.detail).toContain('changed after');
      }
      // What is none of the record doesn't.
      await approve(path);
      await surveyor.post(`${path}/review/comments`).send({ text: 'Thank you.' }).expect(201);
      await second.patch(`/v1/firms/${firm.id}`).send({ phone: '1' }).expect(200);
      // The reviewer who becomes the signing surveyor has approved his own record.
      await surveyor.patch(path).send({ surveyorId: firm.principal.id }).expect(200);
      await issue(path).expect(409);
      await surveyor.patch(path).send({ surveyorId: firm.surveyor.id }).expect(200);
      await issue(path).expect(202);
    } finally {
      await requireReview(false);
    }
  });

  it('lets any other surveyor decide, not the one who signs nor the one who asked', async () => {
    const { path } = await ready();
    // The principal asks for a record that the surveyor signs.
    await second.post(`${path}/review`).send({}).expect(201);
    const { record } = await standing(path);
    const approves = { decision: 'approve', record };
    await second.post(`${path}/review/decision`).send(approves).expect(403);
    await surveyor.post(`${path}/review/decision`).send(approves).expect(403);
    const both = await Promise.all(
      [1, 2].map(() => server.as(colleague).post(`${path}/review/decision`).send(approves)),
    );
    expect(both.map((r) => r.status).sort()).toEqual([200, 409]);
  });
});
