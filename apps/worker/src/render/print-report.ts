import { createWriteStream } from 'node:fs';
import {
  copyFile,
  link,
  mkdir,
  mkdtemp,
  readdir,
  realpath,
  rename,
  rm,
  stat,
  writeFile,
} from 'node:fs/promises';
import { join } from 'node:path';
import { Readable } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import { pathToFileURL } from 'node:url';
import type { HTTPRequest, Page } from 'puppeteer';
import type { WarmBrowser } from './browser.ts';
import { countPages, fillPageNumbers } from './page-numbers.ts';

/** A file the HTML refers to by `name`; letters, digits, dots, hyphens and underscores only, not `report.…`. */
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

// Also keeps out what needs no request, such as pictures and frames given as data: addresses.
const contentPolicy =
  "default-src 'none'; img-src file:; font-src file:; style-src 'unsafe-inline' file:; base-uri 'none'; form-action 'none'";

/**
 * Prints HTML to a tagged PDF with bookmarks. Chromium sees a private folder with the HTML and its files, and nothing else;
 * the folder is removed whatever happens.
 *
 * @throws PrintError when a file has an unfit name or is missing, an image can't be read, or the page goes elsewhere.
 * @throws PageTimeout when it takes longer than `timeoutMs`.
 */
export async function printReport(request: PrintRequest): Promise<PrintedReport> {
  await mkdir(request.workDir, { recursive: true });
  // mkdtemp makes the folder for its owner alone (0700).
  const folder = await mkdtemp(join(request.workDir, 'print-'));
  try {
    await placeFiles(folder, request.files);
    await writeFile(join(folder, documentName), withPolicy(request.html), { flag: 'wx', mode: 0o600 });
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

/** Removes what killed workers left in a folder kept for printing: everything in it that is older than an hour. */
export async function removeLeftovers(folder: string): Promise<void> {
  await mkdir(folder, { recursive: true });
  for (const name of await readdir(folder)) {
    const path = join(folder, name);
    // Another worker may have removed it since.
    const age = await stat(path).then(
      (found) => Date.now() - found.mtimeMs,
      () => 0,
    );
    if (age > 3_600_000) await rm(path, { recursive: true, force: true });
  }
}

/** The HTML with the policy as its first element, where nothing can come before it. */
function withPolicy(html: string): string {
  const meta = `<meta http-equiv="Content-Security-Policy" content="${contentPolicy}">`;
  return html.replace(/^\s*(<!doctype html>)?/i, (start) => start + meta);
}

async function placeFiles(folder: string, files: readonly ReportFile[]): Promise<void> {
  for (const { name } of files) {
    if (!/^[A-Za-z0-9_-][A-Za-z0-9._-]*$/.test(name) || name.startsWith('report.')) {
      throw new PrintError(
        `"${name}" can't be the name of a file beside the report: use letters, digits, - and _, not report.`,
      );
    }
  }
  // All at once: hundreds of them one after the other would wait longer than they work.
  await Promise.all(
    files.map(({ name, path }) =>
      linkOrCopy(path, join(folder, name)).catch((error: unknown) => {
        throw new PrintError(`The file ${name} of the report can't be read.`, { cause: error });
      }),
    ),
  );
}

async function linkOrCopy(from: string, to: string): Promise<void> {
  // Resolved first, since a link to a symbolic link would be one itself and lead out of the folder.
  const file = await realpath(from);
  try {
    await link(file, to);
  } catch {
    // Another disk, or a file system without hard links.
    await copyFile(file, to);
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
    // They fail only when the page is already gone.
    answer(asked, allowed, request).catch(() => undefined);
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
  await pipeline(Readable.from(stream), createWriteStream(pdf, { flags: 'wx', mode: 0o600 }));
  request.onProgress?.(95);
  return measured ?? countPages(pdf);
}

async function answer(asked: HTTPRequest, allowed: Set<string>, request: PrintRequest): Promise<void> {
  if (allowed.has(asked.url())) {
    await asked.continue();
  } else {
    request.onRefused?.(asked.url());
    await asked.abort('blockedbyclient');
  }
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
