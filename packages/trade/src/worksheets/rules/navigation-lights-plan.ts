import { fine, fullWidth, hairline, ink, muted, outline, paper, signal, wash } from '../../drawing/style.ts';
import { type Drawing, el, label, picture } from '../../drawing/svg.ts';
import { formatNumber } from '../core/working.ts';
import type { Compliance, LightState } from './navigation-lights-fitted.ts';
import { arcs, type Light, rangeRequired } from './navigation-lights-rules.ts';

const centre = { x: fullWidth / 2, y: 178 };
const height = 356;
type DrawnLight = Exclude<Light, 'torch'>;

/** Where each light is drawn: its ring, and the arcs of its colours from and to in degrees from ahead, clockwise. */
const rings: Record<DrawnLight, { radius: number; sectors: Array<[from: number, to: number]>; at: number }> =
  {
    port: { radius: 78, sectors: [[-112.5, 0]], at: -75 },
    starboard: { radius: 78, sectors: [[0, 112.5]], at: 75 },
    combined: {
      radius: 78,
      sectors: [
        [-112.5, 0],
        [0, 112.5],
      ],
      at: 75,
    },
    stern: { radius: 78, sectors: [[112.5, 247.5]], at: 150 },
    masthead: { radius: 98, sectors: [[-112.5, 112.5]], at: -38 },
    'after-masthead': { radius: 110, sectors: [[-112.5, 112.5]], at: 38 },
    'sailing-lantern': {
      radius: 124,
      sectors: [
        [-112.5, 0],
        [0, 112.5],
        [112.5, 247.5],
      ],
      at: -128,
    },
    'all-round': {
      radius: 138,
      sectors: [
        [0, 180],
        [180, 360],
      ],
      at: 145,
    },
  };

const shortNames: Record<DrawnLight, string> = {
  masthead: 'Masthead, white',
  'after-masthead': 'After masthead, white',
  port: 'Port side, red',
  starboard: 'Starboard side, green',
  combined: 'Sides, red and green',
  stern: 'Stern, white',
  'sailing-lantern': 'Sailing lantern',
  'all-round': 'All-round, white',
};

const point = (degrees: number, radius: number): [number, number] => {
  const angle = ((degrees - 90) * Math.PI) / 180;
  return [centre.x + radius * Math.cos(angle), centre.y + radius * Math.sin(angle)];
};
const at = ([x, y]: [number, number]) => `${x.toFixed(2)} ${y.toFixed(2)}`;

function arcPath(from: number, to: number, radius: number): string {
  // A small gap at each end, so that neighbours on one ring are told apart.
  const [start, end] = [from + 1.2, to - 1.2];
  return `M ${at(point(start, radius))} A ${radius} ${radius} 0 ${end - start > 180 ? 1 : 0} 1 ${at(point(end, radius))}`;
}

const stateWords: Record<LightState['state'], string> = {
  good: 'in order',
  unknown: 'not fully examined',
  short: 'too weak',
  arc: 'wrong arc',
  dark: 'does not light',
  missing: 'missing',
};

function drawLight(light: DrawnLight, state: LightState['state'], length: number): string {
  const { radius, sectors, at: angle } = rings[light];
  const bad = state !== 'good' && state !== 'unknown';
  const colour = bad ? signal : ink;
  const dashes = bad ? '3 4' : state === 'unknown' ? '9 3' : undefined;
  const strokes = sectors.map(([from, to]) =>
    el('path', {
      d: arcPath(from, to, radius),
      stroke: colour,
      'stroke-width': 3,
      'stroke-dasharray': dashes,
    }),
  );
  const [x, y] = point(angle, radius);
  const right = x > centre.x;
  const edge = centre.x + (right ? 158 : -158);
  const side = right ? 'start' : 'end';
  const text = edge + (right ? 5 : -5);
  const facts = `${formatNumber(arcs[light].degrees, 4)}°, ${rangeRequired(light, length)} nmi`;
  return [
    ...strokes,
    el('line', { x1: x, y1: y, x2: edge, y2: y, stroke: muted, 'stroke-width': fine }),
    el('circle', { cx: x, cy: y, r: 2.5, fill: colour }),
    label(shortNames[light], { x: text, y: y - 9, 'text-anchor': side, fill: ink }),
    label(facts, { x: text, y: y + 5, 'text-anchor': side, fill: muted }),
    label(stateWords[state], { x: text, y: y + 19, 'text-anchor': side, fill: colour }),
  ].join('');
}

function hull(): string {
  const { x, y } = centre;
  return el('path', {
    d: `M ${x} ${y - 56} C ${x + 20} ${y - 32} ${x + 22} ${y} ${x + 17} ${y + 48} L ${x - 17} ${y + 48} C ${x - 22} ${y} ${x - 20} ${y - 32} ${x} ${y - 56} Z`,
    fill: wash,
    stroke: ink,
    'stroke-width': outline,
  });
}

function sectorLines(): string {
  return [0, 112.5, -112.5]
    .map((degrees) => {
      const [x1, y1] = point(degrees, 60);
      const [x2, y2] = point(degrees, 144);
      return el('line', { x1, y1, x2, y2, stroke: hairline, 'stroke-width': fine });
    })
    .join('');
}

/** The vessel from above with the arcs of the lights she needs, each with its range and how it stands. */
export function lightsPlan(compliances: readonly Compliance[], length: number): Drawing | undefined {
  const drawn = new Map<DrawnLight, LightState['state']>();
  for (const { states } of compliances) {
    for (const { light, state } of states) {
      if (light !== 'torch' && (drawn.get(light) ?? 'good') === 'good') drawn.set(light, state);
    }
  }
  if (drawn.size === 0) return undefined;
  const list = [...drawn].map(([light, state]) => `${shortNames[light]}: ${stateWords[state]}`).join('; ');
  return picture(
    {
      key: 'arcs',
      title: 'Arcs of the lights required',
      description: `The vessel from above, bow up. ${list}.`,
      width: fullWidth,
      height,
    },
    el('rect', { width: fullWidth, height, fill: paper }),
    sectorLines(),
    hull(),
    label('ahead', { x: centre.x, y: 16, 'text-anchor': 'middle', fill: muted }),
    ...[...drawn].map(([light, state]) => drawLight(light, state, length)),
  );
}
