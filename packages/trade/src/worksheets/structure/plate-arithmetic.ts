import { settle } from '../core/units.ts';

/** Loss of thickness in per cent of the original; nil for a plate thicker than it. Both in the same unit. */
export const lossOf = (original: number, thickness: number): number =>
  Math.max(0, settle((100 * (original - thickness)) / original));

export interface Statistics {
  count: number;
  mean: number;
  least: number;
  /** Standard deviation of the sample (n − 1); null for fewer than two readings. */
  deviation: number | null;
}

/** Count, mean, least and standard deviation of at least one reading. */
export function statisticsOf(readings: readonly number[]): Statistics {
  const count = readings.length;
  const mean = settle(readings.reduce((sum, reading) => sum + reading, 0) / count);
  const squares = readings.reduce((sum, reading) => sum + (reading - mean) ** 2, 0);
  return {
    count,
    mean,
    least: Math.min(...readings),
    deviation: count < 2 ? null : Math.sqrt(squares / (count - 1)),
  };
}

/** Why a reading thicker than the original can't be taken as it stands. */
export function doubtAbout(reading: number, original: number, allowance: number): string | undefined {
  if (settle(reading - original) <= allowance) return undefined;
  const times = reading / original;
  return times > 1.8 && times < 2.2
    ? 'about twice the original: a second echo, most likely'
    : 'thicker than the original: coating in the reading, a doubler, or another original thickness';
}
