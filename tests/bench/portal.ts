// The portal as it is built and served, in a telephone's place: four times slower than this machine, on slow 4G.
import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { findChromium } from '@garboard/platform/chromium';
import { repositoryRoot } from '@garboard/platform/paths';
import puppeteer, { type Browser, type Page, PredefinedNetworkConditions } from 'puppeteer';
import { chromiumDir } from '../support/worker.ts';
import { type Bench, median, type Part, type Round } from './harness.ts';
import { type MediaOffice, makePhoto, openMediaOffice } from './media-office.ts';
import { writePlainPages } from './plain-pages.ts';
import { type BenchProcess, startApi, startFloor } from './processes.ts';
import { buildReadySurvey, filePhotos } from './report-office.ts';

const slowdown = 4;
const slow4g = PredefinedNetworkConditions['Slow 4G'];
const patience = { timeout: 120_000 };
/** An interaction answered within this is a good one by the common measure (INP), in milliseconds. */
const goodInteraction = 200;
const firstFinding = 'Fuel hose 1 hardened';

export const run: Part = async (bench) => {
  const office = await openMediaOffice();
  try {
    await measurePortal(bench, office, { photo: await makePhoto(), findings: 30, deskPhotos: 300 });
  } finally {
    await office.close();
  }
};

export interface PortalSizes {
  photo: Buffer;
  /** Of the survey whose first is waited for. */
  findings: number;
  /** On the photo desk. */
  deskPhotos: number;
  /** At this machine's own pace: what is measured then says nothing. */
  unhindered?: boolean;
}

export async function measurePortal(bench: Bench, office: MediaOffice, sizes: PortalSizes): Promise<void> {
  const prepared = spawnSync(process.execPath, ['packages/platform/bin/prepare.mjs'], {
    cwd: repositoryRoot(),
  });
  if (prepared.status !== 0) throw new Error(`The portal could not be built: ${prepared.stderr}`);
  const onFile = await filePhotos(office, sizes.photo, Math.max(sizes.deskPhotos, sizes.findings * 3));
  const short = await buildReadySurvey(office, onFile, sizes.findings * 3);
  const long = await buildReadySurvey(office, onFile, sizes.deskPhotos);
  const api = await startApi(office);
  const plain = join(office.dataDir, 'plain');
  const thumbs = onFile.thumb.slice(0, sizes.deskPhotos);
  await writePlainPages(
    plain,
    await (await asked(api, office, `/v1/surveys/${short}/findings`)).text(),
    await Promise.all(thumbs.map((hash) => office.store.localFile(hash))),
  );
  const floor = await startFloor('static-folder', { dataDir: office.dataDir, args: [plain] });
  const { executablePath, args, env } = await findChromium({ dataDir: chromiumDir });
  const browser = await puppeteer.launch({
    ...{ executablePath, args: [...args], env: { ...env }, protocolTimeout: patience.timeout },
  });
  const [bytes, slowest]: [number[], number[]] = [[], []];
  /** Goes to a page with nothing kept; answers when the first finding stood on it, and notes what came over the line. */
  const untilFinding = (url: string, sent: number[]) => async (): Promise<Round> =>
    onTelephone(browser, { office, url, unhindered: sizes.unhindered }, async (page) => {
      const cdp = await page.createCDPSession();
      await cdp.send('Network.enable');
      let sum = 0;
      cdp.on('Network.dataReceived', ({ encodedDataLength }) => {
        sum += encodedDataLength;
      });
      await page.evaluateOnNewDocument(noteWhenShown(firstFinding));
      await page.goto(url, { waitUntil: 'domcontentloaded', ...patience });
      const shown = await page.waitForFunction(() => Reflect.get(window, 'shownAt') as number, patience);
      sent.push(sum / 1000);
      return { value: (await shown.jsonValue()) ?? 0 };
    });
  const interactions = (url: string, worst: number[]) => async (): Promise<Round> =>
    onTelephone(browser, { office, url, unhindered: sizes.unhindered }, async (page) => {
      await page.goto(url, { waitUntil: 'domcontentloaded', ...patience });
      const took = await workAmongPhotos(page);
      worst.push(Math.max(...took));
      return { value: Math.max(...took), p50: median(took) };
    });
  try {
    const lessIsBetter = true;
    await bench.compare([
      {
        ...{ what: 'first finding shown on a telephone', size: sizes.findings, unit: 'ms', lessIsBetter },
        ours: untilFinding(`${api.url}/surveys/${short}/findings`, bytes),
        floor: untilFinding(`${floor.url}/findings.html`, []),
      },
      {
        ...{
          what: 'slowest interaction on the photo desk',
          size: sizes.deskPhotos,
          unit: 'ms',
          lessIsBetter,
        },
        ours: interactions(`${api.url}/surveys/${long}/photos`, slowest),
        floor: interactions(`${floor.url}/photos.html`, []),
      },
    ]);
    bench.figure({ what: 'sent until the first finding', unit: 'kB', values: bytes });
    bench.figure({ what: 'slowest interaction', unit: 'ms', values: slowest, atMost: goodInteraction });
  } finally {
    await browser.close();
    await Promise.all([api.stop(), floor.stop()]);
  }
}

/** A window with nothing kept, signed in, at a telephone's pace. */
async function onTelephone(
  browser: Browser,
  { office, url, unhindered = false }: { office: MediaOffice; url: string; unhindered?: boolean | undefined },
  visit: (page: Page) => Promise<Round>,
): Promise<Round> {
  const context = await browser.createBrowserContext();
  try {
    const { hostname: domain } = new URL(url);
    await context.setCookie({
      name: 'garboard_session',
      value: office.surveyor.token,
      domain,
      httpOnly: true,
    });
    const page = await context.newPage();
    await page.setViewport({ width: 390, height: 844, isMobile: true, hasTouch: true });
    if (!unhindered) {
      await page.emulateCPUThrottling(slowdown);
      await page.emulateNetworkConditions(slow4g);
    }
    return await visit(page);
  } finally {
    await context.close();
  }
}

/** Runs within the page, before anything else: keeps when the words first stood on it. A text, since tsx marks functions. */
const noteWhenShown = (words: string): string => `
  requestAnimationFrame(function look() {
    if (document.body?.textContent.includes(${JSON.stringify(words)})) window.shownAt = performance.now();
    else requestAnimationFrame(look);
  });`;

/** Moves and chooses among the photos; answers how long each interaction took to be seen, in milliseconds. */
async function workAmongPhotos(page: Page): Promise<number[]> {
  await page.waitForSelector('[role=row] img', patience);
  await page.evaluate(() => {
    const took = new Map<number, number>();
    Reflect.set(window, 'took', took);
    new PerformanceObserver((list) => {
      for (const entry of list.getEntries() as PerformanceEventTiming[]) {
        const { interactionId = 0, duration } = entry as PerformanceEventTiming & { interactionId?: number };
        if (interactionId) took.set(interactionId, Math.max(duration, took.get(interactionId) ?? 0));
      }
    }).observe({ type: 'event', durationThreshold: 16 } as PerformanceObserverInit);
    document.querySelector<HTMLElement>('[role=row]')?.focus();
  });
  const keys = [
    'ArrowRight',
    'ArrowRight',
    'Space',
    'ArrowDown',
    'ArrowDown',
    'Space',
    'ArrowLeft',
    'ArrowDown',
  ] as const;
  for (const key of [...keys, ...keys, ...keys]) {
    await page.keyboard.press(key);
    await seen(page);
  }
  for (let n = 0; n < 4; n += 1) {
    const rows = await page.$$('[role=row]');
    await rows[n]?.click();
    await seen(page);
  }
  const took = await page.evaluate(() => [...(Reflect.get(window, 'took') as Map<number, number>).values()]);
  // What was answered within a frame isn't told of.
  return took.length > 0 ? took : [16];
}

/** Until what an interaction changed has been painted, and told. */
const seen = (page: Page) =>
  page.evaluate(
    () =>
      new Promise<void>((done) =>
        requestAnimationFrame(() => setTimeout(() => requestAnimationFrame(() => done()), 20)),
      ),
  );

async function asked(api: BenchProcess, { surveyor }: MediaOffice, path: string): Promise<Response> {
  const answer = await fetch(api.url + path, { headers: { authorization: `Bearer ${surveyor.token}` } });
  if (!answer.ok) throw new Error(`${path}: ${answer.status}`);
  return answer;
}
