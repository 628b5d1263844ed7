import type { SnapshotPhoto } from '@garboard/contract/report-snapshot';

/** A photo with its size on paper, in millimetres. */
export interface PlacedPhoto<P extends SnapshotPhoto = SnapshotPhoto> {
  photo: P;
  width: number;
  height: number;
}

/** Millimetres: the column beside the margin, and the gap between two photos. */
export const columnWidth = 136;
export const photoGap = 3;
const aloneWidth = 92;
const tallestAlone = 78;
const tallest = 74;
const tallestLast = 62;
/** A caption below a narrower photo would be a pile of single words. */
const narrowest = 24;
const panorama = 2.2;

/** Width over height. */
export const aspect = ({ width, height }: SnapshotPhoto): number => width / height;

/**
 * A finding's photos in rows of one, two or three of the same height that fill the column, in their order and none
 * cropped: of all ways to part them, the one whose rows are nearest to a good height.
 */
export function photoRows<P extends SnapshotPhoto>(photos: readonly P[]): PlacedPhoto<P>[][] {
  // What the best way costs from each photo to the end, and how many photos its first row takes.
  const best: { cost: number; take: number }[] = [];
  best[photos.length] = { cost: 0, take: 0 };
  for (let from = photos.length - 1; from >= 0; from--) {
    for (let take = 1; take <= Math.min(3, photos.length - from); take++) {
      const cost = (best[from + take]?.cost ?? 0) + rowCost(photos.slice(from, from + take), photos.length);
      if (cost < (best[from]?.cost ?? Number.POSITIVE_INFINITY)) best[from] = { cost, take };
    }
  }
  const rows: PlacedPhoto<P>[][] = [];
  for (let from = 0; from < photos.length; ) {
    const take = best[from]?.take ?? 1;
    rows.push(placed(photos.slice(from, from + take), photos.length));
    from += take;
  }
  return rows;
}

/** Two photos of the same thing side by side at the same height, as wide as the column. */
export function pairedPhotos(before: SnapshotPhoto, after: SnapshotPhoto): PlacedPhoto[] {
  const pair = [before, after];
  const height = Math.min(tallest, ...pair.map((photo) => (columnWidth - photoGap) / 2 / aspect(photo)));
  return pair.map((photo) => ({ photo, height, width: height * aspect(photo) }));
}

function rowHeight(row: readonly SnapshotPhoto[], inAll: number): number {
  const [first] = row;
  const sum = row.reduce((total, photo) => total + aspect(photo), 0);
  const filling = (columnWidth - photoGap * (row.length - 1)) / sum;
  if (row.length > 1 || !first) return Math.min(tallest, filling);
  if (aspect(first) >= panorama) return filling;
  return inAll === 1
    ? Math.min(tallestAlone, aloneWidth / aspect(first))
    : Math.min(tallestLast, (columnWidth - photoGap) / 2 / aspect(first));
}

function placed<P extends SnapshotPhoto>(row: readonly P[], inAll: number): PlacedPhoto<P>[] {
  const height = rowHeight(row, inAll);
  return row.map((photo) => ({ photo, height, width: height * aspect(photo) }));
}

function rowCost(row: readonly SnapshotPhoto[], inAll: number): number {
  const photos = placed(row, inAll);
  const height = photos[0]?.height ?? 0;
  const cramped = row.length > 1 && photos.some(({ width }) => width < narrowest) ? 4 : 0;
  const small = height < 26 && !row.some((photo) => aspect(photo) >= panorama) ? 3 : 0;
  const flattened = row.length > 1 && row.some((photo) => aspect(photo) >= panorama) ? 2 : 0;
  const wasted =
    1 - (photos.reduce((sum, { width }) => sum + width, 0) + photoGap * (row.length - 1)) / columnWidth;
  const alone = row.length === 1 && inAll > 1 && !row.some((photo) => aspect(photo) >= panorama) ? 0.6 : 0;
  return Math.abs(height - 48) / 48 + 2 * Math.max(0, wasted) + alone + cramped + small + flattened;
}
