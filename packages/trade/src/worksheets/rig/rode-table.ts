/** Wind in knots for which the table gives loads. */
export type RodeWind = '15' | '30' | '42' | '60';
export type ChainGrade = 'G30' | 'G43' | 'G70';
export type ShackleSteel = 'carbon' | 'alloy';

/** Boat lengths of the table, in ft. */
export const loadLengths = [20, 25, 30, 35, 40, 50, 60, 70] as const;

/** Beams of the same columns, in ft; none is given for the last. From memory. */
const beams = { sail: [7, 8, 9, 10, 11, 13, 15], power: [8, 9, 11, 13, 14, 16, 18] };

/** Horizontal load on an anchored boat in lbf, by wind and column of boat length. ABYC H-40 as reprinted. */
export const horizontalLoads: Record<RodeWind, readonly number[]> = {
  '15': [90, 125, 175, 225, 300, 400, 500, 675],
  '30': [360, 490, 700, 900, 1200, 1600, 2000, 2700],
  '42': [720, 980, 1400, 1800, 2400, 3200, 4000, 5400],
  '60': [1440, 1960, 2800, 3600, 4800, 6400, 8000, 10_800],
};

/**
 * The column a boat falls in: by length or beam (ft), whichever is larger, stepping up between columns; one further
 * for more windage than usual. Undefined when the table is not that large.
 */
export function loadColumn(boat: {
  length: number;
  beam?: number;
  kind: 'sail' | 'power';
  highWindage: boolean;
}): number | undefined {
  const byLength = loadLengths.findIndex((length) => boat.length <= length);
  const beam = boat.beam;
  const byBeam = beam === undefined ? 0 : beams[boat.kind].findIndex((wide) => beam <= wide);
  if (byLength < 0 || byBeam < 0) return undefined;
  const column = Math.max(byLength, byBeam) + (boat.highWindage ? 1 : 0);
  return column < loadLengths.length ? column : undefined;
}

/** Working load limits of chain in lbf by trade size in inches. NACM 2003 and ASTM, as a supplier prints them. */
export const chainLimits: Record<ChainGrade, Partial<Record<string, number>>> = {
  G30: {
    '1/8 in': 400,
    '3/16 in': 800,
    '1/4 in': 1300,
    '5/16 in': 1900,
    '3/8 in': 2650,
    '7/16 in': 3700,
    '1/2 in': 4500,
    '5/8 in': 6900,
    '3/4 in': 10_600,
    '1 in': 17_900,
  },
  G43: {
    '1/4 in': 2600,
    '5/16 in': 3900,
    '3/8 in': 5400,
    '7/16 in': 7200,
    '1/2 in': 9200,
    '5/8 in': 13_000,
    '3/4 in': 20_200,
    '1 in': 30_000,
  },
  G70: {
    '1/4 in': 3150,
    '5/16 in': 4700,
    '3/8 in': 6600,
    '7/16 in': 8750,
    '1/2 in': 11_300,
    '5/8 in': 15_800,
    '3/4 in': 24_700,
  },
};

/** Breaking load of chain over its working load limit. */
export const chainBreaking: Record<ChainGrade, number> = { G30: 4, G43: 3, G70: 4 };

/** Working load limits of forged shackles in short tons by trade size in inches. */
export const shackleLimits: Record<ShackleSteel, Partial<Record<string, number>>> = {
  carbon: {
    '3/16 in': 1 / 3,
    '1/4 in': 0.5,
    '5/16 in': 0.75,
    '3/8 in': 1,
    '7/16 in': 1.5,
    '1/2 in': 2,
    '5/8 in': 3.25,
    '3/4 in': 4.75,
    '7/8 in': 6.5,
    '1 in': 8.5,
  },
  alloy: { '3/8 in': 2, '1/2 in': 3.3, '5/8 in': 5 },
};

/** Least breaking strength of three-strand nylon in lbf by trade size in inches. */
export const nylonBreaking: Record<string, number> = {
  '1/4 in': 1486,
  '5/16 in': 2295,
  '3/8 in': 3240,
  '7/16 in': 4320,
  '1/2 in': 5670,
  '9/16 in': 7200,
  '5/8 in': 8910,
  '3/4 in': 12_780,
  '7/8 in': 17_280,
  '1 in': 22_230,
};

const choicesOf = (sizes: readonly string[]): Record<string, string> =>
  Object.fromEntries(sizes.map((size) => [size, size]));
export const chainSizes = choicesOf(Object.keys(chainLimits.G30));
export const shackleSizes = choicesOf(Object.keys(shackleLimits.carbon));
export const nylonSizes = choicesOf(Object.keys(nylonBreaking));
