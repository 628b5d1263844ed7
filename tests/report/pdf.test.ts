import type { ReportSnapshot } from '@garboard/contract/report-snapshot';
import { OPS, type PDFDocumentProxy } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { hostileText, poisoned } from './hostile-text.ts';
import { eachPage, pageTexts, startPrinting } from './printing.ts';
import { sampleFinding, sampleLetter, sampleReport } from './sample-snapshot.ts';

let printing: Awaited<ReturnType<typeof startPrinting>>;
beforeAll(async () => {
  printing = await startPrinting();
  await printing.browser.version();
}, 30_000);
afterAll(() => printing.end());

interface OutlineItem {
  title: string;
  items: OutlineItem[];
}

async function outline(pdf: PDFDocumentProxy): Promise<string[]> {
  const flat = (items: OutlineItem[]): string[] => items.flatMap((item) => [item.title, ...flat(item.items)]);
  return flat((await pdf.getOutline()) as OutlineItem[]);
}

type StructNode = { role?: string; alt?: string; children?: StructNode[] };

async function structure(pdf: PDFDocumentProxy): Promise<StructNode[]> {
  const flat = (node: StructNode): StructNode[] => [node, ...(node.children ?? []).flatMap(flat)];
  const trees = await eachPage(pdf, (page) => page.getStructTree());
  return trees.flatMap((tree) => flat(tree as StructNode));
}

async function imageCount(pdf: PDFDocumentProxy): Promise<number> {
  const counts = await eachPage(pdf, async (page) => {
    const { fnArray } = await page.getOperatorList();
    return fnArray.filter((operator) => operator === OPS.paintImageXObject).length;
  });
  return counts.reduce((sum, count) => sum + count, 0);
}

describe('a full report of 60 findings and 120 photos', () => {
  let pdf: PDFDocumentProxy;
  let texts: string[];
  beforeAll(async () => {
    const printed = await printing.printSnapshot(sampleReport(60, 2));
    pdf = printed.pdf;
    expect(printed.pages).toBe(pdf.numPages);
    texts = await pageTexts(pdf);
  }, 30_000);

  it('numbers its pages and names the vessel on each but the cover', () => {
    expect(pdf.numPages).toBeGreaterThan(30);
    texts.slice(1).forEach((text, index) => {
      expect(text).toContain(`Page ${index + 2} of ${pdf.numPages}`);
      expect(text).toContain('Grey Wagtail');
    });
    expect(texts[0]).not.toContain('Page 1 of');
  });

  it('has bookmarks for the sections, systems and findings, each once', async () => {
    const titles = await outline(pdf);
    expect(titles[0]).toBe('Grey Wagtail');
    expect(titles).toEqual(
      expect.arrayContaining(['Contents', 'Findings by urgency', 'Gas (LPG)', 'What to do, and by when']),
    );
    const findings = titles.filter((title) => / Hardened and chafed hose behind panel /.test(title));
    expect(findings).toHaveLength(60);
    expect(findings).toContain('7 Hardened and chafed hose behind panel 7');
  });

  it('is tagged, in English, with a title', async () => {
    expect(await pdf.getMarkInfo()).toMatchObject({ Marked: true });
    const { info } = await pdf.getMetadata();
    expect(info).toMatchObject({
      Title: 'Grey Wagtail: Pre-purchase survey 2026-0042, revision 1',
      Language: 'en',
    });
    const nodes = await structure(pdf);
    const roles = new Set(nodes.map((node) => node.role));
    for (const role of ['H1', 'H2', 'H3', 'H4', 'P', 'Table', 'TH', 'Figure', 'Link']) {
      expect(roles).toContain(role);
    }
    const figures = nodes.filter((node) => node.role === 'Figure');
    expect(figures).toHaveLength(121);
    expect(figures.filter((figure) => !figure.alt?.trim())).toEqual([]);
  });

  it('contains every photo', async () => {
    expect(await imageCount(pdf)).toBe(121);
  });

  it('has contents and index whose links and page numbers lead to the place', async () => {
    const page =
      texts.findIndex((text) => text.includes('7 Hardened and chafed hose behind panel 7 What')) + 1;
    expect(page).toBeGreaterThan(1);
    const index = texts.find((text) => /panel 7 Plumbing and heads 5 July 2026 \d+/.test(text)) ?? '';
    expect(index).toContain(
      `7 Hardened and chafed hose behind panel 7 Plumbing and heads 5 July 2026 ${page}`,
    );
    const destination = await pdf.getDestination('finding-7');
    expect((await pdf.getPageIndex(destination?.[0])) + 1).toBe(page);
    const links = (await eachPage(pdf, (each) => each.getAnnotations())).flat();
    const targets = links.filter((link) => link.subtype === 'Link').map((link) => link.dest);
    for (const target of ['work', 'system-gas', 'finding-7', 'index-7']) expect(targets).toContain(target);
    expect(links.filter((link) => link.url)).toEqual([]);
  });

  it('keeps a heading with its first words and a photo with its caption', () => {
    texts.forEach((text) => {
      const titles = [...text.matchAll(/\d+ Hardened and chafed hose behind panel \d+ (What was seen)/g)];
      const margins = [...text.matchAll(/Index, page \d+/g)];
      expect(margins).toHaveLength(titles.length);
    });
  });
});

describe('other documents', () => {
  it('shows markup in any text as text', async () => {
    const snapshot = poisoned({ ...sampleReport(2, 1), findings: sampleReport(4, 1).findings.slice(0, 2) });
    const { pdf } = await printing.printSnapshot(snapshot);
    const text = (await pageTexts(pdf)).join(' ');
    const squeezed = (words: string) => words.replace(/\s/g, '');
    const shown = squeezed(text).split(squeezed(hostileText)).length - 1;
    // Names, contacts, vessel, survey, places and, in each finding, its six texts.
    expect(shown).toBeGreaterThan(30);
    expect(await imageCount(pdf)).toBe(3);
  });

  it.each([0, 1])('prints a report of %i findings without a nearly empty page', async (count) => {
    const { pdf } = await printing.printSnapshot(sampleReport(count, count));
    const texts = await pageTexts(pdf);
    expect(texts.join(' ')).toContain(count === 0 ? 'No findings were recorded.' : 'behind panel 1');
    for (const text of texts) expect(text.length).toBeGreaterThan(200);
  });

  it('prints letters of one page and the list of recommendations', async () => {
    const open = sampleFinding(4, { urgency: 'before-use' });
    const kinds: [ReportSnapshot, string, number][] = [
      [sampleLetter('clearance-letter', [{ ...open, state: 'cleared' }]), 'Clearance of recommendations', 1],
      [sampleLetter('status-letter', [open]), 'Still open', 1],
      [{ ...sampleReport(3, 1), kind: 'recommendations' }, 'What was seen', 4],
    ];
    for (const [snapshot, words, pages] of kinds) {
      const printed = await printing.printSnapshot(snapshot);
      const text = (await pageTexts(printed.pdf)).join(' ');
      expect(text).toContain(words);
      expect(text).toContain(`of ${printed.pdf.numPages}`);
      expect(printed.pdf.numPages).toBe(pages);
    }
  });

  it('keeps the letters of other scripts in the text', async () => {
    const snapshot = sampleReport(1);
    snapshot.vessel.name = 'Ναυσικά';
    snapshot.survey.requestedBy = 'Йосип Ćirić, Đà Nẵng';
    snapshot.survey.scope = 'فحص هيكل القارب';
    const text = (await pageTexts((await printing.printSnapshot(snapshot)).pdf)).join(' ').normalize('NFKC');
    for (const words of ['Ναυσικά', 'Йосип Ćirić, Đà Nẵng']) expect(text).toContain(words);
    expect(text).toMatch(/\p{Script=Arabic}{3}/u);
  });
});
