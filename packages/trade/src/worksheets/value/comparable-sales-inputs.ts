import { choice, count, day, fallback, measure, optional, words } from '../core/fields.ts';
import { rows } from '../core/list-fields.ts';
import { currency, money } from '../core/money.ts';
import type { Values } from '../core/worksheet.ts';
import { adjustment } from './adjustment.ts';

const percent = (label: string, min: number, max: number, help?: string) =>
  measure({ label, unit: '%', min, max, ...(help ? { help } : {}) });

const sale = {
  boat: words({ label: 'Boat', max: 60 }),
  price: money({ label: 'Price', min: 1 }),
  basis: choice({ label: 'Price is', choices: { sold: 'Sold for', asking: 'Asked' } }),
  date: day({ label: 'Sold or asked on' }),
  terms: optional(adjustment({ label: 'Terms of sale' })),
  outlay: optional(adjustment({ label: 'Spent at once by the buyer' })),
  time: optional(adjustment({ label: 'Time, instead of the market change' })),
  location: optional(adjustment({ label: 'Location' })),
  condition: optional(adjustment({ label: 'Condition' })),
  equipment: optional(adjustment({ label: 'Equipment' })),
  weight: optional(percent('Weight', 0, 100)),
  leftOut: optional(words({ label: 'Left out because' })),
};

export const inputs = {
  currency: currency(),
  valueOn: day({ label: 'Date of the value' }),
  sales: rows({
    label: 'Comparable sales',
    help: 'Adjust each sale towards the boat surveyed: add where the sale was the poorer boat. An amount such as -2500, or a share of the price such as 3%',
    each: 'sale',
    max: 40,
    columns: sale,
  }),
  marketChange: fallback(
    percent(
      'Market change a year',
      -50,
      100,
      'Applied to each price from its date, unless time is given for it',
    ),
    0,
  ),
  askingGap: optional(
    percent('Taken off asking prices', 0, 60, 'What such boats sell below their asking price'),
  ),
  method: fallback(
    choice({
      label: 'Value taken from',
      choices: {
        median: 'The median of the adjusted prices',
        mean: 'Their mean',
        'least-adjusted': 'Weights that favour the least adjusted',
        own: 'The weights given with each sale',
      },
    }),
    'median',
  ),
  fewestSales: fallback(count({ label: 'Fewest sales for a value', min: 1, max: 10 }), 3),
  grossLimit: fallback(percent('Largest gross adjustment taken as comparable', 1, 200), 25),
  spreadLimit: fallback(percent('Widest spread taken as agreement', 1, 200), 25),
  step: optional(
    money({ label: 'Rounded to', help: 'The step this market quotes in; found from the value', min: 0.01 }),
  ),
};

export type Inputs = Values<typeof inputs>;
export type Sale = Inputs['sales'][number];
