import { type ReportSnapshot, reportSnapshot } from '@garboard/contract/report-snapshot';
import type { Worksheet } from '@garboard/contract/worksheets';
import { claimReport } from '@garboard/core/reports/claim-report';
import { finishReport } from '@garboard/core/reports/finish-report';
import { inTransaction } from '@garboard/db/database';
import { buildFirm, buildPerson, type Signed } from '@garboard/seed/builders';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { answerAllCoverage } from '../support/coverage.ts';
import { type Caller, startServer, type TestServer } from '../support/server.ts';

let server: TestServer;
let firm: Awaited<ReturnType<typeof buildFirm<'surveyor'>>>;
let surveyor: Caller;
beforeAll(async () => {
  server = await startServer();
  firm = await buildFirm(server.db, ['surveyor']);
  surveyor = server.as(firm.surveyor);
});
afterAll(() => server.close());

const kind = 'gas-leak-down';
const tight = {
  ...{ startPressure: 250, endPressure: 250, holdTime: 5, gaugeResolution: 1, noLiquid: true },
  ...{ startTemperature: 20, endTemperature: 20 },
};
const leaking = { ...tight, endPressure: 220 };

const idsOf = (items: readonly { id: string }[]) => items.map((item) => item.id);

/** A survey ready to be issued, with two findings and its parties. */
async function readySurvey(parties: readonly (readonly [role: string, person: Signed, released: boolean])[]) {
  const vessel = await surveyor.post('/v1/vessels').send({ name: 'Marl Heron' }).expect(201);
  const attendances = [{ date: '2026-05-04', place: 'Hard 3', condition: 'ashore' }];
  const body = { vesselId: vessel.body.id, purpose: 'insurance', attendances };
  const survey = await surveyor.post('/v1/surveys').send(body).expect(201);
  const path = `/v1/surveys/${survey.body.id}`;
  const findings: string[] = [];
  for (const title of ['Hose past its date', 'Line loses pressure']) {
    const words = { title, observed: 'Seen.', recommendation: 'Mend.', urgency: 'before-use' };
    findings.push(
      (
        await surveyor
          .post(`${path}/findings`)
          .send({ system: 'gas', ...words })
          .expect(201)
      ).body.id,
    );
  }
  for (const [role, person, released] of parties) {
    const { name, email } = person;
    const given = role === 'yard' ? { findingIds: findings } : {};
    await surveyor
      .post(`${path}/parties`)
      .send({ role, name, email, released, ...given })
      .expect(201);
  }
  await answerAllCoverage(surveyor, survey.body.id);
  const [first = '', second = ''] = findings;
  return { id: survey.body.id as string, path, first, second };
}

const keep = async (path: string, body: object): Promise<Worksheet> =>
  (
    await surveyor
      .post(`${path}/worksheets`)
      .send({ kind, inputs: tight, ...body })
      .expect(201)
  ).body;

/** Asks for a report and finishes it as the worker would, without the printing. */
async function issue(path: string, reportKind: 'full' | 'recommendations' | 'status-letter' = 'full') {
  const asked = await surveyor.post(`${path}/reports`).send({ kind: reportKind }).expect(202);
  const reportId: string = asked.body.id;
  const asWorker = <T>(work: (ctx: Parameters<typeof claimReport>[0]) => Promise<T>) =>
    inTransaction(server.db, [firm.id], (tx) =>
      work({
        actor: { kind: 'system', firmIds: [firm.id] },
        tx,
        store: server.store,
        clock: () => new Date(),
        log: console,
      }),
    );
  const claimed = await asWorker((ctx) => claimReport(ctx, reportId));
  if (!claimed) throw new Error('nothing to claim');
  const { claim } = claimed;
  const pdf = {
    ...{ sha256: 'cd'.repeat(32), pages: 3, bytes: 99 },
    ...{ renderer: 'Garboard 0.1.0', signedBy: 'Builders Survey' },
  };
  expect(await asWorker((ctx) => finishReport(ctx, { reportId, claim, ...pdf }))).toBe(true);
  return (await surveyor.get(`/v1/reports/${reportId}/data`).expect(200)).body as ReportSnapshot;
}
const worksheetsOf = (snapshot: ReportSnapshot) => ('worksheets' in snapshot ? snapshot.worksheets : null);

describe('worksheets in what is issued', () => {
  it('are frozen when printed is ticked, in the order of the findings and then by themselves', async () => {
    const survey = await readySurvey([]);
    const { path, first, second } = survey;
    const alone = await keep(path, { title: 'Whole system' });
    const ofSecond = await keep(path, { findingId: second });
    await keep(path, { findingId: first, printed: false });
    const ofFirst = await keep(path, { findingId: first, inputs: leaking });
    const later = await keep(path, { findingId: first });
    const full = await issue(path);
    const frozen = worksheetsOf(full) ?? [];
    expect(idsOf(frozen)).toEqual(idsOf([ofFirst, later, ofSecond, alone]));
    const { id, findingId, title, result } = ofFirst;
    expect(frozen[0]).toEqual({ id, findingId, title, result });
    expect(Object.keys(frozen[0]?.result.outputs ?? {})).toEqual(Object.keys(result.outputs));

    // Recommendations print the measurements of their findings as they were issued, letters none.
    await surveyor.patch(`/v1/worksheets/${id}`).send({ inputs: tight, title: 'Measured again' }).expect(200);
    const recommendations = worksheetsOf(await issue(path, 'recommendations')) ?? [];
    expect(idsOf(recommendations)).toEqual(idsOf([ofFirst, later, ofSecond]));
    expect(recommendations[0]).toEqual(frozen[0]);
    expect(worksheetsOf(await issue(path, 'status-letter'))).toBeNull();

    // The next revision prints the working copy.
    expect(worksheetsOf(await issue(path))?.[0]).toMatchObject({
      ...{ id, title: 'Measured again', result: { verdict: 'satisfactory' } },
    });
  });

  it('leave snapshots from before there were any readable', async () => {
    const { path } = await readySurvey([]);
    const { worksheets: _, ...before } = (await issue(path)) as Extract<ReportSnapshot, { kind: 'full' }>;
    expect(worksheetsOf(reportSnapshot.parse(before))).toEqual([]);
  });

  it('stay on record until a revision leaves them out', async () => {
    const { path, first } = await readySurvey([]);
    const made = await keep(path, { findingId: first });
    const at = `/v1/worksheets/${made.id}`;
    await issue(path);
    expect((await surveyor.get(at)).body).toMatchObject({ issued: true, version: 2 });
    const refused = await surveyor.delete(at).expect(409);
    expect(refused.body.detail).toContain('Untick printing');
    await surveyor.patch(at).send({ printed: false }).expect(200);
    await surveyor.delete(at).expect(409);
    await issue(path);
    expect((await surveyor.get(at)).body).toMatchObject({ issued: false, printed: false });
    await surveyor.delete(at).expect(204);
  });
});

describe('parties', () => {
  it('read what was issued of the surveys released to them, and nothing else', async () => {
    const [owner, insurer, yard, broker] = [
      await buildPerson(server.db),
      await buildPerson(server.db),
      await buildPerson(server.db),
      await buildPerson(server.db),
    ];
    const { path, first, second } = await readySurvey([
      ['owner', owner, true],
      ['insurer', insurer, true],
      ['yard', yard, true],
      ['broker', broker, false],
    ]);
    const attached = await keep(path, { findingId: first, inputs: leaking, title: 'Main line' });
    const alone = await keep(path, { title: 'Whole system' });
    const reads = (person: Signed, worksheet: Worksheet, status: number) =>
      server.as(person).get(`/v1/worksheets/${worksheet.id}`).expect(status);
    const lists = async (person: Signed, query = '') =>
      idsOf((await server.as(person).get(`${path}/worksheets${query}`).expect(200)).body.items);

    for (const person of [owner, insurer, yard, broker]) {
      await reads(person, attached, 404);
      expect(await lists(person)).toEqual([]);
    }
    await issue(path);
    const draft = await keep(path, { findingId: first, title: 'Second thoughts' });
    const move = { findingId: second, title: 'Renamed', inputs: tight };
    await surveyor.patch(`/v1/worksheets/${attached.id}`).send(move).expect(200);

    for (const person of [owner, insurer]) {
      expect(await lists(person)).toEqual(idsOf([attached, alone]));
      await reads(person, alone, 200);
      await reads(person, draft, 404);
    }
    // The yard sees the findings it mends, not the record around them.
    expect(await lists(yard)).toEqual([attached.id]);
    await reads(yard, alone, 404);
    await reads(broker, attached, 404);
    expect(await lists(broker)).toEqual([]);

    for (const person of [owner, yard]) {
      const seen = (await reads(person, attached, 200)).body;
      expect(seen).toMatchObject({
        ...{ findingId: first, title: 'Main line', inputs: null, newer: null, issued: true, printed: true },
        ...{ may: { edit: false }, result: attached.result },
      });
      expect(await lists(person, `?findingId=${first}`)).toEqual([attached.id]);
      expect(await lists(person, `?findingId=${second}`)).toEqual([]);
      const named = [{ id: attached.id, kind, title: 'Main line', verdict: 'unsatisfactory' }];
      expect((await server.as(person).get(`/v1/findings/${first}`)).body.worksheets).toEqual(named);
      expect((await server.as(person).get(`/v1/findings/${second}`)).body.worksheets).toEqual([]);
      await server.as(person).patch(`/v1/worksheets/${attached.id}`).send({ title: 'x' }).expect(403);
      await server.as(person).delete(`/v1/worksheets/${attached.id}`).expect(403);
      await server.as(person).post(`${path}/worksheets`).send({ kind, inputs: tight }).expect(403);
    }
    expect((await surveyor.get(`/v1/findings/${second}`)).body.worksheets).toMatchObject([
      { id: attached.id, title: 'Renamed', verdict: 'satisfactory' },
    ]);
  });
});
