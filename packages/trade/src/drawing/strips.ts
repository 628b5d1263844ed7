import { scaleLinear } from 'd3-scale';
import { formatNumber } from '../worksheets/core/working.ts';
import { fine, fullWidth, hairline, ink, muted, outline, paper, signal, wash } from './style.ts';
import { type Drawing, el, label, picture, px } from './svg.ts';

/** One strip: values along one line, against where it started and the least it may be. */
export interface Strip {
  name: string;
  /** What it was when new: the strip's full length. */
  whole: number;
  /** The least the mean may be. */
  limit: number;
  values: readonly number[];
  mean: number | undefined;
  /** Values that can't be true; drawn as crosses. */
  doubtful: readonly number[];
  /** A depth below the values: what is left at the bottom of it. */
  bottom: number | undefined;
  /** Written at the end of the strip. */
  words: string;
  /** Drawn in the signal colour; say so in the words too. */
  grave: boolean;
}

export interface StripsSpec {
  key: string;
  title: string;
  description: string;
  strips: readonly Strip[];
  /** What is measured along the strips, with its unit. */
  axis: string;
  /** What each mark means. */
  marks: { value: string; mean: string; limit: string; doubtful: string; bottom: string };
}

const left = 104;
const right = fullWidth - 132;
const rowHeight = 24;
const top = 12;

const cross = (x: number, y: number) =>
  el('path', {
    d: `M${px(x - 3.5)} ${px(y - 3.5)}l7 7M${px(x + 3.5)} ${px(y - 3.5)}l-7 7`,
    stroke: signal,
    'stroke-width': outline,
  });

const wedge = (x: number, y: number, fill: string) =>
  el('path', { d: `M${px(x)} ${px(y + 3)}l-4 7h8z`, fill, stroke: ink, 'stroke-width': fine });

const tick = (x: number, y: number, half: number, attributes: Record<string, string | number>) =>
  el('path', { d: `M${px(x)} ${px(y - half)}v${px(2 * half)}`, ...attributes });

const dot = (x: number, y: number, colour: string) =>
  el('circle', { cx: x, cy: y, r: 3, fill: paper, stroke: colour, 'stroke-width': outline });

function drawStrip(strip: Strip, y: number, at: (value: number) => number): string {
  const colour = strip.grave ? signal : ink;
  return [
    label(strip.name, { x: left - 8, y: y + 4, 'text-anchor': 'end', fill: ink }),
    el('rect', {
      x: at(0),
      y: y - 7,
      width: at(strip.whole) - at(0),
      height: 14,
      fill: wash,
      stroke: hairline,
      'stroke-width': fine,
    }),
    tick(at(strip.limit), y, 10, { stroke: ink, 'stroke-width': outline, 'stroke-dasharray': '3 2' }),
    ...strip.values.map((value) => dot(at(value), y, colour)),
    strip.mean === undefined ? '' : tick(at(strip.mean), y, 7, { stroke: colour, 'stroke-width': 3 }),
    strip.bottom === undefined ? '' : wedge(at(strip.bottom), y, strip.grave ? signal : ink),
    ...strip.doubtful.map((value) => cross(at(value), y)),
    label(strip.words, {
      x: right + 10,
      y: y + 4,
      fill: colour,
      'font-weight': strip.grave ? 600 : undefined,
    }),
  ].join('');
}

/** Strips one under another on one scale from zero, such as the gauged thickness of plates. */
export function strips(spec: StripsSpec): Drawing {
  const most = spec.strips.reduce((top, strip) => Math.max(top, strip.whole, ...strip.values), 0);
  // Doubtful values may be twice the scale: they are pinned to its end.
  const scale = scaleLinear([0, most * 1.06], [left, right]).clamp(true);
  const at = (value: number) => scale(value);
  const bottom = top + spec.strips.length * rowHeight;
  const axis = scale
    .ticks(8)
    .flatMap((value) => [
      el('path', { d: `M${px(at(value))} ${top}V${px(bottom)}`, stroke: hairline, 'stroke-width': fine }),
      label(formatNumber(value, 6), { x: at(value), y: bottom + 16, 'text-anchor': 'middle', fill: muted }),
    ]);
  const height = bottom + 84;
  return picture(
    { key: spec.key, title: spec.title, description: spec.description, width: fullWidth, height },
    ...axis,
    ...spec.strips.map((strip, i) => drawStrip(strip, top + (i + 0.5) * rowHeight, at)),
    label(spec.axis, { x: (left + right) / 2, y: bottom + 34, 'text-anchor': 'middle', fill: ink }),
    legend(spec, bottom + 56),
  );
}

function legend({ marks, strips: shown }: StripsSpec, y: number): string {
  const mean = (x: number, at: number) => tick(x, at, 7, { stroke: ink, 'stroke-width': 3 });
  const limit = (x: number, at: number) =>
    tick(x, at, 9, { stroke: ink, 'stroke-width': outline, 'stroke-dasharray': '3 2' });
  const pit = (x: number, at: number) => wedge(x, at - 7, ink);
  const entries: Array<[draw: (x: number, y: number) => string, words: string]> = [
    [(x, at) => dot(x, at, ink), marks.value],
    [mean, marks.mean],
    [limit, marks.limit],
    ...(shown.some((s) => s.bottom !== undefined) ? [[pit, marks.bottom] as [typeof pit, string]] : []),
    ...(shown.some((s) => s.doubtful.length > 0) ? [[cross, marks.doubtful] as [typeof cross, string]] : []),
  ];
  return entries
    .map(([draw, words], i) => {
      const x = 24 + (i % 3) * 205;
      const line = y + Math.floor(i / 3) * 20;
      return draw(x, line) + label(words, { x: x + 10, y: line + 4, fill: ink });
    })
    .join('');
}
