import { createRequire } from 'node:module';
import emojiRanges from '@fontsource/noto-emoji/unicode.json' with { type: 'json' };
import arabicRanges from '@fontsource/noto-sans-arabic/unicode.json' with { type: 'json' };
import hebrewRanges from '@fontsource/noto-sans-hebrew/unicode.json' with { type: 'json' };
import symbolRanges from '@fontsource/noto-sans-symbols/unicode.json' with { type: 'json' };
import moreSymbolRanges from '@fontsource/noto-sans-symbols-2/unicode.json' with { type: 'json' };
import latinRanges from '@fontsource/source-sans-3/unicode.json' with { type: 'json' };

/** One font file of the report's typeface, as it lies in a package from npm. */
export interface ReportFont {
  /** Name of the file, unique among all of them. */
  file: string;
  /** Where it lies. */
  path: string;
  weight: 400 | 600;
  unicodeRange: string;
}

const { resolve } = createRequire(import.meta.url);

interface Family {
  name: string;
  ranges: Record<string, string>;
  subsets: readonly string[];
  /** Of those the family has; where it has no semibold, the regular stands in for it. */
  weights?: readonly (400 | 600)[];
}

// Static cuts, not the variable font of the portal: the PDF writer can only embed a variable font as drawings
// (Type 3), which is three times as large and looks worse on screen.
function cuts({ name, ranges, subsets, weights = [400, 600] }: Family): ReportFont[] {
  return subsets.flatMap((subset) =>
    weights.map((weight) => {
      const part = subset.replace(/[[\]]/g, '');
      const file = `${name}-${part}-${weight}-normal.woff2`;
      const unicodeRange = ranges[subset];
      if (!unicodeRange) throw new Error(`The package of ${name} has no ${subset} subset.`);
      return { file, path: resolve(`@fontsource/${name}/files/${file}`), weight, unicodeRange };
    }),
  );
}

/**
 * Every font file a report may use; the browser loads only those whose characters occur. Where two have a character
 * the later is taken, so the text face comes last.
 */
export const reportFonts: readonly ReportFont[] = [
  { name: 'noto-emoji', ranges: emojiRanges, subsets: Object.keys(emojiRanges) },
  {
    name: 'noto-sans-symbols-2',
    ranges: moreSymbolRanges,
    subsets: ['math', 'symbols'],
    weights: [400] as const,
  },
  { name: 'noto-sans-symbols', ranges: symbolRanges, subsets: ['symbols'] },
  { name: 'noto-sans-hebrew', ranges: hebrewRanges, subsets: ['hebrew'] },
  { name: 'noto-sans-arabic', ranges: arabicRanges, subsets: ['arabic'] },
  {
    name: 'source-sans-3',
    ranges: latinRanges,
    subsets: ['latin-ext', 'vietnamese', 'greek-ext', 'greek', 'cyrillic-ext', 'cyrillic', 'latin'],
  },
].flatMap(cuts);
