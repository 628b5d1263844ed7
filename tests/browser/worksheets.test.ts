import { hashPassword } from '@garboard/core/people/passwords';
import { inTransaction } from '@garboard/db/database';
import { buildFirm } from '@garboard/seed/builders';
import type { Browser } from 'puppeteer';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { startServer, type TestServer } from '../support/server.ts';
import { buildPortal, type Complaints, openBrowser, Visitor } from './visitor.ts';

const password = 'a long enough passphrase';
const title = 'Pressure lost in the low-pressure line';
const complaints: Complaints = [];

let server: TestServer;
let browser: Browser;
let surveyor: Visitor;
let surveyPath: string;

beforeAll(async () => {
  const portalDir = await buildPortal();
  server = await startServer({ portalDir });
  browser = await openBrowser();
  const firm = await buildFirm(server.db, ['surveyor']);
  const passwordHash = await hashPassword(password);
  await inTransaction(server.db, [], (tx) =>
    tx.person.update({ where: { id: firm.surveyor.id }, data: { passwordHash } }),
  );
  const api = server.as(firm.surveyor);
  const vessel = await api.post('/v1/vessels').send({ name: 'Tansy Rook' }).expect(201);
  const survey = await api
    .post('/v1/surveys')
    .send({ vesselId: vessel.body.id, purpose: 'insurance' })
    .expect(201);
  surveyPath = `/surveys/${survey.body.id}`;
  const finding = { system: 'gas', title, urgency: 'before-use', observed: 'Seen.', recommendation: 'Mend.' };
  await api.post(`/v1${surveyPath}/findings`).send(finding).expect(201);
  surveyor = await Visitor.arrive(browser, server.url, complaints);
  await surveyor.signIn(firm.surveyor, password);
}, 90_000);
afterAll(async () => {
  await browser?.close();
  await server?.close();
});

describe('a worksheet in a browser', { timeout: 90_000 }, () => {
  it('is found by a word, filled in with live results, saved and read from its finding', async () => {
    await surveyor.goTo(surveyPath);
    await surveyor.follow('Measurements');
    await surveyor.reads('Nothing measured yet');
    await surveyor.follow('Fill in a worksheet');
    await surveyor.fill('Find by a word', 'leak pressure', 'searchbox');
    await surveyor.readsNoMore('Moisture map');
    await surveyor.follow('Gas leak-down test');
    await surveyor.reads('Still needed');
    await surveyor.reads('Never look for a leak with a flame');
    await surveyor.choose('Unit of Pressure at the start', 'kPa');
    await surveyor.fill('Pressure at the start', '25');
    await surveyor.fill('Pressure at the end', '240');
    await surveyor.fill('Time held', '5');
    await surveyor.fill('Smallest change the gauge shows', '1');
    await surveyor.click('radio', 'Yes');
    await surveyor.reads('Unsatisfactory');
    await surveyor.reads('Pressure fell by 1 kPa');
    const drawn = await surveyor.page.$$eval('.svg-picture svg', (all) => all.length);
    expect(drawn).toBe(1);
    await surveyor.fill('Pressure at the end', '250');
    await surveyor.readsNoMore('Pressure fell');
    await surveyor.fill('Pressure at the end', '-4');
    await surveyor.reads('Pressure at the end must be at least 0 mbar; −4 mbar was given.');
    await surveyor.fill('Pressure at the end', '240');
    await surveyor.choose('Measures this finding (optional)', `1. ${title}`);
    await surveyor.fill('Name (optional)', 'Low side, all appliances shut');
    expect(await surveyor.widthAt360('worksheet')).toBeLessThanOrEqual(360);
    await surveyor.press('Save the worksheet');
    await surveyor.reads('Saved: Low side, all appliances shut.');
    await surveyor.follow('Low side, all appliances shut');
    await surveyor.reads('Pressure fell by 1 kPa');
    await surveyor.goTo(`${surveyPath}/findings`);
    await surveyor.follow(title);
    await surveyor.reads('Low side, all appliances shut: Unsatisfactory');
  });

  it('made no complaint but the refusals it was meant to meet', () => {
    const refusal = /^422 POST \/v1\/worksheet-kinds\/gas-leak-down\/evaluate$/;
    expect(complaints.filter((line) => !refusal.test(line))).toEqual([]);
  });
});
