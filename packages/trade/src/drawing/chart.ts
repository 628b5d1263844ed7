import type { ScaleLinear } from 'd3-scale';
import { area as areaShape, line as lineShape } from 'd3-shape';
import { type EndLabel, writeApart } from './end-labels.ts';
import { type AxisSpec, scaleFor, ticksOf } from './scales.ts';
import { fine, fullWidth, hairline, ink, muted, outline, paper, signal, wash } from './style.ts';
import { type Drawing, el, label, picture } from './svg.ts';

type Point = [x: number, y: number];

/** One set of data. Sets are told apart by their mark and their words at the end, not by colour. */
export interface Series {
  /** `bars` stand on the lowest y shown; `steps` are read as they lie. */
  kind: 'line' | 'dashed' | 'points' | 'hollow-points' | 'bars' | 'area';
  points: Point[];
  /** Written at its last point. */
  words?: string;
  /** Drawn in the signal colour, for what fails. Say so in words too. */
  strong?: boolean;
}

/** A line across the plot at one value, with its words: a limit. */
export interface Limit {
  axis: 'x' | 'y';
  at: number;
  words: string;
}

/** A washed band between two values of y, with its words: the range that is well. */
export interface Band {
  axis: 'x' | 'y';
  from: number;
  to: number;
  words: string;
}

export interface ChartSpec {
  key: string;
  title: string;
  description: string;
  x: AxisSpec;
  y: AxisSpec;
  series: Series[];
  limits?: Limit[];
  bands?: Band[];
  /** Words at a point of the plot, with a dot at it. */
  notes?: Array<{ at: Point; words: string; side?: 'left' | 'right' }>;
  height?: number;
  /** One unit of x as long as one of y, for things drawn to scale; the height follows. */
  toScale?: boolean;
}

const margin = { left: 58, right: 92, top: 16, bottom: 44 };

interface Plot {
  x: ScaleLinear<number, number>;
  y: ScaleLinear<number, number>;
  left: number;
  right: number;
  top: number;
  bottom: number;
  /** Places that have a bar: sets of bars at different places are as wide as one set would be. */
  barPlaces: number;
}

/** A chart of one x and one y: lines, points, bars, limits and bands, in the style of every other drawing. */
export function chart(spec: ChartSpec): Drawing {
  const plot = layOut(spec);
  const size = { width: fullWidth, height: plot.bottom + margin.bottom };
  return picture(
    { key: spec.key, title: spec.title, description: spec.description, ...size },
    ...(spec.bands ?? []).map((band) => drawBand(plot, band)),
    drawAxes(plot, spec),
    ...(spec.limits ?? []).map((limit) => drawLimit(plot, limit)),
    ...spec.series.map((series) => drawSeries(plot, series)),
    ...(spec.notes ?? []).map((note) => drawNote(plot, note)),
    writeApart(endLabels(plot, spec)),
  );
}

/** The words of limits and sets of data, where these end at the right. */
function endLabels({ x, y, right }: Plot, { limits = [], series }: ChartSpec): EndLabel[] {
  const ofLimits = limits
    .filter((limit) => limit.axis === 'y')
    .map((limit) => ({ x: right + 6, y: y(limit.at), words: limit.words, colour: ink }));
  const ofSeries = series.flatMap(({ words, points, strong }) => {
    const last = points.at(-1);
    if (!words || !last) return [];
    return [{ x: x(last[0]) + 7, y: y(last[1]), words, colour: strong ? signal : ink }];
  });
  return [...ofLimits, ...ofSeries];
}

function layOut(spec: ChartSpec): Plot {
  const left = margin.left;
  const right = fullWidth - margin.right;
  const top = margin.top;
  const all = (axis: 'x' | 'y') => [
    ...spec.series.flatMap((s) => s.points.map((p) => (axis === 'x' ? p[0] : p[1]))),
    ...(spec.limits ?? []).filter((l) => l.axis === axis).map((l) => l.at),
  ];
  const x = scaleFor(all('x'), spec.x, [left, right]);
  let bottom = top + (spec.height ?? 300) - margin.top - margin.bottom;
  if (spec.toScale) {
    const [x0 = 0, x1 = 1] = x.domain();
    const [y0 = 0, y1 = 1] = scaleFor(all('y'), spec.y, [1, 0]).domain();
    bottom = top + Math.min(520, Math.max(60, ((right - left) * (y1 - y0)) / (x1 - x0)));
  }
  const barPlaces = new Set(spec.series.flatMap((s) => (s.kind === 'bars' ? s.points.map((p) => p[0]) : [])))
    .size;
  return { x, y: scaleFor(all('y'), spec.y, [bottom, top]), left, right, top, bottom, barPlaces };
}

function drawAxes(plot: Plot, spec: ChartSpec): string {
  const { x, y, left, right, top, bottom } = plot;
  const across = ticksOf(y, spec.y, Math.max(2, (bottom - top) / 44)).flatMap(({ at, words }) => [
    el('line', { x1: left, x2: right, y1: y(at), y2: y(at), stroke: hairline, 'stroke-width': fine }),
    label(words, { x: left - 7, y: y(at) + 4, 'text-anchor': 'end', fill: muted }),
  ]);
  const along = ticksOf(x, spec.x, 8).flatMap(({ at, words }) => [
    el('line', { x1: x(at), x2: x(at), y1: bottom, y2: bottom + 4, stroke: ink, 'stroke-width': fine }),
    label(words, { x: x(at), y: bottom + 17, 'text-anchor': 'middle', fill: muted }),
  ]);
  const middle = (top + bottom) / 2;
  return [
    ...across,
    ...along,
    el('line', { x1: left, x2: right, y1: bottom, y2: bottom, stroke: ink, 'stroke-width': outline }),
    label(spec.x.label, { x: (left + right) / 2, y: bottom + 36, 'text-anchor': 'middle', fill: ink }),
    label(spec.y.label, {
      x: 14,
      y: middle,
      'text-anchor': 'middle',
      fill: ink,
      transform: `rotate(-90 14 ${middle})`,
    }),
  ].join('');
}

function drawBand({ x, y, left, right, top, bottom }: Plot, band: Band): string {
  const [from, to] = band.axis === 'y' ? [y(band.to), y(band.from)] : [x(band.from), x(band.to)];
  const [start, end] = band.axis === 'y' ? [top, bottom] : [left, right];
  const low = Math.min(end, Math.max(start, from));
  const high = Math.min(end, Math.max(start, to));
  const box =
    band.axis === 'y'
      ? { x: left, y: low, width: right - left, height: high - low }
      : { x: low, y: top, width: high - low, height: bottom - top };
  const words =
    band.axis === 'y'
      ? label(band.words, { x: right + 6, y: (low + high) / 2 + 4, fill: muted })
      : label(band.words, { x: (low + high) / 2, y: top - 4, 'text-anchor': 'middle', fill: muted });
  return el('rect', { ...box, fill: wash }) + words;
}

function drawLimit({ x, y, left, right, top, bottom }: Plot, limit: Limit): string {
  const stroke = { stroke: ink, 'stroke-width': outline, 'stroke-dasharray': '6 4' };
  if (limit.axis === 'y') {
    const at = y(limit.at);
    return el('line', { x1: left, x2: right, y1: at, y2: at, ...stroke });
  }
  const at = x(limit.at);
  return (
    el('line', { x1: at, x2: at, y1: top, y2: bottom, ...stroke }) +
    label(limit.words, { x: at, y: top - 4, 'text-anchor': 'middle', fill: ink })
  );
}

function drawSeries(plot: Plot, series: Series): string {
  const { x, y, bottom } = plot;
  const colour = series.strong ? signal : ink;
  const points = series.points.map(([px, py]): Point => [x(px), y(py)]);
  return shapes(series.kind, points, colour, plot, bottom);
}

function shapes(kind: Series['kind'], points: Point[], colour: string, plot: Plot, bottom: number): string {
  switch (kind) {
    case 'line':
    case 'dashed':
      return el('path', {
        d: lineShape()(points) ?? '',
        stroke: colour,
        'stroke-width': outline,
        'stroke-dasharray': kind === 'dashed' ? '4 3' : undefined,
        'stroke-linejoin': 'round',
      });
    case 'area':
      return el('path', {
        d: areaShape().y0(bottom)(points) ?? '',
        fill: wash,
        stroke: colour,
        'stroke-width': fine,
      });
    case 'bars': {
      const wide = Math.min(46, ((plot.right - plot.left) / Math.max(1, plot.barPlaces)) * 0.6);
      return points
        .map(([px, py]) =>
          el('rect', {
            x: px - wide / 2,
            y: Math.min(py, bottom),
            width: wide,
            height: Math.abs(bottom - py),
            fill: colour === signal ? signal : wash,
            stroke: colour,
            'stroke-width': outline,
          }),
        )
        .join('');
    }
    default:
      return points
        .map(([px, py]) =>
          el('circle', {
            cx: px,
            cy: py,
            r: 3.5,
            fill: kind === 'points' ? colour : paper,
            stroke: colour,
            'stroke-width': outline,
          }),
        )
        .join('');
  }
}

function drawNote({ x, y }: Plot, note: NonNullable<ChartSpec['notes']>[number]): string {
  const [px, py] = [x(note.at[0]), y(note.at[1])];
  const left = note.side === 'left';
  return (
    el('circle', { cx: px, cy: py, r: 2.5, fill: ink }) +
    label(note.words, {
      x: px + (left ? -7 : 7),
      y: py - 6,
      'text-anchor': left ? 'end' : 'start',
      fill: ink,
    })
  );
}
