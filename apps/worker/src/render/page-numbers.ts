import { readFile } from 'node:fs/promises';
import { PDFArray, PDFDict, PDFDocument, PDFName, PDFRef } from 'pdf-lib';
import type { Page } from 'puppeteer';

/**
 * Writes into each element with `data-page-of="id"` the number of the page on which the element with that id lands.
 * Chromium has no `target-counter()`, so the document is laid out once with nothing painted, which takes a tenth of
 * the time and takes up as much room, and the pages are read from the destinations of its links.
 *
 * @returns the number of pages, or undefined when the document asks for no page numbers.
 */
export async function fillPageNumbers(page: Page): Promise<number | undefined> {
  if ((await page.$('[data-page-of]')) === null) return undefined;
  const unseen = await page.addStyleTag({ content: '* { visibility: hidden !important; }' });
  const pdf = await page.pdf({ preferCSSPageSize: true, tagged: false, timeout: 0 });
  const draft = await PDFDocument.load(pdf, { updateMetadata: false });
  await page.evaluate(
    (style, pages) => {
      style.parentNode?.removeChild(style);
      for (const element of document.querySelectorAll<HTMLElement>('[data-page-of]')) {
        element.textContent = String(pages[element.dataset.pageOf ?? ''] ?? '');
      }
    },
    unseen,
    pagesOfDestinations(draft),
  );
  return draft.getPageCount();
}

/** The number of pages of a PDF that is small enough to be read whole. */
export async function countPages(path: string): Promise<number> {
  return (await PDFDocument.load(await readFile(path), { updateMetadata: false })).getPageCount();
}

/** Page numbers from 1 by the name of the destination, which is the element's id. */
function pagesOfDestinations(document: PDFDocument): Record<string, number> {
  const numbers = new Map(document.getPages().map((page, index) => [page.ref.toString(), index + 1]));
  const destinations = document.catalog.lookupMaybe(PDFName.of('Dests'), PDFDict);
  return Object.fromEntries(
    (destinations?.entries() ?? []).flatMap(([name, value]) => {
      const target = document.context.lookupMaybe(value, PDFArray)?.get(0);
      const number = target instanceof PDFRef ? numbers.get(target.toString()) : undefined;
      return number === undefined ? [] : [[name.decodeText(), number]];
    }),
  );
}
