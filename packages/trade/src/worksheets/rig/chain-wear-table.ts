/**
 * Greatest wear at any point of a link that United States law allows on chain used for lifting, in sixty-fourths of
 * an inch, by chain size in inches. 29 CFR 1915.118 table G-2, 1926.251 table H-1 (2015); 1910.184 table N-184-1
 * prints the size that is left, the same to the last row.
 */
const liftingWear: ReadonlyArray<[size: number, sixtyFourths: number, printed: string]> = [
  [1 / 4, 3, '1/4'],
  [3 / 8, 5, '3/8'],
  [1 / 2, 7, '1/2'],
  [5 / 8, 9, '5/8'],
  [3 / 4, 10, '3/4'],
  [7 / 8, 11, '7/8'],
  [1, 12, '1'],
  [1.125, 14, '1 1/8'],
  [1.25, 16, '1 1/4'],
  [1.375, 18, '1 3/8'],
  [1.5, 20, '1 1/2'],
  [1.75, 22, '1 3/4'],
];

/**
 * What lifting law allows for chain of a new diameter (inches): its size as printed and the least diameter left, in
 * inches. Undefined for a diameter more than 6 % off every size of the table (trade sizes are drawn a little large).
 */
export function liftingLimit(diameter: number): { size: string; least: number } | undefined {
  const row = liftingWear.find(([size]) => Math.abs(diameter - size) / size <= 0.06);
  return row && { size: `${row[2]} in`, least: row[0] - row[1] / 64 };
}
