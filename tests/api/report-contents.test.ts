import { type ReportSnapshot, reportSnapshot } from '@garboard/contract/report-snapshot';
import { claimReport } from '@garboard/core/reports/claim-report';
import { finishReport } from '@garboard/core/reports/finish-report';
import { inTransaction } from '@garboard/db/database';
import { buildFirm, buildPerson } from '@garboard/seed/builders';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { answerAllCoverage } from '../support/coverage.ts';
import { type Caller, startServer, type TestServer } from '../support/server.ts';

let server: TestServer;
let firm: Awaited<ReturnType<typeof buildFirm<'principal' | 'surveyor'>>>;
let surveyor: Caller;
beforeAll(async () => {
  server = await startServer();
  firm = await buildFirm(server.db, ['principal', 'surveyor']);
  surveyor = server.as(firm.surveyor);
});
afterAll(() => server.close());

const present = ['Wessel Amber, owner', 'Tove Grind, yard foreman'];

async function readySurvey() {
  const vessel = await surveyor
    .post('/v1/vessels')
    .send({ name: 'Marl Heron', hullNumber: 'GB-QXK30118D404', yearBuilt: 2004 })
    .expect(201);
  const attendances = [{ date: '2026-05-04', place: 'Hard 3', condition: 'ashore' }];
  const body = { vesselId: vessel.body.id, purpose: 'insurance', attendances, present };
  const survey = await surveyor.post('/v1/surveys').send(body).expect(201);
  expect(survey.body.present).toEqual(present);
  const path = `/v1/surveys/${survey.body.id}`;
  const finding = await surveyor
    .post(`${path}/findings`)
    .send({
      ...{ system: 'gas', title: 'Drain shared', observed: 'One drain for two lockers.' },
      ...{ recommendation: 'Part them.', urgency: 'before-use', catalogueKey: 'gas-locker-drain-shared' },
      position: { along: 0.9, height: 0.8, side: 'port' },
    })
    .expect(201);
  await answerAllCoverage(surveyor, survey.body.id);
  return { id: survey.body.id as string, path, findingId: finding.body.id as string };
}

async function frozen(path: string, kind: string): Promise<{ id: string; snapshot: ReportSnapshot }> {
  const { body } = await surveyor.post(`${path}/reports`).send({ kind }).expect(202);
  const row = await inTransaction(server.db, [firm.id], (tx) =>
    tx.report.findUniqueOrThrow({ where: { id: body.id } }),
  );
  return { id: body.id, snapshot: reportSnapshot.parse(row.snapshot) };
}

/** Issues a report as the worker does once its PDF is in the store. */
async function issue(reportId: string): Promise<void> {
  await inTransaction(server.db, [firm.id], async (tx) => {
    const actor = { kind: 'system', firmIds: [firm.id] } as const;
    const ctx = { actor, tx, store: server.store, clock: () => new Date(), log: console };
    const claimed = await claimReport(ctx, reportId);
    if (!claimed) throw new Error('not claimed');
    const made = { sha256: 'a'.repeat(64), pages: 3, bytes: 1000, renderer: 'test', signedBy: 'test' };
    expect(await finishReport(ctx, { reportId, claim: claimed.claim, ...made })).toBe(true);
  });
}

describe('what a report freezes', () => {
  it('takes the firm’s paper and measures, who was there, the hull number and the catalogue’s drawing', async () => {
    const principal = server.as(firm.principal);
    await principal.patch(`/v1/firms/${firm.id}`).send({ paper: 'A3' }).expect(422);
    const { body } = await principal
      .patch(`/v1/firms/${firm.id}`)
      .send({ paper: 'Letter', measures: 'us' })
      .expect(200);
    expect(body).toMatchObject({ paper: 'Letter', measures: 'us' });
    const { path } = await readySurvey();
    const { snapshot } = await frozen(path, 'full');
    if (snapshot.kind !== 'full') throw new Error('not a full report');
    expect(snapshot).toMatchObject({ paper: 'Letter', measures: 'us', present });
    expect(snapshot.hullNumberDecoded).toMatchObject({ verdict: 'satisfactory' });
    expect(snapshot.hullNumberDecoded?.fields).toContainEqual({ label: 'Model year', text: '2004' });
    expect(snapshot.findings[0]).toMatchObject({
      catalogueKey: 'gas-locker-drain-shared',
      position: { along: 0.9, height: 0.8, side: 'port' },
    });
    const entry = snapshot.catalogue['gas-locker-drain-shared'];
    expect(entry?.title.length).toBeGreaterThan(5);
    expect(entry?.diagram?.svg).toContain('<svg');
  });

  it('makes a summary only when it was released to a broker, and an addendum only of what was looked at', async () => {
    const { path, findingId } = await readySurvey();
    await surveyor.post(`${path}/reports`).send({ kind: 're-inspection' }).expect(409);
    const full = await frozen(path, 'full');
    await issue(full.id);

    const refused = await surveyor.post(`${path}/reports`).send({ kind: 'summary' }).expect(409);
    expect(refused.body.detail).toContain('released');
    const { name, email } = await buildPerson(server.db);
    await surveyor.post(`${path}/parties`).send({ role: 'broker', name, email, released: true }).expect(201);
    const { snapshot: summary } = await frozen(path, 'summary');
    expect(summary).toMatchObject({ kind: 'summary', worksheets: [], inventory: [] });
    expect(summary.findings.map((f) => f.title)).toEqual(['Drain shared']);
    expect(summary.findings[0]?.cost).toBeNull();

    const nothing = await surveyor.post(`${path}/reports`).send({ kind: 're-inspection' }).expect(409);
    expect(nothing.body.detail).toContain('No finding has been looked at again');
    const observed = 'Two drains now, each to its own outlet.';
    await surveyor.patch(`/v1/findings/${findingId}`).send({ observed }).expect(200);
    const { snapshot: addendum } = await frozen(path, 're-inspection');
    if (addendum.kind !== 're-inspection') throw new Error('not an addendum');
    expect(addendum.lookedAgain).toMatchObject([{ findingId, found: observed, pairs: [], outcome: null }]);
    expect(addendum.findings[0]).toMatchObject({ observed: 'One drain for two lockers.' });
    expect(addendum.issuedReports).toMatchObject([{ kind: 'full', revision: 1 }]);
  });
});
