import { hashPassword } from '@garboard/core/people/passwords';
import { inTransaction } from '@garboard/db/database';
import { buildFirm, buildJpeg, buildPerson, type Signed } from '@garboard/seed/builders';
import type { Browser } from 'puppeteer';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { answerAllCoverage } from '../support/coverage.ts';
import { type Caller, startServer, type TestServer } from '../support/server.ts';
import { startTestWorker, type TestWorker } from '../support/worker.ts';
import { buildPortal, type Complaints, openBrowser, Visitor } from './visitor.ts';

const password = 'a long enough passphrase';
const complaints: Complaints = [];
const title = 'Hose past its date';
let server: TestServer;
let worker: TestWorker;
let browser: Browser;
let surveyor: Visitor;
let reviewer: Visitor;
let reader: Visitor;
let api: Caller;
let path: string;
let findingId: string;

async function visit(person: Signed): Promise<Visitor> {
  const visitor = await Visitor.arrive(browser, server.url, complaints);
  await visitor.signIn(person, password);
  return visitor;
}

beforeAll(async () => {
  const portalDir = await buildPortal();
  server = await startServer({ portalDir });
  worker = await startTestWorker(server);
  browser = await openBrowser();
  const firm = await buildFirm(server.db, ['surveyor', 'principal']);
  const owner = await buildPerson(server.db, { name: 'Ines Abrunhal' });
  const passwordHash = await hashPassword(password);
  const id = { in: [firm.surveyor.id, firm.principal.id, owner.id] };
  await inTransaction(server.db, [], (tx) => tx.person.updateMany({ where: { id }, data: { passwordHash } }));
  api = server.as(firm.surveyor);
  await server.as(firm.principal).patch(`/v1/firms/${firm.id}`).send({ reviewRequired: true }).expect(200);
  const vessel = await api.post('/v1/vessels').send({ name: 'Sedge Warbler', lengthOverallM: 9.8 });
  const body = {
    ...{ vesselId: vessel.body.id, purpose: 'insurance', requestedBy: 'Ines Abrunhal' },
    ...{ scope: 'Hull, rig and gas.', limitations: 'The tanks were not opened.' },
    attendances: [{ date: '2026-05-04', place: 'Hard 3', condition: 'ashore' }],
  };
  const survey = await api.post('/v1/surveys').send(body).expect(201);
  path = `/surveys/${survey.body.id}`;
  await api.patch(`/v1${path}`).send({ state: 'drafting' }).expect(200);
  await answerAllCoverage(api, survey.body.id);
  await api
    .post(`/v1${path}/parties`)
    .send({ role: 'owner', name: owner.name, email: owner.email, released: true })
    .expect(201);
  const photos = await api
    .post(`/v1${path}/photos`)
    .attach('file', await buildJpeg(61), 'a.jpg')
    .attach('file', await buildJpeg(62), 'b.jpg')
    .expect(201);
  const photoIds = photos.body.items.map((p: { id: string }) => p.id);
  await api.patch(`/v1/photos/${photoIds[0]}`).send({ caption: 'The hose at the bulkhead' }).expect(200);
  const finding = await api
    .post(`/v1${path}/findings`)
    .send({
      ...{ system: 'gas', title, urgency: 'before-use', harms: ['fire-explosion'], photoIds },
      ...{ observed: 'Dated 2009; the cover is cracked.', consequence: 'Gas can gather in the bilge.' },
      ...{ recommendation: 'Renew it.', position: { along: 0.7, height: 0.6, side: 'port' } },
    })
    .expect(201);
  findingId = finding.body.id;
  const inputs = { startPressure: 250, endPressure: 250, holdTime: 5, gaugeResolution: 1, noLiquid: true };
  await api.post(`/v1${path}/worksheets`).send({ kind: 'gas-leak-down', inputs, findingId }).expect(201);
  await api
    .post(`/v1${path}/findings`)
    .send({
      ...{ system: 'steering', title: 'Play in the wheel', urgency: 'note' },
      ...{ observed: 'A hand’s breadth.', recommendation: 'Watch it.' },
    })
    .expect(201);
  surveyor = await visit(firm.surveyor);
  reviewer = await visit(firm.principal);
  reader = await visit(owner);
}, 120_000);
afterAll(async () => {
  await browser?.close();
  await worker?.close();
  await server?.close();
});

/** The ranks of the page's headings in order; none may be skipped on the way down. */
async function headings(visitor: Visitor): Promise<number[]> {
  return visitor.page.$$eval('main h1, main h2, main h3, main h4, main h5, main h6', (all) =>
    all.map((heading) => Number(heading.tagName.slice(1))),
  );
}

describe('issuing in a browser', { timeout: 120_000 }, () => {
  it('shows a draft before anything is issued', async () => {
    await surveyor.goTo(`${path}/report`);
    await surveyor.reads('Your firm issues a report only when a second surveyor has approved it');
    await surveyor.press('Make a draft');
    await surveyor.reads('Look at it (PDF)');
    await surveyor.reads('Nothing has been issued for this survey yet.');
    await surveyor.picture('issuing-1-draft');
  });

  it('is reviewed by a second surveyor beside the findings', async () => {
    await surveyor.follow('Review');
    await surveyor.fill('What to look at (optional)', 'The gas, please.');
    await surveyor.press('Ask for the review');
    await surveyor.reads('A review is asked for and not decided yet.');

    await reviewer.goTo(`${path}/review`);
    await reviewer.reads('The gas, please.');
    await reviewer.press('Comment on finding 1');
    await reviewer.fill('Comment on finding 1', 'Which hose is it?');
    await reviewer.press('Add it');
    await reviewer.reads('Comment added.');
    await reviewer.find('button', 'Settle this thread');
    await reviewer.picture('issuing-2-review');
    expect(await reviewer.widthAt360('issuing-2-review')).toBe(360);
    expect(await headings(reviewer)).toEqual([1, 2, 2, 3, 3, 2]);

    await surveyor.goTo(`${path}/review`);
    await surveyor.press('Reply to “Which hose is it?”');
    await surveyor.fill('Reply to “Which hose is it?”', 'The inner one; I wrote it in.');
    await surveyor.press('Add it');
    await surveyor.reads('I wrote it in.');
    await api
      .patch(`/v1/findings/${findingId}`)
      .send({ observed: 'The inner hose is dated 2009; its cover is cracked.' })
      .expect(200);
    await surveyor.press('Settle this thread');
    await surveyor.reads('1 settled thread');

    await reviewer.goTo(`${path}/review`);
    await reviewer.reads('The inner hose is dated 2009');
    await reviewer.click('radio', 'Approve: it can be issued as it stands');
    await reviewer.press('Record the decision');
    await reviewer.reads('The record as it stands is approved by');
  });

  it('is issued and read by the owner on the screen, with headings in order', async () => {
    await surveyor.goTo(`${path}/report`);
    await surveyor.reads('The record as it stands is approved by');
    await surveyor.press('Issue the report');
    await surveyor.press('Issue it');
    await surveyor.reads('Survey report is issued.');

    await reader.goTo(path);
    await reader.follow('Survey report');
    await reader.reads('Files and verification');
    for (const words of [
      'The inner hose is dated 2009',
      'Gas can gather in the bilge.',
      'The hose at the bulkhead',
      'Gas leak-down test',
      'The tanks were not opened.',
      'Hull exterior',
      'Before acting on it',
      'I have no interest in the vessel',
      'Where the findings are',
    ]) {
      await reader.reads(words);
    }
    const ranks = await headings(reader);
    expect(ranks[0]).toBe(1);
    expect(ranks.filter((rank, at) => at > 0 && rank > (ranks[at - 1] ?? 0) + 1)).toEqual([]);
    const photos = await reader.page.$$eval('.report-photos img', (all) => all.length);
    expect(photos).toBe(2);
    await reader.page.$$eval('.report-photos img', (all) => {
      for (const photo of all as HTMLImageElement[]) photo.loading = 'eager';
    });
    await reader.page.waitForFunction(() =>
      [...document.querySelectorAll<HTMLImageElement>('.report-photos img')].every((p) => p.naturalWidth > 0),
    );
    await reader.picture('issuing-3-reading');
    expect(await reader.widthAt360('issuing-3-reading')).toBe(360);
    await reader.page.pdf({ path: 'tests/artefacts/browser/issuing-3-printed.pdf', format: 'A4' });
  });

  it('withdraws a finding; the next revision lists it, the first is marked as superseded', async () => {
    await surveyor.goTo(`/findings/${findingId}`);
    await surveyor.press('Withdraw the finding');
    await surveyor.fill('Why it is withdrawn', 'The date was misread.');
    await surveyor.press('Withdraw it');
    await surveyor.reads('Withdrawn on');
    await reader.goTo(`/findings/${findingId}`);
    await reader.reads('The date was misread.');
    await surveyor.goTo(`${path}/report`);
    await surveyor.reads('Withdrawn: The date was misread.');
    await surveyor.reads('It was changed after');
    await surveyor.picture('issuing-4-next');
    await surveyor.goTo(`${path}/review`);
    await surveyor.press('Ask for the review');
    await surveyor.reads('A review is asked for and not decided yet.');
    await reviewer.goTo(`${path}/review`);
    await reviewer.click('radio', 'Approve: it can be issued as it stands');
    await reviewer.press('Record the decision');
    await reviewer.reads('The record as it stands is approved by');
    await surveyor.goTo(`${path}/report`);
    await surveyor.press('Issue the next revision');
    await surveyor.press('Issue it');
    await surveyor.reads('Survey report, revision 2 is issued.');
    await surveyor.reads('Superseded by revision 2');
    await surveyor.reads('1 withdrawn');
    await surveyor.picture('issuing-5-issued');

    await reader.goTo(path);
    await reader.reads('Superseded by revision 2');
    await reader.follow('Survey report');
    await reader.reads('stands in its place');
    await reader.follow('read revision 2');
    await reader.reads('What differs from revision 1');
    await reader.reads('Withdrawn: The date was misread.');
  });

  it('complained of nothing', () => {
    expect(complaints).toEqual([]);
  });
});
