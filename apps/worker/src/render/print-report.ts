import { createWriteStream } from 'node:fs';
import { copyFile, link, mkdir, mkdtemp, rename, rm, stat, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { Readable } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import { pathToFileURL } from 'node:url';
import type { Page } from 'puppeteer';
import type { WarmBrowser } from './browser.ts';
import { countPages, fillPageNumbers } from './page-numbers.ts';

/** A file the HTML refers to by `name`; letters, digits, dots, hyphens and underscores only. */
export interface ReportFile {
  name: string;
  path: string;
}

/** What to print, from which files, and how long it may take. */
export interface PrintRequest {
  browser: WarmBrowser;
  html: string;
  files: readonly ReportFile[];
  /** An existing or new folder on the disk of the files; the PDF is left in it. */
  workDir: string;
  timeoutMs: number;
  /** Told how far it has come, from 0 to 100. */
  onProgress?: (percent: number) => void;
  /** Told of each request that was refused, for the log. */
  onRefused?: (url: string) => void;
}

export interface PrintedReport {
  /** The PDF, in `workDir`; it belongs to the caller. */
  pdfPath: string;
  pages: number;
  bytes: number;
}

/** The report can't be printed as it is; trying again won't help. */
export class PrintError extends Error {
  override name = 'PrintError';
}

const documentName = 'report.html';

/**
 * Prints HTML to a tagged PDF with bookmarks. Chromium sees a private folder with the HTML and the files, and
 * nothing else; the folder is removed whatever happens.
 *
 * @throws PrintError when a file has an unfit name or is missing, an image can't be read, or the page goes elsewhere.
 * @throws PageTimeout when it takes longer than `timeoutMs`.
 */
export async function printReport(request: PrintRequest): Promise<PrintedReport> {
  await mkdir(request.workDir, { recursive: true });
  // mkdtemp makes the folder for its owner alone (0700).
  const folder = await mkdtemp(join(request.workDir, 'print-'));
  try {
    await placeFiles(folder, request);
    request.onProgress?.(10);
    const pdf = join(folder, 'report.pdf');
    const pages = await request.browser.withPage(request.timeoutMs, (page) =>
      print(page, folder, pdf, request),
    );
    const { size } = await stat(pdf);
    const pdfPath = `${folder}.pdf`;
    await rename(pdf, pdfPath);
    request.onProgress?.(100);
    return { pdfPath, pages, bytes: size };
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}

async function placeFiles(folder: string, { html, files }: PrintRequest): Promise<void> {
  for (const { name, path } of files) {
    if (!/^[A-Za-z0-9_-][A-Za-z0-9._-]*$/.test(name) || name === documentName) {
      throw new PrintError(
        `"${name}" can't be the name of a file beside the report; use letters, digits, - and _.`,
      );
    }
    await linkOrCopy(path, join(folder, name)).catch((error: unknown) => {
      throw new PrintError(`The file ${name} of the report can't be read.`, { cause: error });
    });
  }
  await writeFile(join(folder, documentName), html, { mode: 0o600 });
}

async function linkOrCopy(from: string, to: string): Promise<void> {
  try {
    await link(from, to);
  } catch {
    // Another disk, or a file system without hard links.
    await copyFile(from, to);
  }
}

async function print(page: Page, folder: string, pdf: string, request: PrintRequest): Promise<number> {
  const address = pathToFileURL(join(folder, documentName)).href;
  const allowed = new Set([
    address,
    ...request.files.map(({ name }) => pathToFileURL(join(folder, name)).href),
  ]);
  await page.setRequestInterception(true);
  page.on('request', (asked) => {
    const answer = allowed.has(asked.url()) ? asked.continue() : asked.abort('blockedbyclient');
    if (!allowed.has(asked.url())) request.onRefused?.(asked.url());
    // It fails only when the page is already gone.
    answer.catch(() => undefined);
  });
  page.setDefaultTimeout(request.timeoutMs);
  await page.goto(address, { waitUntil: 'load' });
  await checkLoaded(page, address);
  request.onProgress?.(40);
  const measured = await fillPageNumbers(page);
  request.onProgress?.(55);
  const stream = await page.createPDFStream({
    preferCSSPageSize: true,
    printBackground: true,
    tagged: true,
    outline: true,
    timeout: request.timeoutMs,
  });
  await pipeline(Readable.from(stream), createWriteStream(pdf, { mode: 0o600 }));
  request.onProgress?.(95);
  return measured ?? countPages(pdf);
}

/** Makes sure that the page is still ours and that it has all its images and fonts. */
async function checkLoaded(page: Page, address: string): Promise<void> {
  if (page.url() !== address)
    throw new PrintError('The report tried to leave its own folder and was stopped.');
  const missing = await page.evaluate(async () => {
    await document.fonts.ready;
    return [...document.images]
      .filter((image) => !image.complete || image.naturalWidth === 0)
      .map((image) => `${image.getAttribute('src')} (${image.alt})`);
  });
  if (missing.length > 0) throw new PrintError(`Images are missing or can't be read: ${missing.join('; ')}.`);
}
