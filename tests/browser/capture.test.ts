import { createHash } from 'node:crypto';
import { cp, mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { hashPassword } from '@garboard/core/people/passwords';
import { inTransaction } from '@garboard/db/database';
import { buildFirm, type Signed } from '@garboard/seed/builders';
import type { Browser } from 'puppeteer';
import sharp from 'sharp';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { type Cable, layCable } from '../support/cable.ts';
import { type Caller, startServer, type TestServer } from '../support/server.ts';
import { Telephone } from './telephone.ts';
import { buildPortal, type Complaints, openBrowser } from './visitor.ts';

const password = 'a long enough passphrase';
const complaints: Complaints = [];
const kinds = 35;

let server: TestServer;
let cable: Cable;
let browser: Browser;
let files: string;
let surveyor: Signed;
let colleague: Signed;
let api: Caller;
let surveyId: string;
let surveyName: string;
let phone: Telephone;

/** A photo as a telephone takes it: noise, so that it is large. */
async function photograph(name: string): Promise<string> {
  const noise = { type: 'gaussian', mean: 128, sigma: 50 } as const;
  const path = join(files, name);
  const picture = sharp({ create: { width: 1600, height: 1200, channels: 3, background: '#888', noise } });
  await writeFile(path, await picture.jpeg({ quality: 80 }).toBuffer());
  return path;
}
const sha256 = async (path: string) =>
  createHash('sha256')
    .update(await readFile(path))
    .digest('hex');
const list = async (what: string) =>
  (await api.get(`/v1/surveys/${surveyId}/${what}?limit=200`).expect(200)).body.items as {
    id: string;
    sha256: string;
    title: string;
    photoIds: string[];
    observed: string;
    state: string;
    result: unknown;
  }[];
const coverageOf = async (system: string) => {
  const { body } = await api.get(`/v1/surveys/${surveyId}/coverage`).expect(200);
  return (body.items as { system: string; reached: string; reason: string }[]).find(
    (i) => i.system === system,
  );
};

beforeAll(async () => {
  files = await mkdtemp(join(tmpdir(), 'garboard-capture-'));
  // A copy: a newer version of the portal is put in its place below.
  const portalDir = join(files, 'portal');
  await cp(await buildPortal(), portalDir, { recursive: true });
  server = await startServer({ portalDir });
  cable = await layCable(server.url);
  browser = await openBrowser();
  const firm = await buildFirm(server.db, ['surveyor', 'principal']);
  ({ surveyor, principal: colleague } = firm);
  const passwordHash = await hashPassword(password);
  await inTransaction(server.db, [], (tx) =>
    tx.person.updateMany({ where: { id: { in: [surveyor.id, colleague.id] } }, data: { passwordHash } }),
  );
  api = server.as(surveyor);
  const vessel = await api.post('/v1/vessels').send({ name: 'Marl Finch' }).expect(201);
  const attendances = [{ date: '2026-05-04', place: 'The yard', condition: 'ashore' }];
  const survey = await api
    .post('/v1/surveys')
    .send({ vesselId: vessel.body.id, purpose: 'condition', attendances })
    .expect(201);
  surveyId = survey.body.id;
  surveyName = `Marl Finch, ${survey.body.number}`;
  await api.patch(`/v1/surveys/${surveyId}`).send({ state: 'booked' }).expect(200);
  phone = await Telephone.arrive(browser, cable.url, complaints);
  await phone.visitor.signIn(surveyor, password);
}, 120_000);
afterAll(async () => {
  await browser?.close();
  await cable?.cut();
  await server?.close();
  await rm(files, { recursive: true, force: true });
});

describe('capture without signal', { timeout: 120_000 }, () => {
  let taken: string[];
  // One that failed leaves nothing behind for the next.
  afterEach(async () => {
    await cable.mend();
    await phone.outOfSignal(false);
  });

  it('opens and keeps everything with the network cut, after one visit', async () => {
    taken = await Promise.all(['keel.jpg', 'locker.jpg', 'hose.jpg'].map(photograph));
    await phone.visitor.goTo('/capture');
    await phone.visitor.reads(surveyName);
    await phone.madeReady(surveyor.id, surveyId, kinds);
    await cable.cut();
    await phone.visitor.page.close();
    phone = await phone.another('/capture');
    await phone.outOfSignal(true);
    await phone.visitor.reads('As the server had them');
    await phone.picture('capture-1-surveys');
    await phone.tap(surveyName);
    await phone.visitor.reads('Bilge pumping');
    await phone.picture('capture-2-systems');
    await phone.tap('Gas (LPG)');
    await phone.visitor.give('Take a photo', taken.slice(0, 1));
    await phone.visitor.reads('Kept: 1 photo.');
    await phone.visitor.give('Choose photos of this telephone', taken);
    await phone.visitor.reads('Kept: 2 photos. 1 photo had been kept before.');
    await phone.picture('capture-3-system');
    await phone.tap('Write or speak a note');
    await phone.visitor.fill('What do you see?', 'Hose perished at the regulator\nCracked all round, 2009.');
    await phone.picture('capture-4-note');
    await phone.visitor.press('Keep the note');
    await phone.visitor.reads('Photos taken now belong to the note');
    await phone.picture('capture-5-note-kept');
    await phone.tap('How far examined');
    await phone.visitor.click('radio', 'Examined in part');
    await phone.visitor.press('Keep');
    await phone.visitor.reads('Say why it was not reached');
    await phone.visitor.fill('Why?', 'Locker glued shut');
    await phone.picture('capture-6-coverage');
    await phone.visitor.press('Keep');
    await phone.visitor.reads('Fill in a worksheet');
    await phone.tap('Fill in a worksheet');
    await phone.tap('Gas leak-down test');
    await phone.visitor.fill('Pressure at the start', '250');
    await phone.visitor.press('Keep the worksheet');
    await phone.visitor.reads('Still empty:');
    await phone.visitor.fill('Pressure at the end', '240');
    await phone.visitor.fill('Time held', '5');
    await phone.visitor.fill('Smallest change the gauge shows', '1');
    await phone.visitor.page.reload();
    await phone.visitor.find('textbox', 'Pressure at the end');
    await phone.visitor.click('radio', 'Yes');
    await phone.picture('capture-7-worksheet');
    await phone.visitor.press('Keep the worksheet');
    await phone.visitor.reads('6 things to send');
    await phone.visitor.goTo('/capture/kept');
    await phone.visitor.reads('Not sent yet, 6');
    await phone.picture('capture-8-kept');
    expect(await list('photos')).toEqual([]);
  });

  it('sends each thing exactly once, although its page is closed and another crashes while sending', async () => {
    await phone.slow(350);
    await phone.visitor.reads('Sending,');
    await phone.picture('capture-9-sending');
    await phone.visitor.page.close();
    phone = await phone.another('/capture/kept');
    await phone.slow(350);
    await phone.visitor.reads('Sending,');
    await phone.crash();
    phone = await phone.another('/capture/kept');
    await phone.visitor.reads('Everything is sent');
    await phone.picture('capture-10-sent');
    const photos = await list('photos');
    expect(photos.map((photo) => photo.sha256).sort()).toEqual((await Promise.all(taken.map(sha256))).sort());
    const findings = await list('findings');
    expect(findings.map(({ title, observed, state }) => ({ title, observed, state }))).toEqual([
      {
        title: 'Hose perished at the regulator',
        observed: 'Hose perished at the regulator\nCracked all round, 2009.',
        state: 'draft',
      },
    ]);
    expect(findings[0]?.photoIds.toSorted()).toEqual(photos.map((photo) => photo.id).sort());
    expect(await coverageOf('gas')).toMatchObject({ reached: 'partly', reason: 'Locker glued shut' });
    expect(await list('worksheets')).toHaveLength(1);
    await phone.visitor.reads('Sent. Result: unsatisfactory');
  });

  it('goes on after the session has ended meanwhile', async () => {
    await inTransaction(server.db, [], (tx) => tx.session.deleteMany({ where: { personId: surveyor.id } }));
    await phone.visitor.goTo(`/capture/${surveyId}/steering/note`);
    await phone.visitor.fill('What do you see?', 'Play in the rudder bearing');
    await phone.visitor.press('Keep the note');
    await phone.visitor.reads('Your session has ended.');
    await phone.visitor.reads('1 thing to send, sign in to send');
    await phone.picture('capture-11-ended');
    await phone.visitor.press('Sign in to send');
    await phone.visitor.fill('E-mail', surveyor.email);
    await phone.visitor.fill('Password', password);
    await phone.visitor.press('Sign in');
    await phone.visitor.reads('Everything is sent');
    api = await bearer(surveyor);
    expect((await list('findings')).map(({ title }) => title)).toContain('Play in the rudder bearing');
  });

  it('says when there is no more room, and loses nothing', async () => {
    await cable.cut();
    await phone.visitor.goTo(`/capture/${surveyId}/engine`);
    const first = await photograph('mount.jpg');
    await phone.visitor.give('Take a photo', [first]);
    await phone.visitor.reads('1 thing to send');
    const limits = await phone.limitRoom(1_000);
    // Chromium remembers for half a minute how much room there was.
    await new Promise((done) => setTimeout(done, 33_000));
    const second = await photograph('belt.jpg');
    await phone.visitor.give('Take a photo', [second]);
    await phone.visitor.reads('Not kept: 1 photo');
    await phone.visitor.reads('gives the page no more room');
    await phone.picture('capture-12-full');
    await limits.lift();
    await phone.visitor.press('Try again now');
    await phone.visitor.reads('2 things to send');
    await phone.visitor.readsNoMore('Not kept');
    await cable.mend();
    await phone.visitor.reads('Everything is sent');
    const photos = (await list('photos')).map((photo) => photo.sha256);
    expect(photos).toHaveLength(5);
    expect(photos).toEqual(expect.arrayContaining([await sha256(first), await sha256(second)]));
  });

  it('lets two telephones answer for one survey, and never writes over the other unasked', async () => {
    const other = await Telephone.arrive(browser, cable.url, complaints);
    await other.visitor.signIn(colleague, password);
    await other.visitor.goTo(`/capture/${surveyId}/hull/coverage`);
    await other.madeReady(colleague.id, surveyId, kinds);
    await phone.visitor.goTo(`/capture/${surveyId}/hull/coverage`);
    await phone.visitor.find('radio', 'Examined');
    await cable.cut();
    await phone.outOfSignal(true);
    await other.outOfSignal(true);
    await other.visitor.click('radio', 'Examined');
    await other.visitor.press('Keep');
    await other.visitor.reads('1 thing to send');
    await other.visitor.goTo(`/capture/${surveyId}/deck/coverage`);
    await other.visitor.click('radio', 'Not fitted');
    await other.visitor.press('Keep');
    await other.visitor.reads('2 things to send');
    await phone.visitor.click('radio', 'Not reached');
    await phone.visitor.fill('Why?', 'Boat still afloat');
    await phone.visitor.press('Keep');
    await phone.visitor.reads('1 thing to send');
    await cable.mend();
    await other.outOfSignal(false);
    await other.visitor.reads('Everything is sent');
    await phone.outOfSignal(false);
    await phone.visitor.reads('1 refused');
    await phone.visitor.follow('1 refused');
    await phone.visitor.reads(
      'Somebody else has said meanwhile: “Examined”. Choose which of the two stands.',
    );
    await phone.picture('capture-13-two');
    expect(await coverageOf('hull')).toMatchObject({ reached: 'examined' });
    expect(await coverageOf('deck')).toMatchObject({ reached: 'not-fitted' });
    await phone.visitor.press('Mine stands');
    await phone.visitor.reads('Everything is sent');
    expect(await coverageOf('hull')).toMatchObject({ reached: 'not-reached', reason: 'Boat still afloat' });
    await other.leave();
  });

  it('tells what the server refused and what to do', async () => {
    await cable.cut();
    await phone.visitor.goTo(`/capture/${surveyId}/rig-sails/note`);
    await phone.visitor.fill('What do you see?', 'Swage cracked lengthwise');
    await phone.visitor.press('Keep the note');
    await api.patch(`/v1/surveys/${surveyId}`).send({ state: 'cancelled' }).expect(200);
    await cable.mend();
    await phone.visitor.goTo('/capture/kept');
    await phone.visitor.reads('This survey is cancelled. Reopen it before you change findings.');
    await phone.picture('capture-14-refused');
    await api.patch(`/v1/surveys/${surveyId}`).send({ state: 'enquiry' }).expect(200);
    await phone.visitor.press('Send again');
    await phone.visitor.reads('Everything is sent');
    expect((await list('findings')).map(({ title }) => title)).toContain('Swage cracked lengthwise');
  });

  it('asks before signing out with something unsent, and shows the next person nothing of it', async () => {
    await phone.visitor.goTo(`/capture/${surveyId}/fuel/note`);
    await phone.visitor.find('textbox', 'What do you see?');
    await api.patch(`/v1/surveys/${surveyId}`).send({ state: 'cancelled' }).expect(200);
    await phone.visitor.fill('What do you see?', 'Weeping tank seam');
    await phone.visitor.press('Keep the note');
    await phone.visitor.reads('1 refused');
    await phone.visitor.goTo('/capture');
    // The list has come: nothing moves under the finger any more.
    await phone.visitor.reads('No survey is open');
    await phone.visitor.press('Sign out');
    await phone.visitor.reads('Sign out with something unsent?');
    await phone.visitor.page.screenshot({ path: 'tests/artefacts/browser/capture-15-sign-out.png' });
    await phone.visitor.press('Stay and send first');
    await phone.visitor.readsNoMore('Sign out with something unsent?');
    await phone.visitor.press('Sign out');
    await phone.visitor.reads('Sign out with something unsent?');
    await phone.visitor.page
      .locator('::-p-xpath(//*[@role="alertdialog"]//button[text()="Sign out"])')
      .click();
    await phone.visitor.reads('Password');
    await phone.visitor.goTo('/capture');
    await phone.visitor.reads('Password');
    await phone.visitor.signIn(colleague, password);
    await phone.visitor.goTo('/capture/kept');
    await phone.visitor.reads('Nothing has been kept on this telephone yet.');
    await phone.visitor.goTo('/capture');
    // The list has come: nothing moves under the finger any more.
    await phone.visitor.reads('No survey is open');
    await phone.visitor.press('Sign out');
    await phone.visitor.reads('Password');
    await phone.visitor.signIn(surveyor, password);
    await phone.visitor.goTo('/capture/kept');
    await phone.visitor.reads('Weeping tank seam');
  });

  it('keeps no answer of the interface where the next person could be given it', async () => {
    const cached = await phone.visitor.page.evaluate(async () => {
      const all = await Promise.all(
        (await caches.keys()).map(async (name) => (await (await caches.open(name)).keys()).map((r) => r.url)),
      );
      return all.flat();
    });
    expect(cached.length).toBeGreaterThan(20);
    expect(cached.filter((url) => new URL(url).pathname.startsWith('/v1'))).toEqual([]);
  });

  it('says that a newer version of the portal is here, and takes it', async () => {
    const worker = join(files, 'portal', 'sw.js');
    await writeFile(worker, `${await readFile(worker, 'utf8')}\n// newer`);
    // A build would have compressed it anew.
    await Promise.all([rm(`${worker}.br`), rm(`${worker}.gz`)]);
    await phone.visitor.page.evaluate(() =>
      navigator.serviceWorker.ready.then((registration) => registration.update()).then(() => undefined),
    );
    await phone.visitor.reads('A newer version of the portal is here.');
    await phone.picture('capture-16-newer');
    await phone.visitor.standsStill(100);
    await phone.visitor.press('Take it now');
    await phone.visitor.page.waitForFunction(
      () => !document.body.textContent.includes('A newer version of the portal is here.'),
      { timeout: 60_000 },
    );
    await phone.visitor.reads('Weeping tank seam');
  });

  it('made no complaint but the refusals it was meant to meet', () => {
    const met = [
      /^401 GET \/v1\//,
      /^401 POST \/v1\//,
      /^412 PUT \/v1\/surveys\/[^/]+\/coverage\/hull$/,
      /^409 POST \/v1\/surveys\/[^/]+\/findings$/,
    ];
    expect(complaints.filter((line) => !met.some((known) => known.test(line)))).toEqual([]);
  });
});

async function bearer(person: Signed): Promise<Caller> {
  const { body } = await server
    .as(null)
    .post('/v1/sessions')
    .send({ email: person.email, password })
    .expect(201);
  return server.as({ ...person, token: body.token });
}
