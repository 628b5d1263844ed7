import { mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { hashPassword } from '@garboard/core/people/passwords';
import { inTransaction } from '@garboard/db/database';
import { buildFirm, buildJpeg, type Signed } from '@garboard/seed/builders';
import type { Browser } from 'puppeteer';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { packed } from '../imports/zips.ts';
import { type Caller, startServer, type TestServer } from '../support/server.ts';
import { startTestWorker, type TestWorker } from '../support/worker.ts';
import { buildPortal, type Complaints, openBrowser, Visitor } from './visitor.ts';

const password = 'a long enough passphrase';
const complaints: Complaints = [];

let server: TestServer;
let worker: TestWorker;
let browser: Browser;
let person: Signed;
let api: Caller;
let surveyId: string;
let folder: string;
let surveyor: Visitor;

const sheet = [
  'Title;System;Urgency;What was seen;Why it matters;Photos;Surveyor’s mark',
  'Hose of the cooker is cracked;Gas (LPG);Before use;"Cracked over 40 mm.',
  'Behind the oven.";Gas may leak.;gas/1.jpg, 2.jpg;A1',
  'Anodes are wasted;Hull;next haul-out;Two thirds are gone.;;hull/1.jpg;B7',
  'Bulb of the stern light has failed;Navigation lights;within 14 days;;;lost.jpg;',
  'Cushions are damp;Upholstery;note;;;;',
].join('\r\n');

beforeAll(async () => {
  const portalDir = await buildPortal();
  server = await startServer({ portalDir });
  worker = await startTestWorker(server);
  browser = await openBrowser();
  person = (await buildFirm(server.db, ['surveyor'])).surveyor;
  const passwordHash = await hashPassword(password);
  await inTransaction(server.db, [], (tx) =>
    tx.person.update({ where: { id: person.id }, data: { passwordHash } }),
  );
  api = server.as(person);
  const vessel = (await api.post('/v1/vessels').send({ name: 'Tansy Rook' }).expect(201)).body;
  const survey = { vesselId: vessel.id, purpose: 'insurance' };
  surveyId = (await api.post('/v1/surveys').send(survey).expect(201)).body.id;

  folder = await mkdtemp(join(tmpdir(), 'garboard-bring-in-'));
  const trip = join(folder, 'trip');
  for (const part of ['gas', 'hull']) await mkdir(join(trip, part), { recursive: true });
  const small = (seed: number) => buildJpeg(seed, { width: 320, height: 240 });
  await writeFile(join(trip, 'gas', '1.jpg'), await small(1));
  await writeFile(join(trip, 'gas', '2.jpg'), await small(2));
  await writeFile(join(trip, 'hull', '1.jpg'), await small(3));
  await writeFile(join(trip, 'hull', 'loose.jpg'), await small(4));
  await writeFile(join(trip, 'hull', 'torn.jpg'), 'no picture');
  await writeFile(join(trip, 'findings.csv'), sheet);
  const mended = sheet.replace('Upholstery', 'Accommodation');
  const zip = await packed({ 'findings.csv': mended, 'lost.jpg': await small(5) });
  await writeFile(join(folder, 'mended.zip'), zip);
  await writeFile(join(folder, 'letter.csv'), 'Dear owner,\nthe boat is fine.\n');

  surveyor = await Visitor.arrive(browser, server.url, complaints);
  await surveyor.signIn(person, password);
}, 240_000);
afterAll(async () => {
  await browser?.close();
  await worker?.close();
  await server?.close();
  await rm(folder, { recursive: true, force: true });
});

const findings = async () => (await api.get(`/v1/surveys/${surveyId}/findings`).expect(200)).body.items;

describe('bringing in a survey', { timeout: 120_000 }, () => {
  it('goes from the list of surveys over a folder and a look at each row to the drafts', async () => {
    await surveyor.follow('Bring in a survey');
    await surveyor.reads('Open surveys, newest first');
    expect(await surveyor.widthAt360('bring-in-which')).toBeLessThanOrEqual(360);
    await surveyor.follow('Tansy Rook');
    await surveyor.reads('You see what each row becomes');
    await surveyor.give('Choose a folder', [join(folder, 'trip')]);
    await surveyor.reads('5 photos');
    expect(await surveyor.widthAt360('bring-in-chosen')).toBeLessThanOrEqual(360);
    await surveyor.press('See what comes in');

    await surveyor.reads('findings.csv holds 4 rows: 3 become findings, 1 can’t come in.');
    await surveyor.reads('5 photos come in with it, 3 of them named by a row.');
    await surveyor.reads('1 photo is named in the sheet and not there');
    await surveyor.reads('System: “Upholstery” is no system of the boat');
    await surveyor.reads('Add what stands under “Surveyor’s mark” to the end of what was seen');
    // The page says what changed: its heading has the focus.
    expect(await surveyor.page.evaluate(() => document.activeElement?.textContent)).toBe('What comes in');
    await surveyor.picture('bring-in-preview');
    expect(await surveyor.widthAt360('bring-in-preview')).toBeLessThanOrEqual(360);

    // Nothing comes in before it is said what becomes of the row that can't.
    await surveyor.press('Bring in 3 findings and 5 photos');
    await surveyor.reads('Say first what is to become of the rows');
    expect(await findings()).toEqual([]);
    await surveyor.click('checkbox', 'Leave out 1 row');
    await surveyor.press('Bring in 3 findings and 5 photos');
    await surveyor.reads('Brought in: 3 findings and 4 photos');
    await surveyor.reads('3 findings and 4 photos brought in.');
    await surveyor.reads('hull/torn.jpg');
    await surveyor.reads('1 row was left out');
    await surveyor.picture('bring-in-outcome');
    expect(await surveyor.widthAt360('bring-in-outcome')).toBeLessThanOrEqual(360);

    expect(complaints.splice(0)).toEqual([`422 POST /v1/surveys/${surveyId}/photos`]);
    await surveyor.follow('Go to the findings');
    await surveyor.reads('Bulb of the stern light has failed');
    const [hose, anodes, light] = await findings();
    expect(hose).toMatchObject({
      ...{ system: 'gas', urgency: 'before-use', consequence: 'Gas may leak.' },
      observed: 'Cracked over 40 mm.\nBehind the oven.\n\nSurveyor’s mark: A1',
    });
    expect(hose.photoIds).toHaveLength(2);
    expect(anodes.photoIds).toHaveLength(1);
    expect(light).toMatchObject({ withinDays: 14, photoIds: [] });
    const survey = (await api.get(`/v1/surveys/${surveyId}`).expect(200)).body;
    expect(survey).toMatchObject({ state: 'drafting', photoCount: 4, findingCount: 3 });
  });

  it('takes the mended sheet from a ZIP by keyboard: what is here stays, what was missing is added', async () => {
    await surveyor.follow('Bring in a survey');
    await surveyor.reads('You see what each row becomes');
    await surveyor.tabTo('Choose files or a ZIP');
    await surveyor.give('Choose files or a ZIP', [join(folder, 'mended.zip')]);
    await surveyor.tabTo('See what comes in');
    await surveyor.page.keyboard.press('Enter');
    await surveyor.reads('findings.csv holds 4 rows: 1 becomes a finding, 3 are here already.');
    await surveyor.reads('Is finding 3 already');
    // What is known of it is in the address: a reload changes nothing.
    await surveyor.reload();
    await surveyor.reads('Is finding 3 already');
    await surveyor.press('Bring in 1 finding and 1 photo');
    await surveyor.reads('Brought in: 1 finding and 1 photo');
    const all = await findings();
    expect(all.map((finding: { title: string }) => finding.title)).toHaveLength(4);
    expect(all[2].photoIds).toHaveLength(1);
  });

  it('says what is wrong with a file that is no sheet of findings', async () => {
    await surveyor.press('Bring in another sheet');
    await surveyor.give('Choose files or a ZIP', [join(folder, 'letter.csv')]);
    await surveyor.press('See what comes in');
    await surveyor.reads('The first line has no column “Title”, “System”, “Urgency”');
    expect(complaints.splice(0)).toEqual([`422 POST /v1/surveys/${surveyId}/imports`]);
  });

  it('broke nothing on the way', () => expect(complaints).toEqual([]));
});
