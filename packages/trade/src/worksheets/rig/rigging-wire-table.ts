import { Quantity } from '../core/quantity.ts';
import type { Unit } from '../core/units.ts';

/** Grades of stainless wire; where the grade is not known the weaker one is taken. */
export type WireGrade = '302-304' | '316' | 'unknown';

/** A breaking load as far as it could be traced. */
export interface WireStrength {
  size: string;
  strength: Quantity;
  /** `seen` in public print, `disputed` where two prints differ, `memory` not seen at all. */
  standing: 'seen' | 'disputed' | 'memory';
  note: string;
}

type Cell = [value: number, standing: WireStrength['standing'], note: string];
interface Row {
  size: string;
  mm: number;
  unit: Unit;
  steel304?: Cell;
  steel316?: Cell;
}

const memory = (value: number): Cell => [value, 'memory', 'value from memory'];
const seen = (value: number, note: string): Cell => [value, 'seen', note];
const inch = (size: string, inches: number, steel304: Cell, steel316: Cell): Row => ({
  size: `${size} in`,
  mm: inches * 25.4,
  unit: 'lbf',
  steel304,
  steel316,
});
const metric = (mm: number, kgf: number, note: string): Row => ({
  size: `${mm} mm`,
  mm,
  unit: 'kgf',
  steel316: seen(kgf, `${note}; the alloy is not stated there and agrees by size with 316`),
});

/** Breaking loads of stainless 1x19 strand, as far as public print could be found (see each cell's note). */
const rows: readonly Row[] = [
  inch('1/16', 1 / 16, seen(500, 'printed at 0685.com'), seen(480, 'printed at 0685.com')),
  inch('3/32', 3 / 32, memory(1200), memory(1100)),
  metric(3, 720, 'printed in a sailing forum (catsailor 86102)'),
  inch('1/8', 1 / 8, memory(2100), memory(1780)),
  inch('5/32', 5 / 32, memory(3300), memory(2800)),
  metric(4, 1285, 'printed in a sailing forum (catsailor 86102)'),
  inch(
    '3/16',
    3 / 16,
    [4700, 'disputed', 'one print gives 4,700 lb and another 3,960 lb (both quoted at capedory.org 27486)'],
    memory(4000),
  ),
  metric(5, 2000, 'printed at mitron.se'),
  inch('7/32', 7 / 32, memory(6300), memory(5350)),
  inch(
    '1/4',
    1 / 4,
    seen(8200, 'printed in a sailing forum (ericsonyachts 13231)'),
    seen(6900, 'printed in a sailing forum (ericsonyachts 13231)'),
  ),
  metric(7, 3500, 'printed at mitron.se'),
  inch('9/32', 9 / 32, memory(10_300), memory(8700)),
  inch('5/16', 5 / 16, memory(12_500), memory(10_600)),
  inch('3/8', 3 / 8, memory(17_500), memory(14_800)),
];

/** A calliper reading this close to a size is that size. */
const tolerance = 0.01;

/**
 * The usual breaking load of new 1x19 stainless wire of a grade, for a diameter in mm within 1 % of a size the table
 * has; undefined otherwise. Sizes are never interpolated.
 */
export function usualBreakingLoad(diameter: number, grade: WireGrade): WireStrength | undefined {
  let best: WireStrength | undefined;
  let nearest = tolerance;
  for (const row of rows) {
    const cell = grade === '302-304' ? row.steel304 : row.steel316;
    const apart = Math.abs(diameter - row.mm) / row.mm;
    if (!cell || apart > nearest + 1e-9) continue;
    const [value, standing, note] = cell;
    nearest = apart;
    best = { size: row.size, strength: new Quantity(value, row.unit), standing, note };
  }
  return best;
}
