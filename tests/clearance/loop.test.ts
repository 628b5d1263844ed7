import { endLimits } from '@garboard/core/clearance/end-limits';
import { inTransaction } from '@garboard/db/database';
import { buildJpeg } from '@garboard/seed/builders';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { issueReport } from '../support/issue-report.ts';
import { type Caller, startServer, type TestServer } from '../support/server.ts';
import { type IssuedSurvey, issuedSurvey, sendEvidence, wordsOfFinding } from './issued-survey.ts';

const dayMs = 86_400_000;
let server: TestServer;
/** Added to the server's clock, in milliseconds. */
let ahead = 0;
const now = () => new Date(Date.now() + ahead);
const day = (from: number) => new Date(Date.now() + from * dayMs).toISOString().slice(0, 10);
beforeAll(async () => {
  server = await startServer({ clock: now });
});
afterAll(() => server.close());

const finding = async (caller: Caller, id: string) =>
  (await caller.get(`/v1/findings/${id}`).expect(200)).body;
const decide = (caller: Caller, id: string, body: object) =>
  caller.post(`/v1/clearances/${id}/decision`).send(body);
const only = (survey: IssuedSurvey) => {
  const [first] = survey.findings;
  if (!first) throw new Error('The survey has no finding.');
  return first;
};
const asGarboard = <T>(firmId: string, work: (ctx: Parameters<typeof endLimits>[0]) => Promise<T>) =>
  inTransaction(server.db, [firmId], (tx) =>
    work({
      actor: { kind: 'system', firmIds: [firmId] },
      ...{ tx, store: server.store, clock: now, log: console },
    }),
  );

describe('items of a finding', () => {
  const items = [{ text: 'Renew the hose' }, { text: 'Sleeve it' }, { text: 'Test it' }];

  it('are covered by evidence, decided one by one, and clear the finding when all are', async () => {
    const survey = await issuedSurvey(server, [{ items }]);
    const { id, items: ids } = only(survey);
    const [hose = '', sleeve = '', test = ''] = ids;
    const sent = await sendEvidence(survey.owner, id, { itemIds: [hose, sleeve] }).expect(201);
    expect(sent.body.items.map((i: { text: string }) => i.text)).toEqual(['Renew the hose', 'Sleeve it']);
    const one = [{ itemId: hose, decision: 'accept' }];
    const missing = await decide(survey.insurer, sent.body.id, { items: one }).expect(422);
    expect(missing.body.detail).toContain('“Sleeve it”');
    await decide(survey.insurer, sent.body.id, {
      items: [...one, { itemId: test, decision: 'accept' }],
    }).expect(422);
    const unlimited = { itemId: sleeve, decision: 'accept-as-is' };
    await decide(survey.insurer, sent.body.id, { items: [...one, unlimited] }).expect(422);
    const half = [...one, { itemId: sleeve, decision: 'return', reason: 'Show it.' }];
    const answer = await decide(survey.insurer, sent.body.id, { items: half }).expect(200);
    expect(answer.body).toMatchObject({ state: 'part-accepted', decision: null });
    expect(await finding(survey.owner, id)).toMatchObject({ state: 'returned', itemsLeft: 2 });
    const again = await sendEvidence(survey.owner, id, { itemIds: [hose] }).expect(422);
    expect(again.body.detail).toContain('decided already');
    const rest = await sendEvidence(survey.owner, id).expect(201);
    const limited = { itemId: test, decision: 'accept-as-is', limit: 'Engine off', limitUntil: day(20) };
    await decide(survey.insurer, rest.body.id, {
      items: [{ itemId: sleeve, decision: 'accept' }, limited],
    }).expect(200);
    expect(await finding(survey.surveyor, id)).toMatchObject({
      ...{ state: 'accepted-as-is', itemsLeft: 0 },
      limit: { text: 'Test it: Engine off', until: day(20) },
    });
    const changed = await survey.surveyor.patch(`/v1/findings/${id}`).send({ items: [] }).expect(409);
    expect(changed.body.detail).toContain('keeps its items');
    const letter = await issueReport(
      server,
      survey.firmId,
      survey.surveyor,
      survey.surveyId,
      'clearance-letter',
    );
    expect(letter.findings[0]?.evidence.map((e) => e.items.length)).toEqual([2, 2]);
    expect(letter.findings[0]?.items.map((i) => i.state)).toEqual(['cleared', 'cleared', 'accepted-as-is']);
  });

  it('open again the day after their limit, and so does the finding', async () => {
    const survey = await issuedSurvey(server, [{ items }]);
    const { id } = only(survey);
    const sent = await sendEvidence(survey.owner, id).expect(201);
    const past = { decision: 'accept-as-is', limit: 'Daylight', limitUntil: day(-2) };
    expect((await decide(survey.insurer, sent.body.id, past).expect(422)).body.errors[0].pointer).toBe(
      '/limitUntil',
    );
    const limit = { ...past, limitUntil: day(5) };
    await decide(survey.insurer, sent.body.id, limit).expect(200);
    expect(await asGarboard(survey.firmId, endLimits)).toBe(0);
    ahead = 6.1 * dayMs;
    try {
      expect(await asGarboard(survey.firmId, endLimits)).toBe(1);
      expect(await asGarboard(survey.firmId, endLimits)).toBe(0);
    } finally {
      ahead = 0;
    }
    expect(await finding(survey.owner, id)).toMatchObject({
      ...{ state: 'open', itemsLeft: 3, dueOn: day(5), limit: null },
      may: { sendEvidence: true },
    });
    const events = (await survey.owner.get(`/v1/findings/${id}/events`)).body.items;
    expect(events[0].summary).toMatch(/^The limit ended/);
  });
});

describe('due dates', () => {
  it('by hand are never before the report, and go with nothing that asks for nothing', async () => {
    const survey = await issuedSurvey(server, [{ dueOnSet: day(9) }]);
    const { id } = only(survey);
    expect(await finding(survey.owner, id)).toMatchObject({ dueOn: day(9), dueOnSet: null });
    const path = `/v1/findings/${id}`;
    const early = await survey.surveyor
      .patch(path)
      .send({ dueOnSet: day(-3) })
      .expect(422);
    expect(early.body.errors[0].pointer).toBe('/dueOnSet');
    const findings = `/v1/surveys/${survey.surveyId}/findings`;
    const note = { ...wordsOfFinding, urgency: 'note', dueOnSet: day(9) };
    await survey.surveyor.post(findings).send(note).expect(422);
    await survey.surveyor
      .post(findings)
      .send({ ...wordsOfFinding, dueOnSet: day(-1) })
      .expect(422);
    // Set for tomorrow, and the report comes the day after.
    const late = { ...wordsOfFinding, dueOnSet: day(1) };
    await survey.surveyor.post(findings).send(late).expect(201);
    ahead = 2 * dayMs;
    try {
      const refused = await survey.surveyor
        .post(`/v1/surveys/${survey.surveyId}/reports`)
        .send({ kind: 'full' })
        .expect(409);
      expect(refused.body.detail).toContain('before the report is issued');
    } finally {
      ahead = 0;
    }
  });

  it('are put off with a reason by the firm or the insurer who decides; of two at once the first counts', async () => {
    const survey = await issuedSurvey(server, [{}]);
    const { id } = only(survey);
    const path = `/v1/findings/${id}/extensions`;
    const extend = (caller: Caller, dueOn: string, reason = 'The part comes late.') =>
      caller.post(path).send({ dueOn, reason });
    await extend(survey.owner, day(30)).expect(403);
    await extend(survey.insurer, day(30), '').expect(422);
    const both = await Promise.all([extend(survey.insurer, day(30)), extend(survey.office, day(31))]);
    // Whoever comes second either meets the other's write, or reads a date to be later than.
    const statuses = both.map((r) => r.status).sort();
    expect([
      [201, 201],
      [201, 409],
      [201, 422],
    ]).toContainEqual(statuses);
    const list = (await survey.buyer.get(path).expect(200)).body.items;
    expect(list).toHaveLength(statuses.filter((s) => s === 201).length);
    // A revision that changes nothing of it keeps the time that was given.
    const due = (await finding(survey.owner, id)).dueOn;
    const report = await issueReport(server, survey.firmId, survey.surveyor, survey.surveyId);
    expect(report.findings[0]).toMatchObject({ dueOn: due, dueStated: true });
    expect(report.findings[0]?.extensions.at(-1)).toMatchObject({ dueOn: due });
  });

  it('follow the firm’s own days', async () => {
    const survey = await issuedSurvey(server, [{ urgency: 'note' }]);
    const firm = (data: object) =>
      inTransaction(server.db, [survey.firmId], (tx) =>
        tx.firm.update({ where: { id: survey.firmId }, data }),
      );
    await firm({ beforeUseDays: 7, layupRequiresClearing: true, layupDays: 100 });
    const findings = `/v1/surveys/${survey.surveyId}/findings`;
    for (const urgency of ['before-use', 'next-layup']) {
      await survey.surveyor
        .post(findings)
        .send({ ...wordsOfFinding, urgency })
        .expect(201);
    }
    const report = await issueReport(server, survey.firmId, survey.surveyor, survey.surveyId);
    expect(report.findings.map((f) => f.dueOn)).toEqual([null, day(7), day(100)]);
    expect(report.findings.map((f) => f.dueStated)).toEqual([false, true, false]);
  });
});

it('evidence to a superseded revision is refused with what changed, unless nothing did', async () => {
  const survey = await issuedSurvey(server, [{}, {}]);
  const [first, second] = survey.findings.map((f) => f.id) as [string, string];
  await survey.surveyor
    .patch(`/v1/findings/${first}`)
    .send({ recommendation: 'Renew it and its clips.', urgency: 'within-days', withinDays: 30 })
    .expect(200);
  await issueReport(server, survey.firmId, survey.surveyor, survey.surveyId);
  expect(await finding(survey.owner, first)).toMatchObject({ revision: 2 });
  const refused = await sendEvidence(survey.owner, first, { revision: 1 }).expect(409);
  expect(refused.body.detail).toMatch(/Revision 2 .*what to do, urgency, time limit/);
  expect((await sendEvidence(survey.owner, second, { revision: 1 }).expect(201)).body.revision).toBe(2);
  await sendEvidence(survey.owner, first, { revision: 9 }).expect(422);
  await sendEvidence(survey.owner, first, { revision: 2 }).expect(201);
});

it('evidence brings a measurement taken again and photos that answer those of the finding', async () => {
  const survey = await issuedSurvey(server, [{ urgency: 'note' }]);
  const uploaded = await survey.surveyor
    .post(`/v1/surveys/${survey.surveyId}/photos`)
    .attach('file', await buildJpeg(31), 'before.jpg')
    .expect(201);
  const photoId: string = uploaded.body.items[0].id;
  await inTransaction(server.db, [survey.firmId], (tx) =>
    tx.photo.update({ where: { id: photoId }, data: { state: 'ready' } }),
  );
  const made = await survey.surveyor
    .post(`/v1/surveys/${survey.surveyId}/findings`)
    .send({ ...wordsOfFinding, photoIds: [photoId] })
    .expect(201);
  const id: string = made.body.id;
  await issueReport(server, survey.firmId, survey.surveyor, survey.surveyId);
  const inputs = { startPressure: 250, endPressure: 250, holdTime: 5, gaugeResolution: 1, noLiquid: true };
  const worksheet = { kind: 'gas-leak-down', inputs };
  const pairs = [{ file: 0, beforePhotoId: photoId }];
  const wrong = { ...worksheet, inputs: { ...inputs, holdTime: -1 } };
  const bad = await sendEvidence(survey.owner, id, { worksheet: wrong }).expect(422);
  expect(bad.body.errors[0].pointer).toBe('/inputs/holdTime');
  await sendEvidence(survey.owner, id, { pairs }).expect(422);
  await sendEvidence(survey.owner, id, { worksheet: '{' }).expect(422);
  const sent = await sendEvidence(survey.owner, id, { worksheet, pairs })
    .attach('file', await buildJpeg(32), 'after.jpg')
    .expect(201);
  const worked = await survey.owner
    .post('/v1/worksheet-kinds/gas-leak-down/evaluate')
    .send({ inputs })
    .expect(200);
  expect(sent.body.worksheet).toEqual(worked.body);
  expect(sent.body.files[0].before).toMatchObject({ photoId });
  const seen = (await survey.insurer.get(`/v1/findings/${id}/clearances`).expect(200)).body.items[0];
  expect(seen.files[0].before.photoId).toBe(photoId);
});

it('nothing is decided before it was sent, though clocks differ by minutes', async () => {
  const survey = await issuedSurvey(server, [{}]);
  const sent = await sendEvidence(survey.owner, only(survey).id).expect(201);
  ahead = -5 * 60_000;
  try {
    const done = await decide(survey.insurer, sent.body.id, { decision: 'accept' }).expect(200);
    expect(done.body.decidedAt >= sent.body.sentAt).toBe(true);
  } finally {
    ahead = 0;
  }
});

it('a party removed meanwhile decides and sends nothing any more', async () => {
  const survey = await issuedSurvey(server, [{}]);
  const { id } = only(survey);
  const sent = await sendEvidence(survey.owner, id).expect(201);
  const parties = (await survey.surveyor.get(`/v1/surveys/${survey.surveyId}/parties`)).body.items;
  for (const { id: partyId } of parties) {
    await survey.surveyor.delete(`/v1/surveys/${survey.surveyId}/parties/${partyId}`).expect(204);
  }
  await decide(survey.insurer, sent.body.id, { decision: 'accept' }).expect(404);
  await sendEvidence(survey.owner, id).expect(404);
});

it('comments are read by the firm, their author and the parties chosen; only authors take them back', async () => {
  const survey = await issuedSurvey(server, [{}]);
  const path = `/v1/findings/${only(survey).id}/comments`;
  const said = await survey.owner
    .post(path)
    .send({ text: 'Yard booked.', visibleTo: ['insurer'] })
    .expect(201);
  await survey.surveyor.post(path).send({ text: 'For us.' }).expect(201);
  const read = async (caller: Caller) =>
    (await caller.get(path).expect(200)).body.items.map((c: { text: string }) => c.text);
  expect(await read(survey.surveyor)).toEqual(['Yard booked.', 'For us.']);
  expect(await read(survey.owner)).toEqual(['Yard booked.']);
  expect(await read(survey.insurer)).toEqual(['Yard booked.']);
  expect(await read(survey.buyer)).toEqual([]);
  const one = `/v1/finding-comments/${said.body.id}`;
  await survey.insurer.delete(one).expect(403);
  await survey.buyer.delete(one).expect(404);
  await survey.owner.delete(one).expect(204);
  await survey.owner.delete(one).expect(204);
  expect(await read(survey.surveyor)).toEqual(['', 'For us.']);
});

describe('a visit after the report', () => {
  const visit = (items: object[]) => ({ date: day(0), place: 'Hard 3', condition: 'ashore', items });

  it('clears many at once where the surveyor decides, and is told in the addendum', async () => {
    const survey = await issuedSurvey(server, [{}, {}, {}, {}], 'surveyor');
    const [right = '', waiting = '', not = '', asIs = ''] = survey.findings.map((f) => f.id);
    await sendEvidence(survey.owner, waiting).expect(201);
    const path = `/v1/surveys/${survey.surveyId}/re-inspections`;
    const items = [
      { findingId: right, outcome: 'put-right', note: 'New hose.' },
      { findingId: waiting, outcome: 'not-put-right', note: 'Clips missing.' },
      { findingId: not, outcome: 'not-put-right', note: 'As before.' },
      { findingId: asIs, outcome: 'as-it-is', limit: 'Engine off', limitUntil: day(90) },
    ];
    await survey.office.post(path).send(visit(items)).expect(403);
    await survey.owner.post(path).send(visit(items)).expect(403);
    // One that can't be done undoes all.
    const strange = { findingId: survey.surveyId, outcome: 'put-right' };
    await survey.surveyor
      .post(path)
      .send(visit([...items, strange]))
      .expect(422);
    expect((await finding(survey.owner, right)).state).toBe('open');
    const done = await survey.surveyor.post(path).send(visit(items)).expect(201);
    const states = done.body.items.map((i: { stateAfter: string }) => i.stateAfter);
    expect(states).toEqual(['cleared', 'returned', 'open', 'accepted-as-is']);
    await survey.surveyor
      .post(path)
      .send(visit(items.slice(0, 1)))
      .expect(409);
    const seen = (await survey.insurer.get(path).expect(200)).body.items;
    expect(seen[0].items).toHaveLength(4);
    const report = await issueReport(
      server,
      survey.firmId,
      survey.surveyor,
      survey.surveyId,
      're-inspection',
    );
    if (report.kind !== 're-inspection') throw new Error('not an addendum');
    expect(report.visit).toMatchObject({ place: 'Hard 3', date: day(0) });
    expect(report.lookedAgain.map((a) => a.outcome)).toEqual(items.map((i) => i.outcome));
    expect(report.attendances.at(-1)).toMatchObject({ place: 'Hard 3', date: day(0) });
  });

  it('becomes evidence that waits for the insurer where it decides', async () => {
    const survey = await issuedSurvey(server, [{}]);
    const { id } = only(survey);
    const body = visit([{ findingId: id, outcome: 'put-right', note: 'New hose.' }]);
    const path = `/v1/surveys/${survey.surveyId}/re-inspections`;
    const done = await survey.surveyor.post(path).send(body).expect(201);
    expect(done.body.items[0]).toMatchObject({ stateAfter: 'evidence-sent' });
    const clearanceId: string = done.body.items[0].clearanceId;
    const [sent] = (await survey.insurer.get(`/v1/findings/${id}/clearances`)).body.items;
    expect(sent).toMatchObject({ id: clearanceId, state: 'sent', sentBy: { role: 'surveyor' } });
    await decide(survey.insurer, clearanceId, { decision: 'accept' }).expect(200);
    expect((await finding(survey.owner, id)).state).toBe('cleared');
  });
});

it('a letter of clearance waits until all is decided', async () => {
  const survey = await issuedSurvey(server, [{}, {}]);
  const [first = '', second = ''] = survey.findings.map((f) => f.id);
  const sent = await sendEvidence(survey.owner, first).expect(201);
  await decide(survey.insurer, sent.body.id, { decision: 'accept' }).expect(200);
  const reports = `/v1/surveys/${survey.surveyId}/reports`;
  const early = await survey.surveyor.post(reports).send({ kind: 'clearance-letter' }).expect(409);
  expect(early.body.detail).toContain('1 finding that requires clearing is not decided yet');
  const status = await issueReport(server, survey.firmId, survey.surveyor, survey.surveyId, 'status-letter');
  expect(status.findings.map((f) => f.state)).toEqual(['cleared', 'open']);
  await survey.surveyor.post(`/v1/findings/${second}/withdrawal`).send({ reason: 'A mark.' }).expect(200);
  const letter = await issueReport(
    server,
    survey.firmId,
    survey.surveyor,
    survey.surveyId,
    'clearance-letter',
  );
  expect(letter.findings[1]).toMatchObject({ state: 'withdrawn', withdrawal: { reason: 'A mark.' } });
});
