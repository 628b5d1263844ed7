import { chart } from '../../drawing/chart.ts';
import type { Drawing } from '../../drawing/svg.ts';
import { withUnit } from '../core/quantity.ts';
import { formatNumber } from '../core/working.ts';
import { naturalArea } from './natural-area.ts';

const in2 = (value: number) => withUnit(formatNumber(value), 'in2');

/**
 * The area required against volume, with the areas found.
 * @param volume ft³ counted
 * @param found square inches of each side
 */
export function drawOpenings(volume: number, found: { supply: number; exhaust: number }): Drawing {
  const needed = naturalArea(volume);
  const far = Math.max(60, volume * 1.3);
  const curve = Array.from({ length: 61 }, (_, i): [number, number] => {
    const x = 5 + ((far - 5) * i) / 60;
    return [x, naturalArea(x)];
  });
  return chart({
    key: 'openings',
    title: 'Area of openings against volume',
    description: `At ${formatNumber(volume)} ft³ ${in2(needed)} is required; supply ${in2(found.supply)}, exhaust ${in2(found.exhaust)}.`,
    x: { label: 'Net volume, ft³', domain: [0, far] },
    y: { label: 'Area, in²', fromZero: true },
    height: 260,
    series: [
      { kind: 'line', points: curve, words: 'least, each' },
      { kind: 'points', points: [[volume, found.supply]], words: 'supply', strong: found.supply < needed },
      {
        kind: 'hollow-points',
        points: [[volume, found.exhaust]],
        words: 'exhaust',
        strong: found.exhaust < needed,
      },
    ],
  });
}
