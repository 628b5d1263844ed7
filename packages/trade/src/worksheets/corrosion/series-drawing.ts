import { scaleLinear } from 'd3-scale';
import { fine, fullWidth, hairline, ink, muted, outline, signal, wash } from '../../drawing/style.ts';
import { type Drawing, el, label, picture } from '../../drawing/svg.ts';
import { formatNumber } from '../core/working.ts';
import { couple, type MetalKey, metalOf, series } from './galvanic-series.ts';

const left = 200;
const right = fullWidth - 70;
const top = 28;
const step = 15;

/** The series with the two metals marked and named: the nobler solid, the attacked one in the signal colour. */
export function seriesDrawing(a: MetalKey, b: MetalKey): Drawing {
  const { anode, cathode, told } = couple(a, b);
  const keys = (Object.keys(series) as MetalKey[]).reverse();
  const x = scaleLinear([-1700, 350], [left, right]);
  const bottom = top + keys.length * step;
  const ticks = [-1600, -1200, -800, -400, 0];
  const roles: Partial<Record<MetalKey, string>> = told
    ? { [anode]: 'attacked', [cathode]: 'attacks' }
    : { [anode]: 'either', [cathode]: 'either' };
  return picture(
    {
      key: 'series',
      title: 'The two metals in the galvanic series',
      description: told
        ? `${metalOf(anode).words} lies below ${metalOf(cathode).words} and is attacked by it.`
        : `The ranges of ${metalOf(anode).words} and ${metalOf(cathode).words} overlap.`,
      width: fullWidth,
      height: bottom + 44,
    },
    label('nobler', { x: left - 8, y: 16, 'text-anchor': 'end', fill: muted }),
    ...ticks.map(
      (at) =>
        el('line', { x1: x(at), x2: x(at), y1: top, y2: bottom, stroke: hairline, 'stroke-width': fine }) +
        label(formatNumber(at), { x: x(at), y: bottom + 17, 'text-anchor': 'middle', fill: muted }),
    ),
    ...keys.map((key, i) => row(key, top + i * step, roles[key], told && key === anode, x)),
    el('line', { x1: left, x2: right, y1: bottom, y2: bottom, stroke: ink, 'stroke-width': outline }),
    label('mV against calomel, in flowing sea water', {
      x: (left + right) / 2,
      y: bottom + 36,
      'text-anchor': 'middle',
      fill: ink,
    }),
  );
}

function row(
  key: MetalKey,
  y: number,
  role: string | undefined,
  attacked: boolean,
  x: (value: number) => number,
): string {
  const { words, low, high } = metalOf(key);
  const colour = attacked ? signal : ink;
  const strong = role ? { 'font-weight': 600, fill: colour } : { fill: muted };
  return (
    label(words, { x: left - 8, y: y + 11, 'text-anchor': 'end', ...strong }) +
    el('rect', {
      x: x(low),
      y: y + 3,
      width: x(high) - x(low),
      height: step - 6,
      fill: role ? colour : wash,
      stroke: colour,
      'stroke-width': fine,
    }) +
    (role ? label(role, { x: x(high) + 6, y: y + 11, ...strong }) : '')
  );
}
