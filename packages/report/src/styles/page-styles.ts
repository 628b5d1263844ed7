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

/** Paper, margins, running heads and page numbers. */
export function pageBoxes(snapshot: ReportSnapshot): string {
  const vessel = cssString(shortened(snapshot.vessel.name, 60));
  const survey = cssString(`Survey ${snapshot.survey.number}, revision ${snapshot.revision}`);
  const firm = cssString(shortened(snapshot.firm.name, 70));
  const count = 'content:"Page " counter(page) " of " counter(pages)';
  const isLetter = !('worksheets' in snapshot);
  return `
:root { --cover: ${coverHeight[snapshot.paper]}; --profile: ${profileHeight[snapshot.paper]}; }
@page {
  size: ${snapshot.paper};
  margin: ${margins[snapshot.paper]};
  @top-left { content: ${vessel}; vertical-align: bottom; padding-bottom: 5mm; font: 600 8.5pt Report, sans-serif; color: #10202f; }
  @top-right { content: ${survey}; vertical-align: bottom; padding-bottom: 5mm; font: 400 8.5pt Report, sans-serif; color: #10202f; }
  @bottom-left { content: ${firm}; vertical-align: top; padding-top: 5mm; font: 400 8.5pt Report, sans-serif; color: #10202f; }
  @bottom-right { ${count}; vertical-align: top; padding-top: 5mm; font: 400 8.5pt Report, sans-serif; color: #10202f; }
}
@page :first {
  margin-top: 20mm;
  @top-left { content: none; }
  @top-right { content: none; }
  @bottom-left { content: none; }
  ${isLetter ? '' : '@bottom-right { content: none; }'}
}`;
}
