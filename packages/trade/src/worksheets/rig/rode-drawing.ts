import { chart } from '../../drawing/chart.ts';
import type { Drawing } from '../../drawing/svg.ts';
import { formatNumber } from '../core/working.ts';
import { type Lie, type Rode, shapeOf } from './rode-catenary.ts';

/** Working limit of each part against the load, lbf. */
export function drawParts(parts: ReadonlyArray<{ name: string; limit: number }>, load: number): Drawing {
  const weak = (limit: number) => limit < load;
  const points = (which: boolean) =>
    parts.flatMap(
      (part, at): Array<[number, number]> => (weak(part.limit) === which ? [[at, part.limit]] : []),
    );
  const words = parts.map((part) => `${part.name} ${formatNumber(part.limit, 4)} lbf`).join('; ');
  return chart({
    key: 'parts',
    title: 'Working limit of each part against the load',
    description: `Load ${formatNumber(load, 4)} lbf; ${words}.`,
    x: {
      label: 'Part of the rode',
      domain: [-0.6, parts.length - 0.4],
      ticks: parts.map((part, at) => ({ at, words: part.name + (weak(part.limit) ? ' (too weak)' : '') })),
    },
    y: { label: 'Working limit, lbf', fromZero: true },
    height: 230,
    limits: [{ axis: 'y', at: load, words: 'load to hold' }],
    series: [
      { kind: 'bars', points: points(false) },
      { kind: 'bars', points: points(true), strong: true },
    ],
  });
}

/** Plot of a drawing to scale, in px: the chart's own width, and the least and greatest height it can have. */
const plot = { width: 490, least: 62, most: 510 };

/** The rode from anchor to bow roller, to scale. */
export function drawRode(rode: Rode, lie: Lie, depth: number, fails: boolean): Drawing {
  const top = Math.max(rode.height * 1.15, (lie.reach * 1.04 * plot.least) / plot.width);
  const wide = Math.max(lie.reach * 1.04, (top * plot.width) / plot.most);
  const lies =
    lie.angle > 0
      ? `pulls up on the anchor at ${formatNumber(lie.angle, 3)}°`
      : `${formatNumber(lie.grounded, 3)} m of chain on the seabed`;
  return chart({
    key: 'lie',
    title: 'The rode to scale at the load',
    description: `${formatNumber(rode.chain + rode.rope, 3)} m of rode to a height of ${formatNumber(rode.height, 3)} m: ${lies}.`,
    x: { label: `Distance from the anchor, m (${lies})`, domain: [0, wide] },
    y: { label: 'Height, m', domain: [0, top] },
    toScale: true,
    limits: [{ axis: 'y', at: depth, words: 'water' }],
    notes: [
      { at: [lie.reach, rode.height], words: 'bow roller', side: 'left' },
      ...(lie.grounded > 0 ? [{ at: [lie.grounded, 0] as [number, number], words: 'chain lifts' }] : []),
    ],
    series: [{ kind: 'line', points: shapeOf(rode, lie), strong: fails }],
  });
}
