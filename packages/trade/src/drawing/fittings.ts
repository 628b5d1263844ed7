import { type Point, shape, thin } from './panels.ts';
import { fine, ink, muted, outline, signal, wash } from './style.ts';
import { el } from './svg.ts';

// Parts that several diagrams show: each is drawn about its own origin and then placed.

/** Shapes drawn about their own origin, moved to x, y and turned clockwise by so many degrees. */
export const placed = (x: number, y: number, turn: number, ...shapes: string[]): string =>
  el('g', { transform: `translate(${x} ${y})${turn ? ` rotate(${turn})` : ''}` }, ...shapes);

/** Points along an arc, in degrees clockwise from three o'clock: curved edges of cut material. */
export function arc(centre: Point, radius: number, from: number, to: number): Point[] {
  const steps = Math.max(2, Math.round(Math.abs(to - from) / 7.5));
  return Array.from({ length: steps + 1 }, (_, at) => {
    const angle = ((from + ((to - from) * at) / steps) * Math.PI) / 180;
    const inHundredths = (value: number) => Math.round(value * 100) / 100;
    return [
      inHundredths(centre[0] + radius * Math.cos(angle)),
      inHundredths(centre[1] + radius * Math.sin(angle)),
    ] as const;
  });
}

/** Closed straight-edged path through points. */
export const outlineOf = (points: readonly Point[]): string =>
  `M${points.map(([x, y]) => `${x} ${y}`).join(' L')} Z`;

/** What is wrong in itself: a crack, a hole's edge. In the signal colour; the words say it too. */
export const flaw = (d: string): string =>
  el('path', { d, stroke: signal, 'stroke-width': outline, 'stroke-linejoin': 'round' });

/** A plain filled area without outline: liquid, resin, wet core. */
export const area = (d: string, fill: string = wash): string => el('path', { d, fill });

/** A worm-drive clamp round a hose of that outside diameter running left to right; the screw is at the top. */
export const wormClamp = (diameter: number): string => {
  const half = diameter / 2 + 1;
  return (
    shape(`M-3.5 ${-half} H3.5 V${half} H-3.5 Z`) +
    thin(`M-1.5 ${-half + 4} h3 M-1.5 ${-half + 7} h3 M-1.5 ${-half + 10} h3`) +
    shape(`M-5 ${-half - 6} H5 V${-half} H-5 Z`) +
    thin(`M-2 ${-half - 3} h4`)
  );
};

/** A spring clamp of bent wire round a hose of that outside diameter running left to right; its ears at the top. */
export const springClamp = (diameter: number): string => {
  const half = diameter / 2 + 1;
  return (
    shape(`M-3 ${-half} h2.2 v${2 * half} h-2.2 Z M1 ${-half} h2.2 v${2 * half} h-2.2 Z`) +
    shape(`M-3.4 ${-half} v-8 h3 v8 Z M0.6 ${-half} v-8 h3 v8 Z`)
  );
};

/** A bolt upright with a pan head at the origin and its nut's underside so far below. */
export const bolt = (length: number, washer = 0): string =>
  shape(`M-2.5 0 V${length + 3} H2.5 V0 Z`) +
  shape('M-6 0 Q-6 -5 0 -5 Q6 -5 6 0 Z') +
  (washer ? shape(`M${-washer} ${length - 8} H${washer} V${length - 5.5} H${-washer} Z`) : '') +
  shape(`M-5.5 ${length - 5.5} H5.5 V${length} H-5.5 Z`) +
  thin(`M-2 ${length - 5.5} V${length} M2 ${length - 5.5} V${length}`);

/** Water drops falling one below the other. */
export const drops = (x: number, y: number, count: number): string =>
  Array.from({ length: count }, (_, at) =>
    el('path', {
      d: `M${x} ${y + at * 10} q3 4.2 0 5.6 q-3 -1.4 0 -5.6 Z`,
      stroke: ink,
      'stroke-width': fine,
      fill: wash,
    }),
  ).join('');

/** Gas or vapour as dots, thicker towards the bottom where it lies; always the same dots for the same box. */
export function vapour(x: number, y: number, width: number, height: number, pitch = 6): string {
  let dots = '';
  const rows = Math.max(1, Math.round(height / pitch));
  for (let row = 0; row < rows; row++) {
    for (let at = row % 2 ? pitch / 2 : 0; at <= width; at += pitch) {
      dots += el('circle', { cx: x + at, cy: y + height - row * pitch, r: 1, fill: muted });
    }
  }
  return dots;
}

/** A gas bottle standing on x (its middle), y (its foot), with its valve. */
export const gasBottle = (x: number, y: number, width: number, height: number): string => {
  const half = width / 2;
  return placed(
    x,
    y,
    0,
    shape(`M-3 ${-height} h6 v-4 h4 v-4 h-14 v4 h4 Z`),
    shape(
      `M${-half} -4 V${-height + 8} Q${-half} ${-height} ${-half + 9} ${-height} H${half - 9} Q${half} ${-height} ${half} ${-height + 8} V-4 Q${half} 0 ${half - 4} 0 H${-half + 4} Q${-half} 0 ${-half} -4 Z`,
    ),
  );
};

/** The same path larger or smaller: its lines keep their weight. Not for arcs. */
const scaled = (d: string, by: number): string =>
  d.replace(/-?\d+(\.\d+)?/g, (number) => String(Math.round(Number(number) * by * 100) / 100));

/** A ball-valve seacock standing on the hull's inner face at its origin, its lever in line with the pipe: open. */
export const seacock = (size = 1, lever = true): string =>
  [
    'M-20 0 V-6 H20 V0 Z',
    'M-9 -6 V-12 Q-15 -20 -9 -28 V-33 H9 V-28 Q15 -20 9 -12 V-6 Z',
    'M-7 -33 V-38 H7 V-33 Z',
    'M-5 -20 Q-5 -25 0 -25 Q5 -25 5 -20 Q5 -15 0 -15 Q-5 -15 -5 -20 Z',
    ...(lever
      ? ['M-2.5 -20 V-50 Q-2.5 -53 0 -53 Q2.5 -53 2.5 -50 V-20 Q2.5 -17.5 0 -17.5 Q-2.5 -17.5 -2.5 -20 Z']
      : []),
  ]
    .map((d) => shape(scaled(d, size)))
    .join('');
