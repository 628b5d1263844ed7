import { type Check, type CheckedWorksheet, near, printed } from '../../support/check.ts';

const row = (readings: Array<number | null>) => ({ readings: [readings], spacingAlong: 0.15 });
/** `wet` readings far above `dry` ones, one row of 0.1 m fields. */
const someWet = (wet: number, dry: number) => ({
  readings: [
    [...Array.from({ length: wet }, () => 80), ...Array.from({ length: dry }, (_, i) => 10 + (i % 5))],
  ],
  spacingAlong: 0.1,
  dryReadings: Array.from({ length: 9 }, (_, i) => ({ reading: 10 + (i % 5) })),
});

/** Wilson intervals at z = 1.96: found, not found, low and high as printed. */
const wilson: Array<[number, number, string, string]> = [
  [1, 10, '1.6231752262825982', '37.73646254862038'],
  [10, 90, '5.522854161313612', '17.43673043676654'],
  [25, 75, '17.545094003724265', '34.30464637007583'],
  [0, 100, '0', '3.699480747600191'],
];

const wilsonChecks = wilson.map(
  ([wet, dry, low, high]): Check => ({
    name: `${wet} wet of ${wet + dry}: 95 % interval`,
    source: 'test cases of codegolf.stackexchange.com question 105389, Wilson score interval with z = 1.96',
    basis: 'printed',
    inputs: someWet(wet, dry),
    outputs: {
      wetReadings: wet,
      shareLow: near(Number(low), 1e-9),
      shareHigh: near(Number(high), 1e-9),
    },
  }),
);

/** Median 10, MAD 0.6745: a reading 3.5 above the median scores exactly 3.5. */
const atTheLimit = [10, 10.6745, 9.3255, 10.6745, 9.3255, 10.6745, 9.3255, 10.6745, 9.3255];

export const moistureMapChecks: CheckedWorksheet = {
  kind: 'moisture-map',
  checks: [
    {
      name: 'eight observations with one far out: median 12, MAD 1, score 194.2560',
      source: 'codingace.net, modified z score, example data table',
      basis: 'printed',
      inputs: row([10, 12, 12, 13, 12, 11, 14, 300]),
      outputs: {
        median: printed('12'),
        mad: printed('1'),
        highestScore: printed('194.2560'),
        wetReadings: 1,
      },
      verdict: 'attention',
    },
    {
      name: 'a reading 5 above the median with MAD 2 scores 1.69',
      source: 'bit1024.com, modified z score, worked example: 0.6745 × (10 − 5) / 2',
      basis: 'printed',
      inputs: row([1, 2, 3, 5, 6, 7, 10]),
      outputs: { median: 5, mad: 2, highestScore: printed('1.69') },
      verdict: 'satisfactory',
    },
    {
      name: '10, 14, 15, 18, 20 with its ends twice: median 15, MAD 5',
      source: 'worked by hand: deviations in order 0, 1, 3, 5, 5, 5, 5; the middle one is 5',
      basis: 'computed',
      inputs: row([10, 10, 14, 15, 18, 20, 20]),
      outputs: { median: 15, mad: 5 },
    },
    ...wilsonChecks,
    {
      name: 'a deck with two wet readings',
      source: 'engineering facts 9.2, worked by hand: 28 scores 9.78, 31 scores 11.80',
      basis: 'computed',
      inputs: row([12, 14, 13, 15, 12, 14, 13, 28, 31, 13]),
      outputs: {
        median: 13.5,
        mad: 1,
        highestScore: printed('11.80'),
        wetReadings: 2,
        regions: 1,
        wetArea: printed('0.045', 'm2'),
      },
      verdict: 'attention',
    },
    {
      name: 'more than half equal: scored by the mean deviation',
      source: '1.253314 × mean |x − x̃|, worked by hand: 90 / (1.253314 × 11.25) = 6.383',
      basis: 'computed',
      inputs: row([10, 10, 10, 10, 10, 10, 10, 100]),
      outputs: { mad: 0, baseline: 'mean-deviation', highestScore: printed('6.383'), wetReadings: 1 },
    },
    {
      name: '23 wet fields of 0.15 m by 0.15 m are 0.518 m²',
      source: 'engineering facts 9.3: 23 × 0.15² = 0.5175 m²',
      basis: 'computed',
      inputs: {
        readings: Array.from({ length: 10 }, (_, r) =>
          Array.from({ length: 20 }, (_, c) => (r * 20 + c < 23 ? 60 : 10 + (c % 3))),
        ),
        spacingAlong: { value: 150, unit: 'mm' },
      },
      outputs: { wetArea: printed('0.518', 'm2'), regions: 1, mappedArea: 4.5, wetShare: 11.5 },
    },
    {
      name: 'readings on the rim speak for half a field, in a corner for a quarter',
      source: 'bilinear weights: 3 × 3 readings 1 m apart span 4 m²; a corner 0.25, the middle 1',
      basis: 'computed',
      inputs: {
        readings: [
          [90, 10, 11],
          [10, 12, 10],
          [11, 10, 12],
        ],
        spacingAlong: 1,
        readingsAt: 'rim',
      },
      outputs: { mappedArea: 4, wetArea: 0.25, wetShare: 6.25 },
    },
    {
      name: 'free points 0.5 m apart with a long reach share the surface like a grid',
      source: 'Voronoi cells of a square lattice are its fields; the rim reaches 0.25 m: inner point 0.25 m²',
      basis: 'computed',
      inputs: {
        points: Array.from({ length: 25 }, (_, i) => ({
          forward: (i % 5) * 0.5,
          toPort: Math.floor(i / 5) * 0.5,
          reading: i === 12 ? 70 : 10 + (i % 4),
        })),
        reach: 0.4,
      },
      outputs: { wetReadings: 1, wetArea: near(0.25, 1e-9, 'm2') },
    },
    {
      name: 'a score of exactly 3.5 doesn’t count as wet',
      source: 'Iglewicz and Hoaglin: potential outlier when the score is above 3.5',
      basis: 'edge',
      inputs: {
        ...row([...atTheLimit, 13.5]),
        meterStep: 0.1,
        dryReadings: atTheLimit.map((reading) => ({ reading })),
      },
      outputs: { wetReadings: 0 },
      verdict: 'satisfactory',
    },
    {
      name: 'just above 3.5 does',
      source: 'Iglewicz and Hoaglin: potential outlier when the score is above 3.5',
      basis: 'edge',
      inputs: {
        ...row([...atTheLimit, 13.51]),
        meterStep: 0.1,
        dryReadings: atTheLimit.map((reading) => ({ reading })),
      },
      outputs: { wetReadings: 1 },
      verdict: 'attention',
    },
    {
      name: 'six readings are too few to judge',
      source: 'our own limit of 7 readings',
      basis: 'edge',
      inputs: row([10, 11, 10, 12, 11, 90]),
      verdict: 'indeterminate',
    },
    {
      name: 'seven are enough',
      source: 'our own limit of 7 readings',
      basis: 'edge',
      inputs: row([10, 11, 10, 12, 11, 10, 90]),
      outputs: { wetReadings: 1 },
      verdict: 'attention',
    },
    {
      name: 'one step of the meter above equal readings is no wetness that this meter can show',
      source: 'our own rule: a rise must be more than the meter’s step',
      basis: 'edge',
      inputs: { ...row([10, 10, 10, 10, 10, 10, 10, 11]), meterStep: 1 },
      outputs: { wetReadings: 0 },
      verdict: 'satisfactory',
    },
    {
      name: 'a wet share of exactly the limit isn’t extensive yet',
      source: 'our own limit of 20 %',
      basis: 'edge',
      inputs: someWet(2, 8),
      outputs: { wetShare: 20 },
      verdict: 'attention',
    },
    {
      name: 'more than the limit is',
      source: 'our own limit of 20 %',
      basis: 'edge',
      inputs: someWet(3, 8),
      verdict: 'unsatisfactory',
    },
    {
      name: 'a grid and points together, or neither, are refused',
      source: 'own rule',
      basis: 'edge',
      inputs: {},
      refused: ['readings'],
    },
    {
      name: 'a grid needs its spacing',
      source: 'own rule',
      basis: 'edge',
      inputs: { readings: [[1, 2, 3, 4, 5, 6, 7]] },
      refused: ['spacingAlong'],
    },
    {
      name: 'rows of unequal length are refused',
      source: 'own rule',
      basis: 'edge',
      inputs: { readings: [[1, 2], [3]], spacingAlong: 1 },
      refused: ['readings'],
    },
  ],
  unverified: [
    'Iglewicz and Hoaglin 1993 was not seen itself; formula and limit are as later handbooks and packages cite it.',
    'The fewest readings (7), the share called extensive (20 %) and the reach of a free point are common practice without a source.',
  ],
};
