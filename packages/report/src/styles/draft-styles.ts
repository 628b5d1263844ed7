import type { ReportSnapshot } from '@garboard/contract/report-snapshot';
import { writtenDayOf } from '../format.ts';
import { cssString } from './page-styles.ts';

/**
 * Marks every page of a draft, so that no copy of it passes for a report: words in the running head, the first
 * page's too, and a large outline across the page, light enough to read through. Nothing for an issued document.
 */
export function draftStyles({ preview, survey, frozenAt, timeZone }: ReportSnapshot): string {
  if (!preview) return '';
  const head = `content: ${cssString(`Draft of ${writtenDayOf(frozenAt, timeZone)}, survey ${survey.number}, not issued`)}`;
  const type =
    'vertical-align: bottom; padding-bottom: 5mm; font: 600 8.5pt Report, sans-serif; color: #10202f;';
  return `
@page { @top-right { ${head}; ${type} } }
@page :first { @top-right { ${head}; ${type} } @bottom-right { content: "Page " counter(page) " of " counter(pages); } }
body::after {
  content: "Draft" / "";
  position: fixed; inset: 0; z-index: 1;
  display: flex; align-items: center; justify-content: center;
  font: 600 62mm/1 Report, sans-serif;
  color: transparent; -webkit-text-stroke: 0.35mm #aab0b6;
  transform: rotate(-52deg);
}`;
}
