import { convert } from '../core/units.ts';
import { formatNumber } from '../core/working.ts';
import type { Place } from './cells.ts';
import type { Region } from './regions.ts';

const metres = (value: number) => `${formatNumber(Math.abs(value), 3)} m`;
const toCentimetres = (value: number) => Math.round(value * 100) / 100;

/** A place in words: `2.3 m forward, 0.4 m to port`. */
export function placeWords([x, y]: Place): string {
  const [along, across] = [toCentimetres(x), toCentimetres(y)];
  const side =
    across === 0 ? 'on the centreline' : `${metres(across)} to ${across > 0 ? 'port' : 'starboard'}`;
  return `${metres(along)} ${along < 0 ? 'aft' : 'forward'}, ${side}`;
}

/** An area in both systems: `0.518 m² (5.58 ft²)`. */
export const areaWords = (area: number): string =>
  `${formatNumber(area, 3)} m² (${formatNumber(convert(area, 'm2', 'ft2'), 3)} ft²)`;

/** How far a region reaches: `0.9 × 0.6 m`. */
export const extentWords = ({ extent: [along, across] }: Region): string =>
  `${formatNumber(toCentimetres(along), 3)} × ${formatNumber(toCentimetres(across), 3)} m`;

/** `1 reading`, `12 readings`. */
export const readingsWords = (count: number): string =>
  `${formatNumber(count)} reading${count === 1 ? '' : 's'}`;

/** A region's name on the map and in its table, by its rank from 0. */
export const regionName = (rank: number): string => String(rank + 1);
