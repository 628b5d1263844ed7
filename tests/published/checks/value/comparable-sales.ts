import { type Check, type CheckedWorksheet, printed } from '../../support/check.ts';

const on = '2026-06-01';
/** Sales on the date of the value, so that a source's plain prices stay as they are. */
const sales = (...prices: Array<number | string>) =>
  prices.map((price, i) => ({ boat: `Boat ${i + 1}`, price, basis: 'sold', date: on }));
const given = (rows: unknown, more: Record<string, unknown> = {}) => ({
  currency: 'USD',
  valueOn: on,
  sales: rows,
  ...more,
});
const one = (sale: Record<string, unknown>, more: Record<string, unknown> = {}) =>
  given([{ boat: 'Boat', price: 100_000, basis: 'sold', date: on, ...sale }], { fewestSales: 1, ...more });

const clarion = 'Clarion University, RE 470, chapter 5, reconciliation example';
const grid = 'lorenzenrealtyadvisors.com, 28 June 2021, adjustment grid sequence';
const scores = 'codingace.net, modified z-score, example data table';

const edge = (
  name: string,
  source: string,
  inputs: Record<string, unknown>,
  verdict: Check['verdict'],
): Check => ({
  name,
  source,
  basis: 'edge',
  inputs,
  ...(verdict ? { verdict } : {}),
});

export const comparableSalesChecks: CheckedWorksheet = {
  kind: 'comparable-sales',
  checks: [
    {
      name: 'straight average of three values',
      source: clarion,
      basis: 'printed',
      inputs: given(sales(120_000, 105_000, 98_000), { method: 'mean' }),
      outputs: { mean: printed('107667'), indicated: printed('107667') },
    },
    {
      name: 'weights 20, 50 and 30 per cent',
      source: clarion,
      basis: 'printed',
      inputs: given(
        sales(120_000, 105_000, 98_000).map((sale, i) => ({ ...sale, weight: [20, 50, 30][i] })),
        { method: 'own' },
      ),
      outputs: { indicated: '105900.00', value: '106000.00' },
      verdict: 'satisfactory',
    },
    {
      name: 'rounding to figures the market expects: 33,950,269.05 to 33,950,000',
      source: 'Clarion University, RE 470, chapter 5, rounding',
      basis: 'printed',
      inputs: given(sales('33950269.05'), { fewestSales: 1, step: 10_000 }),
      outputs: { indicated: '33950269.05', value: '33950000.00' },
    },
    {
      name: 'financing of +2,000 on 100,000 gives 102,000',
      source: grid,
      basis: 'printed',
      inputs: one({ terms: 2000 }),
      outputs: { median: '102000.00' },
    },
    {
      name: 'then 5,000 spent after the purchase gives 107,000',
      source: grid,
      basis: 'printed',
      inputs: one({ terms: 2000, outlay: 5000 }),
      outputs: { median: '107000.00' },
    },
    {
      name: 'shares for the boat itself are taken of the 107,000: 10 per cent more is 117,700',
      source: `rule printed at ${grid}; 107,000 × 1.10 by hand`,
      basis: 'computed',
      inputs: one({ terms: 2000, outlay: 5000, condition: '10%' }),
      outputs: { median: '117700.00' },
    },
    {
      name: 'two shares for the boat add up, they do not compound: 107,000 + 10% − 4%',
      source: `rule printed at ${grid}; 107,000 × 1.06 by hand`,
      basis: 'computed',
      inputs: one({ terms: 2000, outlay: 5000, condition: '10%', location: '-4%' }),
      outputs: { median: '113420.00' },
    },
    {
      name: 'eight observations, median 12 and MAD 1: 300 scores 194.2560',
      source: scores,
      basis: 'printed',
      inputs: given(sales(10, 12, 12, 13, 12, 11, 14, 300)),
      outputs: { median: '12.00', deviation: '1.00', farthest: printed('194.2560'), outliers: 1 },
      verdict: 'attention',
    },
    {
      name: 'the same without the outlier: 10 and 14 are 1.3490 away and within range',
      source: scores,
      basis: 'printed',
      inputs: given(sales(10, 12, 12, 13, 12, 11, 14)),
      outputs: { median: '12.00', deviation: '1.00', farthest: printed('1.3490'), outliers: 0 },
    },
    {
      name: 'from seven sales on, the range is from the lower to the upper quartile',
      source: 'quartiles of 10, 11, 12, 12, 12, 13, 14 by hand: 11.5 and 12.5',
      basis: 'computed',
      inputs: given(sales(10, 12, 12, 13, 12, 11, 14), { step: '0.1' }),
      outputs: { value: '12.00', low: '11.50', high: '12.50' },
    },
    {
      name: 'median absolute deviation of 10, 15, 14, 20, 18 is 3 about a median of 15',
      source: 'mathbz, median absolute deviation example (engineering.md 9.2)',
      basis: 'printed',
      inputs: given(sales(10, 15, 14, 20, 18)),
      outputs: { median: '15.00', deviation: '3.00', outliers: null },
    },
    {
      name: 'adjusted 106, 109 and 93 thousand: median 106, mean 102.67',
      source: 'data appraisersforum.com thread 84833; median and mean by hand',
      basis: 'computed',
      inputs: given(sales(106_000, 109_000, 93_000)),
      outputs: { median: '106000.00', mean: '102666.67', spread: printed('15.1', '%') },
    },
    {
      name: 'weights .5, .3, .2 on 100,000, 110,000, 96,000',
      source: 'sum of weight × value by hand (regs.md 12)',
      basis: 'computed',
      inputs: given(
        sales(100_000, 110_000, 96_000).map((sale, i) => ({ ...sale, weight: [50, 30, 20][i] })),
        { method: 'own' },
      ),
      outputs: { indicated: '102200.00' },
    },
    {
      name: 'seven equal prices and one of 100: mean-deviation score 6.383',
      source: 'engineering.md 9.2: (100 − 10) / (1.253314 × 11.25) by hand',
      basis: 'computed',
      inputs: given(sales(10, 10, 10, 10, 10, 10, 10, 100)),
      outputs: { farthest: printed('6.383'), outliers: 1 },
    },
    {
      name: 'a market falling 6 per cent a year takes 3 per cent off in half a year (183 days)',
      source: '100,000 × −6% × 183 / 365.25 by hand',
      basis: 'computed',
      inputs: one({ date: '2025-11-30' }, { marketChange: -6 }),
      outputs: { median: '96993.84' },
    },
    {
      name: 'asking price less 10 per cent, then terms of 5 per cent on what remains',
      source: '100,000 × 0.90 × 1.05 by hand',
      basis: 'computed',
      inputs: one({ basis: 'asking', terms: '5%' }, { askingGap: 10 }),
      outputs: { median: '94500.00' },
      verdict: 'attention',
    },
    {
      name: 'a tenth and two tenths are three tenths, and cents are kept',
      source: 'decimal arithmetic by hand: (0.1 + 0.2) in binary is 0.30000000000000004',
      basis: 'computed',
      inputs: one({ price: '1000.10', terms: '0.20' }, { step: 0.01 }),
      outputs: { value: '1000.30' },
    },
    {
      name: 'least adjusted first: 0 and 10 per cent gross weigh 2 to 1',
      source: 'weights 1/5 and 1/10 by hand: (100,000 × 2 + 110,000) / 3',
      basis: 'computed',
      inputs: given([sales(100_000)[0], { ...sales(100_000)[0], condition: '10%' }], {
        method: 'least-adjusted',
        fewestSales: 2,
      }),
      outputs: { indicated: '103333.33' },
    },
    edge(
      'gross adjustment of exactly 25 per cent is still comparable',
      'firm’s limit, 25%',
      given([...sales(100_000, 100_000), { ...sales(100_000)[0], condition: '12.5%', equipment: -12_500 }]),
      'satisfactory',
    ),
    edge(
      'a cent more is not',
      'firm’s limit, 25%',
      given([
        ...sales(100_000, 100_000),
        { ...sales(100_000)[0], condition: '12.5%', equipment: '-12500.01' },
      ]),
      'attention',
    ),
    edge(
      'spread of exactly 25 per cent is agreement',
      'firm’s limit, 25%',
      given(sales(90, 100, 115)),
      'satisfactory',
    ),
    edge('just more is not', 'firm’s limit, 25%', given(sales(90, 100, '115.01')), 'attention'),
    {
      ...edge('three sales are enough', 'firm’s limit, 3', given(sales(90, 100, 110)), 'satisfactory'),
      outputs: { value: '100.00', low: '90.00', high: '110.00' },
    },
    {
      ...edge('two are not: no value is given', 'firm’s limit, 3', given(sales(90, 100)), 'indeterminate'),
      outputs: { value: null, low: null, high: null, indicated: null, median: '95.00' },
    },
    {
      ...edge(
        'among six prices none is called an outlier',
        'fewest for a flag, 7',
        given(sales(10, 12, 12, 13, 11, 300)),
        'attention',
      ),
      outputs: { outliers: null, farthest: null },
    },
    {
      name: 'an outlier left out with its reason no longer counts',
      source: 'median of the other seven by hand',
      basis: 'computed',
      inputs: given([
        ...sales(10, 12, 12, 13, 12, 11, 14),
        { ...sales(300)[0], leftOut: 'sold with her berth' },
      ]),
      outputs: { salesUsed: 7, outliers: 0, median: '12.00' },
    },
    {
      name: 'weights that do not add up to 100 are refused',
      source: 'weights sum to 100%',
      basis: 'computed',
      inputs: given(
        sales(1000, 1100, 1200).map((sale) => ({ ...sale, weight: 33.3 })),
        { method: 'own' },
      ),
      refused: ['sales'],
    },
    {
      name: 'a share over 100 per cent and a price of nothing are refused',
      source: 'impossible or unclear inputs',
      basis: 'computed',
      inputs: given([{ ...sales(1000)[0], condition: '-120%' }, { ...sales(0)[0] }]),
      refused: ['sales/0/condition', 'sales/1/price'],
    },
    {
      name: 'an asking price with no gap given',
      source: 'impossible or unclear inputs',
      basis: 'computed',
      inputs: given([{ ...sales(1000)[0], basis: 'asking' }]),
      refused: ['askingGap'],
    },
    {
      name: 'adjustments that leave nothing',
      source: 'impossible or unclear inputs',
      basis: 'computed',
      inputs: given([{ ...sales(1000)[0], condition: -1000 }]),
      refused: ['sales/0/price'],
    },
  ],
  unverified: [
    'The limits of gross adjustment (25%) and of spread (25%), the fewest sales (3), the fewest prices among which an outlier is flagged (7), the weights by least adjustment and the rounding steps are practice without a source; a firm may set the first three.',
    'Iglewicz and Hoaglin’s own print of the 3.5 limit was not seen, only others’ print of it.',
  ],
};
