import { hashPassword } from '@garboard/core/people/passwords';
import { inTransaction } from '@garboard/db/database';
import { newId } from '@garboard/db/ids';
import { buildFirm, buildJpeg } from '@garboard/seed/builders';
import type { Browser } from 'puppeteer';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type Caller, startServer, type TestServer } from '../support/server.ts';
import { draftFromEntry, Keyboard, recordNext, type TypedFinding } from './drafting.ts';
import { buildPortal, type Complaints, openBrowser, Visitor } from './visitor.ts';

const password = 'a long enough passphrase';
const complaints: Complaints = [];

let server: TestServer;
let browser: Browser;
let surveyor: Visitor;
let api: Caller;
let surveyId: string;
let surveyPath: string;

async function newSurvey(): Promise<string> {
  const vessel = await api.post('/v1/vessels').send({ name: 'Tansy Rook' }).expect(201);
  const survey = { vesselId: vessel.body.id, purpose: 'pre-purchase' };
  return (await api.post('/v1/surveys').send(survey).expect(201)).body.id;
}
const findings = async (id = surveyId) =>
  (await api.get(`/v1/surveys/${id}/findings`).expect(200)).body.items as {
    id: string;
    number: number;
    title: string;
    observed: string;
    recommendation: string;
    photoIds: string[];
    catalogueKey: string | null;
  }[];
/** Looks until something holds, as saving by itself takes a moment. */
async function until<T>(look: () => Promise<T | undefined | false>): Promise<T> {
  for (const end = Date.now() + 10_000; Date.now() < end; ) {
    const seen = await look();
    if (seen) return seen;
    await new Promise((resolve) => setTimeout(resolve, 100));
  }
  throw new Error('It never came about.');
}

beforeAll(async () => {
  const portalDir = await buildPortal();
  server = await startServer({ portalDir });
  browser = await openBrowser();
  const firm = await buildFirm(server.db, ['surveyor']);
  const passwordHash = await hashPassword(password);
  await inTransaction(server.db, [], (tx) =>
    tx.person.update({ where: { id: firm.surveyor.id }, data: { passwordHash } }),
  );
  api = server.as(firm.surveyor);
  surveyId = await newSurvey();
  surveyPath = `/surveys/${surveyId}`;
  let upload = api.post(`/v1${surveyPath}/photos`);
  for (let n = 1; n <= 9; n += 1) {
    const takenAt = `2026:05:04 10:${String(n).padStart(2, '0')}:00`;
    upload = upload.attach('file', await buildJpeg(n, { width: 640, height: 480, takenAt }), `p${n}.jpg`);
  }
  await upload.expect(201);
  surveyor = await Visitor.arrive(browser, server.url, complaints);
  await surveyor.signIn(firm.surveyor, password);
}, 120_000);
afterAll(async () => {
  await browser?.close();
  await server?.close();
});

const typed: TypedFinding[] = [
  {
    ...{ words: 'seacock seized', entry: 'Seacock seized or will not close fully', photos: '1, 2' },
    slots: ['under the port settee', 'the heads inlet'],
  },
  {
    ...{ words: 'gate valve', entry: 'Gate valve used as a seacock', photos: '4' },
    slots: ['brass', 'the engine space'],
  },
  {
    ...{ words: 'non-slip worn', entry: 'Non-slip worn smooth where people step', photos: '7-9' },
    slots: ['side decks', 'most of the walked area'],
  },
  {
    ...{ words: 'keel joint open', entry: 'Keel-to-hull joint open or weeping', photos: '3 5' },
    slots: ['the after end', '0.6 m', '2 mm'],
  },
];

describe('drafting findings', { timeout: 120_000 }, () => {
  it('goes by the keyboard alone, from the list of findings to the last of four', async () => {
    await surveyor.goTo(`${surveyPath}/findings`);
    await surveyor.reads('No findings yet');
    const keyboard = new Keyboard(surveyor);
    for (const finding of typed) {
      await recordNext(keyboard);
      await draftFromEntry(surveyor, keyboard, finding);
    }
    await surveyor.picture('drafting-entry');
    // The last one is saved by itself; the way back to the list is saved writing too.
    await until(async () => (await findings()).length === typed.length);
    await surveyor.reads('Saved');
    const kept = await findings();
    expect(kept.map((f) => f.title)).toEqual(typed.map((f) => f.entry));
    expect(kept.map((f) => f.photoIds.length)).toEqual([2, 1, 3, 2]);
    for (const [at, finding] of kept.entries()) {
      expect(finding.catalogueKey).toMatch(/^[a-z-]+$/);
      for (const words of typed[at]?.slots ?? []) {
        expect([finding.title, finding.observed, finding.recommendation].join(' ')).toContain(words);
      }
      expect(finding.observed).not.toMatch(/[{}]/);
    }
    console.log(`${typed.length} findings in ${keyboard.presses} key presses`);
    const forText = typed.flatMap((f) => [f.words, ...f.slots, f.photos]).join('').length;
    // Besides the words themselves: Ctrl and Enter, Enter, and a Tab between fields.
    expect(keyboard.presses - forText).toBeLessThan(typed.length * 8);
  });

  it('moves between findings and moves them by keys; issued numbers have no gaps', async () => {
    const [first] = await findings();
    const keyboard = new Keyboard(surveyor);
    await keyboard.press('PageUp', 'Alt');
    await surveyor.find('heading', 'Edit finding 3');
    await keyboard.press('PageUp', 'Alt');
    await surveyor.find('heading', 'Edit finding 2');
    await keyboard.press('PageUp', 'Alt', 'Shift');
    await surveyor.reads('Now number 1.');
    await until(async () => (await findings())[1]?.id === first?.id);
    await keyboard.press('PageDown', 'Alt');
    await surveyor.reads('Edit finding');
    await keyboard.press('PageDown', 'Alt', 'Shift');
    await surveyor.reads('Now number 3.');
    expect((await findings()).map((f) => f.number)).toEqual([1, 2, 3, 4]);
  });

  it('shows its keys at a question mark, but not while writing, and they can be switched off', async () => {
    await surveyor.goTo(`${surveyPath}/findings`);
    await surveyor.find('link', typed[0]?.entry ?? '');
    const keyboard = new Keyboard(surveyor);
    await keyboard.press('?');
    await surveyor.find('dialog', 'Working by keyboard');
    await surveyor.reads('Alt + Page Down');
    await surveyor.picture('drafting-keys');
    await surveyor.click('checkbox', 'Use these keys in this browser');
    await keyboard.press('Escape');
    await surveyor.readsNoMore('Working by keyboard');
    await keyboard.press('?');
    await keyboard.press('Enter', 'Control');
    await surveyor.reads('In the order of the report');
    expect(surveyor.page.url()).toMatch(/findings$/);
    await surveyor.press('Keyboard');
    await surveyor.click('checkbox', 'Use these keys in this browser');
    await surveyor.press('Close');
    await keyboard.press('Enter', 'Control');
    await keyboard.waitsAt('Known defect');
    await keyboard.type('?');
    await surveyor.readsNoMore('Working by keyboard');
  });

  it('saves by itself, keeps what a reload would lose, and writes any language its own way', async () => {
    const before = (await findings()).length;
    await surveyor.goTo(`${surveyPath}/findings/new`);
    const hebrew = 'סדק בצינור הגז ליד המחיצה';
    await surveyor.fill('Title', hebrew);
    await surveyor.reads('it needs the system and how soon');
    await surveyor.choose('System', 'Gas (LPG)');
    await surveyor.click('radio', 'Before next use');
    const kept = await until(async () => (await findings()).find((f) => f.title === hebrew));
    await surveyor.page.waitForFunction((id) => location.pathname.includes(id), {}, kept.id);
    // The field keeps the focus and the text while the address changes under it.
    const direction = await surveyor.page.$eval('input[maxlength="200"][required]', (field) => ({
      of: getComputedStyle(field).direction,
      language: document.querySelector('textarea')?.lang,
      spelt: document.querySelector('textarea')?.spellcheck,
    }));
    expect(direction).toEqual({
      ...{ of: 'rtl', spelt: true },
      language: await surveyor.page.evaluate(() => navigator.language),
    });
    await surveyor.fill('What was seen', 'Written just before the window went away.');
    // The browser asks whether to leave unsaved writing, and the hand slips.
    surveyor.page.once('dialog', (dialog) => void dialog.accept());
    await surveyor.page.reload();
    await surveyor.reads('Written just before the window went away.');
    await until(async () => (await findings()).find((f) => f.observed.startsWith('Written just before')));
    expect(await findings()).toHaveLength(before + 1);
    expect(await surveyor.widthAt360('drafting-edit')).toBeLessThanOrEqual(360);
  });

  it('puts two people’s writing together by itself, and asks only about the same words', async () => {
    const [target] = await findings();
    if (!target) throw new Error('There is no finding.');
    await surveyor.goTo(`${surveyPath}/findings/${target.id}/edit`);
    await surveyor.find('textbox', 'Why it matters');
    await api.patch(`/v1/findings/${target.id}`).send({ recommendation: 'From the other desk.' }).expect(200);
    await surveyor.fill('Why it matters', 'From this desk.');
    await until(async () => {
      const { body } = await api.get(`/v1/findings/${target.id}`);
      return body.consequence === 'From this desk.' && body.recommendation === 'From the other desk.';
    });
    const field = await surveyor.find('textbox', 'What to do');
    expect(await field.evaluate((e) => (e as HTMLTextAreaElement).value)).toBe('From the other desk.');
    await api.patch(`/v1/findings/${target.id}`).send({ consequence: 'Theirs.' }).expect(200);
    await surveyor.fill('Why it matters', 'Ours.');
    await surveyor.reads('Someone else changed the same words.');
    expect((await api.get(`/v1/findings/${target.id}`)).body.consequence).toBe('Theirs.');
    await surveyor.press('Put the two together');
    await surveyor.reads('Someone else changed this while you were writing');
    await surveyor.press('Save it like this');
    await surveyor.reads('In the order of the report');
    expect((await api.get(`/v1/findings/${target.id}`)).body.consequence).toBe('Ours.');
  });

  it('deletes at once and undoes it', async () => {
    const before = await findings();
    await surveyor.goTo(`${surveyPath}/findings`);
    await surveyor.follow(before[1]?.title ?? '');
    await surveyor.press('Delete this finding');
    await surveyor.reads(`Deleted: ${before[1]?.title}.`);
    expect(await findings()).toHaveLength(before.length - 1);
    await surveyor.press('Undo');
    await surveyor.reads('Brought back as number 2');
    expect((await findings()).map((f) => f.id)).toEqual(before.map((f) => f.id));
    await surveyor.follow(before[1]?.title ?? '');
    await surveyor.press('Delete this finding');
    await surveyor.reads('Deleted of late, 1');
    await surveyor.page.$eval('details > summary', (summary) => (summary as HTMLElement).click());
    await surveyor.press(`Bring back: ${before[1]?.title}`);
    await until(async () => (await findings()).length === before.length);
  });

  it('begins from a photo, helps with the grading and adds up costs', async () => {
    const photos = (await api.get(`/v1${surveyPath}/photos`)).body.items as { id: string }[];
    await surveyor.goTo(`${surveyPath}/findings/new?photo=${photos[5]?.id}`);
    const numbers = await surveyor.find('textbox', 'Photos by number (optional)');
    await surveyor.page.waitForFunction((e) => (e as HTMLInputElement).value === '6', {}, numbers);
    await surveyor.fill('Title', 'Chafed warp');
    await surveyor.choose('System', 'Ground tackle');
    await surveyor.page.$$eval('summary', (all) => {
      for (const summary of all) if (/how soon|Cost/.test(summary.textContent)) summary.click();
    });
    await surveyor.choose(
      'Severity of the worst that can credibly happen',
      'Critical: lasting partial disability, several in hospital or major damage',
    );
    await surveyor.choose('Probability over the life of the boat', 'Occasional: likely to happen some time');
    await surveyor.reads('Serious risk (2C: critical, occasional). Suggested: within 30 days.');
    await surveyor.press('Use the suggestion');
    await surveyor.fill('From', '1,200');
    await surveyor.fill('To', '1800.50');
    await surveyor.fill('Currency', 'eur');
    await surveyor.picture('drafting-grading-cost');
    await surveyor.press('Save the finding');
    await surveyor.reads('Saved: Chafed warp.');
    await surveyor.reads('1,200 to 1,800.50 EUR');
    await surveyor.reads('Not printed in the report.');
    const kept = (await api.get(`/v1${surveyPath}/findings`)).body.items.at(-1);
    expect(kept).toMatchObject({
      ...{ urgency: 'within-days', withinDays: 30, photoIds: [photos[5]?.id] },
      grading: { severity: 2, probability: 'C' },
      cost: { low: 120_000, high: 180_050, currency: 'EUR', basis: 'opinion', note: '' },
    });
    expect(await surveyor.widthAt360('drafting-list')).toBeLessThanOrEqual(360);
  });

  it('offers related defects after saving, and answers an unknown one with a sentence', async () => {
    await surveyor.goTo(`${surveyPath}/findings/new?entry=seacock-dezincified`);
    await surveyor.reads('Brass fitting turned pink and brittle');
    await surveyor.picture('drafting-beside');
    await surveyor.press('Save the finding');
    await surveyor.reads('inspect also');
    const bad = await api
      .post(`/v1${surveyPath}/findings`)
      .send({ id: newId(), system: 'hull', title: 't', urgency: 'note', catalogueKey: 'not-a-defect' })
      .expect(422);
    expect(bad.body.detail).toContain('There is no entry “not-a-defect” in your catalogue');
  });

  it('places a finding on the boat by pointing, by keyboard and with a finger, and takes it off again', async () => {
    const body = { system: 'hull', title: 'Blister by the keel', urgency: 'note' };
    const { id } = (await api.post(`/v1${surveyPath}/findings`).send(body).expect(201)).body;
    const placed = async () => (await api.get(`/v1/findings/${id}`).expect(200)).body.position;
    const { page } = surveyor;
    await surveyor.goTo(`${surveyPath}/findings/${id}/edit`);
    const summary = await page.waitForSelector('::-p-xpath(//summary[starts-with(., "Where on the boat")])');
    await summary?.click();
    await surveyor.reads('Not placed.');
    const pointAt = async (x: number, y: number, how: 'mouse' | 'finger' = 'mouse') => {
      const boat = await page.waitForSelector('.boat-pointer .svg-picture svg');
      await boat?.scrollIntoView();
      const box = await boat?.boundingBox();
      if (!box) throw new Error('The boat isn’t drawn.');
      const at = [box.x + x * box.width, box.y + y * box.height] as const;
      await (how === 'mouse' ? page.mouse.click(...at) : page.touchscreen.tap(...at));
    };
    // Well below the keel, half way between bow and stern.
    await pointAt(325 / 640, 0.97);
    await surveyor.reads('Placed amidships, low, on the centreline.');
    await until(async () => (await placed())?.height === 0);
    expect(Math.abs((await placed()).along - 0.5)).toBeLessThan(0.02);

    const keyboard = new Keyboard(surveyor);
    await (await surveyor.find('slider', 'Fore and aft')).focus();
    const before = (await placed()).along;
    for (let n = 0; n < 30; n += 1) await keyboard.press('ArrowLeft');
    await keyboard.press('Tab');
    await keyboard.press('End');
    await keyboard.press('Tab');
    await keyboard.press('ArrowUp');
    await surveyor.reads('Placed aft, high, to port.');
    const after = { along: Math.round((before + 0.3) * 100) / 100, height: 1, side: 'port' };
    await until(async () => (await placed())?.side === 'port');
    expect(await placed()).toEqual(after);
    const said = await (await surveyor.find('slider', 'Height')).evaluate((e) => e.ariaValueText);
    expect(said).toBe('100 % up from the keel, high');
    await surveyor.picture('drafting-place');

    // She gets a mast as soon as anything is recorded of a rig.
    await surveyor.choose('System', 'Rig and sails');
    await surveyor.reads('Masthead');
    // The place at the deck stays at the deck.
    await until(async () => (await placed())?.height < 0.8);
    expect(await surveyor.widthAt360('drafting-place')).toBeLessThanOrEqual(360);
    await page.setViewport({ width: 360, height: 740 });
    await pointAt(362 / 640, 20 / 360, 'finger');
    await surveyor.reads('Placed amidships, high, to port.');
    await until(async () => (await placed())?.along < 0.5);
    await surveyor.press('Not placed');
    await until(async () => (await placed()) === null);
    await page.setViewport({ width: 1280, height: 900 });
  });

  it('made no complaint', () => {
    expect(complaints).toEqual([]);
  });
});
