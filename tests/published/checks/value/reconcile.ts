import { type CheckedWorksheet, printed } from '../../support/check.ts';

const clarion = 'Clarion University, RE 470, chapter 5, reconciliation example';
const jsabt = 'jsabtconsulting.com, reconciliation of a single-family residence';

const because = (why: string) => ({ salesReason: why, costReason: why, incomeReason: why });
const given = (values: Record<string, unknown>) => ({
  currency: 'USD',
  valueOn: '2026-06-01',
  kindOfValue: 'market',
  ...because('evidence of this approach judged'),
  ...values,
});
const three = (sales: [number, number], cost: [number, number], income: [number, number], more = {}) =>
  given({
    salesValue: sales[0],
    salesWeight: sales[1],
    costValue: cost[0],
    costWeight: cost[1],
    incomeValue: income[0],
    incomeWeight: income[1],
    ...more,
  });
const two = (sales: number, cost: number | string, more = {}) =>
  given({ salesValue: sales, salesWeight: 60, costValue: cost, costWeight: 40, ...more });

export const reconcileChecks: CheckedWorksheet = {
  kind: 'reconcile',
  checks: [
    {
      name: 'cost 120,000 at 20%, income 105,000 at 50%, sales 98,000 at 30%',
      source: clarion,
      basis: 'printed',
      inputs: three([98_000, 30], [120_000, 20], [105_000, 50]),
      outputs: { indicated: '105900.00' },
    },
    {
      name: 'their straight average',
      source: clarion,
      basis: 'printed',
      inputs: three([98_000, 30], [120_000, 20], [105_000, 50]),
      outputs: { plainAverage: printed('107667') },
    },
    {
      name: 'sales 150,000 at 70%, cost 144,000 at 20%, income 140,000 at 10%: 147,800 in all',
      source: `${jsabt}, total`,
      basis: 'printed',
      inputs: three([150_000, 70], [144_000, 20], [140_000, 10]),
      outputs: { indicated: '147800.00' },
      verdict: 'satisfactory',
    },
    {
      name: 'the parts of sales and income',
      source: `${jsabt}, lines of sales and income; its line of cost prints 28,000 where 144,000 × 20% is 28,800, as its own total needs`,
      basis: 'printed',
      inputs: three([150_000, 70], [144_000, 20], [140_000, 10]),
      outputs: { salesPart: '105000.00', incomePart: '14000.00', costPart: '28800.00' },
    },
    {
      name: '33,950,269.05 rounded to figures the market expects',
      source: 'Clarion University, RE 470, chapter 5, rounding',
      basis: 'printed',
      inputs: given({ salesValue: '33950269.05', salesWeight: 100, step: 10_000 }),
      outputs: { value: '33950000.00' },
    },
    {
      name: '100,000 / 110,000 / 96,000 at 50, 30, 20 per cent',
      source: 'sum of weight × value by hand (regs.md 12)',
      basis: 'computed',
      inputs: three([100_000, 50], [110_000, 30], [96_000, 20]),
      outputs: { indicated: '102200.00', value: '102000.00', low: '96000.00', high: '110000.00' },
      verdict: 'satisfactory',
    },
    {
      name: 'weights in thirds, to a ten-thousandth',
      source: '(90,000 × 33.3333 + 93,000 × 33.3333 + 96,000 × 33.3334) / 100 by hand',
      basis: 'computed',
      inputs: three([90_000, 33.3333], [93_000, 33.3333], [96_000, 33.3334]),
      outputs: { indicated: '93000.00' },
      verdict: 'attention',
    },
    {
      name: 'one approach alone, the others explained; range 5% either side',
      source: '84,400 ± 5% by hand, outward to 500',
      basis: 'computed',
      inputs: given({ salesValue: 84_400, salesWeight: 100 }),
      outputs: { value: '84500.00', low: '80000.00', high: '89000.00', used: 1, costPart: null },
      verdict: 'satisfactory',
    },
    {
      name: 'an approach far off without weight is pointed at',
      source: 'firm’s limit, 15%',
      basis: 'computed',
      inputs: given({ salesValue: 80_000, salesWeight: 100, costValue: 120_000, costWeight: 0 }),
      verdict: 'attention',
    },
    {
      name: 'a difference of exactly 15 per cent is agreement: 106 and 91 about 100',
      source: '106 × 60% + 91 × 40% = 100; (106 − 91) / 100',
      basis: 'edge',
      inputs: two(106_000, 91_000),
      outputs: { spread: printed('15', '%'), indicated: '100000.00' },
      verdict: 'satisfactory',
    },
    {
      name: 'a cent more is not',
      source: 'firm’s limit, 15%',
      basis: 'edge',
      inputs: two(106_000, '90999.99'),
      verdict: 'attention',
    },
    {
      name: 'weights of 60 and 40 add up; 60 and 39.9 are refused',
      source: 'weights sum to 100%',
      basis: 'edge',
      inputs: two(100_000, 100_000, { costWeight: 39.9 }),
      refused: ['salesWeight'],
    },
    {
      name: 'an unused approach without an explanation is refused',
      source: 'an approach not used is explained',
      basis: 'computed',
      inputs: given({ salesValue: 80_000, salesWeight: 100, incomeReason: 'n/a' }),
      refused: ['incomeReason'],
    },
    {
      name: 'a value without a weight, a weight without a value',
      source: 'weights belong to values',
      basis: 'computed',
      inputs: given({ salesValue: 80_000, costWeight: 50 }),
      refused: ['salesWeight', 'costValue'],
    },
    {
      name: 'nothing weighed at all',
      source: 'weights sum to 100%',
      basis: 'computed',
      inputs: given({}),
      refused: ['salesWeight'],
    },
  ],
  unverified: [
    'That an unused approach is explained, and that weighing is not averaging, is general appraisal practice from memory; the appraisal standards are copyrighted and were not read.',
    'The limits of agreement (15%) and of the least range (5%) are practice without a source; a firm may set both.',
  ],
};
