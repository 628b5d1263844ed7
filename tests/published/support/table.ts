import { worksheetGroupLabels } from '@garboard/trade/vocabulary';
import type { AnyWorksheet } from '@garboard/trade/worksheets/core/worksheet';
import { findWorksheet } from '@garboard/trade/worksheets/registry';
import type { Check, CheckedWorksheet } from './check.ts';

export const startMark = '<!-- worksheets: made by tests/published/write-table.ts -->';
export const endMark = '<!-- /worksheets -->';

const oneLine = (text: string) => text.replaceAll(/[*_<>|]/g, '\\$&').replaceAll('\n', ' ');
const count = (checks: Check[], basis: Check['basis']) => checks.filter((c) => c.basis === basis).length;

const standingWords = {
  printed: '',
  secondary: ' (as quoted elsewhere)',
  memory: ' (from memory)',
  practice: ' (practice)',
} as const;

const sourcesOf = (worksheet: AnyWorksheet) =>
  worksheet.sources.map((s) => s.citation + standingWords[s.standing]).join('; ');

function citedBy({ kind, checks }: CheckedWorksheet, worksheet: AnyWorksheet): string[] {
  const printed = [...new Set(checks.filter((c) => c.basis === 'printed').map((c) => c.source))];
  return [
    `- \`${kind}\`: ${oneLine(sourcesOf(worksheet))}.`,
    `  - Printed figures from: ${oneLine(printed.join('; ')) || 'none found in print'}.`,
  ];
}

/** A table with its columns made even, as the formatter would. */
function evenTable(head: string[], rows: string[][]): string[] {
  const widths = head.map((cell, at) => Math.max(cell.length, ...rows.map((row) => (row[at] ?? '').length)));
  const line = (cells: string[]) =>
    `| ${cells.map((cell, at) => cell.padEnd(widths[at] ?? 0)).join(' | ')} |`;
  return [line(head), `| ${widths.map((width) => '-'.repeat(width)).join(' | ')} |`, ...rows.map(line)];
}

function fromMemory(worksheet: AnyWorksheet): string[] {
  return worksheet.sources
    .filter((s) => s.standing === 'memory' || s.standing === 'practice')
    .map(
      (s) =>
        `${s.standing === 'memory' ? 'From memory' : 'Practice'}: ${s.citation}${s.note ? ` (${s.note})` : ''}`,
    );
}

/** Every worksheet with its sources and checks, and apart from them what stays unverified, as Markdown. */
export function worksheetTable(checked: readonly CheckedWorksheet[]): string {
  const all = checked.map((entry) => {
    const worksheet = findWorksheet(entry.kind);
    if (!worksheet) throw new Error(`no worksheet ${entry.kind}`);
    return { entry, worksheet };
  });
  const totals = (['printed', 'computed', 'edge'] as const).map((basis) =>
    all.reduce((sum, { entry }) => sum + count(entry.checks, basis), 0),
  );
  const lines = [
    startMark,
    '',
    `${all.length} worksheets; ${totals[0]} checks against printed figures, ${totals[1]} against figures worked from the`,
    `source's formula by hand or by another program, ${totals[2]} at the limits of bands.`,
    '',
  ];
  for (const [group, label] of Object.entries(worksheetGroupLabels)) {
    const inGroup = all.filter(({ worksheet }) => worksheet.group === group);
    if (inGroup.length === 0) continue;
    const counts = inGroup.map(({ entry: { kind, checks }, worksheet }) => [
      `\`${kind}\``,
      String(worksheet.version),
      ...(['printed', 'computed', 'edge'] as const).map((basis) => String(count(checks, basis))),
    ]);
    lines.push(
      `#### ${label}`,
      '',
      ...evenTable(['Kind', 'Version', 'Printed', 'Computed', 'Edge'], counts),
      '',
      ...inGroup.flatMap(({ entry, worksheet }) => citedBy(entry, worksheet)),
      '',
    );
  }
  lines.push('#### From memory, by practice, unverified', '');
  for (const { entry, worksheet } of all) {
    const notes = [...fromMemory(worksheet), ...(entry.unverified ?? [])];
    if (notes.length > 0) lines.push(`- \`${entry.kind}\``, ...notes.map((note) => `  - ${oneLine(note)}`));
  }
  lines.push('', endMark);
  return lines.join('\n');
}
