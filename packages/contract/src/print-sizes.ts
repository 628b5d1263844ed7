/**
 * Pixels of the longer side of the pictures that documents print, smallest first: each at most 1.42 times the one
 * before, so that some size always gives between 200 and 300 dots to the inch.
 */
export const printEdges = [340, 480, 640, 880, 1200, 1600] as const;

/** Those made at upload: photos stand two or three to a row, or alone and wider. */
export const usualPrintEdges = [640, 880] as const;

const millimetresPerInch = 25.4;
const leastDotsPerInch = 200;

/** The picture for a place whose longer side takes this many millimetres on paper. */
export function printEdgeFor(millimetres: number): number {
  const needed = (millimetres / millimetresPerInch) * leastDotsPerInch;
  return printEdges.find((edge) => edge >= needed) ?? 1600;
}
