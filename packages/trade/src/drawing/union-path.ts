/** A polygon and, for the edge that leaves each corner, the index of the polygon beyond it (−1: none). */
export interface Patch {
  ring: ReadonlyArray<readonly [x: number, y: number]>;
  across: readonly number[];
}

/** Polygons whose corners are known to each other, by number; made once, outlined by as many groupings as needed. */
export interface Mesh {
  /** Where each corner lies, in tenths of a px. */
  x: Int32Array;
  y: Int32Array;
  /** Each edge's corners, its patch and the patch beyond. */
  from: Int32Array;
  to: Int32Array;
  inside: Int32Array;
  beyond: Int32Array;
}

/**
 * Corners are kept to a tenth of a px: finer than print shows, and corners that neighbours share fall together.
 * First to a millionth: a corner worked out twice differs in its last bits, and must round the same way.
 */
const tenthsOf = (value: number) => Math.round(Math.round(value * 1e7) / 1e6);

/** From the polygons' own coordinates to px: `left + scale · x`, `top − scale · y`. */
export interface Projection {
  left: number;
  top: number;
  scale: number;
}

/** Numbers for pairs of whole numbers, given out in order: an open table of at least twice as many places as pairs. */
class Numbering {
  readonly x: Int32Array;
  readonly y: Int32Array;
  size = 0;
  readonly #places: Int32Array;
  readonly #mask: number;

  constructor(most: number) {
    this.x = new Int32Array(most);
    this.y = new Int32Array(most);
    const places = 2 ** Math.ceil(Math.log2(2 * most + 2));
    this.#places = new Int32Array(places).fill(-1);
    this.#mask = places - 1;
  }

  of(x: number, y: number): number {
    let place = (Math.imul(x, 0x9e3779b1) ^ Math.imul(y, 0x85ebca6b)) & this.#mask;
    for (;;) {
      const number = this.#places[place] ?? -1;
      if (number < 0) break;
      if (this.x[number] === x && this.y[number] === y) return number;
      place = (place + 1) & this.#mask;
    }
    const number = this.size++;
    this.#places[place] = number;
    this.x[number] = x;
    this.y[number] = y;
    return number;
  }
}

/** Joins polygons at their corners and brings them on the sheet, where they must lie between 0 and 100 000 px. */
export function meshOf(patches: readonly Patch[], { left, top, scale }: Projection): Mesh {
  let most = 0;
  for (const { ring } of patches) most += ring.length;
  const corners = new Numbering(most);
  const cornerOf = (point: readonly [number, number] | undefined): number =>
    corners.of(tenthsOf(left + scale * (point?.[0] ?? 0)), tenthsOf(top - scale * (point?.[1] ?? 0)));
  const [from, to] = [new Int32Array(most), new Int32Array(most)];
  const [inside, beyond] = [new Int32Array(most), new Int32Array(most)];
  let edges = 0;
  for (let patch = 0; patch < patches.length; patch++) {
    const { ring, across } = patches[patch] ?? { ring: [], across: [] };
    if (ring.length === 0) continue;
    const first = cornerOf(ring[0]);
    let corner = first;
    for (let i = 0; i < ring.length; i++) {
      const next = i + 1 < ring.length ? cornerOf(ring[i + 1]) : first;
      if (corner === next) continue;
      from[edges] = corner;
      to[edges] = next;
      inside[edges] = patch;
      beyond[edges] = across[i] ?? -1;
      edges += 1;
      corner = next;
    }
  }
  return {
    x: corners.x.subarray(0, corners.size),
    y: corners.y.subarray(0, corners.size),
    from: from.subarray(0, edges),
    to: to.subarray(0, edges),
    inside: inside.subarray(0, edges),
    beyond: beyond.subarray(0, edges),
  };
}

/** Edges between a group and what is not of it, by group. */
function rimsOf(mesh: Mesh, groupOf: (patch: number) => number): Map<number, number[]> {
  const rims = new Map<number, number[]>();
  for (let edge = 0; edge < mesh.from.length; edge++) {
    const group = groupOf(mesh.inside[edge] ?? -1);
    const beyond = mesh.beyond[edge] ?? -1;
    if (group < 0 || (beyond >= 0 && groupOf(beyond) === group)) continue;
    const rim = rims.get(group);
    if (rim) rim.push(edge);
    else rims.set(group, [edge]);
  }
  return rims;
}

/**
 * The outline of every group of patches as SVG path data, sides within a group left out: one path draws a whole
 * region or class.
 * @param groupOf the group of each patch; −1 for none
 * @returns path data by group
 */
export function unionPaths(mesh: Mesh, groupOf: (patch: number) => number): Map<number, string> {
  // Edges that leave a corner, as a chain: the last one, and for each edge the one before it.
  const last = new Int32Array(mesh.x.length).fill(-1);
  const before = new Int32Array(mesh.from.length);
  const paths = new Map<number, string>();
  for (const [group, rim] of rimsOf(mesh, groupOf)) {
    for (const edge of rim) {
      const from = mesh.from[edge] ?? 0;
      before[edge] = last[from] ?? -1;
      last[from] = edge;
    }
    let path = '';
    for (const edge of rim) {
      const start = mesh.from[edge] ?? 0;
      while ((last[start] ?? -1) >= 0) path += ringPath(mesh, ringFrom(mesh, start, last, before));
    }
    paths.set(group, path);
  }
  return paths;
}

/** Follows edges from a corner until they come back to it, taking them off the chains. */
function ringFrom(mesh: Mesh, start: number, last: Int32Array, before: Int32Array): number[] {
  const ring: number[] = [];
  let corner = start;
  do {
    const edge = last[corner] ?? -1;
    if (edge < 0) break;
    last[corner] = before[edge] ?? -1;
    ring.push(corner);
    corner = mesh.to[edge] ?? start;
  } while (corner !== start);
  return ring;
}

const written: string[] = [];

/** Tenths of a px as px; written once, since the same few lengths come again and again. */
function inPx(tenths: number): string {
  if (tenths < 0) return `-${inPx(-tenths)}`;
  let words = written[tenths];
  if (words === undefined) {
    words = String(tenths / 10);
    if (tenths < 20_000) written[tenths] = words;
  }
  return words;
}

function step(dx: number, dy: number): string {
  if (dy === 0) return `h${inPx(dx)}`;
  if (dx === 0) return `v${inPx(dy)}`;
  // A minus parts two numbers by itself.
  return `l${inPx(dx)}${dy < 0 ? '' : ' '}${inPx(dy)}`;
}

/** A closed ring of corners as path data, corners on straight runs left out. The closing side is left to `z`. */
function ringPath({ x, y }: Mesh, ring: readonly number[]): string {
  if (ring.length < 3) return '';
  const start = ring[0] ?? 0;
  let [atX, atY] = [x[start] ?? 0, y[start] ?? 0];
  let path = `M${inPx(atX)} ${inPx(atY)}`;
  let [runX, runY] = [0, 0];
  for (let i = 1; i < ring.length; i++) {
    const corner = ring[i] ?? start;
    const dx = (x[corner] ?? 0) - atX;
    const dy = (y[corner] ?? 0) - atY;
    if (runX * dy === runY * dx && runX * dx + runY * dy >= 0) {
      runX += dx;
      runY += dy;
    } else {
      path += step(runX, runY);
      runX = dx;
      runY = dy;
    }
    atX += dx;
    atY += dy;
  }
  return `${path}${step(runX, runY)}z`;
}
