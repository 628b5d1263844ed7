import { inTransaction } from '@garboard/db/database';
import { buildFirm, buildPerson, type Signed } from '@garboard/seed/builders';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { answerAllCoverage } from '../support/coverage.ts';
import { issueReport } from '../support/issue-report.ts';
import { type Caller, startServer, type TestServer } from '../support/server.ts';

let server: TestServer;
let firm: Awaited<ReturnType<typeof buildFirm<'principal' | 'surveyor' | 'office'>>>;
let surveyor: Caller;
beforeAll(async () => {
  server = await startServer();
  firm = await buildFirm(server.db, ['principal', 'surveyor', 'office']);
  surveyor = server.as(firm.surveyor);
});
afterAll(() => server?.close());

interface Party {
  id: string;
  role: string;
  findingIds: string[];
  viewedAt: string | null;
}

/** An issued survey with two findings; people are invited by `invite`. */
async function issuedSurvey() {
  const vessel = await surveyor.post('/v1/vessels').send({ name: 'Marl Heron' }).expect(201);
  const attendances = [{ date: '2026-05-04', place: 'Hard 3', condition: 'ashore' }];
  const open = { vesselId: vessel.body.id, purpose: 'insurance', attendances };
  const id: string = (await surveyor.post('/v1/surveys').send(open).expect(201)).body.id;
  const path = `/v1/surveys/${id}`;
  const findings: string[] = [];
  for (const title of ['Hose past its date', 'Line loses pressure']) {
    const words = { title, system: 'gas', observed: 'Seen.', recommendation: 'Mend.', urgency: 'before-use' };
    findings.push((await surveyor.post(`${path}/findings`).send(words).expect(201)).body.id);
  }
  await answerAllCoverage(surveyor, id);
  await issueReport(server, firm.id, surveyor, id);
  const report: string = (await surveyor.get(`${path}/reports`).expect(200)).body.items[0].id;
  const invite = async (
    role: string,
    more: object = {},
  ): Promise<{ person: Signed; api: Caller; party: Party }> => {
    const person = await buildPerson(server.db);
    const { name, email } = person;
    const party = (
      await surveyor
        .post(`${path}/parties`)
        .send({ role, name, email, ...more })
        .expect(201)
    ).body;
    return { person, api: server.as(person), party };
  };
  const [first = '', second = ''] = findings;
  return { id, path, report, first, second, invite };
}

const kinds = async (caller: Caller, path: string): Promise<string[]> =>
  (await caller.get(`${path}/disclosures`).expect(200)).body.items.map((e: { kind: string }) => e.kind);

describe('who pays for the survey', () => {
  it('releases the report to others and withdraws it; both, and each look, are written down', async () => {
    const { path, report, invite } = await issuedSurvey();
    const buyer = await invite('buyer', { client: true });
    const insurer = await invite('insurer');
    await insurer.api.get(`/v1/reports/${report}/data`).expect(404);
    const at = `${path}/parties/${insurer.party.id}`;
    await buyer.api.patch(at).send({ released: true }).expect(200);
    await insurer.api.get(`/v1/reports/${report}/data`).expect(200);
    await insurer.api.get(`/v1/reports/${report}/data.csv`).expect(200);
    await Promise.all([1, 2, 3].map(() => insurer.api.get(`/v1/reports/${report}/data`).expect(200)));
    await buyer.api.patch(at).send({ released: false }).expect(200);
    await insurer.api.get(`/v1/reports/${report}/data`).expect(404);

    const seen = await kinds(buyer.api, path);
    expect(seen.slice(0, 3)).toEqual(['party.release-withdrawn', 'report.viewed', 'party.released']);
    expect(seen.filter((kind) => kind === 'report.viewed')).toHaveLength(1);
    expect(await kinds(surveyor, path)).toEqual(seen);
    const listed: Party[] = (await buyer.api.get(`${path}/parties`).expect(200)).body.items;
    expect(listed.map((party) => [party.role, party.viewedAt !== null])).toEqual([
      ['buyer', false],
      ['insurer', true],
    ]);
    // The firm's own looks are its own affair.
    await surveyor.get(`/v1/reports/${report}/data`).expect(200);
    expect(await kinds(surveyor, path)).toEqual(seen);
  });

  it('neither gives itself the report, nor passes on what the firm has not released, nor names another', async () => {
    const { path, invite } = await issuedSurvey();
    const owner = await invite('owner', { client: true, released: false });
    const lender = await invite('lender');
    await owner.api.patch(`${path}/parties/${owner.party.id}`).send({ released: true }).expect(403);
    const early = await owner.api
      .patch(`${path}/parties/${lender.party.id}`)
      .send({ released: true })
      .expect(409);
    expect(early.body.detail).toMatch(/not released the report to you/);
    await surveyor.patch(`${path}/parties/${owner.party.id}`).send({ released: true }).expect(200);
    await owner.api.patch(`${path}/parties/${lender.party.id}`).send({ client: true }).expect(403);
    await owner.api.patch(`${path}/parties/${lender.party.id}`).send({ released: true }).expect(200);
    await lender.api.patch(`${path}/parties/${lender.party.id}`).send({ released: true }).expect(403);
    await owner.api.patch(`${path}/parties/${lender.party.id}`).send({}).expect(422);
    // The firm says who pays, and may take it back.
    await surveyor.patch(`${path}/parties/${owner.party.id}`).send({ client: false }).expect(200);
    await owner.api.patch(`${path}/parties/${lender.party.id}`).send({ released: false }).expect(403);
    const yard = await invite('yard');
    const no = await surveyor.patch(`${path}/parties/${yard.party.id}`).send({ client: true }).expect(422);
    expect(no.body.errors[0].pointer).toBe('/client');
  });
});

describe('a yard', () => {
  it('sees the findings it was given, as long as it has them', async () => {
    const { path, report, first, second, invite } = await issuedSurvey();
    const owner = await invite('owner');
    const yard = await buildPerson(server.db);
    const sees = async () => {
      const list = await server.as(yard).get(`${path}/findings`);
      return list.status === 200 ? list.body.items.map((f: { id: string }) => f.id) : list.status;
    };
    const invitation = { role: 'yard', name: yard.name, email: yard.email };
    await owner.api
      .post(`${path}/parties`)
      .send({ ...invitation, findingIds: [report] })
      .expect(422);
    const made = await owner.api
      .post(`${path}/parties`)
      .send({ ...invitation, findingIds: [first] })
      .expect(201);
    expect(made.body.findingIds).toEqual([first]);
    expect(await sees()).toEqual([first]);
    await server.as(yard).get(`/v1/findings/${second}`).expect(404);
    await server.as(yard).get(`/v1/reports/${report}`).expect(404);
    const recommendations = await server.as(yard).get('/v1/recommendations').expect(200);
    expect(recommendations.body.items.map((f: { id: string }) => f.id)).toEqual([first]);

    const yards = (finding: string, partyIds: string[]) =>
      owner.api.put(`/v1/findings/${finding}/yards`).send({ partyIds });
    await yards(second, [made.body.id]).expect(200);
    expect(await sees()).toEqual([first, second]);
    await yards(first, []).expect(200);
    expect(await sees()).toEqual([second]);
    await yards(first, [owner.party.id]).expect(422);
    await server.as(yard).put(`/v1/findings/${second}/yards`).send({ partyIds: [] }).expect(403);
    const history = await owner.api.get(`/v1/findings/${second}/events`).expect(200);
    expect(history.body.items.length).toBeGreaterThan(0);
    const mine: Party[] = (await surveyor.get(`${path}/parties`).expect(200)).body.items;
    expect(mine.find((party) => party.role === 'yard')?.findingIds).toEqual([second]);
  });
});

describe('what is taken away', () => {
  it('a party that is removed while signed in finds nothing at the next request', async () => {
    const { id, path, report, first, invite } = await issuedSurvey();
    const insurer = await invite('insurer', { released: true });
    await insurer.api.get(`/v1/reports/${report}/pdf`);
    await insurer.api.get(`/v1/findings/${first}`).expect(200);
    await surveyor.delete(`${path}/parties/${insurer.party.id}`).expect(204);
    for (const gone of [path, `/v1/findings/${first}`, `/v1/reports/${report}/data`, `${path}/findings`]) {
      await insurer.api.get(gone).expect(404);
    }
    const me = await insurer.api.get('/v1/me').expect(200);
    expect(me.body.parties).toEqual([]);
    const list = await insurer.api.get('/v1/surveys').expect(200);
    expect(list.body.items.map((s: { id: string }) => s.id)).not.toContain(id);
    await surveyor.delete(`${path}/parties/${insurer.party.id}`).expect(404);
  });

  it('contents that are withheld are withheld from every party, who pays among them, and come back', async () => {
    const { id, report, first, path, invite } = await issuedSurvey();
    const hold = (held: boolean) =>
      inTransaction(server.db, [firm.id], (tx) => tx.survey.updateMany({ where: { id }, data: { held } }));
    const owner = await invite('owner', { client: true });
    await hold(true);
    // Invited while they are withheld.
    const buyer = await invite('buyer');
    for (const { api } of [owner, buyer]) {
      const survey = await api.get(path).expect(200);
      expect(survey.body).toMatchObject({ held: true, released: false, findingCount: 0 });
      await api.get(`/v1/findings/${first}`).expect(404);
      await api.get(`/v1/reports/${report}/data`).expect(404);
    }
    await surveyor.get(`/v1/reports/${report}/data`).expect(200);
    await hold(false);
    for (const { api } of [owner, buyer]) {
      await api.get(`/v1/findings/${first}`).expect(200);
      await api.get(`/v1/reports/${report}/data`).expect(200);
    }
  });
});
