import type { PDFDocumentProxy } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { pageTexts, startPrinting } from './printing.ts';
import { pageImages, usedHeight } from './references/page-images.ts';
import { sampleFinding, sampleReport } from './sample-snapshot.ts';

let printing: Awaited<ReturnType<typeof startPrinting>>;
beforeAll(async () => {
  printing = await startPrinting();
}, 60_000);
afterAll(() => printing.end());

const nearEmpty = async (pdf: PDFDocumentProxy) =>
  (await pageImages(pdf)).flatMap((image, index, all) =>
    index < all.length - 1 && usedHeight(image) < 0.25 ? [index + 1] : [],
  );

describe('a report at the edges', () => {
  it('prints one finding without a photo', async () => {
    const { pdf } = await printing.printSnapshot(sampleReport(1));
    expect(pdf.numPages).toBeLessThanOrEqual(8);
    expect(await nearEmpty(pdf)).toEqual([]);
  });

  it('prints 400 findings, each reached from the index by its right page', async () => {
    const { pdf } = await printing.printSnapshot(sampleReport(400));
    const texts = await pageTexts(pdf);
    for (const number of [1, 137, 400]) {
      const destination = await pdf.getDestination(`finding-${number}`);
      const page = (await pdf.getPageIndex(destination?.[0])) + 1;
      expect(texts[page - 1]).toContain(`${number} Hardened and chafed hose behind panel ${number} What`);
      const rows = texts.filter((text) =>
        new RegExp(`behind panel ${number} [^.]*\\b${page}(\\s|$)`).test(text),
      );
      expect(rows.length).toBeGreaterThan(0);
    }
    expect(texts[1]).toContain('more that ask for work');
  }, 120_000);

  it('lets a finding of 6 000 words run over pages without losing one', async () => {
    const paragraph = (n: number) =>
      Array.from({ length: 60 }, (_, word) => `word${n * 60 + word}`).join(' ');
    const observed = Array.from({ length: 100 }, (_, n) => paragraph(n)).join('\n\n');
    const report = { ...sampleReport(0), findings: [sampleFinding(1, { observed, urgency: 'before-use' })] };
    const { pdf } = await printing.printSnapshot(report);
    const all = (await pageTexts(pdf)).join(' ');
    for (const word of [0, 59, 2999, 5999]) expect(all).toMatch(new RegExp(`word${word}\\b`));
    expect(await nearEmpty(pdf)).toEqual([]);
  }, 60_000);

  it('prints a title of 200 letters and a summary that stays on its page', async () => {
    const title = 'Through-hull fitting '.repeat(10).trim().slice(0, 200);
    const report = sampleReport(30);
    const findings = report.findings.map((finding) => ({
      ...finding,
      title: `${title} ${finding.number}`,
      harms: [
        'flooding',
        'fire-explosion',
        'shock',
        'poisoning',
        'structural-failure',
        'rig-failure',
        'loss-of-control',
        'injury',
        'pollution',
        'unlawful',
        'deterioration',
      ] as typeof finding.harms,
      position: { along: finding.number / 31, height: 0.5, side: 'port' as const },
    }));
    for (const paper of ['A4', 'Letter'] as const) {
      const { pdf } = await printing.printSnapshot({ ...report, paper, findings });
      const texts = await pageTexts(pdf);
      expect(texts[1]).toContain('Where the findings are');
      expect(texts[1]).toContain('A broken ring around it');
      expect(texts[2]).toContain('Contents');
    }
  }, 60_000);
});
