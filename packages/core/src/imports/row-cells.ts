import {
  columnOf,
  type FindingColumnKey,
  headingOf,
  plainWord,
  reasonHeadings,
} from '@garboard/trade/finding-columns';
import type { Sheet } from './read-sheet.ts';

/** Something to be said about a cell; the column is the heading as the sheet has it, empty for the whole row. */
export interface Remark {
  column: string;
  detail: string;
}

/** The cells of a row by what they mean. */
export interface RowCells {
  /** Trimmed text of a known column; empty when there is none. */
  cell(key: FindingColumnKey): string;
  /** Its heading as the sheet has it. */
  heading(key: FindingColumnKey): string;
  /** Cells under headings that we don't know. */
  others: { heading: string; text: string }[];
  problems: Remark[];
}

const ofReasons = new Set(reasonHeadings.map(plainWord));

/** A heading that says something about the finding, though we don't know what. */
export const isOther = (heading: string) => columnOf(heading) === null && !ofReasons.has(plainWord(heading));

/** Sorts a row's cells by their headings. */
export function rowCells({ headings }: Sheet, cells: readonly string[]): RowCells {
  const known = new Map<FindingColumnKey, { heading: string; text: string }>();
  const others: RowCells['others'] = [];
  const problems: Remark[] = [];
  for (const [at, raw] of cells.entries()) {
    const text = raw.trim();
    const heading = headings[at] ?? '';
    const key = columnOf(heading);
    if (key) known.set(key, { heading, text: raw });
    else if (text && heading && isOther(heading)) others.push({ heading, text });
    else if (text && !heading) {
      const detail =
        `“${text.slice(0, 40)}” stands under no heading. Put cells that hold the separating sign or a line break into ` +
        'quotes, or give the column a heading.';
      problems.push({ column: '', detail });
    }
  }
  return {
    // A line break at the end means that the cell is a list of one a line: see the lists of cells.
    cell: (key) => known.get(key)?.text.replace(/^\s+|[^\S\n]+$/g, '') ?? '',
    heading: (key) => known.get(key)?.heading || headingOf(key),
    others,
    problems,
  };
}

/** The parts of a cell that is a list: one a line when it has lines, else parted by these signs. */
export function listOf(cell: string, signs: RegExp): string[] {
  return cell
    .split(cell.includes('\n') ? '\n' : signs)
    .map((part) => part.trim())
    .filter(Boolean);
}
