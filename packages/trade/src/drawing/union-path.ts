/** A polygon and, for the edge that leaves each corner, the index of the polygon beyond it (−1: none). */
export interface Patch {
  ring: ReadonlyArray<readonly [x: number, y: number]>;
  across: readonly number[];
}

/** Polygons whose corners are known to each other, by number; made once, outlined by as many groupings as needed. */
export interface Mesh {
  /** Where each corner lies, in tenths of a px. */
  x: number[];
  y: number[];
  /** Each edge's corners, its patch and the patch beyond. */
  from: number[];
  to: number[];
  inside: number[];
  beyond: number[];
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

/** Joins polygons at their corners and brings them on the sheet, where they must lie between 0 and 100 000 px. */
export function meshOf(patches: readonly Patch[], { left, top, scale }: Projection): Mesh {
  const mesh: Mesh = { x: [], y: [], from: [], to: [], inside: [], beyond: [] };
  const known = new Map<number, number>();
  const cornerOf = (point: readonly [number, number] | undefined): number => {
    const x = tenthsOf(left + scale * (point?.[0] ?? 0));
    const y = tenthsOf(top - scale * (point?.[1] ?? 0));
    const key = x * 1_048_576 + y;
    let corner = known.get(key);
    if (corner === undefined) {
      corner = known.size;
      known.set(key, corner);
      mesh.x.push(x);
      mesh.y.push(y);
    }
    return corner;
  };
  for (let patch = 0; patch < patches.length; patch++) {
    const { ring, across } = patches[patch] ?? { ring: [], across: [] };
    const first = cornerOf(ring[0]);
    let from = first;
    for (let i = 0; i < ring.length; i++) {
      const to = i + 1 < ring.length ? cornerOf(ring[i + 1]) : first;
      if (from === to) continue;
      mesh.from.push(from);
      mesh.to.push(to);
      mesh.inside.push(patch);
      mesh.beyond.push(across[i] ?? -1);
      from = to;
    }
  }
  return mesh;
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
