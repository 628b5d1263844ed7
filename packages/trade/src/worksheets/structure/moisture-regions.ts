import type { ResultTable } from '../core/outputs.ts';
import { formatNumber } from '../core/working.ts';
import { areaWords, extentWords, placeWords, regionName } from './region-words.ts';
import type { Region } from './regions.ts';

/** As many readings as one map holds. */
export const mostReadings = 10_000;
/** Regions beyond this are counted, not listed. */
const mostListed = 40;

export interface WetRegion extends Region {
  /** Highest reading in it, and its score. */
  highest: number;
  score: number;
}

/** The wet regions as a table, largest first. */
export function regionsTable(regions: readonly WetRegion[], mapped: number, datum: string): ResultTable {
  const more = regions.length > mostListed ? `, the largest ${mostListed} of ${regions.length}` : '';
  return {
    title: `Wet regions${more}; positions from ${datum}`,
    columns: ['Region', 'Area', 'Share', 'Readings', 'Highest', 'Score', 'Centre', 'Along × across'],
    rows: regions
      .slice(0, mostListed)
      .map((region, rank) => [
        regionName(rank),
        areaWords(region.area),
        `${formatNumber((100 * region.area) / mapped, 3)}%`,
        formatNumber(region.cells.length),
        formatNumber(region.highest, 4),
        formatNumber(region.score, 3),
        placeWords(region.centre),
        extentWords(region),
      ]),
  };
}
