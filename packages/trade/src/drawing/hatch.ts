import { fine, ink, wash } from './style.ts';
import { el } from './svg.ts';

/** How a value class is told apart: by the density of its hatching, so that it reads without colour. */
export type Hatch = 'plain' | 'dots' | 'lines' | 'crossed';

const stroke = { stroke: ink, 'stroke-width': fine };

const tiles: Record<Exclude<Hatch, 'plain'>, string> = {
  dots: el('circle', { cx: 3, cy: 3, r: 0.8, fill: ink }),
  lines: el('path', { d: 'M0 6L6 0M-1 1L1-1M5 7L7 5', ...stroke }),
  crossed: el('path', { d: 'M0 6L6 0M-1 1L1-1M5 7L7 5M0 0L6 6M5-1L7 1M-1 5L1 7', ...stroke }),
};

/** What to fill with. Two drawings on one page may share these definitions: they are all alike. */
export const hatchFill = (hatch: Hatch): string => (hatch === 'plain' ? wash : `url(#hatch-${hatch})`);

/** The definitions that {@link hatchFill} refers to. */
export const hatchDefinitions = (): string =>
  el(
    'defs',
    {},
    ...Object.entries(tiles).map(([name, tile]) =>
      el(
        'pattern',
        { id: `hatch-${name}`, width: 6, height: 6, patternUnits: 'userSpaceOnUse' },
        el('rect', { width: 6, height: 6, fill: wash }),
        tile,
      ),
    ),
  );
