import type { Cell, Place } from './cells.ts';

/** Cells that hang together side by side. */
export interface Region {
  /** Indices of its cells, rising. */
  cells: number[];
  /** m² */
  area: number;
  /** Centre of its area. */
  centre: Place;
  /** How far it reaches along and across the boat, m. */
  extent: [along: number, across: number];
}

/** The regions that marked cells form, largest first. Cells that only touch in a corner are not joined. */
export function regionsOf(cells: readonly Cell[], isMarked: (cell: number) => boolean): Region[] {
  const seen = new Uint8Array(cells.length);
  const found: number[][] = [];
  for (let start = 0; start < cells.length; start++) {
    if (seen[start] || !isMarked(start)) continue;
    seen[start] = 1;
    const members = [start];
    // The list grows while it is walked: every cell reached is looked at in its turn.
    for (const member of members) {
      for (const next of cells[member]?.across ?? []) {
        if (next < 0 || seen[next] || !isMarked(next)) continue;
        seen[next] = 1;
        members.push(next);
      }
    }
    found.push(members.sort((a, b) => a - b));
  }
  return found.map((members) => measureRegion(cells, members)).sort((a, b) => b.area - a.area);
}

function measureRegion(cells: readonly Cell[], members: number[]): Region {
  let area = 0;
  const sum: Place = [0, 0];
  const least: Place = [Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY];
  const most: Place = [Number.NEGATIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (const member of members) {
    const cell = cells[member];
    if (!cell) continue;
    area += cell.area;
    const [x, y] = middleOf(cell);
    sum[0] += x * cell.area;
    sum[1] += y * cell.area;
    for (const corner of cell.ring.length > 0 ? cell.ring : [cell.at]) {
      for (const axis of [0, 1] as const) {
        least[axis] = Math.min(least[axis], corner[axis]);
        most[axis] = Math.max(most[axis], corner[axis]);
      }
    }
  }
  const centre: Place = area > 0 ? [sum[0] / area, sum[1] / area] : (cells[members[0] ?? 0]?.at ?? [0, 0]);
  return { cells: members, area, centre, extent: [most[0] - least[0], most[1] - least[1]] };
}

/** Mean of a cell's corners; its reading's place when it has none. */
function middleOf({ ring, at }: Cell): Place {
  if (ring.length === 0) return at;
  let [x, y] = [0, 0];
  for (const corner of ring) {
    x += corner[0];
    y += corner[1];
  }
  return [x / ring.length, y / ring.length];
}

/** The place of a region's label: its cell nearest to its centre, so that it lies inside. */
export function labelPlace(cells: readonly Cell[], region: Region): Place {
  let best = region.centre;
  let least = Number.POSITIVE_INFINITY;
  for (const member of region.cells) {
    const at = cells[member]?.at ?? region.centre;
    const away = (at[0] - region.centre[0]) ** 2 + (at[1] - region.centre[1]) ** 2;
    if (away < least) {
      least = away;
      best = at;
    }
  }
  return best;
}
