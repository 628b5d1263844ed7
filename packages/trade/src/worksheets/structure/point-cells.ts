import { Delaunay } from 'd3-delaunay';
import { type Cell, type Place, ringArea } from './cells.ts';

/** A polygon whose edges remember what lies beyond them. */
type Edged = Pick<Cell, 'ring' | 'across'>;

/** A line across the plane; places where `constant + x · east + y · north` is not negative lie on its near side. */
interface Line {
  constant: number;
  east: number;
  north: number;
}

/** The part of a polygon on the near side of a line; the new edge has `beyond` on its other side. */
function cut(polygon: Edged, { constant, east, north }: Line, beyond: number): Edged {
  const { ring, across } = polygon;
  let isWhole = true;
  for (const [x, y] of ring) isWhole &&= constant + x * east + y * north >= 0;
  if (isWhole) return polygon;
  const kept: Edged = { ring: [], across: [] };
  for (let i = 0; i < ring.length; i++) {
    const a = ring[i] ?? origin;
    const b = ring[i + 1] ?? ring[0] ?? origin;
    const da = constant + a[0] * east + a[1] * north;
    const db = constant + b[0] * east + b[1] * north;
    const side = across[i] ?? -1;
    if (da >= 0) {
      kept.ring.push(a);
      kept.across.push(side);
    }
    if (da >= 0 !== db >= 0) {
      const t = da / (da - db);
      kept.ring.push([a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1])]);
      kept.across.push(da >= 0 ? beyond : side);
    }
  }
  return kept;
}

const origin: Place = [0, 0];
const arcStep = Math.PI / 24;

/** Corners of an arc about the origin, its ends left out, anticlockwise. */
function arc(radius: number, from: number, to: number): Place[] {
  const sweep = to > from ? to - from : to - from + 2 * Math.PI;
  const steps = Math.ceil(sweep / arcStep);
  return Array.from({ length: steps - 1 }, (_, i): Place => {
    const angle = from + (sweep * (i + 1)) / steps;
    return [radius * Math.cos(angle), radius * Math.sin(angle)];
  });
}

/** The part of an edge within a circle about the origin, if any. */
function withinCircle(a: Place, b: Place, radius: number): [Place, Place] | undefined {
  const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
  const length2 = dx * dx + dy * dy;
  const middle = -(a[0] * dx + a[1] * dy) / length2;
  const half2 = middle * middle - (a[0] * a[0] + a[1] * a[1] - radius * radius) / length2;
  if (!(half2 > 0)) return undefined;
  const from = Math.max(0, middle - Math.sqrt(half2));
  const to = Math.min(1, middle + Math.sqrt(half2));
  const at = (t: number): Place => [a[0] + t * dx, a[1] + t * dy];
  return from < to ? [from === 0 ? a : at(from), to === 1 ? b : at(to)] : undefined;
}

/** A convex polygon about the origin, no further out than `radius`; arcs are drawn as chords of 7.5°. */
function limitToCircle({ ring, across }: Edged, radius: number): Edged {
  let isWithin = true;
  for (const [x, y] of ring) isWithin &&= x * x + y * y <= radius * radius;
  if (isWithin) return { ring, across };
  const sides = ring.flatMap((a, i) => {
    const side = withinCircle(a, ring[(i + 1) % ring.length] ?? a, radius);
    return side ? [{ from: side[0], to: side[1], beyond: across[i] ?? -1 }] : [];
  });
  const first = sides[0];
  if (!first) {
    const circle: Place[] = [[radius, 0], ...arc(radius, 0, 2 * Math.PI)];
    return { ring: circle, across: circle.map(() => -1) };
  }
  const limited: Edged = { ring: [], across: [] };
  for (const [i, side] of sides.entries()) {
    limited.ring.push(side.from);
    limited.across.push(side.beyond);
    const next = sides[i + 1] ?? first;
    if (Math.hypot(next.from[0] - side.to[0], next.from[1] - side.to[1]) < 1e-9 * radius) continue;
    const bend = [
      side.to,
      ...arc(radius, Math.atan2(side.to[1], side.to[0]), Math.atan2(next.from[1], next.from[0])),
    ];
    limited.ring.push(...bend);
    limited.across.push(...bend.map(() => -1));
  }
  return limited;
}

/** Shortest distance from a place to a closed line, m. */
function distanceTo(outline: readonly Place[], [x, y]: Place): number {
  let least = Number.POSITIVE_INFINITY;
  for (const [i, a] of outline.entries()) {
    const b = outline[(i + 1) % outline.length] ?? a;
    const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
    const t = Math.min(1, Math.max(0, ((x - a[0]) * dx + (y - a[1]) * dy) / (dx * dx + dy * dy || 1)));
    least = Math.min(least, (a[0] + t * dx - x) ** 2 + (a[1] + t * dy - y) ** 2);
  }
  return Math.sqrt(least);
}

/** Whether a place lies inside a closed line: a ray from it crosses the line an odd number of times. */
function isInside(outline: readonly Place[], [x, y]: Place): boolean {
  let inside = false;
  for (const [i, a] of outline.entries()) {
    const b = outline[(i + 1) % outline.length] ?? a;
    if (a[1] > y !== b[1] > y && x < a[0] + ((y - a[1]) * (b[0] - a[0])) / (b[1] - a[1])) inside = !inside;
  }
  return inside;
}

/** The part of an anticlockwise outline that lies within a convex cell. */
function outlineWithin(outline: readonly Place[], cell: Edged): Edged {
  let kept: Edged = { ring: [...outline], across: outline.map(() => -1) };
  for (const [i, a] of cell.ring.entries()) {
    const b = cell.ring[(i + 1) % cell.ring.length] ?? a;
    const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
    const line = { constant: dy * a[0] - dx * a[1], east: -dy, north: dx };
    kept = cut(kept, line, cell.across[i] ?? -1);
  }
  return kept;
}

/** An edge too short to be a side that two cells share: two cells that touch in a corner are not neighbours. */
function withoutSpecks(polygon: Edged, least: number): Edged {
  const { ring, across } = polygon;
  const isLong = (i: number) => {
    const a = ring[i] ?? origin;
    const b = ring[i + 1] ?? ring[0] ?? origin;
    return Math.abs(a[0] - b[0]) + Math.abs(a[1] - b[1]) > least;
  };
  let specks = 0;
  for (let i = 0; i < ring.length; i++) if (!isLong(i)) specks++;
  if (specks === 0) return polygon;
  return { ring: ring.filter((_, i) => isLong(i)), across: across.filter((_, i) => isLong(i)) };
}

/** Centres of the circles through the corners of each triangle: x, y, x, y, … */
function circumcentres({ triangles }: Delaunay<Place>, places: readonly Place[]): Float64Array {
  const centres = new Float64Array((triangles.length / 3) * 2);
  for (let t = 0; t < triangles.length; t += 3) {
    const a = places[triangles[t] ?? 0] ?? origin;
    const b = places[triangles[t + 1] ?? 0] ?? origin;
    const c = places[triangles[t + 2] ?? 0] ?? origin;
    const [bx, by, cx, cy] = [b[0] - a[0], b[1] - a[1], c[0] - a[0], c[1] - a[1]];
    const twice = 2 * (bx * cy - by * cx);
    const [b2, c2] = [bx * bx + by * by, cx * cx + cy * cy];
    centres[(t / 3) * 2] = a[0] + (cy * b2 - by * c2) / twice;
    centres[(t / 3) * 2 + 1] = a[1] + (bx * c2 - cx * b2) / twice;
  }
  return centres;
}

/**
 * The cell of a place that others surround, if all of it lies within reach: its corners are the centres of the
 * triangles about it, shared with its neighbours to the last bit. Most cells of a dense map are such.
 */
function wholeCell(of: Delaunay<Place>, centres: Float64Array, index: number, at: Place, reach: number) {
  const { inedges, halfedges, triangles } = of;
  const first = inedges[index] ?? -1;
  if (first < 0) return undefined;
  const cell: Edged = { ring: [], across: [] };
  let edge = first;
  do {
    const triangle = Math.floor(edge / 3);
    const x = centres[2 * triangle] ?? 0;
    const y = centres[2 * triangle + 1] ?? 0;
    // Not a number, for three places in a line, is beyond reach too.
    if (!((x - at[0]) ** 2 + (y - at[1]) ** 2 <= reach * reach)) return undefined;
    const out = edge % 3 === 2 ? edge - 2 : edge + 1;
    cell.ring.push([x, y]);
    cell.across.push(triangles[out % 3 === 2 ? out - 2 : out + 1] ?? -1);
    edge = halfedges[out] ?? -1;
  } while (edge >= 0 && edge !== first);
  if (edge < 0) return undefined;
  if (ringArea(cell.ring) > 0) return cell;
  return {
    ring: cell.ring.reverse(),
    across: [...cell.across.slice(0, -1).reverse(), cell.across.at(-1) ?? -1],
  };
}

/** The cell of a place by cutting: a square about it, without what lies nearer to each neighbour or out of reach. */
function cutCell(
  of: Delaunay<Place>,
  places: readonly Place[],
  index: number,
  at: Place,
  reach: number,
): Edged {
  const wide = 1.5 * reach;
  let cell: Edged = {
    ring: [
      [-wide, -wide],
      [wide, -wide],
      [wide, wide],
      [-wide, wide],
    ],
    across: [-1, -1, -1, -1],
  };
  for (const neighbour of of.neighbors(index)) {
    const [x, y] = places[neighbour] ?? at;
    const [dx, dy] = [x - at[0], y - at[1]];
    const half = (dx * dx + dy * dy) / 2;
    if (half >= 2 * reach * reach) continue;
    cell = cut(cell, { constant: half, east: -dx, north: -dy }, neighbour);
  }
  const { ring, across } = limitToCircle(cell, reach);
  return { ring: ring.map((corner): Place => [corner[0] + at[0], corner[1] + at[1]]), across };
}

/**
 * Cells of free points: each place belongs to the reading nearest to it (Voronoi), if within `reach` and within
 * the outline.
 * @param places no two alike, m
 * @param reach m
 * @param outline anticlockwise, m
 */
export function pointCells(places: readonly Place[], reach: number, outline?: readonly Place[]): Cell[] {
  const triangles = Delaunay.from(places as Place[]);
  const centres = circumcentres(triangles, places);
  return places.map((at, index): Cell => {
    let cell = withoutSpecks(
      wholeCell(triangles, centres, index, at, reach) ?? cutCell(triangles, places, index, at, reach),
      1e-7 * reach,
    );
    if (outline && distanceTo(outline, at) < reach) cell = outlineWithin(outline, cell);
    else if (outline && !isInside(outline, at)) cell = { ring: [], across: [] };
    return { at, ring: cell.ring, across: cell.across, area: Math.max(0, ringArea(cell.ring)) };
  });
}
