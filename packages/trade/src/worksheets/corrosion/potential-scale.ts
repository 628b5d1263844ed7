import { scaleLinear } from 'd3-scale';
import { hatchDefinitions, hatchFill } from '../../drawing/hatch.ts';
import { fine, fullWidth, ink, muted, outline, paper, signal } from '../../drawing/style.ts';
import { type Drawing, el, label, picture } from '../../drawing/svg.ts';
import { formatNumber } from '../core/working.ts';
import { convertPotential, type Electrode, electrodes } from './electrodes.ts';
import type { Found } from './hull-potential-judge.ts';

type Scale = (value: number) => number;

const left = 24;
const right = fullWidth - 24;
const barTop = 66;
const barBottom = 96;

const mV = (value: number) => `${formatNumber(Math.round(value), 5)} mV`;

/** The reading on a scale of potential, more protected to the right, with the bands of its hull in words. */
export function potentialScale(found: Found, electrode: Electrode): Drawing {
  const { silver, range, rest, state } = found;
  const shown = [silver, ...(rest === undefined ? [] : [rest])];
  const low = Math.min(-1250, ...shown.map((value) => value - 60));
  const high = Math.max(-450, silver + 60, ...(rest === undefined ? [] : [rest + 220]));
  const x = scaleLinear([high, low], [left, right]);
  const bands = [
    { from: high, to: range.from, words: 'too little', fill: paper },
    { from: range.from, to: range.to, words: 'protected', fill: hatchFill('plain') },
    ...(range.harmFrom === null || range.harmFrom === range.to
      ? [
          {
            from: range.to,
            to: low,
            words: range.harmFrom === null ? 'too much' : 'harmful',
            fill: hatchFill('lines'),
          },
        ]
      : [
          { from: range.to, to: range.harmFrom, words: 'too much', fill: hatchFill('dots') },
          { from: range.harmFrom, to: low, words: 'harmful', fill: hatchFill('lines') },
        ]),
  ];
  const second = electrode === 'silver-seawater' ? [] : axis(x, 152, electrode);
  return picture(
    {
      key: 'potential',
      title: 'Potential on its scale',
      description: `The boat reads ${mV(silver)} against silver chloride; protection begins at ${mV(range.from)} and is too much beyond ${mV(range.to)}: ${state === 'well' ? 'protected' : state === 'under' ? 'too little' : 'too much'}.`,
      width: fullWidth,
      height: second.length > 0 ? 196 : 146,
    },
    hatchDefinitions(),
    ...bands.map((band, i) => drawBand(band, x, i % 2 === 1 ? 34 : 18)),
    ...axis(x, barBottom, 'silver-seawater'),
    ...second,
    ...(rest === undefined ? [] : [mark(x(rest), `at rest ${mV(rest)}`, 'left', paper, ink)]),
    mark(x(silver), mV(silver), 'right', state === 'well' ? ink : signal, state === 'well' ? ink : signal),
  );
}

function drawBand(
  band: { from: number; to: number; words: string; fill: string },
  x: Scale,
  wordsAt: number,
): string {
  const from = x(band.from);
  const width = Math.max(0, x(band.to) - from);
  return (
    el('rect', {
      x: from,
      y: barTop,
      width,
      height: barBottom - barTop,
      fill: band.fill,
      stroke: ink,
      'stroke-width': fine,
    }) + label(band.words, { x: from + width / 2, y: wordsAt, 'text-anchor': 'middle', fill: muted })
  );
}

/** Ticks every 100 mV, every 200 on a wide scale, as one electrode would read them. */
function axis(x: Scale, top: number, electrode: Electrode): string[] {
  const silverAt = (value: number) => x(convertPotential(value, electrode, 'silver-seawater'));
  const ticks: string[] = [];
  const step = Math.abs(x(-100) - x(0)) < 44 ? 200 : 100;
  for (let value = -3000; value <= 2000; value += step) {
    const at = silverAt(value);
    if (at < left - 0.5 || at > right + 0.5) continue;
    ticks.push(
      el('line', { x1: at, x2: at, y1: top, y2: top + 5, stroke: ink, 'stroke-width': fine }),
      label(formatNumber(value, 5), { x: at, y: top + 18, 'text-anchor': 'middle', fill: muted }),
    );
  }
  return [
    el('line', { x1: left, x2: right, y1: top, y2: top, stroke: ink, 'stroke-width': outline }),
    ...ticks,
    label(`mV against ${electrodes[electrode].words}`, {
      x: right,
      y: top + 36,
      'text-anchor': 'end',
      fill: ink,
    }),
  ];
}

/** A pointer from above, with its words on one side. */
function mark(at: number, words: string, side: 'left' | 'right', fill: string, stroke: string): string {
  const end = side === 'left' || at > right - 90;
  return (
    el('line', { x1: at, x2: at, y1: barTop, y2: barBottom, stroke, 'stroke-width': outline }) +
    el('path', {
      d: `M${at} ${barTop}l-6 -12h12z`,
      fill,
      stroke,
      'stroke-width': outline,
      'stroke-linejoin': 'round',
    }) +
    label(words, {
      x: at + (end ? -11 : 11),
      y: barTop - 4,
      'text-anchor': end ? 'end' : 'start',
      fill: stroke,
      'font-weight': 600,
    })
  );
}
