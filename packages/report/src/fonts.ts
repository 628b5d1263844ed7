import { createRequire } from 'node:module';
import arabicRanges from '@fontsource/noto-sans-arabic/unicode.json' with { type: 'json' };
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
const weights = [400, 600] as const;

// Static cuts, not the variable font of the portal: the PDF writer can only embed a variable font as drawings
// (Type 3), which is three times as large and looks worse on screen.
function cuts(family: string, ranges: Record<string, string>, subsets: readonly string[]): ReportFont[] {
  return subsets.flatMap((subset) =>
    weights.map((weight) => {
      const file = `${family}-${subset}-${weight}-normal.woff2`;
      const unicodeRange = ranges[subset];
      if (!unicodeRange) throw new Error(`The package of ${family} has no ${subset} subset.`);
      return { file, path: resolve(`@fontsource/${family}/files/${file}`), weight, unicodeRange };
    }),
  );
}

/** Every font file a report may use; the browser loads only those whose characters occur. */
export const reportFonts: readonly ReportFont[] = [
  ...cuts('source-sans-3', latinRanges, [
    'latin',
    'latin-ext',
    'vietnamese',
    'greek',
    'greek-ext',
    'cyrillic',
    'cyrillic-ext',
  ]),
  ...cuts('noto-sans-arabic', arabicRanges, ['arabic']),
];
