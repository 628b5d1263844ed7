import { settle } from '../core/units.ts';

/** The middle value of numbers in rising order. */
function middle(sorted: Float64Array): number {
  const half = sorted.length >> 1;
  const upper = sorted[half] ?? Number.NaN;
  return sorted.length % 2 === 1 ? upper : ((sorted[half - 1] ?? Number.NaN) + upper) / 2;
}

/** What readings usually are on this boat with this meter, and how far they usually stray from it. */
export interface Baseline {
  median: number;
  /** Median of the absolute deviations from the median. */
  mad: number;
  /** What a deviation is divided by to score it: an estimate of one standard deviation, in the meter's units. */
  spread: number;
  /** What the spread comes from: MAD; where that is nil the mean deviation; where that is nil too the meter's step. */
  from: 'mad' | 'mean-deviation' | 'step';
}

/**
 * Median and spread that a few high readings can't pull along. Spread: MAD / 0.6745 (Iglewicz and Hoaglin), or
 * 1.253314 × mean deviation from the median when more than half the readings are equal.
 * @param values at least one reading, in the meter's units
 * @param step smallest step the meter shows, above 0
 */
export function baselineOf(values: readonly number[], step: number): Baseline {
  const sorted = Float64Array.from(values).sort();
  const median = middle(sorted);
  const deviations = sorted.map((value) => Math.abs(value - median));
  const meanDeviation = deviations.reduce((sum, d) => sum + d, 0) / deviations.length;
  const mad = settle(middle(deviations.sort()));
  if (mad > 0) return { median, mad, spread: mad / 0.6745, from: 'mad' };
  if (meanDeviation > 0) return { median, mad, spread: 1.253314 * meanDeviation, from: 'mean-deviation' };
  return { median, mad, spread: step, from: 'step' };
}

/** Modified z-score: how many spreads a reading lies above the baseline. */
export const scoreOf = (value: number, { median, spread }: Baseline): number =>
  settle((value - median) / spread);

/**
 * Between which shares the true one lies with 95 % confidence when `found` of `tried` samples showed it (Wilson's
 * score interval, z = 1.96), each 0 to 1. Takes samples to be drawn at random.
 */
export function shareInterval(found: number, tried: number): [low: number, high: number] {
  const z2 = 1.96 ** 2;
  const share = found / tried;
  const centre = share + z2 / (2 * tried);
  const half = 1.96 * Math.sqrt((share * (1 - share)) / tried + z2 / (4 * tried * tried));
  const whole = 1 + z2 / tried;
  return [
    found === 0 ? 0 : Math.max(0, (centre - half) / whole),
    found === tried ? 1 : Math.min(1, (centre + half) / whole),
  ];
}
