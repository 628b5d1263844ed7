import { type ScaleLinear, scaleLinear } from 'd3-scale';
import { formatNumber } from '../worksheets/core/working.ts';

export interface AxisSpec {
  /** What is measured, with its unit: `Pressure, mbar`. */
  label: string;
  /** Least and greatest shown; found from the data when left out. */
  domain?: [number, number];
  /** Starts or ends at zero even if the data doesn't. */
  fromZero?: boolean;
  /** Tick values in order, each with its words, where numbers say less: names of runs or cylinders. */
  ticks?: Array<{ at: number; words: string }>;
}

/** The span of an axis: what was asked for, else the data with some air around it. Never empty. */
export function spanOf(values: readonly number[], axis: AxisSpec): [number, number] {
  if (axis.domain) return axis.domain;
  let low = axis.fromZero ? 0 : Number.POSITIVE_INFINITY;
  let high = axis.fromZero ? 0 : Number.NEGATIVE_INFINITY;
  for (const value of values) {
    if (!Number.isFinite(value)) continue;
    if (value < low) low = value;
    if (value > high) high = value;
  }
  if (low > high) return [0, 1];
  const air = (high - low || Math.abs(high) || 1) * 0.06;
  return [axis.fromZero && low === 0 ? 0 : low - air, axis.fromZero && high === 0 ? 0 : high + air];
}

/** A linear scale from data to px, ending on round numbers unless the span was asked for. */
export function scaleFor(
  values: readonly number[],
  axis: AxisSpec,
  range: [number, number],
): ScaleLinear<number, number> {
  const scale = scaleLinear(spanOf(values, axis), range);
  return axis.domain || axis.ticks ? scale : scale.nice();
}

/** Where an axis is labelled: the words given, else about `about` round numbers. */
export function ticksOf(
  scale: ScaleLinear<number, number>,
  axis: AxisSpec,
  about: number,
): Array<{ at: number; words: string }> {
  return axis.ticks ?? scale.ticks(about).map((at) => ({ at, words: formatNumber(at, 6) }));
}
