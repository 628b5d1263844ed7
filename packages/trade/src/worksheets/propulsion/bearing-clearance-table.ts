import type { Source } from '../core/worksheet.ts';

/** What one table says of a water-lubricated bearing, in inches across the diameter. */
export interface ClearanceTable {
  words: string;
  /** Fit of a new bearing for a shaft of so many inches; least, and greatest where the table gives it. */
  newFit?: (shaftIn: number) => { least: number; most?: number };
  /** Play at which it is over, for a shaft of so many inches. */
  limit?: (shaftIn: number) => number;
  /** Smallest and largest shaft (in) the table has rows for; between rows, a straight line. */
  covers?: [number, number];
  source: Source;
}

type Row = [shaftIn: number, value: number];

/** Straight line between the printed rows; the ends beyond them (which `covers` keeps out of use). */
function between(rows: readonly Row[], at: number): number {
  const upper = rows.findIndex(([shaft]) => shaft >= at);
  if (upper <= 0) return (upper === 0 ? rows[0] : rows.at(-1))?.[1] ?? Number.NaN;
  const [x0, y0] = rows[upper - 1] as Row;
  const [x1, y1] = rows[upper] as Row;
  return y0 + ((y1 - y0) * (at - x0)) / (x1 - x0);
}

const guideLeast: Row[] = [
  [1, 0.003],
  [1.5, 0.004],
  [2, 0.005],
  [2.5, 0.005],
];
const guideMost: Row[] = [
  [1, 0.008],
  [1.5, 0.009],
  [2, 0.01],
  [2.5, 0.011],
];
const navalLeast: Row[] = [
  [1, 0.015],
  [1.5, 0.016],
];

/**
 * Clearances as they are printed or quoted. They conflict outright: a play that one calls too tight another calls
 * worn out. None is a law for yachts, so the surveyor chooses and the others are shown beside it.
 */
export const clearanceTables = {
  'quoted-guide': {
    words: 'Quoted guide for rubber bearings, least and most (1 to 2½ in)',
    newFit: (d) => ({ least: between(guideLeast, d), most: between(guideMost, d) }),
    limit: (d) => between(guideMost, d),
    covers: [1, 2.5],
    source: {
      citation:
        'Bearing clearances 0.003–0.008 in (1 in), 0.004–0.009 (1.5 in), 0.005–0.010 (2 in), 0.005–0.011 (2.5 in)',
      standing: 'secondary',
      note: '1 in row: a bearing maker’s technical desk, quoted in yachtforums thread 6847; the rest quoted in a forum as the ABYC guide, trawlerforum post 984400; between rows interpolated',
    },
  },
  'per-inch': {
    words: '0.001 to 0.002 in per inch of shaft when new; renew at 1/32 in',
    newFit: (d) => ({ least: 0.001 * d, most: 0.002 * d }),
    limit: () => 1 / 32,
    source: {
      citation: '0.001–0.002 in per inch of shaft when new, change at about 1/32 in',
      standing: 'secondary',
      note: 'an engineer’s practice, sailnet thread 76994 (forum)',
    },
  },
  'share-2.5': {
    words: 'Renew near 2.5% of the shaft’s diameter',
    limit: (d) => 0.025 * d,
    source: {
      citation: 'Renew when play approaches 2.5% of the shaft’s diameter',
      standing: 'secondary',
      note: 'ybw thread 144416 (forum)',
    },
  },
  'rough-1.5': {
    words: 'Renew at about 1.5 mm, whatever the shaft',
    limit: () => 1.5 / 25.4,
    source: {
      citation: 'About 1.5 mm as a rough guide for leisure craft',
      standing: 'secondary',
      note: 'ybw thread 144416 (forum)',
    },
  },
  'share-5': {
    words: 'Renew at 5% of the shaft’s diameter',
    limit: (d) => 0.05 * d,
    source: {
      citation: 'Renew at about 5% of the shaft’s diameter',
      standing: 'practice',
      note: 'common practice, no source',
    },
  },
  'naval-least': {
    words: 'Older naval least operating clearance (1 to 1½ in), no upper limit',
    newFit: (d) => ({ least: between(navalLeast, d) }),
    covers: [1, 1.5],
    source: {
      citation: 'Least operating clearance 0.015 in (1 in), 0.016 in (1.5 in)',
      standing: 'secondary',
      note: 'US naval table quoted in marineengine thread 398547 (forum); looser than newer tables',
    },
  },
} as const satisfies Record<string, ClearanceTable>;

export type ClearanceTableKey = keyof typeof clearanceTables;

export const clearanceTableOf = (key: ClearanceTableKey): ClearanceTable => clearanceTables[key];

/** Whether a table has rows for a shaft of so many inches. */
export const coversShaft = (table: ClearanceTable, shaftIn: number): boolean =>
  table.covers === undefined || (shaftIn >= table.covers[0] && shaftIn <= table.covers[1]);
