import type { ReportSnapshot } from '@garboard/contract/report-snapshot';
import { reportFonts } from '../fonts.ts';
import { shortened } from '../format.ts';

/**
 * Text as a CSS string. Everything but plain letters, digits and spaces is written as an escape, so that no text
 * can end the string, the rule or the style element.
 */
export function cssString(text: string): string {
  const safe = [...text].map((character) =>
    /^[A-Za-z0-9 ]$/.test(character) ? character : `\\${character.codePointAt(0)?.toString(16)} `,
  );
  return `"${safe.join('')}"`;
}

/**
 * The faces of the report's type.
 * @throws Error when a font file has no address.
 */
export function fontFaces(fontUrls: Readonly<Record<string, string>>): string {
  return reportFonts
    .map(({ file, weight, unicodeRange }) => {
      const url = fontUrls[file];
      if (url === undefined) throw new Error(`renderReport needs the address of the font file ${file}.`);
      return `@font-face{font-family:Report;font-weight:${weight};src:url(${cssString(url)}) format("woff2");unicode-range:${unicodeRange}}`;
    })
    .join('\n');
}

// The same width for the text, 172 mm, on both.
const margins = { A4: '25mm 18mm 21mm 20mm', Letter: '25mm 20.9mm 21mm 23mm' };
/** Room between the margins of a first page, whose upper margin is 20 mm; less a millimetre for rounding. */
const coverHeight = { A4: '255mm', Letter: '237mm' };
/** The boat in profile shares a page with the rest of the summary. */
const profileHeight = { A4: '64mm', Letter: '46mm' };

/** What stands around the text of a document. */
export interface PageWords {
  paper: 'A4' | 'Letter';
  /** The running head, from the second page on. */
  left: string;
  right: string;
  foot: string;
  /** Whether the first page has its number too. */
  numbersFirst: boolean;
}

/** Paper, margins, running heads and page numbers of a report. */
export const pageBoxes = (snapshot: ReportSnapshot): string =>
  pagesWith({
    paper: snapshot.paper,
    left: shortened(snapshot.vessel.name, 60),
    right: `Survey ${snapshot.survey.number}, revision ${snapshot.revision}`,
    foot: shortened(snapshot.firm.name, 70),
    numbersFirst: !('worksheets' in snapshot),
  });

/** The same for any document of ours. */
export function pagesWith({ paper, left, right, foot, numbersFirst }: PageWords): string {
  const count = 'content:"Page " counter(page) " of " counter(pages)';
  return `
:root { --cover: ${coverHeight[paper]}; --profile: ${profileHeight[paper]}; }
@page {
  size: ${paper};
  margin: ${margins[paper]};
  @top-left { content: ${cssString(left)}; vertical-align: bottom; padding-bottom: 5mm; font: 600 8.5pt Report, sans-serif; color: #10202f; }
  @top-right { content: ${cssString(right)}; vertical-align: bottom; padding-bottom: 5mm; font: 400 8.5pt Report, sans-serif; color: #10202f; }
  @bottom-left { content: ${cssString(foot)}; vertical-align: top; padding-top: 5mm; font: 400 8.5pt Report, sans-serif; color: #10202f; }
  @bottom-right { ${count}; vertical-align: top; padding-top: 5mm; font: 400 8.5pt Report, sans-serif; color: #10202f; }
}
@page :first {
  margin-top: 20mm;
  @top-left { content: none; }
  @top-right { content: none; }
  @bottom-left { content: none; }
  ${numbersFirst ? '' : '@bottom-right { content: none; }'}
}`;
}
