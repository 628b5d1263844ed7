import { type Check, type CheckedWorksheet, near, printed } from '../../support/check.ts';

const a749 = 'IMO resolution A.749(18), annex 3, table of factors (imorules.com)';
const canada = 'Transport Canada TP 2072, appendix III, table of factors for feet (tc.gc.ca)';

const thrice = (period: number, rolls = 5) => Array(3).fill({ rolls, time: period * rolls });
const boat = (beam: number, period: number, condition: string) => ({
  beam,
  runs: thrice(period),
  condition,
});
const inFeet = (beam: number, period: number) => ({
  beam: { value: beam, unit: 'ft' },
  runs: thrice(period),
  condition: 'ordinary',
  table: 'feet',
});
const dimensioned = (lwl: number, beam: number, draft: number, period: number) => ({
  ...boat(beam, period, 'computed'),
  draft,
  waterlineLength: lwl,
});
/** Period that gives just this GM for a beam of 4 m and the factor 0.88. */
const periodFor = (gm: number) => (0.88 * 4) / Math.sqrt(gm);

const tables: Array<[condition: string, metric: string, feet?: string]> = [
  ['light', '0.88', '0.49'],
  ['loaded-20', '0.78', '0.435'],
  ['loaded-10', '0.75', '0.415'],
  ['loaded-5', '0.73', '0.405'],
  ['double-boom-shrimp', '0.95'],
  ['deep-sea-fishing', '0.80'],
  ['live-well', '0.60'],
];
const factorChecks = tables.flatMap(([condition, metric, feet]): Check[] => [
  {
    name: `${condition}: ${metric} for metres`,
    source: a749,
    basis: 'printed',
    inputs: boat(5, 5, condition),
    outputs: { factor: Number(metric) },
  },
  ...(feet
    ? [
        {
          name: `${condition}: ${feet} for feet`,
          source: canada,
          basis: 'printed' as const,
          inputs: { ...boat(5, 5, condition), table: 'feet' },
          outputs: { factor: Number(feet) },
        },
      ]
    : []),
]);

const criteria: Array<[lwl: number, beam: number, draft: number, gm: number, c: string, period: number]> = [
  [20, 5.5, 2, 1.2, '0.42765', 4.294],
  [60, 11, 4, 1, '0.41045', 9.03],
  [12, 4, 0.9, 1.1, '0.47006', 3.586],
];
const criterionChecks = criteria.map(
  ([lwl, beam, draft, gm, c, period]): Check => ({
    name: `C for ${lwl} × ${beam} × ${draft} m: ${c}; ${period} s is a GM of ${gm} m`,
    source: 'IS Code weather criterion (MSC.267(85)), worked apart; the period is rounded to 1 ms',
    basis: 'computed',
    inputs: dimensioned(lwl, beam, draft, period),
    outputs: { computedC: near(Number(c), 5.1e-6), gm: near(gm, 5e-4) },
  }),
);

export const rollPeriodChecks: CheckedWorksheet = {
  kind: 'roll-period',
  checks: [
    ...factorChecks,
    {
      name: 'a beam of 50 ft and 22 s: GM 1 ft',
      source: 'oic-nwreviewer.blogspot.com 2014/02, worked example: GM 1 ft, breadth 50 ft, 22 seconds',
      basis: 'printed',
      inputs: inFeet(50, 22),
      outputs: { factor: 0.44, gm: near(1, 1e-9, 'ft') },
    },
    {
      name: 'the same factor for metres: 0.797',
      source: 'oic-nwreviewer.blogspot.com 2014/02',
      basis: 'printed',
      inputs: boat(5, 5, 'ordinary'),
      outputs: { factor: 0.797 },
    },
    {
      name: 'radius of gyration 4 m, 10.35 s: GM 0.6 m',
      source:
        'curioustab.com 63309, T = 2πk/√(g GM), worked to 10.35 s; as a factor of 2πk/(√g B) with B = 10 m',
      basis: 'printed',
      inputs: { ...boat(10, 10.35, 'own'), ownFactor: (2 * Math.PI * 4) / Math.sqrt(9.81) / 10 },
      outputs: { gm: printed('0.6') },
    },
    {
      name: 'light, 5 m, 5 s: 0.7744 m',
      source: '(0.88 × 5 / 5)², worked by hand',
      basis: 'computed',
      inputs: boat(5, 5, 'light'),
      outputs: { gm: printed('0.7744') },
      verdict: 'satisfactory',
    },
    {
      name: 'deep-sea fishing, 6 m, 6.5 s: 0.5453 m',
      source: '(0.80 × 6 / 6.5)², worked by hand',
      basis: 'computed',
      inputs: boat(6, 6.5, 'deep-sea-fishing'),
      outputs: { gm: printed('0.5453') },
    },
    {
      name: 'loaded with 5 % liquids, 10 m, 9 s: 0.6579 m',
      source: '(0.73 × 10 / 9)², worked by hand',
      basis: 'computed',
      inputs: boat(10, 9, 'loaded-5'),
      outputs: { gm: printed('0.6579') },
    },
    ...criterionChecks,
    {
      name: 'the range is that of the factor when the watch is exact',
      source: '(0.83 × 5 / 5)² and (0.93 × 5 / 5)², worked by hand; A.749: factors within about 0.05',
      basis: 'computed',
      inputs: { ...boat(5, 5, 'light'), timing: 0 },
      outputs: { gmLow: printed('0.6889'), gmHigh: printed('0.8649') },
    },
    {
      name: 'at the least GM exactly, the range reaches below it',
      source: '46 CFR 170.173(b): 0.15 m',
      basis: 'edge',
      inputs: { ...boat(4, periodFor(0.1501), 'light') },
      verdict: 'attention',
    },
    {
      name: 'just below the least GM',
      source: '46 CFR 170.173(b): 0.15 m',
      basis: 'edge',
      inputs: { ...boat(4, periodFor(0.1499), 'light') },
      verdict: 'unsatisfactory',
    },
    {
      name: 'four rolls are too few',
      source: 'A.749(18): not less than about 5 complete oscillations (imorules.com GUID-4C3C3F7E)',
      basis: 'edge',
      inputs: { ...boat(5, 5, 'light'), runs: thrice(5, 4) },
      verdict: 'attention',
    },
    {
      name: 'two runs are too few',
      source: 'A.749(18): repeated at least twice more (imorules.com GUID-4C3C3F7E)',
      basis: 'edge',
      inputs: { ...boat(5, 5, 'light'), runs: thrice(5).slice(0, 2) },
      verdict: 'attention',
    },
    {
      name: '70 m is still covered',
      source: 'A.749(18), annex 3: up to 70 m',
      basis: 'edge',
      inputs: dimensioned(70, 11, 4, 9),
      verdict: 'satisfactory',
    },
    {
      name: '70.1 m is not',
      source: 'A.749(18), annex 3: up to 70 m',
      basis: 'edge',
      inputs: dimensioned(70.1, 11, 4, 9),
      verdict: 'indeterminate',
    },
    {
      name: 'a catamaran tells nothing',
      source: 'the factors are of single hulls',
      basis: 'edge',
      inputs: { ...boat(5, 5, 'light'), hull: 'several' },
      verdict: 'indeterminate',
    },
    {
      name: 'a condition that has no factor for feet',
      source: canada,
      basis: 'edge',
      inputs: { ...boat(5, 5, 'live-well'), table: 'feet' },
      refused: ['table'],
    },
    {
      name: 'no factor, no dimensions',
      source: 'what is missing is asked for',
      basis: 'edge',
      inputs: boat(5, 5, 'computed'),
      refused: ['draft'],
    },
  ],
  unverified: [
    'The formula line of A.749(18) annex 3 is an image in the copy seen; it was read in the load line rules of Fiji, which print the same factors.',
    'The IS Code text with C was not opened with its formula visible: it was seen in several public programs only.',
    'No printed worked example of a small craft’s rolling test with its result was found; the printed ones are of ships.',
  ],
};
