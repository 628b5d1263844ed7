import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import type { ReportSnapshot } from '@garboard/contract/report-snapshot';
import { findChromium } from '@garboard/platform/chromium';
import { renderReport } from '@garboard/report/render-report';
import { WarmBrowser } from '@garboard/worker/render/browser';
import { type PrintedReport, type PrintRequest, printReport } from '@garboard/worker/render/print-report';
import { reportFontFiles, reportFontUrls } from '@garboard/worker/render/report-fonts';
import { getDocument, type PDFDocumentProxy } from 'pdfjs-dist/legacy/build/pdf.mjs';
import sharp from 'sharp';

// Unpacked once and kept for the next run.
const chromiumDir = resolve(import.meta.dirname, '../../node_modules/.cache/garboard-tests');

/** A browser and a private folder for the tests of one file. */
export async function startPrinting() {
  const browser = new WarmBrowser(() => findChromium({ dataDir: chromiumDir }));
  const folder = await mkdtemp(join(tmpdir(), 'garboard-report-'));
  const workDir = join(folder, 'work');
  const print = (request: Pick<PrintRequest, 'html'> & Partial<PrintRequest>): Promise<PrintedReport> =>
    printReport({ browser, files: [], workDir, timeoutMs: 20_000, ...request });
  return {
    browser,
    folder,
    workDir,
    print,
    /** Prints a snapshot with a small picture for each of its photos, and opens the PDF with another reader. */
    async printSnapshot(snapshot: ReportSnapshot): Promise<PrintedReport & { pdf: PDFDocumentProxy }> {
      const files = await Promise.all(photosOf(snapshot).map((photo) => drawPhoto(folder, photo)));
      const html = renderReport(snapshot, { photoUrl: (id) => `${id}.jpg`, fontUrls: reportFontUrls });
      const printed = await print({ html, files: [...reportFontFiles, ...files] });
      return { ...printed, pdf: await openPdf(printed.pdfPath) };
    },
    async end(): Promise<void> {
      await browser.close();
      await rm(folder, { recursive: true, force: true });
    },
  };
}

export async function openPdf(path: string): Promise<PDFDocumentProxy> {
  return getDocument({ data: new Uint8Array(await readFile(path)), verbosity: 0 }).promise;
}

/** The text of each page, words parted by single spaces. */
export async function pageTexts(pdf: PDFDocumentProxy): Promise<string[]> {
  return eachPage(pdf, async (page) => {
    const { items } = await page.getTextContent();
    const words = items.map((item) => ('str' in item ? item.str + (item.hasEOL ? ' ' : '') : ''));
    return words.join('').replace(/\s+/g, ' ');
  });
}

/** Calls `read` with each page in turn. */
export async function eachPage<T>(
  pdf: PDFDocumentProxy,
  read: (page: Awaited<ReturnType<PDFDocumentProxy['getPage']>>) => Promise<T>,
): Promise<T[]> {
  const answers: T[] = [];
  for (let number = 1; number <= pdf.numPages; number++) answers.push(await read(await pdf.getPage(number)));
  return answers;
}

function photosOf(snapshot: ReportSnapshot) {
  const lead = 'leadPhoto' in snapshot && snapshot.leadPhoto ? [snapshot.leadPhoto] : [];
  const again = 'lookedAgain' in snapshot ? snapshot.lookedAgain : [];
  const photos = [
    ...lead,
    ...snapshot.findings.flatMap((finding) => finding.photos),
    ...again.flatMap(({ pairs, photos }) => [
      ...pairs.flatMap(({ before, after }) => [before, after]),
      ...photos,
    ]),
  ];
  return [...new Map(photos.map((photo) => [photo.id, photo])).values()];
}

async function drawPhoto(
  folder: string,
  { id, width, height }: { id: string; width: number; height: number },
) {
  const path = join(folder, `${id}.jpg`);
  // Each in a colour of its own: Chromium embeds equal pictures only once.
  const hue = Number.parseInt(id.slice(-6), 16) * 37;
  const background = { r: hue % 256, g: (hue >> 3) % 256, b: (hue >> 5) % 256 };
  const size = { width: Math.round(width / 8), height: Math.round(height / 8) };
  await writeFile(
    path,
    await sharp({ create: { ...size, channels: 3, background } })
      .jpeg()
      .toBuffer(),
  );
  return { name: `${id}.jpg`, path };
}
