import type { Finding } from '@garboard/contract/findings';
import { decimalsOf } from '@garboard/trade/costs';
import { type FindingColumnKey, findingColumns, reasonHeadings } from '@garboard/trade/finding-columns';
import { systemLabels } from '@garboard/trade/vocabulary';
import { stringify } from 'csv-stringify/sync';
import type { Ctx } from '../context.ts';
import { listFindings } from '../findings/list-findings.ts';
import { loadSurvey } from '../surveys/load-survey.ts';
import { authoriseImport, isOpen, loadImport, outcomeOf, sheetOf } from './load-import.ts';
import { planImport } from './plan-import.ts';
import { guardedCell } from './read-sheet.ts';

/** A file made on the spot. */
export interface MadeSheet {
  text: string;
  mediaType: string;
  fileName: string;
}

/** UTF-8 with the mark that spreadsheets need, and CRLF at line ends, as our other lists have them. */
function sheet(fileName: string, rows: readonly (readonly string[])[]): MadeSheet {
  const cells = rows.map((row) => row.map(guardedCell));
  // By itself it puts only the line ends of records into quotes, not those within a cell.
  const text = stringify(cells, { bom: true, record_delimiter: '\r\n', quoted_match: /[\r\n]/ });
  return { text, mediaType: 'text/csv; charset=utf-8; header=present', fileName };
}

const headings = findingColumns.map(({ heading }) => heading);

/** A sheet to begin from: every column, and one finding. */
export const sampleSheet = (): MadeSheet =>
  sheet('findings-sample.csv', [headings, findingColumns.map(({ example }) => example)]);

export type WritableFinding = Pick<
  Finding,
  | 'system'
  | 'title'
  | 'observed'
  | 'consequence'
  | 'recommendation'
  | 'urgency'
  | 'withinDays'
  | 'dueOnSet'
  | 'harms'
  | 'references'
  | 'catalogueKey'
  | 'catalogueVersion'
  | 'position'
  | 'cost'
  | 'grading'
> & { items: readonly { text: string }[]; photos: readonly string[] };

/** Findings as a sheet that is read back as the same findings. */
export function findingsSheet(fileName: string, findings: readonly WritableFinding[]): MadeSheet {
  return sheet(fileName, [
    headings,
    ...findings.map((finding) => findingColumns.map(({ key }) => cells[key](finding))),
  ]);
}

/** A list in one cell: parted by semicolons, or one a line where a part holds one. */
function listed(parts: readonly string[]): string {
  if (!parts.some((part) => part.includes(';'))) return parts.join('; ');
  return parts.length === 1 ? `${parts[0]}\n` : parts.join('\n');
}

const amount = (minor: number | undefined, currency: string | undefined): string => {
  if (minor === undefined || currency === undefined) return '';
  const decimals = decimalsOf(currency);
  return (minor / 10 ** decimals).toFixed(decimals);
};

const cells: Record<FindingColumnKey, (finding: WritableFinding) => string> = {
  title: (f) => f.title,
  system: (f) => systemLabels[f.system],
  observed: (f) => f.observed,
  consequence: (f) => f.consequence,
  recommendation: (f) => f.recommendation,
  urgency: (f) => f.urgency,
  days: (f) => String(f.withinDays ?? ''),
  dueBy: (f) => f.dueOnSet ?? '',
  location: () => '',
  side: (f) => f.position?.side ?? '',
  along: (f) => String(f.position?.along ?? ''),
  height: (f) => String(f.position?.height ?? ''),
  harms: (f) => f.harms.join('; '),
  standards: (f) => listed(f.references),
  photos: (f) => (f.photos.length > 1 ? f.photos.join('\n') : (f.photos[0] ?? '')),
  items: (f) => listed(f.items.map(({ text }) => text)),
  catalogueKey: (f) => f.catalogueKey ?? '',
  catalogueVersion: (f) => String(f.catalogueVersion ?? ''),
  costFrom: (f) => amount(f.cost?.low, f.cost?.currency),
  costTo: (f) => amount(f.cost?.high, f.cost?.currency),
  currency: (f) => f.cost?.currency ?? '',
  costBasis: (f) => f.cost?.basis ?? '',
  costNote: (f) => f.cost?.note ?? '',
  severity: (f) => String(f.grading?.severity ?? ''),
  probability: (f) => f.grading?.probability ?? '',
};

/** The findings of a survey as a sheet. @throws Refusal `not-found`, `not-allowed` */
export async function surveySheet(ctx: Ctx, surveyId: string): Promise<MadeSheet> {
  const survey = await loadSurvey(ctx, surveyId);
  authoriseImport(ctx, survey);
  const findings: Finding[] = [];
  for (let cursor: string | undefined; ; ) {
    const page = await listFindings(ctx, { surveyId, limit: 200, cursor });
    findings.push(...page.items);
    if (page.next === null) break;
    cursor = page.next;
  }
  const photos = await ctx.tx.photo.findMany({ where: { surveyId }, select: { id: true, fileName: true } });
  const nameOf = new Map(photos.map(({ id, fileName }) => [id, fileName]));
  return findingsSheet(
    `findings-${survey.number}.csv`,
    findings.map((finding) => ({
      ...finding,
      photos: finding.photoIds.flatMap((id) => nameOf.get(id) ?? []),
    })),
  );
}

/** Rows of an import that can't become findings, or didn't, each with its line and the reasons. @throws Refusal `not-found` */
export async function leftOutSheet(ctx: Ctx, id: string): Promise<MadeSheet> {
  const { row, survey } = await loadImport(ctx, id);
  const { headings: own, rows } = sheetOf(row);
  const judged = isOpen(row)
    ? (await planImport(ctx, row, survey)).rows.filter(({ finding, there }) => !finding && !there)
    : outcomeOf(row).filter(({ findingId }) => findingId === null);
  const reasons = new Map(
    judged.map(({ line, problems }) => [
      line,
      problems.map(({ column, detail }) => (column ? `${column}: ${detail}` : detail)).join('\n'),
    ]),
  );
  const left = rows.filter(({ line }) => reasons.has(line));
  return sheet(`left-out-of-${row.fileName.replace(/\.\w+$/, '')}.csv`, [
    [...reasonHeadings, ...own],
    ...left.map(({ line, cells: told }) => [String(line), reasons.get(line) ?? '', ...told]),
  ]);
}
