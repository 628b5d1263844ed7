import { type Check, type CheckedWorksheet, printed } from '../../support/check.ts';

const boat = (more: Record<string, unknown>) => ({
  boat: 'outboard',
  length: 10,
  beam: 6,
  transomWidth: 4,
  flatBottom: false,
  remoteSteering: false,
  transomHeight: 15,
  ...more,
});
/** A boat 10 ft long of a given factor. */
const ofFactor = (factor: number, more: Record<string, unknown> = {}) =>
  boat({ transomWidth: factor / 10, beam: Math.min(10, factor / 10 + 0.5), ...more });
const law = '33 CFR 183.53, table (2015 edition)';

const steps: Array<[from: number, to: number, hp: string, flat: string]> = [
  [30, 35, '3', '3'],
  [36, 39, '5', '3'],
  [40, 42, '7.5', '5'],
  [43, 45, '10', '7.5'],
  [46, 52, '15', '10'],
];
const tableChecks: Check[] = steps.flatMap(([from, to, hp, flat]) => [
  {
    name: `factor ${from} and others: ${hp} hp`,
    source: law,
    basis: 'printed' as const,
    inputs: ofFactor(from),
    outputs: { limit: printed(hp) },
  },
  {
    name: `factor ${to}: ${hp} hp`,
    source: law,
    basis: 'printed' as const,
    inputs: ofFactor(to),
    outputs: { limit: printed(hp) },
  },
  {
    name: `factor ${to}, flat bottom: one step lower, ${flat} hp`,
    source: `${law}, note: reduce one capacity limit (e.g. 5 to 3)`,
    basis: 'computed' as const,
    inputs: ofFactor(to, { flatBottom: true }),
    outputs: { limit: printed(flat) },
  },
]);

const linear: Array<[factor: number, more: Record<string, unknown>, exact: number, limit: number]> = [
  [53, { remoteSteering: true, transomHeight: 20 }, 16, 20],
  [53, { flatBottom: true }, 11.5, 15],
  [53, {}, 17.4, 20],
  [72, { flatBottom: true }, 21, 25],
];

export const safePowerChecks: CheckedWorksheet = {
  kind: 'safe-power',
  checks: [
    ...tableChecks,
    {
      name: '19 ft 6 in by 84 in, remote steering, 20 in transom: 183, marked 185 hp',
      source: 'newboatbuilders.com/pages/hp_print.html, example 1',
      basis: 'printed',
      inputs: boat({
        length: { value: 234, unit: 'in' },
        beam: 8,
        transomWidth: { value: 84, unit: 'in' },
        remoteSteering: true,
        transomHeight: 20,
        fitted: 185,
        marked: 185,
      }),
      outputs: { beforeRaising: printed('183'), limit: printed('185') },
      verdict: 'satisfactory',
    },
    {
      name: 'the same in kilowatts: 136 and 138',
      source: 'newboatbuilders.com/pages/hp_print.html, example 1, figures in kW',
      basis: 'printed',
      inputs: boat({ length: 19.5, beam: 8, transomWidth: 7, remoteSteering: true, transomHeight: 20 }),
      outputs: { beforeRaising: printed('136', 'kW'), limit: printed('138', 'kW') },
    },
    {
      name: '21 raised to 25',
      source: 'Wisconsin Administrative Code NR 5.12: 21 to 24 become 25 (0.8 × 57.5 − 25 = 21)',
      basis: 'printed',
      inputs: ofFactor(57.5),
      outputs: { beforeRaising: 21, limit: printed('25') },
    },
    {
      name: '29 raised to 30',
      source: 'Wisconsin Administrative Code NR 5.12: 26 to 29 become 30 (0.8 × 67.5 − 25 = 29)',
      basis: 'printed',
      inputs: ofFactor(67.5),
      outputs: { beforeRaising: 29, limit: printed('30') },
    },
    {
      name: 'a number ending in 0 stays',
      source: 'Wisconsin Administrative Code NR 5.12: do not change (2 × 55 − 90 = 20)',
      basis: 'printed',
      inputs: ofFactor(55, { remoteSteering: true, transomHeight: 20 }),
      outputs: { limit: printed('20') },
    },
    ...linear.map(
      ([factor, more, exact, limit]): Check => ({
        name: `factor ${factor}: ${exact}, raised to ${limit} hp`,
        source: '33 CFR 183.53, formulas of the table, by hand',
        basis: 'computed',
        inputs: ofFactor(factor, more),
        outputs: { beforeRaising: exact, limit },
      }),
    ),
    {
      name: '16 ft by 6.5 ft: 118 raised to 120 with remote steering',
      source: '2 × 104 − 90, by hand',
      basis: 'computed',
      inputs: boat({ length: 16, beam: 7, transomWidth: 6.5, remoteSteering: true, transomHeight: 20 }),
      outputs: { factor: 104, beforeRaising: 118, limit: 120 },
    },
    {
      name: 'the same without remote steering: 58.2 raised to 60',
      source: '0.8 × 104 − 25, by hand',
      basis: 'computed',
      inputs: boat({ length: 16, beam: 7, transomWidth: 6.5, fitted: 70 }),
      outputs: { beforeRaising: 58.2, limit: 60 },
      verdict: 'unsatisfactory',
    },
    {
      name: 'no full transom: the after quarter’s beam counts',
      source: '33 CFR 183.53(a)(1), 183.3: full transom is wider than half the beam',
      basis: 'edge',
      inputs: boat({ length: 16, beam: 6, transomWidth: 3, aftBeam: 5 }),
      outputs: { factor: 80, fullTransom: false },
    },
    {
      name: 'a hair wider than half the beam is a full transom',
      source: '33 CFR 183.3',
      basis: 'edge',
      inputs: boat({ length: 16, beam: 6, transomWidth: 3.01 }),
      outputs: { factor: 48.16, fullTransom: true, limit: 15 },
    },
    {
      name: 'exactly 52.5 is not over 52.5',
      source: '33 CFR 183.53: in neither printed band; our reading, the lower limit',
      basis: 'edge',
      inputs: ofFactor(52.5),
      outputs: { limit: 15 },
    },
    {
      name: '52.6 is',
      source: '0.8 × 52.6 − 25 = 17.08',
      basis: 'edge',
      inputs: ofFactor(52.6),
      outputs: { beforeRaising: 17.08, limit: 20 },
    },
    {
      name: '35.5 rounds to 36',
      source: '33 CFR 183.53: factor to the nearest integer',
      basis: 'edge',
      inputs: ofFactor(35.5),
      outputs: { limit: 5 },
    },
    {
      name: '35.4 rounds to 35',
      source: '33 CFR 183.53: factor to the nearest integer',
      basis: 'edge',
      inputs: ofFactor(35.4),
      outputs: { limit: 3 },
    },
    {
      name: 'a transom of 19.9 in does not count as 20',
      source: '33 CFR 183.53: at least 20 in transom height',
      basis: 'edge',
      inputs: boat({ length: 16, beam: 7, transomWidth: 6.5, remoteSteering: true, transomHeight: 19.9 }),
      outputs: { limit: 60 },
    },
    {
      name: '508 mm is 20 in',
      source: '25.4 mm to the inch',
      basis: 'edge',
      inputs: boat({
        length: 16,
        beam: 7,
        transomWidth: 6.5,
        remoteSteering: true,
        transomHeight: { value: 508, unit: 'mm' },
      }),
      outputs: { limit: 120 },
    },
    {
      name: 'power at the limit passes, a tenth more does not',
      source: '33 CFR 183.53: must not exceed',
      basis: 'edge',
      inputs: boat({ length: 16, beam: 7, transomWidth: 6.5, fitted: 60 }),
      verdict: 'satisfactory',
    },
    {
      name: 'a tenth of a horsepower over the limit',
      source: '33 CFR 183.53: must not exceed',
      basis: 'edge',
      inputs: boat({ length: 16, beam: 7, transomWidth: 6.5, fitted: 60.1 }),
      verdict: 'unsatisfactory',
    },
    {
      name: 'a short boat that may have been rated by test: ask',
      source: '33 CFR 183.53(b): 13 ft or less, remote wheel steering, up to 40 hp',
      basis: 'edge',
      inputs: boat({
        length: 13,
        beam: 5,
        transomWidth: 4,
        remoteSteering: true,
        transomHeight: 19,
        fitted: 40,
      }),
      outputs: { limit: 15, performanceTest: true },
      verdict: 'attention',
    },
    {
      name: '20 ft is outside the rule',
      source: '33 CFR 183.51: less than 20 feet',
      basis: 'edge',
      inputs: boat({ length: 20 }),
      verdict: 'indeterminate',
    },
    {
      name: 'so are inflatables',
      source: '33 CFR 183.51',
      basis: 'computed',
      inputs: boat({ boat: 'excluded' }),
      verdict: 'indeterminate',
    },
    {
      name: 'narrow transom without the after quarter’s beam',
      source: '33 CFR 183.53(a)(1)',
      basis: 'edge',
      inputs: boat({ transomWidth: 3 }),
      refused: ['aftBeam'],
    },
    {
      name: 'transom wider than the beam',
      source: 'beam is the greatest width',
      basis: 'edge',
      inputs: boat({ transomWidth: 6.1 }),
      refused: ['transomWidth'],
    },
  ],
  unverified: [
    'The second example of newboatbuilders.com/pages/hp_print.html (12 ft by 46 in, factor 45.96) prints 10 hp; to the nearest whole number the factor is 46 and the table gives 15 hp (10 only for a flat bottom). The law’s table is followed.',
    'Figures are from the 2015 edition of the regulation; to be compared once with the current one.',
  ],
};
