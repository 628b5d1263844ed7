import { buildFirm, buildPerson, type Signed } from '@garboard/seed/builders';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { answerAllCoverage } from '../support/coverage.ts';
import { issueReport } from '../support/issue-report.ts';
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

const cost = { low: 12_000, high: 18_000, currency: 'EUR', basis: 'opinion', note: '' };
const total = { urgency: 'before-use', currency: 'EUR', low: 12_000, high: 18_000, findings: 1, opinions: 1 };
const words = {
  system: 'gas',
  title: 'Hose past its date',
  urgency: 'before-use',
  recommendation: 'Renew it.',
};

/** A survey ready to be issued with one finding, released to these people. */
async function readySurvey(printCosts: boolean, parties: Record<string, Signed>, observed = 'Dated 2009.') {
  const vessel = await surveyor.post('/v1/vessels').send({ name: 'Marl Heron' }).expect(201);
  const attendances = [{ date: '2026-05-04', place: 'Hard 3', condition: 'ashore' }];
  const body = { vesselId: vessel.body.id, purpose: 'pre-purchase', attendances, printCosts };
  const surveyId: string = (await surveyor.post('/v1/surveys').send(body).expect(201)).body.id;
  const grading = { severity: 1, probability: 'D' };
  const finding = { ...words, observed, cost, grading };
  const { body: kept } = await surveyor.post(`/v1/surveys/${surveyId}/findings`).send(finding).expect(201);
  for (const [role, { name, email }] of Object.entries(parties)) {
    const given = role === 'yard' ? { findingIds: [kept.id] } : {};
    const party = { role, name, email, released: true, ...given };
    await surveyor.post(`/v1/surveys/${surveyId}/parties`).send(party).expect(201);
  }
  await answerAllCoverage(surveyor, surveyId);
  return { surveyId, findingId: kept.id as string };
}

describe('costs in what is issued', () => {
  it('are read by those who read the report, where the firm prints them, as they were issued', async () => {
    const [buyer, yard] = [await buildPerson(server.db), await buildPerson(server.db)];
    const { surveyId, findingId } = await readySurvey(true, { buyer, yard });
    const snapshot = await issueReport(server, firm.id, surveyor, surveyId);
    expect(snapshot.survey.printCosts).toBe(true);
    expect(snapshot.findings[0]?.cost).toEqual(cost);
    // Changed since: parties read what was issued.
    await surveyor
      .patch(`/v1/findings/${findingId}`)
      .send({ cost: { ...cost, high: 99_000 } })
      .expect(200);
    const seen = async (person: Signed) => ({
      finding: (await server.as(person).get(`/v1/findings/${findingId}`).expect(200)).body,
      costs: (await server.as(person).get(`/v1/surveys/${surveyId}`).expect(200)).body.costs,
    });
    const bought = await seen(buyer);
    expect(bought.finding).toMatchObject({ cost, grading: null });
    expect(bought.costs).toEqual([total]);
    // A yard that is to quote is not told what others think it should cost.
    expect(await seen(yard)).toMatchObject({ finding: { cost: null }, costs: [] });
    await surveyor.patch(`/v1/surveys/${surveyId}`).send({ printCosts: false }).expect(200);
    expect(await seen(buyer)).toMatchObject({ finding: { cost: null }, costs: [] });
    const again = await issueReport(server, firm.id, surveyor, surveyId);
    expect(again.findings[0]?.cost).toBeNull();
  });

  it('are nowhere when the firm prints none', async () => {
    const buyer = await buildPerson(server.db);
    const { surveyId, findingId } = await readySurvey(false, { buyer });
    const snapshot = await issueReport(server, firm.id, surveyor, surveyId);
    expect(snapshot.findings[0]?.cost).toBeNull();
    await surveyor.patch(`/v1/surveys/${surveyId}`).send({ printCosts: true }).expect(200);
    const { body } = await server.as(buyer).get(`/v1/findings/${findingId}`).expect(200);
    expect(body.cost).toBeNull();
    const survey = await surveyor.get(`/v1/surveys/${surveyId}`).expect(200);
    expect(survey.body.costs).toEqual([total]);
  });

  it('leave drafts behind a restored one: issued findings keep their numbers', async () => {
    const { surveyId } = await readySurvey(false, {});
    const draft = await surveyor
      .post(`/v1/surveys/${surveyId}/findings`)
      .send({ ...words, observed: 'Seen.' })
      .expect(201);
    await surveyor.delete(`/v1/findings/${draft.body.id}`).expect(204);
    const later = await surveyor
      .post(`/v1/surveys/${surveyId}/findings`)
      .send({ ...words, title: 'Later', observed: 'Seen.' })
      .expect(201);
    expect(later.body.number).toBe(2);
    await issueReport(server, firm.id, surveyor, surveyId);
    const back = await surveyor.post(`/v1/findings/${draft.body.id}/restore`).expect(200);
    expect(back.body).toMatchObject({ number: 3, state: 'draft' });
    const refused = await surveyor.delete(`/v1/findings/${later.body.id}`).expect(409);
    expect(refused.body.detail).toContain('stays on record');
  });
});

describe('gaps left from the catalogue', () => {
  it('keep a report from being issued', async () => {
    const { surveyId } = await readySurvey(false, {}, 'The hose {location} is dated {date}; {sic}.');
    const refused = await surveyor.post(`/v1/surveys/${surveyId}/reports`).send({ kind: 'full' }).expect(409);
    expect(refused.body.detail).toBe(
      'Finding 1 (Hose past its date) still has gaps from the catalogue: {location}, {date}. Complete its texts first.',
    );
  });
});
