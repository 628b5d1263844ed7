// Reports: the worker's whole job, beside Chromium alone printing the same HTML; and what a worker's memory does while
// it makes many in a row.
import { link, mkdir, rm, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import { freezeRecord } from '@garboard/core/reports/freeze-snapshot';
import { requestReport } from '@garboard/core/reports/request-report';
import { inTransaction } from '@garboard/db/database';
import { findChromium } from '@garboard/platform/chromium';
import { openLogger } from '@garboard/platform/logger';
import { openMailer } from '@garboard/platform/mail';
import { printEdges } from '@garboard/report/print-edges';
import { renderReport } from '@garboard/report/render-report';
import { testSecret } from '@garboard/seed/builders';
import { photoFileName } from '@garboard/worker/jobs/gather-photos';
import { renderReportJob } from '@garboard/worker/jobs/render-report';
import { WarmBrowser } from '@garboard/worker/render/browser';
import { reportFontFiles, reportFontUrls } from '@garboard/worker/render/report-fonts';
import puppeteer, { type Browser, type LaunchOptions } from 'puppeteer';
import { chromiumDir } from '../support/worker.ts';
import { type Bench, median, type Part, type Round } from './harness.ts';
import { type MediaOffice, makePhoto, openMediaOffice } from './media-office.ts';
import { memoryOf, memoryOfTree } from './process-figures.ts';
import { startWorker } from './processes.ts';
import { buildReadySurvey, filePhotos, type PhotosOnFile } from './report-office.ts';

export interface ReportSizes {
  photo: Buffer;
  /** Photos of each report that is timed. */
  photos: readonly number[];
  /** Small reports made in a row. */
  inARow: number;
}

export const run: Part = async (bench) => {
  const office = await openMediaOffice();
  try {
    await measureReports(bench, office, { photo: await makePhoto(), photos: [10, 120, 600], inARow: 200 });
  } finally {
    await office.close();
  }
};

export async function measureReports(bench: Bench, office: MediaOffice, sizes: ReportSizes): Promise<void> {
  const photos = await filePhotos(office, sizes.photo, Math.max(...sizes.photos));
  await measureTimes(bench, office, { ...sizes, onFile: photos });
  await measureMemory(bench, office, { ...sizes, onFile: photos });
}

type Sized = ReportSizes & { onFile: PhotosOnFile };

async function measureTimes(bench: Bench, office: MediaOffice, sizes: Sized): Promise<void> {
  const { dataDir } = office;
  const found = () => findChromium({ dataDir: chromiumDir });
  const warm = new WarmBrowser(found);
  bench.note('chromium', await warm.version());
  const { executablePath, args, env } = await found();
  const launched: LaunchOptions = {
    executablePath,
    args: [...args],
    env: { ...env },
    headless: 'shell',
    pipe: true,
    userDataDir: join(dataDir, 'alone'),
  };
  const alone = await puppeteer.launch(launched);
  const mail = openMailer({ dataDir, from: 'Garboard <no-reply@bench.example>' });
  const deps = {
    ...{ db: office.db, store: office.store, log: openLogger('bench', 'fatal'), clock: () => new Date() },
    env: { publicUrl: 'http://127.0.0.1:3000', dataDir, secret: testSecret, webhookAllowPrivate: false },
    ...{ mail, browser: warm },
  };
  try {
    const compared = [];
    for (const size of sizes.photos) {
      const printed = await writePrinted(office, sizes.onFile, size);
      const spent = { megabytes: [] as number[], peak: [] as number[] };
      const ours = async (): Promise<Round> => {
        const surveyId = await buildReadySurvey(office, sizes.onFile, size);
        const { id: reportId } = await request(office, surveyId);
        const watch = watchMemory((await warm.pid()) ?? 0);
        const begun = performance.now();
        await renderReportJob(deps, { firmId: office.firmId, reportId }, { lastAttempt: true });
        const value = performance.now() - begun;
        spent.peak.push(await watch.stop());
        const row = await inTransaction(office.db, [office.firmId], (tx) =>
          tx.report.findUniqueOrThrow({ where: { id: reportId } }),
        );
        if (row.state !== 'issued') throw new Error(`The report was not issued: ${row.problem}`);
        spent.megabytes.push((row.bytes ?? 0) / 1e6);
        return { value };
      };
      const floor = () => printAlone(alone, printed);
      const what = 'a report from frozen record to sealed file';
      compared.push({ what, size, unit: 'ms', lessIsBetter: true, ours, floor, spent });
    }
    await bench.compare(compared);
    for (const { size, spent } of compared) {
      bench.figure({ what: 'the file', size, unit: 'MB', values: spent.megabytes });
      bench.figure({ what: 'most memory of Chromium', size, unit: 'MB', values: spent.peak });
    }
  } finally {
    mail.close();
    await warm.close();
    await alone.close();
  }
}

/** The HTML of a report with its files in a folder, for Chromium alone. Answers the address. */
async function writePrinted(office: MediaOffice, onFile: PhotosOnFile, count: number): Promise<string> {
  const surveyId = await buildReadySurvey(office, onFile, count);
  const folder = join(office.dataDir, `alone-${count}`);
  await mkdir(folder);
  const { db, store, firmId } = office;
  const snapshot = await inTransaction(db, [firmId], (tx) =>
    freezeRecord(
      { actor: { kind: 'system', firmIds: [firmId] }, tx, store, clock: () => new Date(), log: console },
      surveyId,
    ),
  );
  let n = 0;
  for (const [photoId, edge] of printEdges(snapshot)) {
    const hash = onFile.prints.get(edge)?.[n++] ?? '';
    await link(await store.localFile(hash), join(folder, photoFileName(photoId)));
  }
  for (const { name, path } of reportFontFiles) await link(path, join(folder, name));
  const html = renderReport(snapshot, { photoUrl: photoFileName, fontUrls: reportFontUrls });
  await writeFile(join(folder, 'report.html'), html);
  return `file://${folder}/report.html`;
}

/** One pass, by the browser's own print command. */
async function printAlone(browser: Browser, address: string): Promise<Round> {
  const begun = performance.now();
  const page = await browser.newPage();
  try {
    await page.goto(address, { waitUntil: 'load' });
    const path = `${new URL(address).pathname}.pdf`;
    await page.pdf({
      path,
      preferCSSPageSize: true,
      printBackground: true,
      tagged: true,
      outline: true,
      timeout: 0,
    });
    await rm(path);
  } finally {
    await page.close();
  }
  return { value: performance.now() - begun };
}

function request({ db, store, firmId, surveyor }: MediaOffice, surveyId: string) {
  const actor = {
    ...{ kind: 'person' as const, personId: surveyor.id, name: surveyor.name, email: surveyor.email },
    ...{ memberships: [{ firmId, role: 'surveyor' as const }], firmIds: [firmId] },
  };
  return inTransaction(db, [firmId], (tx) =>
    requestReport(
      { actor, tx, store, clock: () => new Date(), log: console },
      { surveyId, kind: 'full', publicUrl: 'http://127.0.0.1:3000' },
    ),
  );
}

/** Looks at the memory of a process and what it started ten times a second; answers the most. */
function watchMemory(pid: number): { stop(): Promise<number> } {
  let most = 0;
  let over = false;
  const watching = (async () => {
    while (!over) {
      most = Math.max(most, await memoryOfTree(pid));
      await sleep(100);
    }
  })();
  return {
    async stop() {
      over = true;
      await watching;
      return most;
    },
  };
}

/** The most that memory may rise in a hundred reports once the worker is warm, in MB. */
const mayRise = 8;

async function measureMemory(bench: Bench, office: MediaOffice, sizes: Sized): Promise<void> {
  const { db, firmId } = office;
  const worker = await startWorker(office);
  const [own, tree]: [number[], number[]] = [[], []];
  const begun = performance.now();
  try {
    for (let made = 0; made < sizes.inARow; made += 1) {
      const { id } = await request(office, await buildReadySurvey(office, sizes.onFile, 3));
      for (let state = ''; state !== 'issued'; await sleep(20)) {
        const row = await inTransaction(db, [firmId], (tx) =>
          tx.report.findUniqueOrThrow({ where: { id }, select: { state: true, problem: true } }),
        );
        state = row.state;
        if (state === 'failed') throw new Error(`A report failed: ${row.problem}`);
      }
      own.push(await memoryOf(worker.pid));
      tree.push(await memoryOfTree(worker.pid));
    }
  } finally {
    await worker.stop();
  }
  const perMinute = (sizes.inARow * 60_000) / (performance.now() - begun);
  bench.figure({ what: 'small reports one after the other', unit: 'reports/min', values: [perMinute] });
  const browser = tree.map((all, at) => all - (own[at] ?? 0));
  for (const [what, values] of [['the worker', own] as const, ['Chromium', browser] as const]) {
    // Caches and compiled code come with the first reports.
    const warm = values.slice(Math.floor(values.length / 4));
    bench.note(`${what}: MB at the end`, Math.round(median(warm.slice(-10))));
    const rise = slope(warm) * 100;
    bench.figure({
      what: `memory of ${what} in a row of ${sizes.inARow}`,
      unit: 'MB/100',
      values: [rise],
      atMost: mayRise,
    });
  }
}

/** By least squares: how much each value is above the one before. */
function slope(values: readonly number[]): number {
  const mean = (of: readonly number[]) => of.reduce((sum, value) => sum + value, 0) / of.length;
  const middle = (values.length - 1) / 2;
  const average = mean(values);
  const rise = values.reduce((sum, value, at) => sum + (at - middle) * (value - average), 0);
  return rise / values.reduce((sum, _, at) => sum + (at - middle) ** 2, 0);
}
