import { placed } from './fittings.ts';
import { type Point, shape, thin, tube } from './panels.ts';
import { hairline, ink, paper, wash } from './style.ts';
import { el } from './svg.ts';

// Shackles, chain and pins, seen from the side; each drawn about its own origin and then placed.

/** Seizing or locking wire: thinner than an outline would make it look, and always sound. */
export const wire = (d: string): string =>
  el('path', { d, stroke: ink, 'stroke-width': 1.2, 'stroke-linejoin': 'round' });

/** A chain link seen on its flat, lying left to right about its middle. */
export const flatLink = (length: number, width: number, thickness: number, fill: string = paper): string => {
  const [half, r] = [(length - thickness) / 2, (width - thickness) / 2];
  const straight = half - r;
  return tube(
    `M${-straight} ${-r} H${straight} A${r} ${r} 0 0 1 ${straight} ${r} H${-straight} A${r} ${r} 0 0 1 ${-straight} ${-r} Z`,
    thickness,
    fill,
  );
};

/** A chain link seen on its edge, lying left to right about its middle. */
export const edgeLink = (length: number, thickness: number): string => {
  const [half, r] = [length / 2, thickness / 2];
  return shape(
    `M${-half + r} ${-r} H${half - r} A${r} ${r} 0 0 1 ${half - r} ${r} H${-half + r} A${r} ${r} 0 0 1 ${-half + r} ${-r} Z`,
  );
};

/** A place on a chain and the way the chain runs there, in degrees. */
export type Station = readonly [x: number, y: number, turn: number];

/** Places every so many units along a bent line, the first one at its start. */
export function stations(line: readonly Point[], pitch: number): Station[] {
  const found: Station[] = [];
  let left = 0;
  for (let at = 0; at + 1 < line.length; at++) {
    const [[x1, y1] = [0, 0], [x2, y2] = [0, 0]] = [line[at], line[at + 1]];
    const length = Math.hypot(x2 - x1, y2 - y1);
    const turn = (Math.atan2(y2 - y1, x2 - x1) * 180) / Math.PI;
    for (; left <= length; left += pitch) {
      const share = left / length;
      found.push([x1 + share * (x2 - x1), y1 + share * (y2 - y1), turn]);
    }
    left -= length;
  }
  return found;
}

/**
 * Chain of a wire so thick through these places, every other link on its flat, the first one too. `shaded` is the
 * place of one flat link to be told from the rest.
 */
export const chainThrough = (
  places: readonly Station[],
  pitch: number,
  thickness: number,
  shaded?: number,
): string => {
  const long = pitch + 2 * thickness - 1;
  const link = ([x, y, turn]: Station, at: number) =>
    placed(
      round(x),
      round(y),
      round(turn),
      at % 2
        ? edgeLink(long, thickness)
        : flatLink(long, thickness * 3.4, thickness, at === shaded ? hairline : paper),
    );
  const drawn = places.map(link);
  return drawn.filter((_, at) => at % 2 === 0).join('') + drawn.filter((_, at) => at % 2).join('');
};

const round = (value: number): number => Math.round(value * 100) / 100;

/** A bow shackle, its bow upward and the middle of its pin at the origin; the pin's eye is at 42, 0. */
export const bowShackle = (): string =>
  shape('M-13 -6 H13 V6 H-13 Z') +
  tube('M-19 -8 L-25 -30 C-33 -60 -17 -74 0 -74 C17 -74 33 -60 25 -30 L19 -8', 12) +
  shape('M-26 -9 Q-26 -12 -23 -12 H-15 Q-12 -12 -12 -9 V9 Q-12 12 -15 12 H-23 Q-26 12 -26 9 Z') +
  shape('M12 -9 Q12 -12 15 -12 H23 Q26 -12 26 -9 V9 Q26 12 23 12 H15 Q12 12 12 9 Z') +
  shape('M26 -8 H31 V8 H26 Z') +
  shape('M31 -5 H34 A10 10 0 1 1 34 5 H31 Z') +
  el('circle', { cx: 42, cy: 0, r: 4, fill: paper, stroke: ink, 'stroke-width': 1.2 });

/** A split pin hanging from its eye at the origin, its legs so long and each opened by so many degrees below `bend`. */
export const splitPin = (width: number, bend: number, length: number, opened: number): string => {
  const leg = (side: number) =>
    placed(
      side * (width / 4),
      bend,
      -side * opened,
      shape(
        `M${-width / 4} -1 H${width / 4} V${length - bend - 2} L${(side * width) / 4} ${length - bend} L${-width / 4} ${length - bend} Z`,
      ),
    );
  return (
    leg(-1) +
    leg(1) +
    shape(`M${-width / 2} 0 H${width / 2} V${bend} H${-width / 2} Z`) +
    thin(`M0 0 V${bend}`) +
    el('ellipse', { cx: 0, cy: -4, rx: width * 0.8, ry: 5, fill: wash, stroke: ink, 'stroke-width': 1.5 }) +
    el('ellipse', { cx: 0, cy: -4.5, rx: width * 0.3, ry: 2, fill: paper, stroke: ink, 'stroke-width': 0.75 })
  );
};
