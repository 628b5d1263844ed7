import { reportFonts } from '@garboard/report/fonts';
import type { ReportFile } from './print-report.ts';

/** The font files to lie beside the HTML of a report. */
export const reportFontFiles: readonly ReportFile[] = reportFonts.map(({ file, path }) => ({
  name: file,
  path,
}));

/** The addresses of those files as the HTML refers to them: their names. */
export const reportFontUrls: Readonly<Record<string, string>> = Object.fromEntries(
  reportFonts.map(({ file }) => [file, file]),
);
