import { fine, hairline, ink, muted, outline, paper, signal, wash } from '../../drawing/style.ts';
import { type Drawing, el, label, picture } from '../../drawing/svg.ts';
import { Quantity } from '../core/quantity.ts';
import type { boreNeeded, LockerRule, PrintedLimit } from './locker-rules.ts';

interface Shown {
  rule: LockerRule;
  bore: Quantity;
  height: Quantity | undefined;
  distance: Quantity | undefined;
  boreNeeded: ReturnType<typeof boreNeeded>;
}

const asked = (limit: PrintedLimit) => `at least ${new Quantity(limit.value, limit.unit).text()}`;

/** A measure in two lines, what was found and what is asked; in the signal colour, and in words, where it falls short. */
function note(x: number, y: number, found: string, wanted: string, short: boolean): string {
  return (
    label(short ? `${found}: too little` : found, { x, y, fill: short ? signal : ink }) +
    label(wanted, { x, y: y + 15, fill: muted })
  );
}

const short = (found: Quantity | undefined, limit: PrintedLimit) =>
  found !== undefined && found.in(limit.unit) < limit.value;

/** A double-headed dimension line. */
const dimension = (x1: number, y1: number, x2: number, y2: number) =>
  el('line', { x1, y1, x2, y2, stroke: ink, 'stroke-width': fine }) +
  [
    [x1, y1],
    [x2, y2],
  ]
    .map(([cx = 0, cy = 0]) => el('circle', { cx, cy, r: 2.5, fill: ink }))
    .join('');

/** A section through the locker and its drain with the three measures on it. Not to scale. */
export function drawLocker({ rule, bore, height, distance, boreNeeded: needed }: Shown): Drawing {
  const heightLimit: PrintedLimit = rule.height === 'above' ? { value: 0, unit: 'mm' } : rule.height;
  const heightShort =
    rule.height === 'above' ? height !== undefined && height.value <= 0 : short(height, heightLimit);
  const boreLimit = 'unknown' in needed ? needed.atLeast : needed;
  const distanceShort = rule.distance ? short(distance, rule.distance) : false;
  const under = height !== undefined && height.value <= 0;
  const water = under ? 178 : 240;
  const said = (found: Quantity | undefined) => found?.text() ?? 'not measured';
  return picture(
    {
      key: 'locker',
      title: 'Locker and drain in section',
      description: `Drain bore ${bore.text()}, outlet ${said(height)} above the waterline and ${said(distance)} from the nearest opening. Not to scale.`,
      width: 640,
      height: 290,
    },
    // the topside, hatched as cut material
    el('path', {
      d: 'M330 16 L330 200 Q326 250 296 282',
      stroke: ink,
      'stroke-width': outline,
    }),
    ...[40, 70, 100, 130, 160, 220, 250].map((y) =>
      el('line', { x1: 324, x2: 336, y1: y + 6, y2: y - 6, stroke: muted, 'stroke-width': fine }),
    ),
    // locker, lid, cylinder
    el('rect', { x: 90, y: 46, width: 170, height: 96, fill: wash, stroke: ink, 'stroke-width': outline }),
    el('line', { x1: 82, x2: 268, y1: 42, y2: 42, stroke: ink, 'stroke-width': 3 }),
    el('rect', {
      x: 112,
      y: 76,
      width: 54,
      height: 64,
      rx: 12,
      fill: paper,
      stroke: ink,
      'stroke-width': outline,
    }),
    el('rect', { x: 131, y: 62, width: 16, height: 14, fill: paper, stroke: ink, 'stroke-width': outline }),
    label('Lid', { x: 54, y: 46, fill: muted }),
    // drain
    ...(bore.value === 0
      ? [label('No drain', { x: 232, y: 166, fill: signal })]
      : [
          el('path', {
            d: 'M232 142 L232 172 Q232 186 246 188 L330 200',
            stroke: ink,
            'stroke-width': outline,
          }),
          el('path', {
            d: 'M246 142 L246 168 Q246 174 254 175 L330 186',
            stroke: ink,
            'stroke-width': outline,
          }),
        ]),
    note(70, 196, `Bore ${bore.text()}`, asked(boreLimit), short(bore, boreLimit)),
    // water
    el('path', {
      d: `M${water > 200 ? 330 : 331} ${water} q14 -5 28 0 t28 0 t28 0 t28 0 t28 0 t28 0 t28 0`,
      stroke: ink,
      'stroke-width': outline,
    }),
    label('Waterline', { x: 540, y: water + 4, fill: muted }),
    dimension(342, 193, 342, water),
    note(
      362,
      under ? 204 : 214,
      `Above water ${said(height)}`,
      rule.height === 'above' ? 'above it' : asked(heightLimit),
      heightShort,
    ),
    // nearest opening
    el('rect', { x: 326, y: 40, width: 8, height: 30, fill: paper, stroke: ink, 'stroke-width': outline }),
    label('Opening into the boat', { x: 346, y: 44, fill: muted }),
    el('line', { x1: 334, x2: 352, y1: 70, y2: 70, stroke: hairline, 'stroke-width': fine }),
    dimension(352, 70, 352, 193),
    note(
      362,
      116,
      `From the opening ${said(distance)}`,
      rule.distance ? asked(rule.distance) : 'no figure in this rule',
      distanceShort,
    ),
  );
}
