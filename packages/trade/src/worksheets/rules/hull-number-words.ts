import { type DateFormat, type HullDate, monthName } from './hull-number-date.ts';
import type { HullNumber } from './hull-number-decode.ts';

const formats: Record<DateFormat, string> = {
  current: 'current format (month letter, year, model year)',
  'model-year': 'older model-year format (M, model year, month letter from August)',
  'straight-year': 'older format with month and year in figures',
};

export const formatWords = (format: DateFormat | null): string =>
  format === null ? 'none of the three formats' : formats[format];

/** `December 1994, model year 1995`. */
export function dateWords({ month, year, modelYear }: HullDate): string {
  const built = month === null || year === null ? 'no date' : `${monthName(month)} ${year}`;
  return modelYear === null ? built : `${built}, model year ${modelYear}`;
}

/** The number as it should be written: country code, hyphen, the rest without a break. */
export const shownNumber = ({ prefix, body }: HullNumber): string =>
  prefix === null ? body : `${prefix}-${body}`;

function dateRows(date: HullDate, body: string): string[][] {
  const at = (from: number, to = from) => body.slice(from - 1, to);
  const month = date.month === null ? '' : monthName(date.month);
  const model = `Model year ${date.modelYear}`;
  switch (date.format) {
    case 'current':
      return [
        ['9', at(9), `Month: ${month}`],
        ['10', at(10), date.year === null ? 'Year: contradicts the model year' : `Year: ${date.year}`],
        ['11 and 12', at(11, 12), model],
      ];
    case 'model-year':
      return [
        ['9', at(9), 'Model-year format'],
        ['10 and 11', at(10, 11), model],
        ['12', at(12), `Month: ${month}${date.year === null ? '' : ` ${date.year}`}`],
      ];
    case 'straight-year':
      return [
        ['9 and 10', at(9, 10), `Month: ${month}`],
        ['11 and 12', at(11, 12), `Year: ${date.year}`],
      ];
    default:
      return [['9 to 12', at(9, 12), 'No date in any of the three formats']];
  }
}

/** Place, characters and meaning of each part of a number. */
export function characterRows(decoded: HullNumber): string[][] {
  const { prefix, country, body, manufacturer, serial } = decoded;
  return [
    ...(prefix === null ? [] : [['Before', prefix, country ? `Country: ${country}` : 'No country’s code']]),
    ...(manufacturer === null || serial === null
      ? [['All', body, `${body.length} characters in place of twelve: not decoded`]]
      : [
          ['1 to 3', manufacturer, 'Code of the manufacturer or importer'],
          ['4 to 8', serial, 'Serial number'],
          ...dateRows(decoded.date, body),
        ]),
  ];
}
