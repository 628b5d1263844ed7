/** 33 CFR 183.425, Table 5: allowable amperes of insulated stranded copper, by AWG size and insulation rating in °C. */
const amperes = {
  '18 AWG': [10, 10, 15, 20, 20, 25, 25],
  '16 AWG': [15, 15, 20, 25, 25, 30, 35],
  '14 AWG': [20, 20, 25, 30, 35, 40, 45],
  '12 AWG': [25, 25, 35, 40, 45, 50, 55],
  '10 AWG': [40, 40, 50, 55, 60, 70, 70],
  '8 AWG': [55, 65, 70, 70, 80, 90, 100],
  '6 AWG': [80, 95, 100, 100, 120, 125, 135],
  '4 AWG': [105, 125, 130, 135, 160, 170, 180],
  '3 AWG': [120, 145, 150, 155, 180, 195, 210],
  '2 AWG': [140, 170, 175, 180, 210, 225, 240],
  '1 AWG': [165, 195, 210, 210, 245, 265, 280],
  '1/0 AWG': [195, 230, 245, 245, 285, 305, 325],
  '2/0 AWG': [225, 265, 285, 285, 330, 355, 370],
  '3/0 AWG': [260, 310, 330, 330, 385, 410, 430],
  '4/0 AWG': [300, 360, 385, 385, 445, 475, 510],
} as const satisfies Record<string, readonly number[]>;

/** AWG sizes as they are written: `4/0 AWG` is 0000. */
export type Awg = keyof typeof amperes;

/** AWG sizes from the thinnest. */
export const awgSizes = Object.keys(amperes) as Awg[];

export const insulationRatings = ['60', '75', '80', '90', '105', '125', '200'] as const;
export type InsulationRating = (typeof insulationRatings)[number];

/** Note 1 of Table 5: what is left of the amperes in an engine space. */
const engineSpaceFactors = [0.58, 0.75, 0.78, 0.82, 0.85, 0.89, 1] as const;

const column = (rating: InsulationRating) => insulationRatings.indexOf(rating);

/** Allowable amperes outside engine spaces, A. 33 CFR 183.425, Table 5. */
export const tableAmperes = (size: Awg, rating: InsulationRating): number =>
  amperes[size][column(rating)] as number;

/** Factor for conductors in engine spaces. 33 CFR 183.425(c), note 1 of Table 5. */
export const engineSpaceFactor = (rating: InsulationRating): number =>
  engineSpaceFactors[column(rating)] as number;

/**
 * Factor for current-carrying conductors run together. Note 2 of Table 5, which 183.435(b) calls for at 50 V or more
 * only.
 * @param conductors that carry current, counting those of 50 V or more
 */
export function bundleFactor(conductors: number): number {
  if (conductors < 3) return 1;
  if (conductors === 3) return 0.7;
  if (conductors <= 6) return 0.6;
  return conductors <= 24 ? 0.5 : 0.4;
}

/** Circular mils by size: the true area of the gauge, and the least area SAE J1127 and J1128 allow a cable of it. */
const circularMils: ReadonlyArray<{ size: Awg; AWG: number; SAE: number }> = [
  { size: '18 AWG', AWG: 1_600, SAE: 1_537 },
  { size: '16 AWG', AWG: 2_600, SAE: 2_336 },
  { size: '14 AWG', AWG: 4_100, SAE: 3_702 },
  { size: '12 AWG', AWG: 6_500, SAE: 5_833 },
  { size: '10 AWG', AWG: 10_500, SAE: 9_343 },
  { size: '8 AWG', AWG: 16_800, SAE: 14_810 },
  { size: '6 AWG', AWG: 26_600, SAE: 24_538 },
  { size: '4 AWG', AWG: 42_000, SAE: 37_360 },
  { size: '2 AWG', AWG: 66_500, SAE: 62_450 },
  { size: '1 AWG', AWG: 83_690, SAE: 77_790 },
  { size: '1/0 AWG', AWG: 105_600, SAE: 98_980 },
  { size: '2/0 AWG', AWG: 133_100, SAE: 125_100 },
  { size: '3/0 AWG', AWG: 167_800, SAE: 158_600 },
  { size: '4/0 AWG', AWG: 211_600, SAE: 205_500 },
];

export type AreaBasis = 'SAE' | 'AWG';

/** One conductor size as it is sold. */
export interface Conductor {
  /** Its name: `10 AWG`, `4 mm²`. */
  name: string;
  /** Area in the unit of its formula: circular mils for gauges, mm² for metric sizes. */
  area: number;
  /** The gauge whose amperes it may carry: its own, or the largest no thicker. None when thinner than 18 AWG. */
  awg?: Awg;
}

/** Gauges of the voltage-drop tables (3 AWG is not among them), thinnest first. */
export const gauges = (basis: AreaBasis): Conductor[] =>
  circularMils.map((row) => ({ name: row.size, area: row[basis], awg: row.size }));

/** Metric sizes in mm², thinnest first. */
const metricAreas = [0.75, 1, 1.5, 2.5, 4, 6, 10, 16, 25, 35, 50, 70, 95, 120, 150];

const mm2PerCircularMil = (Math.PI / 4) * 0.0254 ** 2;

/** Metric sizes, each with the gauge whose least SAE area it reaches. */
export const metricSizes: readonly Conductor[] = metricAreas.map((area) => {
  const reached = circularMils.filter((row) => row.SAE * mm2PerCircularMil <= area).at(-1);
  return { name: `${area} mm²`, area, ...(reached ? { awg: reached.size } : {}) };
});
