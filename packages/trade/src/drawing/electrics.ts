import { type Point, shape, thin, tube } from './panels.ts';
import { hairline, ink } from './style.ts';
import { el } from './svg.ts';

// Batteries, cables and what joins them; each drawn about its own origin and then placed.

/** A battery standing on the origin: its foot's middle. Its posts are a quarter of its width to either side. */
export const battery = (width: number, height: number): string => {
  const [half, post] = [width / 2, width / 4];
  const y = -height + 17;
  return (
    shape(
      `M${-post - 4} ${-height} v-6 h8 v6 Z M${post - 4} ${-height} v-6 h8 v6 Z M${-half} 0 V${-height} H${half} V0 Z`,
    ) +
    thin(`M${-half} ${-height + 8} H${half}`) +
    thin(`M${-post - 4} ${y} h8 M${post - 4} ${y} h8 M${post} ${y - 4} v8`)
  );
};

/** A fuse in its holder along a cable running left to right, its middle at the origin. */
export const fuse = (): string =>
  shape('M-13 -6 H13 V6 H-13 Z') +
  thin('M-13 0 H-8 C-5 -4 -3 -4 0 0 C3 4 5 4 8 0 H13') +
  shape('M-15 -3 H-13 V3 H-15 Z M13 -3 H15 V3 H13 Z', ink);

/** A cable along a path; a solid dark one to be told from pipes. */
export const cable = (d: string, thickness = 4): string => tube(d, thickness, hairline);

/** A single conductor, one line. */
export const conductor = (d: string): string =>
  el('path', { d, stroke: ink, 'stroke-width': 1.5, 'stroke-linejoin': 'round' });

/** Sparks about a place, as short strokes. */
export const sparks = ([x, y]: Point, radius: number, stroke: string): string =>
  el('path', {
    d: [-150, -115, -80, -45, -10]
      .map((turn) => {
        const angle = (turn * Math.PI) / 180;
        const at = (r: number) =>
          `${Math.round(x + r * Math.cos(angle))} ${Math.round(y + r * Math.sin(angle))}`;
        return `M${at(radius)} L${at(radius * 1.8)}`;
      })
      .join(' '),
    stroke,
    'stroke-width': 1.5,
  });
