import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { hashPassword } from '@garboard/core/people/passwords';
import { inTransaction } from '@garboard/db/database';
import { buildFirm, buildJpeg, buildPerson, type Signed } from '@garboard/seed/builders';
import type { Browser } from 'puppeteer';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { startServer, type TestServer } from '../support/server.ts';
import { startTestWorker, type TestWorker } from '../support/worker.ts';
import { buildPortal, type Complaints, openBrowser, Visitor } from './visitor.ts';

const password = 'a long enough passphrase';
const seacock = 'Heads inlet seacock seized';
const line = 'Worn mooring line';
const hostile = 'The lever does not move. <script>window.hacked=1</script>';
const caption = 'Seacock, lever at its stop';

let server: TestServer;
let worker: TestWorker;
let browser: Browser;
let files: string;
let surveyor: Visitor;
let cast: { surveyor: Signed; owner: Signed; insurer: Signed };
const complaints: Complaints = [];

beforeAll(async () => {
  files = await mkdtemp(join(tmpdir(), 'garboard-browser-'));
  const portalDir = await buildPortal();
  server = await startServer({ portalDir });
  worker = await startTestWorker(server);
  browser = await openBrowser();
  const firm = await buildFirm(server.db, ['surveyor']);
  const owner = await buildPerson(server.db, { name: 'Orla Fennimore' });
  const insurer = await buildPerson(server.db, { name: 'Idris Calloway' });
  cast = { surveyor: firm.surveyor, owner, insurer };
  const passwordHash = await hashPassword(password);
  const id = { in: Object.values(cast).map((person) => person.id) };
  await inTransaction(server.db, [], (tx) => tx.person.updateMany({ where: { id }, data: { passwordHash } }));
  surveyor = await Visitor.arrive(browser, server.url, complaints);
}, 90_000);
afterAll(async () => {
  await browser?.close();
  await worker?.close();
  await server?.close();
  await rm(files, { recursive: true, force: true });
});

async function jpeg(seed: number, name: string, takenAt?: string): Promise<string> {
  const path = join(files, name);
  await writeFile(path, await buildJpeg(seed, { takenAt }));
  return path;
}

async function invite(role: string, person: Signed, release: boolean) {
  await surveyor.choose('As', role);
  await surveyor.fill('Name', person.name);
  await surveyor.fill('E-mail', person.email);
  if (release) await surveyor.click('checkbox', 'Release to them what is issued');
  await surveyor.press('Send the invitation');
  await surveyor.reads(`${person.name} invited.`);
}

async function sendEvidence(owner: Visitor, statement: string, photo: string) {
  await owner.fill('What was done', statement);
  await owner.fill('Who did the work', 'Ropewalk Yard');
  await owner.give('Choose photos or invoices', [photo]);
  await owner.press('Send the evidence');
  await owner.reads('Waiting for the insurer to decide.');
}

/** Signed in, at the finding, by way of the survey. */
async function atFinding(person: Signed): Promise<Visitor> {
  const visitor = await Visitor.arrive(browser, server.url, complaints);
  await visitor.signIn(person, password);
  await visitor.follow('Saltmeadow');
  await visitor.follow(seacock);
  await visitor.reads('What was seen');
  return visitor;
}

describe('the main job in a browser', { timeout: 90_000 }, () => {
  let surveyPath = '';
  // Each step stands on the one before: after a failure the rest would only wait in vain.
  let broken = false;
  beforeEach((step) => step.skip(broken, 'an earlier step failed'));
  afterEach((step) => {
    broken ||= step.task.result?.state === 'fail';
  });

  it('begins a survey of a new vessel', async () => {
    await surveyor.goTo('/');
    await surveyor.find('button', 'Sign in');
    await surveyor.picture('01-sign-in');
    await surveyor.signIn(cast.surveyor, password);
    await surveyor.reads('No open surveys');
    await surveyor.follow('New survey');
    await surveyor.press('Enter a new vessel');
    await surveyor.fill('Name', 'Saltmeadow');
    await surveyor.fill('Length overall, metres (optional)', '9.8', 'spinbutton');
    await surveyor.picture('02-new-vessel');
    await surveyor.press('Enter the vessel');
    await surveyor.reads('Choose another vessel');
    await surveyor.choose('Purpose', 'Insurance survey');
    await surveyor.fill('Scope', 'Hull and machinery, ashore.');
    await surveyor.fill('Limitations', 'The tanks were not opened.');
    await surveyor.press('Add an attendance');
    await surveyor.fill('Place', 'Ropewalk Yard');
    await surveyor.picture('03-new-survey');
    await surveyor.press('Begin the survey');
    await surveyor.reads('Particulars');
    await surveyor.find('link', 'Attendances 1');
    surveyPath = new URL(surveyor.page.url()).pathname;
    await surveyor.picture('04-particulars');
  });

  it('takes photos, refuses what is none, and keeps a caption', async () => {
    const noPicture = join(files, 'broken.jpg');
    await writeFile(noPicture, 'not a picture');
    await surveyor.goTo(`${surveyPath}/photos`);
    await surveyor.give('Choose photos', [
      await jpeg(1, 'second.jpg', '2026:05:04 11:00:00'),
      await jpeg(2, 'first.jpg', '2026:05:04 10:00:00'),
      noPicture,
    ]);
    await surveyor.reads('1 file refused');
    await surveyor.reads('broken.jpg');
    await surveyor.reads('2 photos shown');
    await surveyor.readsNoMore('Being prepared');
    // In the order they were taken, which isn't that in which they were sent.
    const cells = await surveyor.page.$$eval('[role="row"]', (rows) => rows.map((row) => row.textContent));
    expect(cells).toEqual([
      expect.stringMatching(/^1.*4 May 2026, 10:00$/),
      expect.stringMatching(/^2.*4 May 2026, 11:00$/),
    ]);
    await surveyor.press('Add a caption to photo 1');
    await surveyor.fill('Caption of photo 1', caption);
    await surveyor.page.keyboard.press('Enter');
    await surveyor.reads('Caption of photo 1 saved.');
    // The next caption is open for writing; nothing is wanted there.
    await surveyor.find('textbox', 'Caption of photo 2');
    await surveyor.page.keyboard.press('Escape');
    await surveyor.find('button', 'Add a caption to photo 2');
    await surveyor.picture('05-photos');
  });

  it('records findings, their text as text', async () => {
    await surveyor.follow('Findings 0');
    await surveyor.follow('Record a finding');
    await surveyor.choose('System', 'Through-hull fittings and seacocks');
    await surveyor.fill('Title', seacock);
    await surveyor.fill('What was seen', hostile);
    await surveyor.fill('Why it matters', 'The hose cannot be shut off.');
    await surveyor.fill('What to do', 'Renew the seacock.');
    await surveyor.click('radio', 'Within a stated time');
    await surveyor.fill('Within how many days', '30', 'spinbutton');
    await surveyor.click('checkbox', 'Flooding');
    await surveyor.press("Choose from the survey's photos");
    await surveyor.click('checkbox', `1. ${caption}`);
    await surveyor.press('Done: 1 photo');
    await surveyor.find('button', 'Take out photo 1');
    await surveyor.picture('06-record-finding');
    await surveyor.press('Save the finding');
    await surveyor.reads('Within 30 days');
    await surveyor.follow('Record a finding');
    await surveyor.choose('System', 'Ground tackle');
    await surveyor.fill('Title', line);
    await surveyor.fill('What was seen', 'Chafed at the fairlead.');
    await surveyor.fill('Why it matters', 'It may part in a blow.');
    await surveyor.fill('What to do', 'Renew it in time.');
    await surveyor.click('radio', 'Note for the owner');
    await surveyor.press('Save the finding');
    await surveyor.find('link', line);
    await surveyor.picture('07-findings');
    expect(await surveyor.widthAt360('07-findings')).toBeLessThanOrEqual(360);
  });

  it('puts two edits of one finding together, losing neither', async () => {
    const second = await surveyor.another();
    await second.goTo(`${surveyPath}/findings`);
    await surveyor.follow(seacock);
    await second.follow(seacock);
    await surveyor.find('button', 'Save the finding');
    await second.fill('What to do', 'Renew seacock and hose.');
    await second.press('Save the finding');
    await second.reads(`Saved: ${seacock}.`);
    await surveyor.fill('What to do', 'Renew the seacock at once.');
    await surveyor.fill('Why it matters', 'The hose cannot be shut off at sea.');
    await surveyor.press('Save the finding');
    await surveyor.reads('Someone else changed this while you were writing');
    await surveyor.reads('Renew seacock and hose.');
    await surveyor.reads('Renew the seacock at once.');
    await surveyor.picture('08-conflict');
    await surveyor.click('radio', 'Theirs Renew seacock and hose.');
    await surveyor.press('Save it like this');
    await surveyor.reads(`Saved: ${seacock}.`);
    await second.page.close();
    await surveyor.follow(seacock);
    const field = async (name: string) =>
      (await surveyor.find('textbox', name)).evaluate((e) =>
        e instanceof HTMLTextAreaElement ? e.value : '',
      );
    expect(await field('What to do')).toBe('Renew seacock and hose.');
    expect(await field('Why it matters')).toBe('The hose cannot be shut off at sea.');
    expect(await field('What was seen')).toBe(hostile);
  });

  it('invites the owner and the insurer and issues the report', async () => {
    await surveyor.follow('Parties');
    await surveyor.reads('Nobody outside the firm has been invited');
    await invite('Owner', cast.owner, false);
    await invite('Insurer', cast.insurer, true);
    await surveyor.reads('Idris Calloway');
    await surveyor.picture('09-parties');
    await surveyor.follow('Coverage');
    await surveyor.press('Mark the rest as examined');
    await surveyor.press('Yes, I examined all of these');
    await surveyor.reads('Every system is answered');
    await surveyor.follow('Report');
    await surveyor.reads('Before it is issued');
    await surveyor.picture('10-before-issue');
    await surveyor.press('Issue the report');
    // It may be over in a second, so the watch begins before the report does.
    const progress = surveyor.page.waitForSelector('::-p-aria([role="progressbar"])');
    await surveyor.press('Issue it');
    await progress;
    await surveyor.find('link', 'Download PDF: Survey report');
    await surveyor.picture('11-issued');
  });

  let owner: Visitor;
  it('lets the owner read it and send evidence', async () => {
    owner = await Visitor.arrive(browser, server.url, complaints);
    await owner.signIn(cast.owner, password);
    await owner.find('link', 'Saltmeadow');
    await owner.picture('12-owner-surveys');
    expect(await owner.widthAt360('12-owner-surveys')).toBeLessThanOrEqual(360);
    await owner.follow('Saltmeadow');
    await owner.find('link', line);
    await owner.picture('13-reading');
    expect(await owner.widthAt360('13-reading')).toBeLessThanOrEqual(360);
    const pdf = await (await owner.find('link', 'Download the report (PDF)')).evaluate(async (link) => {
      const answer = await fetch(link.getAttribute('href') ?? '');
      return (await answer.text()).slice(0, 5);
    });
    expect(pdf).toBe('%PDF-');

    await owner.choose('Urgency', 'Note for the owner');
    await owner.reads('1 of 2 findings');
    expect(await owner.text()).not.toContain(seacock);
    await owner.choose('Urgency', 'Any urgency');
    await owner.choose('State', 'Cleared');
    await owner.reads('No finding matches.');
    await owner.choose('State', 'Open');
    await owner.readsNoMore('of 2 findings');

    await owner.follow(seacock);
    await owner.reads(hostile);
    expect(await owner.page.evaluate(() => 'hacked' in window)).toBe(false);
    await owner.picture('14-finding');
    expect(await owner.widthAt360('14-finding')).toBeLessThanOrEqual(360);
    await owner.press(`1 ${caption}`);
    await owner.find('dialog', 'Photo 1 of 1');
    await owner.page.waitForFunction(() =>
      [...document.querySelectorAll('[role=dialog] img')].some(
        (image) => image instanceof HTMLImageElement && image.naturalWidth > 600,
      ),
    );
    await owner.picture('15-photo-large');
    await owner.press('Close');
    await sendEvidence(owner, 'Seacock renewed.', await jpeg(9, 'after.jpg'));
    await owner.picture('16-evidence-sent');
  });

  it('lets the insurer return it, the owner send again, the insurer accept', async () => {
    const insurer = await atFinding(cast.insurer);
    await insurer.click('radio', 'Return: something is still missing');
    await insurer.fill('What is still missing', 'Show the lever closed.');
    await insurer.picture('17-decide');
    await insurer.press('Record the decision');
    await insurer.reads('Returned to the owner with your reason.');

    await owner.reload();
    await owner.reads('Returned because: Show the lever closed.');
    await sendEvidence(owner, 'The lever closed, as asked.', await jpeg(10, 'closed.jpg'));

    await insurer.reload();
    await insurer.click('radio', 'Accept: it has been put right');
    await insurer.press('Record the decision');
    await insurer.reads('Accepted. The finding is cleared.');
    await insurer.reads('Evidence accepted, finding cleared');
    const history = (await insurer.text()).split('History').at(-1) ?? '';
    const steps = [
      'Evidence accepted, finding cleared',
      'Evidence sent: The lever closed, as asked.',
      'Evidence returned: Show the lever closed.',
      'Evidence sent: Seacock renewed.',
      'Issued, due by',
    ].map((step) => history.indexOf(step));
    expect(steps).not.toContain(-1);
    expect(steps).toEqual([...steps].sort((a, b) => a - b));
    await insurer.picture('18-cleared');
    await insurer.leave();
    await owner.leave();
  });

  it('issues the clearance letter', async () => {
    await surveyor.reload();
    await surveyor.press('Issue the clearance letter');
    await surveyor.find('link', 'Download PDF: Clearance letter');
    await surveyor.picture('19-clearance-letter');
    await surveyor.follow('History');
    await surveyor.reads('Clearance letter issued');
    await surveyor.find('link', line);
    await surveyor.picture('20-history');
  });

  it('can be worked with the keyboard alone', async () => {
    const visitor = await Visitor.arrive(browser, server.url, complaints);
    await visitor.goTo('/');
    await visitor.find('textbox', 'E-mail');
    const { keyboard } = visitor.page;
    await visitor.tabTo('E-mail');
    await keyboard.type(cast.surveyor.email);
    await visitor.tabTo('Password');
    await keyboard.type(password);
    await keyboard.press('Enter');
    await visitor.find('link', 'Saltmeadow');
    expect(await visitor.widthAt360('21-surveys')).toBeLessThanOrEqual(360);
    await visitor.tabTo('Saltmeadow');
    await visitor.picture('21-keyboard-focus');
    await keyboard.press('Enter');
    await visitor.find('heading', 'Particulars');
    await visitor.leave();
  });

  it('raised no error, no content-policy violation and no failed request', () => {
    expect(complaints).toEqual([]);
  });
});
