import { hashPassword } from '@garboard/core/people/passwords';
import { codesOf } from '@garboard/core/people/second-factor';
import { hashToken } from '@garboard/core/people/tokens';
import { inTransaction } from '@garboard/db/database';
import { buildFirm, buildJpeg, type Signed } from '@garboard/seed/builders';
import { systemsAsked } from '@garboard/trade/coverage';
import { Secret } from 'otpauth';
import type { Browser } from 'puppeteer';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import { tokenMailedTo } from '../support/mails.ts';
import { startServer, type TestServer } from '../support/server.ts';
import { startTestWorker, type TestWorker } from '../support/worker.ts';
import { buildPortal, type Complaints, openBrowser, Visitor } from './visitor.ts';

const password = 'tidal rope under mist';
const slowly = { timeout: 90_000, interval: 300 };

let server: TestServer;
let worker: TestWorker;
let browser: Browser;
let firm: Awaited<ReturnType<typeof buildFirm<'principal' | 'surveyor'>>>;
let reportId: string;
const complaints: Complaints = [];
/** Refusals that are what these stories are about. */
const told =
  /^(401 POST \/v1\/(sessions|welcome|shared-reports)|410 (POST|GET) \/v1\/(welcome|share)|403 PUT \/v1\/me\/password|401 GET \/v1\/)/;

beforeAll(async () => {
  const portalDir = await buildPortal();
  server = await startServer({ portalDir });
  worker = await startTestWorker(server);
  browser = await openBrowser();
  firm = await buildFirm(server.db, ['principal', 'surveyor']);
  const passwordHash = await hashPassword(password);
  const id = { in: [firm.principal.id, firm.surveyor.id] };
  await inTransaction(server.db, [], (tx) => tx.person.updateMany({ where: { id }, data: { passwordHash } }));
  reportId = await issueOne(firm.surveyor);
}, 240_000);
afterAll(async () => {
  await browser?.close();
  await worker?.close();
  await server?.close();
});

async function issueOne(surveyor: Signed): Promise<string> {
  const api = server.as(surveyor);
  const vessel = await api.post('/v1/vessels').send({ name: 'Tansy Rook' }).expect(201);
  const attendances = [{ date: '2026-05-04', place: 'Ropewalk Yard', condition: 'ashore' }];
  const about = { vesselId: vessel.body.id, purpose: 'insurance', attendances };
  const survey = await api.post('/v1/surveys').send(about).expect(201);
  const path = `/v1/surveys/${survey.body.id}`;
  const sent = await api
    .post(`${path}/photos`)
    .attach('file', await buildJpeg(5, { width: 640, height: 480 }), 'a.jpg')
    .expect(201);
  const photos = async () => (await api.get(`${path}/photos`).expect(200)).body.items;
  await vi.waitFor(async () => expect((await photos())[0].state).toBe('ready'), slowly);
  const photoIds = [sent.body.items[0].id];
  const finding = {
    system: 'gas',
    title: 'Gas line loses pressure',
    urgency: 'note',
    observed: 'Seen.',
    recommendation: 'Renew.',
    photoIds,
  };
  await api.post(`${path}/findings`).send(finding).expect(201);
  for (const system of systemsAsked('insurance')) {
    await api.put(`${path}/coverage/${system}`).send({ reached: 'examined' }).expect(200);
  }
  await api.patch(path).send({ state: 'drafting' }).expect(200);
  const report = await api.post(`${path}/reports`).send({ kind: 'full' }).expect(202);
  const state = async () => (await api.get(`/v1/reports/${report.body.id}`).expect(200)).body.state;
  await vi.waitFor(async () => expect(await state()).toBe('issued'), slowly);
  return report.body.id;
}

const arrive = () => Visitor.arrive(browser, server.url, complaints);
/** The app's code, so many steps from now, by the key that the page shows. */
const codeOf = (key: string, steps = 0) =>
  codesOf(Buffer.from(Secret.fromBase32(key.replaceAll(' ', '')).bytes)).generate({
    timestamp: Date.now() + steps * 30_000,
  });
const contentOf = async (visitor: Visitor, name: string) =>
  (await visitor.find('textbox', name)).evaluate((field) => (field as HTMLInputElement).value);

describe('getting in', { timeout: 180_000 }, () => {
  it('by an invitation, without a password, then with a second factor', async () => {
    const email = 'wren@attwater.example';
    const member = { role: 'office', name: 'Wren Attwater', email };
    await server.as(firm.principal).post(`/v1/firms/${firm.id}/members`).send(member).expect(201);
    const wren = await arrive();
    await wren.goTo(`/welcome#token=${await tokenMailedTo(server, email)}`);
    await wren.reads('Welcome to Garboard, Wren Attwater.');
    await wren.picture('welcome-invited');
    await wren.press('Go on without a password');
    await wren.reads('Sign out');
    await wren.follow('Wren Attwater, your account');
    await wren.reads('You have no password');
    await wren.press('Set up a second factor');
    await wren.press('Go on');
    const key = await contentOf(wren, 'Or type this key into it');
    await wren.picture('account-second-factor');
    await wren.fill('Code', codeOf(key));
    await wren.press('Turn it on');
    await wren.reads('Write down your recovery codes');
    await wren.picture('account-recovery-codes');
    const codes = await wren.page.$$eval('.codes li', (all) => all.map((one) => one.textContent ?? ''));
    expect(codes).toHaveLength(10);
    await wren.press('I have them');
    await wren.reads('You have 10 recovery codes left.');
    await wren.press('Sign out');
    await wren.reads('Accounts are made by invitation');

    await wren.fill('E-mail', email);
    await wren.press('Send me a link');
    await wren.reads('Look in your mail.');
    await wren.picture('sign-in-link-asked');
    await wren.goTo('about:blank');
    await wren.goTo(`/welcome#token=${await tokenMailedTo(server, email, 2)}`);
    await wren.reads('The six digits');
    await wren.fill('Code', '000000');
    await wren.press('Sign in');
    await wren.reads('The code is not right');
    await wren.press('I don’t have the app at hand: use a recovery code');
    await wren.fill('Recovery code', codes[3] ?? '');
    await wren.picture('sign-in-recovery-code');
    await wren.press('Sign in');
    await wren.reads('Sign out');
    await wren.leave();
  });

  it('by a new link when the old one ran out, whoever asks', async () => {
    const token = await (async () => {
      await server.as(null).post('/v1/sign-in-links').send({ email: firm.principal.email }).expect(202);
      return tokenMailedTo(server, firm.principal.email);
    })();
    await server.db.prisma.oneTimeLink.update({
      where: { tokenHash: hashToken(token) },
      data: { expiresAt: new Date(Date.now() - 1000) },
    });
    const visitor = await arrive();
    await visitor.goTo(`/welcome#token=${token}`);
    await visitor.reads('This link no longer works');
    await visitor.fill('E-mail', 'nobody@nowhere.example');
    await visitor.press('Send me a new link');
    await visitor.reads('If nobody@nowhere.example has an account here');
    await visitor.fill('E-mail', firm.principal.email);
    await visitor.press('Send me a new link');
    await visitor.reads(`If ${firm.principal.email} has an account here`);
    await visitor.picture('welcome-spent');
    await visitor.goTo('about:blank');
    await visitor.goTo(`/welcome#token=${await tokenMailedTo(server, firm.principal.email, 2)}`);
    await visitor.reads('Welcome back');
    await visitor.picture('welcome-back');
    await visitor.press('Sign in');
    await visitor.reads('Sign out');
    // A forgotten password is replaced without the old one.
    await visitor.goTo('/account');
    await visitor.press('Change the password');
    await visitor.fill('New password', 'a drier harbour wall');
    await visitor.fill('The same password again', 'a drier harbour wall');
    await visitor.press('Save the password');
    await visitor.reads('Your password is changed.');
    await visitor.leave();
  });

  it('in one place can be ended from another', async () => {
    const [desk, elsewhere] = [await arrive(), await arrive()];
    await desk.signIn(firm.surveyor, password);
    await elsewhere.signIn(firm.surveyor, password);
    await desk.goTo('/account');
    await desk.reads('This one');
    await desk.press('Change the password');
    await desk.reads('To be sure that it is you.');
    await desk.picture('account');
    expect(await desk.widthAt360('account')).toBeLessThanOrEqual(360);
    await desk.press('Sign out everywhere else');
    await desk.reads('You are signed out everywhere but here.');
    await elsewhere.goTo('/surveys');
    await elsewhere.reads('Accounts are made by invitation');
    await desk.leave();
    await elsewhere.leave();
  });

  it('by a key that a program uses', async () => {
    const desk = await arrive();
    await desk.signIn(firm.surveyor, password);
    await desk.goTo('/account');
    await desk.press('Make a key');
    await desk.fill('What it is for', 'Berth register');
    await desk.click('button', 'Make the key');
    await desk.reads('it is shown this once');
    const key = await contentOf(desk, 'Key');
    await desk.picture('account-key');
    const me = await fetch(`${server.url}/v1/me`, { headers: { authorization: `Bearer ${key}` } });
    expect((await me.json()).person.email).toBe(firm.surveyor.email);
    await desk.press('I have it');
    await desk.press('End the key Berth register');
    await desk.press('End the key');
    await desk.reads('You have no keys.');
    const after = await fetch(`${server.url}/v1/me`, { headers: { authorization: `Bearer ${key}` } });
    expect(after.status).toBe(401);
    await desk.leave();
  });
});

describe('a report shared by a link', { timeout: 180_000 }, () => {
  it('is read by a stranger with the passcode, until the link is ended', async () => {
    const desk = await arrive();
    await desk.signIn(firm.surveyor, password);
    await desk.goTo(`/reports/${reportId}`);
    await desk.press('Make a link');
    await desk.fill('For whom', 'The yard’s manager');
    await desk.fill('Passcode (optional)', 'heron-17');
    await desk.fill('Opens how many times (optional)', '3', 'spinbutton');
    await desk.picture('share-making');
    await desk.press('Make the link');
    await desk.reads('it is shown this once');
    const made = new URL(await contentOf(desk, 'Link'));
    // The test's server isn't at the address that it is known by.
    const url = `${made.pathname}${made.hash}`;
    await desk.press('I have it');

    const stranger = await arrive();
    await stranger.goTo(url);
    await stranger.reads('A survey report is shared with you');
    await stranger.picture('shared-link');
    await stranger.fill('Passcode', 'guess-1');
    await stranger.press('Read the report');
    await stranger.reads('The passcode is not right');
    await stranger.fill('Passcode', 'heron-17');
    await stranger.press('Read the report');
    await stranger.reads('Gas line loses pressure');
    await stranger.reads(`Shared with you by ${firm.surveyor.name}`);
    await stranger.page.waitForFunction(() => {
      const [picture] = document.querySelectorAll<HTMLImageElement>('.report-photos img');
      picture?.scrollIntoView();
      return picture?.complete && picture.naturalWidth > 0;
    });
    await stranger.picture('shared-report');
    expect(await stranger.widthAt360('shared-report')).toBeLessThanOrEqual(360);
    const pdf = await stranger.page.evaluate(async () => {
      const link = document.querySelector<HTMLAnchorElement>('a[download]');
      const answer = await fetch(link?.href ?? '');
      return { status: answer.status, type: answer.headers.get('content-type') };
    });
    expect(pdf).toEqual({ status: 200, type: 'application/pdf' });
    // The rest of the portal still asks a stranger to sign in.
    const beside = await stranger.another();
    await beside.goTo(`/reports/${reportId}`);
    await beside.reads('Accounts are made by invitation');

    await desk.goTo(`/reports/${reportId}`);
    await desk.reads('1 of 3 times');
    await desk.press('1 of 3 times: when the link for The yard’s manager was opened');
    await desk.find('dialog', 'When the link for The yard’s manager was opened');
    await desk.press('Close');
    await desk.picture('share-links');
    expect(await desk.widthAt360('share-links')).toBeLessThanOrEqual(360);
    await desk.press('End the link for The yard’s manager');
    await desk.press('End the link');
    await desk.reads('Ended');
    await stranger.reload();
    await stranger.reads('Reading has ended');
    await stranger.goTo('about:blank');
    await stranger.goTo(url);
    await stranger.reads('This link no longer works');
    await desk.leave();
    await stranger.leave();
  });
});

it('nothing went wrong in any window', () => {
  expect(complaints.filter((line) => !told.test(line))).toEqual([]);
});
