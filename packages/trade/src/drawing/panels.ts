import { fine, hairline, ink, muted, outline, paper, signal } from './style.ts';
import { type Drawing, el, label, picture } from './svg.ts';

/** A panel is drawn in its own coordinates: 150 wide and 150 high, from its upper left corner. */
export const panelSize = 150;
const gap = 20;
const headHeight = 22;

/** A place in a panel, in its own units. */
export type Point = readonly [x: number, y: number];

/** One half of a diagram: what is drawn, and the words under it. */
export interface Panel {
  shapes: string[];
  /** One or two short lines in sentence case. */
  caption: string[];
}

/**
 * A diagram of a defect in two panels, as found and as it should be, side by side. 320 units wide: at 80 mm a unit is
 * a quarter of a millimetre and its words are 7.8 pt.
 */
export function asFoundAndAsItShouldBe(spec: {
  key: string;
  title: string;
  /** Both panels in words, for those who can't see them. */
  description: string;
  asFound: Panel;
  asItShouldBe: Panel;
}): Drawing {
  const captionLines = Math.max(spec.asFound.caption.length, spec.asItShouldBe.caption.length);
  const height = headHeight + panelSize + 6 + captionLines * 13 + 4;
  const width = 2 * panelSize + gap;
  return picture(
    { key: spec.key, title: spec.title, description: spec.description, width, height },
    ...half(0, 'As found', spec.asFound, cross),
    ...half(panelSize + gap, 'As it should be', spec.asItShouldBe, tick),
  );
}

function half(left: number, heading: string, panel: Panel, sign: string): string[] {
  return [
    el(
      'g',
      { transform: `translate(${left} 0)` },
      el('g', { transform: 'translate(2 4)' }, sign),
      label(heading, { x: 18, y: 14, fill: ink, 'font-weight': 600, 'font-size': 11 }),
      // A drawing of its own, so that what reaches over the panel's edge is cut off there.
      el(
        'svg',
        { y: headHeight, width: panelSize, height: panelSize },
        el('rect', { width: panelSize, height: panelSize, fill: paper }),
        ...panel.shapes,
        el('rect', {
          x: 0.5,
          y: 0.5,
          width: panelSize - 1,
          height: panelSize - 1,
          stroke: hairline,
          'stroke-width': fine,
        }),
      ),
      ...panel.caption.map((words, at) =>
        label(words, { x: 0, y: headHeight + panelSize + 15 + at * 13, fill: ink, 'font-size': 11 }),
      ),
    ),
  ];
}

// The two panels are told apart by their words and by these signs, not by colour.
const cross = el('path', { d: 'M1 1 L10 10 M10 1 L1 10', stroke: signal, 'stroke-width': 2 });
const tick = el('path', { d: 'M1 6 L4.5 10 L11 1', stroke: ink, 'stroke-width': 2 });

/** An outline: what is seen from outside. */
export const shape = (d: string, fill: string = paper): string =>
  el('path', { d, fill, stroke: ink, 'stroke-width': outline, 'stroke-linejoin': 'round' });

/** A finer line: an edge behind, a thread, a wire. */
export const thin = (d: string, dashed = false): string =>
  el('path', { d, stroke: ink, 'stroke-width': fine, 'stroke-dasharray': dashed ? '3 2' : undefined });

/** A rope, hose or wire of some thickness: two edges with paper between. */
export const tube = (d: string, thickness: number, fill: string = paper): string =>
  el('path', { d, stroke: ink, 'stroke-width': thickness, 'stroke-linecap': 'butt' }) +
  el('path', { d, stroke: fill, 'stroke-width': Math.max(1, thickness - 2 * outline) });

/** Cut material: a closed straight-edged outline, hatched at 45 degrees. Points in order. */
export function cut(points: readonly Point[], pitch = 5): string {
  const outlinePath = `M${points.map(([x, y]) => `${x} ${y}`).join(' L')} Z`;
  return shape(outlinePath) + el('path', { d: hatch(points, pitch), stroke: ink, 'stroke-width': fine });
}

// Each hatch line x − y = c meets the outline in pairs of points; between them it is inside.
function hatch(points: readonly Point[], pitch: number): string {
  const offsets = points.map(([x, y]) => x - y);
  let d = '';
  for (let c = Math.ceil(Math.min(...offsets) / pitch) * pitch; c < Math.max(...offsets); c += pitch) {
    const meets: [number, number][] = [];
    for (const [at, [x1, y1]] of points.entries()) {
      const [x2, y2] = points[(at + 1) % points.length] ?? [x1, y1];
      const [from, to] = [x1 - y1 - c, x2 - y2 - c];
      if (from > 0 === to > 0) continue;
      const share = from / (from - to);
      meets.push([x1 + share * (x2 - x1), y1 + share * (y2 - y1)]);
    }
    meets.sort((a, b) => a[0] - b[0]);
    for (let i = 0; i + 1 < meets.length; i += 2) {
      const [[ax, ay] = [0, 0], [bx, by] = [0, 0]] = [meets[i], meets[i + 1]];
      d += `M${round(ax)} ${round(ay)} L${round(bx)} ${round(by)} `;
    }
  }
  return d;
}

const round = (value: number): number => Math.round(value * 100) / 100;

/** An arrow with a dot at its tail, pointing at what matters. */
export const arrow = (from: Point, to: Point, strong = false): string => course([from, to], strong);

/** The way something goes, as an arrow through several points with its bends rounded. */
export function course(points: readonly Point[], strong = false): string {
  const colour = strong ? signal : ink;
  const [start, end] = [points[0] ?? [0, 0], points.at(-1) ?? [0, 0]];
  const before = points.at(-2) ?? start;
  const angle = Math.atan2(end[1] - before[1], end[0] - before[0]);
  const wing = (turn: number) =>
    `${round(end[0] - 7 * Math.cos(angle + turn))} ${round(end[1] - 7 * Math.sin(angle + turn))}`;
  const bends = points.slice(1, -1).map(([x, y], at) => {
    const [nextX, nextY] = points[at + 2] ?? end;
    return `Q${x} ${y} ${round((x + nextX) / 2)} ${round((y + nextY) / 2)} `;
  });
  return (
    el('circle', { cx: start[0], cy: start[1], r: 2, fill: colour }) +
    el('path', {
      d: `M${start[0]} ${start[1]} ${bends.join('')}L${end[0]} ${end[1]} M${wing(0.45)} L${end[0]} ${end[1]} L${wing(-0.45)}`,
      stroke: colour,
      'stroke-width': outline,
      'stroke-linejoin': 'round',
    })
  );
}

/** Words within a panel, in sentence case; 10 units high, never smaller. */
export const note = (
  words: string,
  x: number,
  y: number,
  anchor: 'start' | 'middle' | 'end' = 'start',
): string => label(words, { x, y, 'text-anchor': anchor, fill: ink, 'font-size': 10 });

/** A water line with its three strokes below. */
export const waterline = (y: number, from = 0, to: number = panelSize): string =>
  el('path', {
    d: `M${from} ${y} H${to} M${from + 8} ${y + 4} h16 M${from + 12} ${y + 8} h8`,
    stroke: muted,
    'stroke-width': fine,
  });

/** A round thing: a bolt's end, a pipe seen along its length. */
export const circle = (cx: number, cy: number, r: number, fill: string = paper): string =>
  el('circle', { cx, cy, r, fill, stroke: ink, 'stroke-width': outline });
