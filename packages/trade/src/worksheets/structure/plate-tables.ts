import type { ResultTable } from '../core/outputs.ts';
import { convert } from '../core/units.ts';
import { formatNumber } from '../core/working.ts';
import type { JudgedPlate } from './plate-judgement.ts';

const mm = (value: number | null | undefined) =>
  value === null || value === undefined ? '–' : `${formatNumber(value, 3)} mm`;
const both = (value: number) =>
  `${formatNumber(value, 3)} mm (${formatNumber(convert(value, 'mm', 'in'), 3)} in)`;
const per = (value: number | undefined) => (value === undefined ? '–' : `${formatNumber(value, 3)}%`);

/** Every plate; then those to be renewed or repaired, those pitted, and the doubtful readings, where there are any. */
export function plateTables(plates: readonly JudgedPlate[]): ResultTable[] {
  const renew = plates.filter((plate) => plate.work.length > 0);
  const pitted = plates.filter((plate) => plate.pitDepth !== undefined || plate.pitted !== undefined);
  const doubtful = plates.flatMap((plate) => plate.doubtful.map((doubt) => ({ plate, ...doubt })));
  const tables: ResultTable[] = [
    {
      title: 'Renewal list',
      columns: ['Plate', 'Original', 'Thinnest', 'Why'],
      rows: renew.map((plate) => [
        plate.name,
        both(plate.original),
        plate.statistics ? both(plate.statistics.least) : '–',
        plate.work.join('; '),
      ]),
    },
    {
      title: 'Plates',
      columns: ['Plate', 'Original', 'Readings', 'Mean', 'Least', 'Std dev.', 'Mean loss', 'Greatest loss'],
      rows: plates.map(({ name, original, statistics, meanLoss, greatestLoss }) => [
        name,
        mm(original),
        formatNumber(statistics?.count ?? 0),
        mm(statistics?.mean),
        mm(statistics?.least),
        mm(statistics?.deviation),
        per(meanLoss),
        per(greatestLoss),
      ]),
    },
    {
      title: 'Pitting',
      columns: ['Plate', 'Deepest pit', 'Left under it', 'Of the original', 'Surface pitted'],
      rows: pitted.map(({ name, original, pitDepth, underPit, pitted: share }) => [
        name,
        mm(pitDepth),
        mm(underPit),
        per(underPit === undefined ? undefined : (100 * underPit) / original),
        per(share),
      ]),
    },
    {
      title: 'Doubtful readings, left out',
      columns: ['Plate', 'Reading', 'Original', 'Why'],
      rows: doubtful.map(({ plate, reading, why }) => [plate.name, mm(reading), mm(plate.original), why]),
    },
  ];
  return tables.filter((table) => table.rows.length > 0);
}
