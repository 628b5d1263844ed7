/** Metres forward of the datum, metres to port of it. */
export type Place = [forward: number, toPort: number];

/** The piece of surface that one reading speaks for. */
export interface Cell {
  at: Place;
  /** m² */
  area: number;
  /** Corners, anticlockwise seen from above with the bow to the right. */
  ring: Place[];
  /** For the edge that leaves each corner: the index of the cell beyond it, −1 where there is none. */
  across: number[];
}

/** A rectangular grid of readings: the first row furthest to port, each row from aft forward. */
export interface GridPlan {
  rows: number;
  columns: number;
  /** Spacing along and across the boat, m. */
  along: number;
  across: number;
  /** The aft-most, starboard-most reading. */
  corner: Place;
  /** Whether the outer readings stand on the rim of the surface: their cells are then halved, corners quartered. */
  rimmed: boolean;
}

/**
 * Cells of the grid places that were read, in reading order.
 * @param wasRead by row and column
 */
export function gridCells(plan: GridPlan, wasRead: (row: number, column: number) => boolean): Cell[] {
  const { rows, columns } = plan;
  const index = new Int32Array(rows * columns).fill(-1);
  let read = 0;
  for (let place = 0; place < index.length; place++) {
    if (wasRead(Math.floor(place / columns), place % columns)) index[place] = read++;
  }
  const beyond = (row: number, column: number) =>
    row < 0 || row >= rows || column < 0 || column >= columns ? -1 : (index[row * columns + column] ?? -1);
  // Lines between the readings; neighbours share their corners.
  const aft = linesBetween(columns, plan.along, plan.corner[0], plan.rimmed);
  const starboard = linesBetween(rows, plan.across, plan.corner[1], plan.rimmed);
  const corners = starboard.map((y) => aft.map((x): Place => [x, y]));
  const cells: Cell[] = [];
  for (let row = 0; row < rows; row++) {
    const up = rows - 1 - row;
    const [low, high] = [corners[up] ?? [], corners[up + 1] ?? []];
    const y = plan.corner[1] + up * plan.across;
    for (let column = 0; column < columns; column++) {
      if (beyond(row, column) < 0) continue;
      const ring = [low[column], low[column + 1], high[column + 1], high[column]] as Place[];
      const [a, , c] = ring as [Place, Place, Place];
      cells.push({
        at: [plan.corner[0] + column * plan.along, y],
        area: (c[0] - a[0]) * (c[1] - a[1]),
        ring,
        across: [
          beyond(row + 1, column),
          beyond(row, column + 1),
          beyond(row - 1, column),
          beyond(row, column - 1),
        ],
      });
    }
  }
  return cells;
}

/** The lines that part a row of readings, one more than there are readings. */
function linesBetween(count: number, spacing: number, first: number, rimmed: boolean): number[] {
  return Array.from({ length: count + 1 }, (_, i) => {
    const rim = rimmed && (i === 0 || i === count);
    return first + (rim ? Math.min(i, count - 1) : i - 0.5) * spacing;
  });
}

/** Area inside a ring, m²; negative when it runs clockwise. */
export function ringArea(ring: readonly Place[]): number {
  let twice = 0;
  for (let i = 0; i < ring.length; i++) {
    const a = ring[i];
    const b = ring[i + 1] ?? ring[0];
    if (a && b) twice += a[0] * b[1] - b[0] * a[1];
  }
  return twice / 2;
}
