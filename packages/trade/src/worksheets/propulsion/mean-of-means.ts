/**
 * Speed through the water from runs up and down the same course, by Tupper's model: the current along the course is a
 * polynomial in time whose degree is two less than the number of runs, the boat's own speed is steady.
 */

/** A run's direction along the course: with what is called out, or back. */
export type Along = 1 | -1;

/** Binomial weights of the mean of means for `n` runs at equal intervals, their sum one: 1-3-3-1 over 8 for four. */
export function binomialWeights(n: number): number[] {
  let row = [1];
  for (let i = 1; i < n; i++) row = [1, ...row.slice(1).map((value, k) => value + (row[k] as number)), 1];
  return row.map((value) => value / 2 ** (n - 1));
}

/**
 * Weights for runs at any times, out and back by turns: those that make every polynomial current of degree `n − 2`
 * vanish (divided differences), their sum one. Equal intervals give the binomial ones.
 * @param times of the runs, in any unit, rising
 */
export function weightsAt(times: readonly number[]): number[] {
  const unscaled = times.map((t, i) =>
    times.reduce((product, other, k) => (k === i ? product : product / Math.abs(t - other)), 1),
  );
  const sum = unscaled.reduce((total, value) => total + value, 0);
  return unscaled.map((value) => value / sum);
}

/** The sum of each value times its weight. */
export const weighted = (values: readonly number[], weights: readonly number[]): number =>
  values.reduce((sum, value, i) => sum + value * (weights[i] as number), 0);

/** Means of neighbours, then of those, down to one: how it is done on paper. The last row is the mean of means. */
export function successiveMeans(values: readonly number[]): number[][] {
  const rows: number[][] = [];
  let row = [...values];
  while (row.length > 1) {
    row = row.slice(1).map((value, i) => (value + (row[i] as number)) / 2);
    rows.push(row);
  }
  return rows;
}
