import { hashPassword } from '@garboard/core/people/passwords';
import { inTransaction } from '@garboard/db/database';
import { buildFirm } from '@garboard/seed/builders';
import type { Browser } from 'puppeteer';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type Caller, startServer, type TestServer } from '../support/server.ts';
import { buildPortal, type Complaints, openBrowser, Visitor } from './visitor.ts';

const password = 'a long enough passphrase';
const complaints: Complaints = [];
let server: TestServer;
let browser: Browser;
let visitor: Visitor;
let api: Caller;
let path: string;

beforeAll(async () => {
  const portalDir = await buildPortal();
  server = await startServer({ portalDir });
  browser = await openBrowser();
  const firm = await buildFirm(server.db, ['surveyor']);
  const passwordHash = await hashPassword(password);
  const where = { id: firm.surveyor.id };
  await inTransaction(server.db, [], (tx) => tx.person.update({ where, data: { passwordHash } }));
  api = server.as(firm.surveyor);
  const vessel = await api.post('/v1/vessels').send({ name: 'Sedge Warbler' }).expect(201);
  const body = {
    vesselId: vessel.body.id,
    purpose: 'damage',
    attendances: [{ date: '2026-05-04', place: 'Hard 3', condition: 'ashore' }],
  };
  path = `/surveys/${(await api.post('/v1/surveys').send(body).expect(201)).body.id}`;
  const finding = { system: 'engine', title: 'Mount cracked', urgency: 'note' };
  await api
    .post(`/v1${path}/findings`)
    .send({ ...finding, observed: 'Seen.', recommendation: 'Mend.' })
    .expect(201);
  visitor = await Visitor.arrive(browser, server.url, complaints);
  await visitor.signIn(firm.surveyor, password);
}, 90_000);
afterAll(async () => {
  await browser?.close();
  await server?.close();
});

interface Answer {
  system: string;
  reached: string | null;
  reason: string;
  lookedFrom: string;
}
const answers = async (): Promise<Answer[]> =>
  (await api.get(`/v1${path}/coverage`).expect(200)).body.items.filter((i: Answer) => i.reached);

/** Asks until the answers kept are those; saving happens by itself, a moment after the last key. */
async function keeps(expected: Partial<Answer>[]): Promise<void> {
  const end = Date.now() + 10_000;
  for (;;) {
    const kept = await answers();
    if (kept.length === expected.length || Date.now() > end) {
      expect(kept).toMatchObject(expected);
      return;
    }
    await new Promise((resolve) => setTimeout(resolve, 100));
  }
}

describe('coverage in the portal', { timeout: 60_000 }, () => {
  it('stops the report and leads to where it is answered', async () => {
    await visitor.goTo(`${path}/report`);
    await visitor.reads('Coverage is not answered for 5 systems: Hull exterior');
    await visitor.picture('coverage-1-readiness');
  });

  it('is answered by letters, its reasons in between', async () => {
    await visitor.goTo(`${path}/coverage`);
    await visitor.reads('5 systems not answered yet');
    const first = await visitor.page.waitForSelector('input[type=radio]');
    await first?.focus();
    const { keyboard } = visitor.page;
    // Hull examined, deck in part with a reason and a place, through-hulls not fitted.
    await keyboard.press('e');
    await keyboard.press('p');
    await visitor.reads('Not saved yet: say why.');
    await keyboard.type('Under a tent of canvas.');
    await keyboard.press('Tab');
    await keyboard.type('the cockpit');
    await keyboard.press('Tab');
    await keyboard.press('f');
    await keeps([
      { system: 'hull', reached: 'examined' },
      { system: 'deck', reached: 'partly', reason: 'Under a tent of canvas.', lookedFrom: 'the cockpit' },
      { system: 'through-hulls', reached: 'not-fitted' },
    ]);
    await visitor.reads('2 systems not answered yet');
    await visitor.picture('coverage-2-answers');
    expect(await visitor.widthAt360('coverage-2-answers')).toBeLessThanOrEqual(360);
  });

  it('takes what somebody else answered meanwhile, or what the person insists on', async () => {
    // Aboard, somebody else takes the answer for the hull back and gives another.
    const other = { reached: 'not-reached', reason: 'Still afloat.' };
    await api.put(`/v1${path}/coverage/hull`).send(other).expect(200);
    const first = await visitor.page.$('input[type=radio]');
    await first?.focus();
    await visitor.page.keyboard.press('f');
    await visitor.reads('Somebody else answered meanwhile: Not reached, “Still afloat.”');
    await visitor.picture('coverage-3-disagreement');
    await visitor.press('Take their answer');
    await visitor.readsNoMore('Somebody else answered meanwhile');
    expect((await answers())[0]).toMatchObject(other);
  });

  it('marks the rest as examined only after asking', async () => {
    await visitor.press('Mark the rest as examined');
    await visitor.reads('Mark 2 systems as examined?');
    await visitor.picture('coverage-4-rest');
    await visitor.press('Cancel');
    expect(await answers()).toHaveLength(3);
    await visitor.press('Mark the rest as examined');
    await visitor.press('Yes, I examined all of these');
    await visitor.reads('Every system is answered');
    expect(await answers()).toHaveLength(5);
    await visitor.goTo(`${path}/report`);
    await visitor.reads('Every system is answered for');
  });
});

describe('equipment in the portal', { timeout: 60_000 }, () => {
  it('is recorded, refused with impossible dates, and watched', async () => {
    await visitor.goTo(`${path}/equipment`);
    await visitor.reads('No equipment recorded');
    await visitor.follow('Record equipment');
    await visitor.fill('What it is', 'Liferaft', 'combobox');
    await visitor.fill('Serial number (optional)', 'ET4-00871');
    await visitor.setDay('Made or fitted on', '2020-03-01');
    await visitor.setDay('Good until', '2019-03-31');
    await visitor.press('Save');
    await visitor.reads('It would expire before it was made.');
    await visitor.picture('equipment-1-refused');
    await visitor.setDay('Good until', '2024-03-31');
    await visitor.press('Save');
    await visitor.reads('Expired 31 March 2024');
    await visitor.picture('equipment-2-list');
    expect(await visitor.widthAt360('equipment-2-list')).toBeLessThanOrEqual(360);
    await visitor.goTo('/expiries');
    await visitor.reads('Sedge Warbler');
    await visitor.picture('equipment-3-expiries');
    expect(await visitor.widthAt360('equipment-3-expiries')).toBeLessThanOrEqual(360);
    await visitor.goTo('/expiries?before=2024-03-31');
    await visitor.reads('Nothing expires before 31 March 2024');
  });

  it('raised no error, no content-policy violation and no failed request', () => {
    const story = [
      /^412 PUT \/v1\/surveys\/[^/]+\/coverage\/hull$/,
      /^422 POST \/v1\/surveys\/[^/]+\/inventory$/,
    ];
    expect(complaints.filter((line) => !story.some((known) => known.test(line)))).toEqual([]);
  });
});
