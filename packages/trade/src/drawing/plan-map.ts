import { formatNumber } from '../worksheets/core/working.ts';
import { type Hatch, hatchDefinitions, hatchFill } from './hatch.ts';
import { fine, fullWidth, hairline, ink, muted, outline as outlineWeight, paper, signal } from './style.ts';
import { type Drawing, el, label, picture, px } from './svg.ts';
import { type Mesh, meshOf, type Projection, unionPaths } from './union-path.ts';

type Point = [x: number, y: number];

/** A piece of the plan: corners in metres forward and to port, and the piece beyond each edge (−1: none). */
export interface PlanPatch {
  at: readonly [forward: number, toPort: number];
  ring: ReadonlyArray<readonly [forward: number, toPort: number]>;
  across: readonly number[];
}

export interface PlanMapSpec {
  key: string;
  title: string;
  description: string;
  patches: readonly PlanPatch[];
  /** Which of `classes` each patch is in. */
  classes: Array<{ words: string; hatch: Hatch }>;
  classOf: (patch: number) => number;
  /** Regions by number, each with its name and the place of its name; outlined heavier and in the signal colour where grave. */
  regions: Array<{ name: string; at: readonly [number, number]; grave?: boolean }>;
  /** The region a patch is in; −1 for none. */
  regionOf: (patch: number) => number;
  /** Marks each reading's place: for free points, not for a grid. */
  marks: boolean;
  /** Outline of the deck or hull, m. */
  outline?: ReadonlyArray<readonly [number, number]>;
}

const margin = { side: 24, top: 30, foot: 44 };
const tallest = 460;
const legendRow = 20;
/** Names of more regions would hide what they name. */
const mostNamed = 40;
/** Dots of more readings would run together. */
const mostMarked = 2000;

interface Frame {
  /** From metres to px. */
  to: (place: readonly [number, number]) => Point;
  projection: Projection;
  bottom: number;
  /** Whether the datum lies on the sheet. */
  origin: Point | undefined;
}

/** Finds the scale at which everything fits, the bow to the right and port at the top. */
function frameOf({ patches, outline = [] }: PlanMapSpec): Frame {
  let [left, right, low, high] = [
    Number.POSITIVE_INFINITY,
    Number.NEGATIVE_INFINITY,
    Number.POSITIVE_INFINITY,
    Number.NEGATIVE_INFINITY,
  ];
  const include = (place: readonly [number, number]) => {
    left = Math.min(left, place[0]);
    right = Math.max(right, place[0]);
    low = Math.min(low, place[1]);
    high = Math.max(high, place[1]);
  };
  for (const patch of patches) {
    include(patch.at);
    for (const corner of patch.ring) include(corner);
  }
  for (const corner of outline) include(corner);
  const wide = fullWidth - 2 * margin.side;
  const scale = Math.min(wide / Math.max(right - left, 1e-6), tallest / Math.max(high - low, 1e-6));
  const indent = margin.side + (wide - (right - left) * scale) / 2;
  const projection = { left: indent - left * scale, top: margin.top + high * scale, scale };
  const to = ([x, y]: readonly [number, number]): Point => [
    projection.left + x * scale,
    projection.top - y * scale,
  ];
  const datum = left <= 0 && right >= 0 && low <= 0 && high >= 0;
  return {
    to,
    projection,
    bottom: margin.top + (high - low) * scale,
    origin: datum ? to([0, 0]) : undefined,
  };
}

/** The longest of 1, 2, 5 × 10ⁿ m that takes no more than a fifth of the sheet. */
function scaleLength(scale: number): number {
  const room = fullWidth / 5 / scale;
  const decade = 10 ** Math.floor(Math.log10(room));
  return decade * (room / decade >= 5 ? 5 : room / decade >= 2 ? 2 : 1);
}

function scaleBar(frame: Frame, y: number): string {
  const length = scaleLength(frame.projection.scale);
  const end = margin.side + length * frame.projection.scale;
  const words = `${formatNumber(length, 3)} m (${formatNumber(length / 0.3048, 2)} ft)`;
  return (
    el('path', {
      d: `M${px(margin.side)} ${px(y - 4)}v8M${px(margin.side)} ${px(y)}H${px(end)}M${px(end)} ${px(y - 4)}v8`,
      stroke: ink,
      'stroke-width': outlineWeight,
    }) + label(words, { x: end + 8, y: y + 4, fill: ink })
  );
}

/** An arrow with a dot at its tail, pointing to the bow. */
function bowArrow(y: number): string {
  const [tail, head] = [fullWidth - margin.side - 170, fullWidth - margin.side - 36];
  return (
    el('circle', { cx: tail, cy: y, r: 2.5, fill: ink }) +
    el('path', {
      d: `M${px(tail)} ${px(y)}H${px(head)}M${px(head - 7)} ${px(y - 4)}L${px(head)} ${px(y)}L${px(head - 7)} ${px(y + 4)}`,
      stroke: ink,
      'stroke-width': outlineWeight,
    }) +
    label('stern', { x: tail - 9, y: y + 4, 'text-anchor': 'end', fill: ink }) +
    label('bow', { x: head + 9, y: y + 4, fill: ink })
  );
}

function legend(spec: PlanMapSpec, top: number): string {
  const columns = 2;
  const wide = (fullWidth - 2 * margin.side) / columns;
  return spec.classes
    .map(({ words, hatch }, i) => {
      const x = margin.side + (i % columns) * wide;
      const y = top + Math.floor(i / columns) * legendRow;
      return (
        el('rect', {
          x,
          y: y - 10,
          width: 24,
          height: 13,
          fill: hatchFill(hatch),
          stroke: muted,
          'stroke-width': fine,
        }) + label(words, { x: x + 32, y, fill: ink })
      );
    })
    .join('');
}

/** Dots at the readings' places: a line of no length with round ends takes the fewest bytes. */
function placeMarks(spec: PlanMapSpec, frame: Frame): string {
  const d = spec.patches.map(({ at }) => {
    const [x, y] = frame.to(at);
    return `M${Math.round(x * 10) / 10} ${Math.round(y * 10) / 10}h0`;
  });
  const dots = d.join('');
  return (
    el('path', { d: dots, stroke: paper, 'stroke-width': 4.5, 'stroke-linecap': 'round' }) +
    el('path', { d: dots, stroke: ink, 'stroke-width': 2.5, 'stroke-linecap': 'round' })
  );
}

function regionName(name: string, [x, y]: Point, colour: string): string {
  const wide = 10 + 7 * name.length;
  return (
    el('rect', {
      x: x - wide / 2,
      y: y - 9,
      width: wide,
      height: 18,
      rx: 3,
      fill: paper,
      stroke: colour,
      'stroke-width': outlineWeight,
    }) +
    label(name, { x, y: y + 4.5, 'text-anchor': 'middle', fill: colour, 'font-weight': 600, 'font-size': 13 })
  );
}

/** Regions never share a side, so one path draws the rims of all, and one of all grave ones. */
function drawRegions(spec: PlanMapSpec, frame: Frame, mesh: Mesh): string {
  const isGrave = (region: number) => spec.regions[region]?.grave ?? false;
  const rims = unionPaths(mesh, (patch) => {
    const region = spec.regionOf(patch);
    return region < 0 ? -1 : Number(isGrave(region));
  });
  const colours = [ink, signal];
  const paths = [...rims].map(([grave, d]) =>
    el('path', { d, stroke: colours[grave], 'stroke-width': grave ? 3.5 : 2, 'stroke-linejoin': 'round' }),
  );
  const names = spec.regions
    .slice(0, mostNamed)
    .map(({ name, at, grave }) => regionName(name, frame.to(at), grave ? signal : ink));
  return [...paths, ...names].join('');
}

/**
 * A plan seen from above, the bow to the right: surface hatched by value class, regions outlined and named, the
 * outline of the deck, a bar of length and a legend. Equal neighbours are merged into one path.
 */
export function planMap(spec: PlanMapSpec): Drawing {
  const frame = frameOf(spec);
  const mesh = meshOf(spec.patches, frame.projection);
  const filled = unionPaths(mesh, spec.classOf);
  const mapped = unionPaths(mesh, () => 0).get(0) ?? '';
  const foot = frame.bottom + 26;
  const legendTop = foot + margin.foot - 14;
  const height = legendTop + Math.ceil(spec.classes.length / 2) * legendRow;
  const deck = spec.outline?.map(frame.to).map(([x, y]) => `${px(x)} ${px(y)}`);
  return picture(
    { key: spec.key, title: spec.title, description: spec.description, width: fullWidth, height },
    hatchDefinitions(),
    ...spec.classes.map(({ hatch }, i) => el('path', { d: filled.get(i) ?? '', fill: hatchFill(hatch) })),
    el('path', { d: mapped, stroke: hairline, 'stroke-width': fine }),
    deck ? el('path', { d: `M${deck.join('L')}Z`, stroke: ink, 'stroke-width': outlineWeight }) : '',
    spec.marks && spec.patches.length <= mostMarked ? placeMarks(spec, frame) : '',
    drawRegions(spec, frame, mesh),
    frame.origin ? datumCross(frame.origin) : '',
    label('port', { x: fullWidth / 2, y: margin.top - 12, 'text-anchor': 'middle', fill: muted }),
    scaleBar(frame, foot),
    bowArrow(foot),
    legend(spec, legendTop),
  );
}

function datumCross([x, y]: Point): string {
  return (
    el('path', {
      d: `M${px(x - 6)} ${px(y)}h12M${px(x)} ${px(y - 6)}v12`,
      stroke: ink,
      'stroke-width': fine,
    }) + label('datum', { x: x + 8, y: y + 14, fill: muted, 'font-size': 11 })
  );
}
