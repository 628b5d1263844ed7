import { type Check, type CheckedWorksheet, near, printed } from '../../support/check.ts';

/** One row of 0.2 m fields: so many void, dull and sound. */
const row = (voids: number, dull: number, sound: number) => ({
  readings: [
    [
      ...Array.from({ length: voids }, () => 2),
      ...Array.from({ length: dull }, () => 1),
      ...Array.from({ length: sound }, () => 0),
    ],
  ],
  spacingAlong: { value: 20, unit: 'cm' },
});

const wilson: Array<[number, number, string, string]> = [
  [1, 1, '9.452865480086611', '90.5471345199134'],
  [10, 1, '62.26353745137962', '98.37682477371741'],
  [90, 10, '82.56326956323345', '94.47714583868639'],
  [75, 25, '65.69535362992417', '82.45490599627573'],
  [50, 50, '40.382982859014716', '59.61701714098528'],
  [100, 0, '96.30051925239981', '100'],
];

const wilsonChecks = wilson.map(
  ([suspect, sound, low, high]): Check => ({
    name: `${suspect} of ${suspect + sound} not sound: 95 % interval`,
    source: 'test cases of codegolf.stackexchange.com question 105389, Wilson score interval with z = 1.96',
    basis: 'printed',
    inputs: row(0, suspect, sound),
    outputs: { shareLow: near(Number(low), 1e-9), shareHigh: near(Number(high), 1e-9) },
  }),
);

export const soundingMapChecks: CheckedWorksheet = {
  kind: 'sounding-map',
  checks: [
    ...wilsonChecks,
    {
      name: 'two regions, one with a void inside',
      source: 'counted by hand: 6 fields of 0.25 m² and 1 apart; 2 of the 6 void',
      basis: 'computed',
      inputs: {
        readings: [
          [0, 1, 1, 0, 0],
          [0, 2, 2, 0, null],
          [0, 1, 1, 0, 1],
        ],
        spacingAlong: 0.5,
      },
      outputs: {
        readings: 14,
        notSounded: 1,
        regions: 2,
        mappedArea: 3.5,
        dullArea: 1.25,
        voidArea: 0.5,
        largestVoid: 0.5,
        voidShare: printed('14.29'),
      },
      verdict: 'unsatisfactory',
    },
    {
      name: 'fields that touch in a corner only are two regions',
      source: 'own rule: joined side by side',
      basis: 'computed',
      inputs: {
        readings: [
          [1, 0],
          [0, 1],
        ],
        spacingAlong: 0.3,
      },
      outputs: { regions: 2 },
      verdict: 'attention',
    },
    {
      name: 'a free point by itself speaks for the circle of its reach, drawn with chords',
      source: 'area of a regular polygon of 48 sides: 24 r² sin 7.5°, r = 0.5 m',
      basis: 'computed',
      inputs: {
        points: [
          { forward: 0, toPort: 0, answer: 'void' },
          { forward: 3, toPort: 0, answer: 'sound' },
        ],
        reach: 0.5,
      },
      outputs: { voidArea: near(24 * 0.25 * Math.sin(Math.PI / 24), 1e-9, 'm2') },
    },
    {
      name: 'a point on the rim speaks only for what lies inside',
      source: 'half of that polygon',
      basis: 'computed',
      inputs: {
        points: [
          { forward: 1, toPort: 0, answer: 'void' },
          { forward: 3, toPort: 1, answer: 'sound' },
        ],
        reach: 0.5,
        outline: [
          { forward: 0, toPort: 0 },
          { forward: 4, toPort: 0 },
          { forward: 4, toPort: 2 },
          { forward: 0, toPort: 2 },
        ],
      },
      outputs: { voidArea: near(12 * 0.25 * Math.sin(Math.PI / 24), 1e-9, 'm2') },
    },
    {
      name: 'a void of exactly the limit may be left',
      source: 'own limit, given as 0.08 m²: two fields of 0.2 m by 0.2 m',
      basis: 'edge',
      inputs: { ...row(2, 0, 8), largestVoid: 0.08 },
      outputs: { largestVoid: 0.08 },
      verdict: 'attention',
    },
    {
      name: 'a larger one may not',
      source: 'own limit, given as 800 cm²: three fields of 0.2 m by 0.2 m',
      basis: 'edge',
      inputs: { ...row(3, 0, 8), largestVoid: { value: 800, unit: 'cm2' } },
      verdict: 'unsatisfactory',
    },
    {
      name: 'all sound',
      source: 'own rule',
      basis: 'edge',
      inputs: row(0, 0, 30),
      outputs: { regions: 0, voidShare: 0, shareLow: 0 },
      verdict: 'satisfactory',
    },
    {
      name: 'nothing sounded: not judged',
      source: 'own rule',
      basis: 'edge',
      inputs: { readings: [[null, null]], spacingAlong: 1 },
      verdict: 'indeterminate',
    },
    {
      name: 'an outline that crosses itself is refused',
      source: 'own rule',
      basis: 'edge',
      inputs: {
        ...row(0, 0, 3),
        outline: [
          { forward: 0, toPort: 0 },
          { forward: 4, toPort: 2 },
          { forward: 4, toPort: 0 },
          { forward: 0, toPort: 1 },
        ],
      },
      refused: ['outline'],
    },
    {
      name: 'two answers at one place are refused',
      source: 'own rule',
      basis: 'edge',
      inputs: {
        points: [
          { forward: 1, toPort: 1, answer: 'dull' },
          { forward: { value: 100, unit: 'cm' }, toPort: 1, answer: 'sound' },
        ],
      },
      refused: ['points/1'],
    },
    {
      name: 'a figure between 1 and 2 is refused',
      source: 'own rule',
      basis: 'edge',
      inputs: { readings: [[0, 1.5]], spacingAlong: 1 },
      refused: ['readings'],
    },
    {
      name: 'a figure beyond 2 is refused',
      source: 'own rule',
      basis: 'edge',
      inputs: { readings: [[0, 3]], spacingAlong: 1 },
      refused: ['readings'],
    },
  ],
  unverified: [
    'No document with figures on percussion sounding of boats was reached: printed figures check the interval only, areas are counted by hand.',
    'The largest void that may be left (0.05 m²) is a firm’s choice without a source.',
  ],
};
