/** A photo and its difference hash, if it has one yet. */
export interface Hashed {
  id: string;
  /** Sixteen hex digits. */
  dhash: string | null;
}

/**
 * Most bits by which two pictures of one scene differ. Measured on 63 drawn scenes (25 November 2026): smaller,
 * compressed harder, a quarter brighter or darker at most 6, cropped by 2 % on each side at most 8; different scenes 9
 * and more, except the same fitting drawn sound and damaged from the same place.
 */
export const likenessBits = 8;
/** A hash with fewer bits set, or fewer unset, is of a picture without features, and says nothing about likeness. */
const fewestBits = 6;

function bitsOf(word: number): number {
  let v = word - ((word >>> 1) & 0x55555555);
  v = (v & 0x33333333) + ((v >>> 2) & 0x33333333);
  return Math.imul((v + (v >>> 4)) & 0x0f0f0f0f, 0x01010101) >>> 24;
}

const halvesOf = (hash: string): [number, number] => [
  Number.parseInt(hash.slice(0, 8), 16),
  Number.parseInt(hash.slice(8), 16),
];

/** The number of bits in which two difference hashes differ, 0 to 64. */
export function hammingDistance(a: string, b: string): number {
  const [a0, a1] = halvesOf(a);
  const [b0, b1] = halvesOf(b);
  return bitsOf(a0 ^ b0) + bitsOf(a1 ^ b1);
}

/**
 * Groups near-duplicates among photos given in the order they were taken. Each is compared with the first of each
 * group, not with its neighbour, so that a slow pan along a hull doesn't end as one group.
 *
 * @returns for each photo of a group of two or more, the first of that group (for the first, itself)
 */
export function groupByLikeness(photos: readonly Hashed[], bits = likenessBits): Map<string, string> {
  const firsts: { id: string; high: number; low: number }[] = [];
  const groups = new Map<string, string>();
  for (const { id, dhash } of photos) {
    if (dhash === null) continue;
    const [high, low] = halvesOf(dhash);
    const set = bitsOf(high) + bitsOf(low);
    if (set < fewestBits || set > 64 - fewestBits) continue;
    const first = firsts.find((f) => bitsOf(f.high ^ high) + bitsOf(f.low ^ low) <= bits);
    if (!first) firsts.push({ id, high, low });
    else groups.set(first.id, first.id).set(id, first.id);
  }
  return groups;
}
