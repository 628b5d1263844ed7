import { readdir } from 'node:fs/promises';
import { join } from 'node:path';
import type { PDFDocumentProxy } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { OPS } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { eachPage, pageTexts, startPrinting } from './printing.ts';
import {
  acceptedDir,
  acceptedFile,
  differingShare,
  greyOf,
  inkShare,
  type PageImage,
  pageImages,
  usedHeight,
  writePage,
} from './references/page-images.ts';
import { references } from './references/reference-reports.ts';

let printing: Awaited<ReturnType<typeof startPrinting>>;
beforeAll(async () => {
  printing = await startPrinting();
}, 60_000);
afterAll(() => printing.end());

type StructNode = { role?: string; alt?: string; children?: StructNode[] };
const flat = (node: StructNode): StructNode[] => [node, ...(node.children ?? []).flatMap(flat)];

/** The glyph numbers of a page's text; 0 is the box that stands for a missing character. */
async function glyphs(pdf: PDFDocumentProxy): Promise<number[]> {
  const pages = await eachPage(pdf, async (page) => {
    const { fnArray, argsArray } = await page.getOperatorList();
    return fnArray.flatMap((operator, index) => {
      if (operator !== OPS.showText) return [];
      const shown = argsArray[index]?.[0] as (number | { originalCharCode: number })[];
      return shown.flatMap((glyph) => (typeof glyph === 'number' ? [] : [glyph.originalCharCode]));
    });
  });
  return pages.flat();
}

describe.each(Object.keys(references))('the reference report “%s”', (name) => {
  let pdf: PDFDocumentProxy;
  let images: PageImage[];
  beforeAll(async () => {
    const make = references[name];
    if (!make) throw new Error(`There is no reference ${name}.`);
    ({ pdf } = await printing.printSnapshot(make()));
    images = await pageImages(pdf);
  }, 120_000);

  it('looks as it was accepted', async () => {
    const accepted = (await readdir(acceptedDir)).filter((f) => f.replace(/-\d\d\.png$/, '') === name);
    const differing: string[] = [];
    for (const [index, image] of images.entries()) {
      const file = acceptedFile(name, index + 1);
      const share = await greyOf(file).then(
        (page) => Math.max(differingShare(page, image), differingShare(image, page)),
        () => 1,
      );
      if (share > 0.002) {
        differing.push(`page ${index + 1}: ${(share * 100).toFixed(2)} %`);
        await writePage(join(import.meta.dirname, '../artefacts', `${name}-${index + 1}.png`), image);
      }
    }
    expect(differing, 'look at tests/artefacts; when right: npm run accept-pages').toEqual([]);
    expect(images).toHaveLength(accepted.length);
  });

  it('has no near-empty page', () => {
    const empty = images.flatMap((image, index) => {
      const least = index === images.length - 1 ? 0.12 : 0.3;
      return usedHeight(image) < least || inkShare(image) < 0.005 ? [index + 1] : [];
    });
    expect(empty).toEqual([]);
  });

  it('has a glyph for every character', async () => {
    const shown = await glyphs(pdf);
    expect(shown.length).toBeGreaterThan(500);
    expect(shown.filter((glyph) => glyph === 0)).toEqual([]);
  });

  it('is told in full to those who can’t see it', async () => {
    const trees = await eachPage(pdf, (page) => page.getStructTree());
    const nodes = trees.flatMap((tree) => flat(tree as StructNode));
    expect(nodes.filter((node) => node.role === 'Figure' && !node.alt?.trim())).toEqual([]);
    const tables = nodes.filter((node) => node.role === 'Table');
    expect(tables.filter((table) => !flat(table).some(({ role }) => role === 'TH'))).toEqual([]);
    const { info } = await pdf.getMetadata();
    expect(info).toMatchObject({ Language: 'en', Title: expect.stringMatching(/2026-0042/) });
  });

  it('names for every link a page that is there, and the right one', async () => {
    const texts = await pageTexts(pdf);
    const links = (await eachPage(pdf, (page) => page.getAnnotations())).flat();
    for (const { dest } of links.filter((link) => typeof link.dest === 'string')) {
      const destination = await pdf.getDestination(dest as string);
      expect(destination, `the place of ${dest}`).toBeTruthy();
      const at = await pdf.getPageIndex(destination?.[0]);
      const finding = /^finding-(\d+)$/.exec(dest as string)?.[1];
      if (finding) expect(texts[at]).toMatch(new RegExp(`(^|\\s)${finding}\\s`));
    }
  });
});

it('would notice a page that differs', async () => {
  const page = { width: 40, height: 40, grey: Buffer.alloc(1600, 255) };
  const marked = { ...page, grey: Buffer.from(page.grey) };
  marked.grey.fill(0, 400, 500);
  expect(differingShare(marked, page)).toBeGreaterThan(0.002);
  expect(differingShare(page, page)).toBe(0);
});
