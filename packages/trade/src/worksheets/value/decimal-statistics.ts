import { Money } from '../core/money.ts';

/** Statistics of amounts, in decimal. Every function needs at least one amount. */

const ascending = (amounts: readonly Money[]): Money[] => [...amounts].sort((a, b) => a.cmp(b));
const at = (sorted: readonly Money[], index: number): Money => sorted[index] ?? new Money(0);

export const sum = (amounts: readonly Money[]): Money =>
  amounts.reduce((total, amount) => total.add(amount), new Money(0));

export const mean = (amounts: readonly Money[]): Money => sum(amounts).div(amounts.length);

export const least = (amounts: readonly Money[]): Money => amounts.reduce((a, b) => (b.lt(a) ? b : a));
export const greatest = (amounts: readonly Money[]): Money => amounts.reduce((a, b) => (b.gt(a) ? b : a));

/**
 * The amount below which a share lies, between two amounts by straight line (as spreadsheets count quartiles); with
 * a half it is the median.
 * @param share 0 to 1
 */
export function quantile(amounts: readonly Money[], share: number): Money {
  const sorted = ascending(amounts);
  const place = (sorted.length - 1) * share;
  const below = at(sorted, Math.floor(place));
  const above = at(sorted, Math.ceil(place));
  return below.add(above.sub(below).mul(place - Math.floor(place)));
}

export const median = (amounts: readonly Money[]): Money => quantile(amounts, 0.5);

/** Median of the distances from the median. */
export function medianAbsoluteDeviation(amounts: readonly Money[]): Money {
  const middle = median(amounts);
  return median(amounts.map((amount) => amount.sub(middle).abs()));
}

/**
 * Modified z-scores, 0.6745 (x − median) / MAD (Iglewicz and Hoaglin); where more than half of the amounts are
 * equal, (x − median) / (1.253314 · mean absolute deviation); all zero when every amount is equal.
 */
export function modifiedZ(amounts: readonly Money[]): Money[] {
  const middle = median(amounts);
  const deviations = amounts.map((amount) => amount.sub(middle));
  const mad = median(deviations.map((d) => d.abs()));
  if (!mad.isZero()) return deviations.map((d) => d.mul('0.6745').div(mad));
  const meanDeviation = mean(deviations.map((d) => d.abs()));
  if (meanDeviation.isZero()) return deviations;
  return deviations.map((d) => d.div(meanDeviation.mul('1.253314')));
}

/** Sum of each amount by its weight, over the sum of the weights. */
export const weightedMean = (amounts: readonly Money[], weights: readonly Money[]): Money =>
  sum(amounts.map((amount, i) => amount.mul(weights[i] ?? 0))).div(sum(weights));
