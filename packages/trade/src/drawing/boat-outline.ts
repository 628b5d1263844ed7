import { curveCatmullRom, line } from 'd3-shape';
import { fine, hairline, ink, outline, paper, wash } from './style.ts';
import { el } from './svg.ts';

/** Boats drawn by how they are driven; no boat in particular. */
export type HullKind = 'sail' | 'power';

/** Places along the boat, from the stem (0) to the stern (1), each with a y in px; straight between them. */
type Profile = readonly (readonly [along: number, y: number])[];

/** A boat seen from starboard, bow to the right. */
export interface BoatOutline {
  height: number;
  /** y of the sheer, of the highest thing above it, and of the lowest below, at a place along the boat. */
  deck: Profile;
  top: Profile;
  bottom: Profile;
  waterline: number;
  drawn: string[];
}

/** x in px of the two ends. */
export const stem = 560;
export const stern = 90;

/** x in px of a place along the boat. */
export const xAlong = (along: number): number => stem - along * (stem - stern);

/** y of a profile at a place along the boat. */
export function yAt(profile: Profile, along: number): number {
  const next = profile.findIndex(([at]) => at >= along);
  const after = profile[next === -1 ? profile.length - 1 : next];
  const before = profile[Math.max(0, (next === -1 ? profile.length : next) - 1)];
  if (!after || !before) throw new Error('A profile needs at least one place.');
  if (after[0] === before[0]) return after[1];
  const share = Math.min(1, (along - before[0]) / (after[0] - before[0]));
  return before[1] + share * (after[1] - before[1]);
}

const smooth = line<readonly [number, number]>()
  .x(([along]) => xAlong(along))
  .y(([, y]) => y)
  .curve(curveCatmullRom.alpha(0.5));

const curved = (profile: Profile): string => smooth([...profile]) ?? '';
const backwards = (profile: Profile): string => curved([...profile].reverse()).replace(/^M/, 'L');

const stroked = (d: string, width = outline, fill = 'none') =>
  el('path', { d, fill, stroke: ink, 'stroke-width': width, 'stroke-linejoin': 'round' });

const at = (along: number, y: number) => `${xAlong(along)} ${y}`;

function waterline(y: number): string {
  return el('path', {
    d: `M20 ${y} H620`,
    stroke: hairline,
    'stroke-width': fine,
    'stroke-dasharray': '9 4',
  });
}

function sailing(): BoatOutline {
  const deck: Profile = [
    [0, 232],
    [0.2, 240],
    [0.5, 246],
    [0.8, 245],
    [1, 241],
  ];
  const canoe: Profile = [
    [0, 232],
    [0.035, 256],
    [0.09, 279],
    [0.25, 296],
    [0.5, 301],
    [0.75, 293],
    [0.93, 276],
    [1, 262],
  ];
  const bottom: Profile = [
    ...canoe.slice(0, 4),
    [0.4, 299],
    [0.42, 345],
    [0.59, 345],
    [0.62, 299],
    [0.84, 287],
    [0.86, 333],
    [0.93, 333],
    [0.95, 272],
    [1, 262],
  ];
  const mast = 0.42;
  const head = 30;
  const wire = (d: string) => el('path', { d, stroke: ink, 'stroke-width': fine });
  return {
    height: 360,
    deck,
    top: [
      [0, 232],
      [mast, head],
      [1, 241],
    ],
    bottom,
    waterline: 274,
    drawn: [
      waterline(274),
      stroked(`M${at(0.395, 296)} L${at(0.43, 345)} H${xAlong(0.57)} L${at(0.6, 299)} Z`, outline, paper),
      stroked(`M${at(0.845, 284)} L${at(0.87, 333)} H${xAlong(0.915)} L${at(0.925, 276)} Z`, outline, paper),
      stroked(`${curved(deck)} L${at(1, 262)} ${backwards(canoe)} Z`, outline, paper),
      stroked(
        `M${at(0.27, 242)} L${at(0.34, 227)} L${at(0.62, 226)} L${at(0.66, 246)} M${at(0.36, 240)} L${at(0.38, 232)} H${xAlong(0.58)} L${at(0.59, 241)} Z`,
        fine,
      ),
      stroked(`M${at(mast, 228)} V${head}`, outline * 1.6),
      stroked(`M${at(mast, 205)} L${at(0.8, 209)}`, outline),
      stroked(`M${at(mast - 0.012, 128)} H${xAlong(mast + 0.012)}`, outline),
      wire(
        `M${at(0.01, 233)} L${at(mast, head)} L${at(0.99, 242)} M${at(mast + 0.03, 246)} L${at(mast + 0.012, 128)} L${at(mast, head + 4)} M${at(0.8, 209)} L${at(mast, head)}`,
      ),
      wire(
        `M${at(0.015, 232)} V214 L${at(0.16, 219)} L${at(0.84, 225)} L${at(0.985, 221)} V241 M${at(0.16, 238)} V219 M${at(0.7, 246)} V223 M${at(0.84, 245)} V225`,
      ),
    ],
  };
}

function motor(): BoatOutline {
  const deck: Profile = [
    [0, 112],
    [0.2, 121],
    [0.45, 131],
    [0.7, 139],
    [1, 142],
  ];
  const bottom: Profile = [
    [0, 112],
    [0.05, 146],
    [0.12, 181],
    [0.22, 199],
    [0.45, 209],
    [0.75, 211],
    [1, 209],
  ];
  return {
    height: 250,
    deck,
    top: [
      [0, 92],
      [0.24, 118],
      [0.34, 78],
      [0.4, 38],
      [0.62, 38],
      [0.68, 82],
      [0.84, 128],
      [1, 130],
    ],
    bottom,
    waterline: 184,
    drawn: [
      waterline(184),
      stroked(
        `M${at(0.66, 210)} L${at(0.83, 224)} M${at(0.83, 216)} V232 M${at(0.87, 210)} V233 H${xAlong(0.92)} V210`,
        outline,
      ),
      stroked(`${curved(deck)} L${at(1, 209)} ${backwards(bottom)} Z`, outline, paper),
      stroked(`M${at(0.22, 122)} L${at(0.33, 81)} L${at(0.74, 81)} L${at(0.76, 140)}`, outline, paper),
      stroked(
        `M${at(0.31, 112)} L${at(0.355, 90)} H${xAlong(0.5)} V114 Z M${at(0.53, 114)} V90 H${xAlong(0.71)} V115 Z`,
        fine,
        wash,
      ),
      stroked(`M${at(0.36, 81)} L${at(0.4, 60)} H${xAlong(0.62)} L${at(0.64, 81)}`, outline, paper),
      stroked(`M${at(0.52, 60)} L${at(0.53, 38)} M${at(0.49, 46)} H${xAlong(0.57)}`, fine),
      stroked(
        `M${at(0.01, 112)} V92 L${at(0.2, 101)} V121 M${at(0.1, 116)} V97 M${at(0.78, 140)} V118 H${xAlong(0.99)} V142 M${at(0.88, 141)} V118`,
        fine,
      ),
      stroked(`M${at(0.012, 122)} Q${xAlong(0.4)} 150 ${at(1, 155)}`, fine),
    ],
  };
}

/** The outline of a boat of this kind. */
export const boatOutline = (kind: HullKind): BoatOutline => (kind === 'sail' ? sailing() : motor());
