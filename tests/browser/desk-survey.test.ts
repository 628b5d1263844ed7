import { createHash } from 'node:crypto';
import { hashPassword } from '@garboard/core/people/passwords';
import { inTransaction } from '@garboard/db/database';
import { buildFirm } from '@garboard/seed/builders';
import { systemsAsked } from '@garboard/trade/coverage';
import type { Browser } from 'puppeteer';
import sharp from 'sharp';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import { type Caller, startServer, type TestServer } from '../support/server.ts';
import { startTestWorker, type TestWorker } from '../support/worker.ts';
import { draftFromEntry, Keyboard, recordNext, type TypedFinding } from './drafting.ts';
import { buildPortal, type Complaints, openBrowser, Visitor } from './visitor.ts';

const password = 'a long enough passphrase';
const complaints: Complaints = [];
const photoCount = 60;

let server: TestServer;
let worker: TestWorker;
let browser: Browser;
let surveyor: Visitor;
let api: Caller;
let surveyId: string;

/** A picture of coarse blocks: no two of them alike, so that none is taken for another's near-duplicate. */
async function picture(n: number): Promise<Buffer> {
  const blocks = createHash('shake256', { outputLength: 9 * 8 * 3 })
    .update(`picture ${n}`)
    .digest();
  const minute = String(n % 60).padStart(2, '0');
  return sharp(blocks, { raw: { width: 9, height: 8, channels: 3 } })
    .resize(720, 640, { kernel: 'nearest', fit: 'fill' })
    .jpeg({ quality: 70 })
    .withExifMerge({
      IFD2: {
        DateTimeOriginal: `2026:05:04 1${Math.floor(n / 60)}:${minute}:00`,
        OffsetTimeOriginal: '+00:00',
      },
    })
    .toBuffer();
}

interface Listed {
  number: number;
  system: string;
  title: string;
  observed: string;
  catalogueKey: string | null;
  photoIds: string[];
}
const findings = async (): Promise<Listed[]> =>
  (await api.get(`/v1/surveys/${surveyId}/findings?limit=200`).expect(200)).body.items;
const photos = async (): Promise<{ id: string; state: string; caption: string }[]> =>
  (await api.get(`/v1/surveys/${surveyId}/photos?limit=500`).expect(200)).body.items;

beforeAll(async () => {
  const portalDir = await buildPortal();
  server = await startServer({ portalDir });
  worker = await startTestWorker(server);
  browser = await openBrowser();
  const firm = await buildFirm(server.db, ['surveyor']);
  const passwordHash = await hashPassword(password);
  await inTransaction(server.db, [], (tx) =>
    tx.person.update({ where: { id: firm.surveyor.id }, data: { passwordHash } }),
  );
  api = server.as(firm.surveyor);
  // As the office booked it; the photos have come from the boatyard.
  const vessel = await api.post('/v1/vessels').send({ name: 'Tansy Rook', hullMaterial: 'grp' }).expect(201);
  const booked = {
    ...{ vesselId: vessel.body.id, purpose: 'pre-purchase' },
    ...{ scope: 'Hull, deck, rig and machinery, ashore.', limitations: 'The engine was not run.' },
    attendances: [{ date: '2026-05-04', place: 'Ropewalk Yard', condition: 'ashore' }],
  };
  surveyId = (await api.post('/v1/surveys').send(booked).expect(201)).body.id;
  for (let from = 1; from <= photoCount; from += 20) {
    const sending = api.post(`/v1/surveys/${surveyId}/photos`);
    for (let n = from; n < from + 20; n += 1) sending.attach('file', await picture(n), `shot-${n}.jpg`);
    await sending.expect(201);
  }
  const prepared = async () =>
    expect((await photos()).filter((photo) => photo.state === 'ready')).toHaveLength(photoCount);
  await vi.waitFor(prepared, { timeout: 120_000, interval: 500 });
  surveyor = await Visitor.arrive(browser, server.url, complaints);
  await surveyor.signIn(firm.surveyor, password);
}, 240_000);
afterAll(async () => {
  await browser?.close();
  await worker?.close();
  await server?.close();
});

const known: TypedFinding[] = [
  {
    ...{ words: 'seacock seized', entry: 'Seacock seized or will not close fully', photos: '1-4' },
    slots: ['under the port settee', 'the heads inlet'],
  },
  {
    ...{ words: 'gate valve', entry: 'Gate valve used as a seacock', photos: '5-8' },
    slots: ['brass', 'in the engine space'],
  },
  {
    ...{ words: 'non-slip worn', entry: 'Non-slip worn smooth where people step', photos: '9-14' },
    slots: ['on both side decks', 'most of the walked area'],
  },
  {
    ...{ words: 'keel joint open', entry: 'Keel-to-hull joint open or weeping', photos: '15-20' },
    slots: ['at the after end', '0.6 m', '2 mm'],
  },
  {
    words: 'propeller nuts order',
    ...{ entry: 'Propeller nuts in the wrong order: full nut next to the hub', photos: '21, 22' },
    slots: ['port'],
  },
  {
    words: 'no pressure gauge',
    ...{ entry: 'No pressure gauge in the gas system, so no leak-down test', photos: '23-25' },
    slots: ['in the cockpit locker'],
  },
  {
    ...{ words: 'spring clamps dc', entry: 'Spring clamps used as a permanent connection', photos: '26-30' },
    slots: ['a battery charger', 'under the chart table'],
  },
  {
    words: 'float switch loose',
    ...{ entry: 'Float switch loose, obstructed or set athwartships', photos: '31-34' },
    slots: ['in the engine bilge', 'a loose cable'],
  },
  {
    ...{ words: 'exhaust elbow', entry: 'Exhaust mixing elbow corroded', photos: '35-38' },
    slots: ['port', 'half of its wall', 'the elbow', '14 years'],
  },
  {
    ...{ words: 'rudder bearings', entry: 'Rudder bearings worn: too much play', photos: '39-42' },
    slots: ['3 mm', 'lower bearing', 'at the heel'],
  },
];

interface Blank {
  /** The first letters of the system, as one types into its list; the browser of the tests minds capitals there. */
  system: string;
  texts: readonly [title: string, observed: string, consequence: string, recommendation: string];
  photos: string;
}
const blank: Blank[] = [
  {
    system: 'Accom',
    texts: [
      'Cooker does not swing freely',
      'The gimbals bind against the worktop when heeled by hand.',
      'Pans may be thrown at sea.',
      'Free the gimbals and check the clearance.',
    ],
    photos: '43-48',
  },
  {
    system: 'Elect',
    texts: [
      'Plotter loose in its bracket',
      'The clamp screw turns without biting.',
      'It may drop while it is needed.',
      'Renew the clamp screw.',
    ],
    photos: '49-52',
  },
];

/** The next finding in the surveyor's own words, for which there is no known defect. */
async function draftBlank(keyboard: Keyboard, finding: Blank): Promise<void> {
  const [title, observed, consequence, recommendation] = finding.texts;
  await keyboard.tabTo('Photos by number');
  await keyboard.type(finding.photos);
  await keyboard.tabTo('System');
  await keyboard.type(finding.system);
  for (const text of [title, observed, consequence, recommendation]) {
    await keyboard.press('Tab');
    await keyboard.type(text);
  }
  // The third of the urgencies: at the next lay-up.
  await keyboard.press('Tab');
  await keyboard.press('ArrowDown');
  await keyboard.press('ArrowDown');
}

/** What a survey of this purpose asks for, answered by letters; those in part with the reason, one not fitted. */
async function answerCoverage(keyboard: Keyboard): Promise<void> {
  const reasons: Record<string, string> = {
    'keel-ballast': 'Ashore on its keel.',
    fuel: 'Tanks full.',
    access: 'Behind fixed joinery.',
  };
  for (const system of systemsAsked('pre-purchase')) {
    const why = reasons[system];
    await keyboard.press(why ? 'p' : system === 'stern-drive-outboard' ? 'f' : 'e');
    if (!why) continue;
    await keyboard.waitsAt('Why');
    await keyboard.type(why);
    await keyboard.press('Tab');
    await keyboard.press('Tab');
  }
}

describe('a survey of 12 findings from 60 photos', { timeout: 240_000 }, () => {
  it('is drafted until it is ready to issue, by the keyboard alone', async () => {
    await surveyor.goTo('/surveys');
    await surveyor.find('link', 'Tansy Rook');
    const began = Date.now();
    const keyboard = new Keyboard(surveyor);
    const laps: Record<string, { seconds: number; presses: number }> = {};
    let last = { at: began, presses: 0 };
    const lap = (name: string) => {
      const now = { at: Date.now(), presses: keyboard.presses };
      laps[name] = {
        seconds: Math.round((now.at - last.at) / 100) / 10,
        presses: now.presses - last.presses,
      };
      last = now;
    };
    const enter = async (heading: string) => {
      await keyboard.press('Enter');
      // The heading takes the focus; the sections stand before it.
      await surveyor.find('heading', heading);
      await keyboard.waitsAt(heading);
    };

    await keyboard.tabTo('Tansy Rook');
    await enter('Particulars');
    await keyboard.tabBackTo('Findings');
    await enter('Findings');
    await surveyor.reads('No findings yet');
    lap('to the findings');

    for (const finding of known) {
      await recordNext(keyboard);
      await draftFromEntry(surveyor, keyboard, finding);
    }
    lap('10 findings from the catalogue');
    for (const finding of blank) {
      await recordNext(keyboard);
      await draftBlank(keyboard, finding);
    }
    await expect.poll(async () => (await findings()).length, { timeout: 10_000 }).toBe(12);
    await surveyor.picture('desk-survey-1-finding');
    lap('2 findings in own words');

    // Eight photos are left: found among those in no finding yet, and filed at once under the keel joint.
    await keyboard.tabBackTo('Photos 60');
    await enter('Photos');
    await keyboard.tabTo('All photos');
    await keyboard.press('ArrowDown');
    await keyboard.waitsAt('In no finding yet');
    await keyboard.press('Space');
    await surveyor.reads('8 photos shown');
    await keyboard.tabTo('Photo 53');
    await keyboard.press('a', 'Control');
    await surveyor.reads('8 photos chosen');
    await keyboard.press('f');
    await keyboard.waitsAt('Number or words');
    await keyboard.type('4');
    await surveyor.page.waitForSelector('::-p-xpath(//*[@role="option"][@data-focused])');
    await keyboard.press('Enter');
    await surveyor.reads('8 photos put into finding 4');
    await surveyor.reads('Every photo is in a finding');
    await surveyor.picture('desk-survey-2-photos');
    lap('8 photos by the desk');

    await keyboard.tabBackTo('Coverage');
    await enter('Coverage');
    await keyboard.tabTo('Examined');
    await answerCoverage(keyboard);
    await surveyor.reads('Every system is answered');
    await surveyor.picture('desk-survey-3-coverage');
    lap('coverage');

    await keyboard.tabTo('Go on to the report');
    await enter('Report');
    await surveyor.reads('Every system is answered for');
    const issue = await surveyor.find('button', 'Issue the report');
    expect(await issue.evaluate((button) => button.hasAttribute('disabled'))).toBe(false);
    const checks = await surveyor.page.$$eval('.checklist > li', (all) =>
      all.map((one) => one.textContent.trim()),
    );
    expect(checks.filter((check) => !check.startsWith('Ready'))).toEqual([]);
    expect(checks).toContainEqual(expect.stringContaining('12 findings'));
    await surveyor.picture('desk-survey-4-ready');
    lap('to the report');

    const seconds = Math.round((Date.now() - began) / 100) / 10;
    const words = [
      ...known.flatMap((finding) => [finding.words, ...finding.slots, finding.photos]),
      ...blank.flatMap((finding) => [finding.system, ...finding.texts, finding.photos]),
    ].join('').length;
    console.log(
      JSON.stringify({ findings: 12, photos: 60, seconds, presses: keyboard.presses, words, laps }),
    );
    // Besides the words themselves: what it takes to get about.
    expect(keyboard.presses).toBeLessThan(1_150);
    expect(keyboard.presses - words).toBeLessThan(300);
    expect(seconds).toBeLessThan(120);
  });

  it('keeps all that was typed: texts complete, every photo in its finding', async () => {
    const kept = await findings();
    expect(kept.map((finding) => finding.title)).toEqual([
      ...known.map((finding) => finding.entry),
      ...blank.map((finding) => finding.texts[0]),
    ]);
    expect(kept.map((finding) => finding.photoIds.length)).toEqual([4, 4, 6, 14, 2, 3, 5, 4, 4, 4, 6, 4]);
    expect(new Set(kept.flatMap((finding) => finding.photoIds)).size).toBe(photoCount);
    for (const [at, finding] of kept.entries()) {
      expect(JSON.stringify(finding)).not.toMatch(/\{[a-z]+\}/);
      expect(finding.catalogueKey === null).toBe(at >= known.length);
      const words = known[at]?.slots ?? [blank[at - known.length]?.texts[1] ?? ''];
      for (const word of words) expect(JSON.stringify(finding)).toContain(word);
    }
    expect(kept.slice(-2).map((finding) => finding.system)).toEqual(['accommodation', 'electronics']);
    const { body } = await api.get(`/v1/surveys/${surveyId}/coverage`).expect(200);
    expect(body.unanswered).toEqual([]);
    expect(body.items).toContainEqual(
      expect.objectContaining({ system: 'fuel', reached: 'partly', reason: 'Tanks full.' }),
    );
  });

  it('made no complaint', () => {
    expect(complaints).toEqual([]);
  });
});
