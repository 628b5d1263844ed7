import type { ReportSnapshot, SnapshotFinding } from '@garboard/contract/report-snapshot';
import { findingStateLabels, harmLabels, systemLabels, urgencyLabels } from '@garboard/trade/vocabulary';

type Cell = string | number | null;

/** The columns of the table, with what stands in each. Amounts are in the currency's usual unit. */
const columns: readonly (readonly [heading: string, cell: (f: SnapshotFinding) => Cell])[] = [
  ['number', (f) => f.number],
  ['system', (f) => systemLabels[f.system]],
  ['title', (f) => f.title],
  ['observed', (f) => f.observed],
  ['consequence', (f) => f.consequence],
  ['recommendation', (f) => f.recommendation],
  ['urgency', (f) => urgencyLabels[f.urgency]],
  ['within_days', (f) => f.withinDays],
  ['due_on', (f) => f.dueOn],
  ['harms', (f) => f.harms.map((harm) => harmLabels[harm]).join('; ')],
  ['references', (f) => f.references.join('; ')],
  ['photos', (f) => f.photos.length],
  ['state', (f) => findingStateLabels[f.state]],
  ['work_done_by', (f) => f.clearance?.workDoneBy ?? null],
  ['work_done_on', (f) => f.clearance?.workDoneOn ?? null],
  ['cost_low', (f) => amount(f.cost?.low, f.cost?.currency)],
  ['cost_high', (f) => amount(f.cost?.high, f.cost?.currency)],
  ['currency', (f) => f.cost?.currency ?? null],
];

/**
 * The findings of a document as CSV (RFC 4180): UTF-8 with a mark of it at the start, which spreadsheets need, and
 * texts that a spreadsheet would take for a formula made harmless by an apostrophe before them.
 */
export function findingsCsv(snapshot: Pick<ReportSnapshot, 'findings'>): string {
  const rows: Cell[][] = [
    columns.map(([heading]) => heading),
    ...snapshot.findings.map((finding) => columns.map(([, cell]) => cell(finding))),
  ];
  return `\ufeff${rows.map((row) => `${row.map(written).join(',')}\r\n`).join('')}`;
}

function written(cell: Cell): string {
  if (cell === null) return '';
  if (typeof cell === 'number') return String(cell);
  // A line break inside a cell is allowed by quoting; a formula begins with one of these, after blanks or not.
  const text = /^\s*[=+\-@]|^[\t\r\n]/.test(cell) ? `'${cell}` : cell;
  return /[",\r\n]/.test(text) || text !== text.trim() ? `"${text.replaceAll('"', '""')}"` : text;
}

function amount(minor: number | undefined, currency: string | undefined): number | null {
  if (minor === undefined || currency === undefined) return null;
  const digits = new Intl.NumberFormat('en', { style: 'currency', currency }).resolvedOptions()
    .maximumFractionDigits;
  return minor / 10 ** (digits ?? 2);
}
