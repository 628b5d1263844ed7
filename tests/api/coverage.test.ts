import type { Coverage, CoverageItem } from '@garboard/contract/coverage';
import { buildFirm, buildPerson } from '@garboard/seed/builders';
import { reaches, systemsAsked } from '@garboard/trade/coverage';
import { purposes, systemLabels, systems } from '@garboard/trade/vocabulary';
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

async function newSurvey(purpose: string, fields: object = {}): Promise<string> {
  const vessel = await surveyor.post('/v1/vessels').send({ name: 'Wicker Plover' }).expect(201);
  const body = { vesselId: vessel.body.id, purpose, ...fields };
  return `/v1/surveys/${(await surveyor.post('/v1/surveys').send(body).expect(201)).body.id}`;
}

const record = (path: string, system: string) =>
  surveyor
    .post(`${path}/findings`)
    .send({ system, title: 't', urgency: 'note', observed: 'Seen.', recommendation: 'Mend.' })
    .expect(201);

const read = async (path: string): Promise<Coverage> =>
  (await surveyor.get(`${path}/coverage`).expect(200)).body;
const answered = (coverage: Coverage) => coverage.items.filter((i) => i.reached !== null);
type Pointed = { body: { errors: { pointer: string }[] } };
const pointers = (answer: Pointed) => answer.body.errors.map((e) => e.pointer);

describe('coverage', () => {
  it('asks for the systems of the purpose, and for those with a finding', async () => {
    for (const purpose of purposes) {
      const coverage = await read(await newSurvey(purpose));
      expect(coverage.items.map((i) => i.system)).toEqual(systems);
      expect(coverage.unanswered).toEqual(systemsAsked(purpose));
      expect(answered(coverage)).toEqual([]);
      expect(coverage.may).toEqual({ edit: true });
    }
    const path = await newSurvey('re-inspection');
    const kept = await record(path, 'steering');
    expect((await read(path)).unanswered).toEqual(['steering']);
    await surveyor.delete(`/v1/findings/${kept.body.id}`).expect(204);
    expect((await read(path)).unanswered).toEqual([]);
  });

  it('keeps one answer, its reason and where it was looked at from', async () => {
    const path = await newSurvey('insurance');
    const answer = {
      reached: 'partly',
      reason: 'Lining not removed.\nמאחורי הציפוי',
      lookedFrom: 'saloon, bilge boards up',
    };
    const first = await surveyor.put(`${path}/coverage/keel-ballast`).send(answer).expect(200);
    expect(first.body).toMatchObject({ system: 'keel-ballast', asked: true, ...answer, version: 1 });
    expect(first.headers.etag).toBe('"1"');
    const coverage = await read(path);
    expect(answered(coverage)).toEqual([first.body]);
    expect(coverage.unanswered).not.toContain('keel-ballast');
    // Nobody asks an insurance survey for it, yet it may be told.
    const extra = await surveyor.put(`${path}/coverage/electronics`).send({ reached: 'examined' });
    expect(extra.body).toMatchObject({ asked: false, reached: 'examined', reason: '', lookedFrom: '' });
    const back = await surveyor.put(`${path}/coverage/keel-ballast`).send({ reached: null }).expect(200);
    expect(back.body).toMatchObject({ reached: null, version: 2 });
    expect((await read(path)).unanswered).toContain('keel-ballast');
    const events = (await surveyor.get(`${path}/events`)).body.items;
    expect(events.map((e: { summary: string }) => e.summary).slice(0, 3)).toEqual([
      'Coverage of Keel and ballast: answer taken back',
      'Coverage of Electronics: examined',
      'Coverage of Keel and ballast: examined in part',
    ]);
  });

  it('needs a reason for what was not reached, or not wholly', async () => {
    const path = await newSurvey('condition');
    for (const reached of reaches) {
      const needs = reached === 'partly' || reached === 'not-reached';
      for (const reason of ['', '  \n ']) {
        const answer = await surveyor.put(`${path}/coverage/fuel`).send({ reached, reason });
        expect({ reached, status: answer.status }).toEqual({ reached, status: needs ? 422 : 200 });
        if (needs) expect(pointers(answer)).toEqual(['/reason']);
      }
      const items = [
        { system: 'hull', reached: 'examined' },
        { system: 'gas', reached },
      ];
      const whole = await surveyor.put(`${path}/coverage`).send({ items });
      expect(whole.status).toBe(needs ? 422 : 200);
      if (needs) expect(pointers(whole)).toEqual(['/items/1/reason']);
    }
    for (const body of [{}, { reached: 'seen' }, { reached: 'examined', by: 'me' }]) {
      await surveyor.put(`${path}/coverage/fuel`).send(body).expect(422);
    }
    const long = { reached: 'examined', reason: 'x'.repeat(10_000) };
    expect(pointers(await surveyor.put(`${path}/coverage/fuel`).send(long).expect(422))).toEqual(['/reason']);
    await surveyor.put(`${path}/coverage/teapot`).send({ reached: 'examined' }).expect(404);
    const twice = [0, 1].map(() => ({ system: 'hull', reached: 'examined' }));
    await surveyor.put(`${path}/coverage`).send({ items: twice }).expect(422);
  });

  it('lets two phones answer at once without undoing each other', async () => {
    const path = await newSurvey('pre-purchase');
    const put = (system: string, reached: string) =>
      surveyor.put(`${path}/coverage/${system}`).send({ reached, reason: 'Stowed gear.' }).expect(200);
    await Promise.all([
      ...systems.slice(0, 12).map((s) => put(s, 'examined')),
      ...systems.slice(12).map((s) => put(s, 'partly')),
    ]);
    const coverage = await read(path);
    expect(coverage.items.map((i) => i.reached)).toEqual(
      systems.map((_, i) => (i < 12 ? 'examined' : 'partly')),
    );
    expect(coverage.unanswered).toEqual([]);
    // Both answer for the same one: whoever hadn't seen the other's answer is told.
    const bilge = `${path}/coverage/bilge`;
    await surveyor.put(bilge).set('if-match', '"1"').send({ reached: 'examined' }).expect(200);
    const late = { reached: 'not-reached', reason: 'Locked.' };
    await surveyor.put(bilge).set('if-match', '"1"').send(late).expect(412);
    // A phone that didn't hear the answer sends the same again.
    const again = await surveyor.put(bilge).set('if-match', '"1"').send({ reached: 'examined' }).expect(200);
    expect(again.body.version).toBe(2);
    await surveyor.put(bilge).set('if-match', '"2"').send(late).expect(200);
    const fresh = await newSurvey('pre-purchase');
    await surveyor
      .put(`${fresh}/coverage/hull`)
      .set('if-match', '"0"')
      .send({ reached: 'examined' })
      .expect(200);
    await surveyor.put(`${fresh}/coverage/hull`).set('if-match', '"0"').send(late).expect(412);
  });

  it('is replaced as a whole, leaving what is the same untouched', async () => {
    const path = await newSurvey('valuation');
    const items = [
      { system: 'hull', reached: 'examined', lookedFrom: 'ashore' },
      { system: 'deck', reached: 'examined' },
      { system: 'gas', reached: 'not-fitted' },
    ];
    const first = await surveyor.put(`${path}/coverage`).send({ items }).expect(200);
    expect(answered(first.body)).toMatchObject(items);
    const next = [items[0], { system: 'deck', reached: 'partly', reason: 'Snow on it.' }];
    const second = (await surveyor.put(`${path}/coverage`).send({ items: next }).expect(200)).body;
    expect(answered(second)).toMatchObject(next);
    const of = (coverage: Coverage, system: string) =>
      coverage.items.find((i: CoverageItem) => i.system === system);
    expect(of(second, 'hull')).toEqual(of(first.body, 'hull'));
    expect(of(second, 'deck')?.version).toBe(2);
    expect(of(second, 'gas')).toMatchObject({ reached: null, version: 2 });
    const events = (await surveyor.get(`${path}/events`)).body.items;
    expect(events[0].summary).toBe('Coverage answered anew for 2 systems');
    await surveyor.put(`${path}/coverage`).send({ items: next }).expect(200);
    expect((await surveyor.get(`${path}/events`)).body.items[0].id).toBe(events[0].id);
  });

  it('is written by surveyors, read by staff and by nobody else', async () => {
    const path = await newSurvey('condition');
    const owner = await buildPerson(server.db);
    const { name, email } = owner;
    await surveyor.post(`${path}/parties`).send({ role: 'owner', name, email, released: true }).expect(201);
    const office = server.as(firm.office);
    expect((await office.get(`${path}/coverage`).expect(200)).body.may).toEqual({ edit: false });
    await office.put(`${path}/coverage/hull`).send({ reached: 'examined' }).expect(403);
    await office.put(`${path}/coverage`).send({ items: [] }).expect(403);
    await server.as(owner).get(`${path}/coverage`).expect(403);
    await server.as(owner).put(`${path}/coverage/hull`).send({ reached: 'examined' }).expect(403);
    await surveyor.patch(path).send({ state: 'cancelled' }).expect(200);
    await surveyor.put(`${path}/coverage/hull`).send({ reached: 'examined' }).expect(409);
    expect((await read(path)).may).toEqual({ edit: false });
  });

  it('stops the report while a system is unanswered, naming each; the snapshot tells the rest', async () => {
    const attendances = [{ date: '2026-05-04', place: 'Hard 3', condition: 'ashore' }];
    const path = await newSurvey('insurance', { attendances });
    await record(path, 'electronics');
    const issue = () => surveyor.post(`${path}/reports`).send({ kind: 'full' });
    const bare = await issue().expect(409);
    const asked = [...systemsAsked('insurance'), 'electronics'] as const;
    expect(bare.body.detail).toContain(`${asked.length} systems`);
    for (const system of asked) expect(bare.body.detail).toContain(systemLabels[system]);
    expect(bare.body.detail).not.toContain(systemLabels.accommodation);
    const items = asked.slice(1).map((system) => ({ system, reached: 'examined' }));
    await surveyor.put(`${path}/coverage`).send({ items }).expect(200);
    const one = await issue().expect(409);
    expect(one.body.detail).toContain(`1 system: ${systemLabels.hull}.`);
    await surveyor
      .put(`${path}/coverage/hull`)
      .send({ reached: 'not-reached', reason: 'Afloat only.', lookedFrom: 'the pontoon' })
      .expect(200);
    await surveyor.post(`${path}/inventory`).send({ system: 'fire-safety', name: 'Blanket' }).expect(201);
    await surveyor.post(`${path}/inventory`).send({ system: 'gas', name: 'Gas hose' }).expect(201);
    const asks = await issue().expect(202);
    const row = await server.db.prisma.$transaction(async (tx) => {
      await tx.$executeRawUnsafe(`SELECT set_config('app.firm_ids', '${firm.id}', true)`);
      return tx.report.findUniqueOrThrow({ where: { id: asks.body.id } });
    });
    const snapshot = row.snapshot as { coverage: object[]; inventory: object[] };
    expect(snapshot.coverage).toHaveLength(asked.length);
    expect(snapshot.coverage[0]).toEqual({
      system: 'hull',
      reached: 'not-reached',
      reason: 'Afloat only.',
      lookedFrom: 'the pontoon',
    });
    expect(snapshot.inventory).toMatchObject([{ name: 'Gas hose' }, { name: 'Blanket' }]);
  });
});
