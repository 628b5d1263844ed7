import { type Check, type CheckedWorksheet, near, printed } from '../../support/check.ts';

const inch = (value: number) => ({ value, unit: 'in' });
const chain = (asNew: number, worn: number) => ({
  newDiameter: inch(asNew),
  links: [{ first: inch(worn) }],
  damage: 'no',
});
const tenMm = (first: number, second?: number) => ({
  newDiameter: 10,
  links: [{ first: 9.9 }, { place: 'near the anchor', first, ...(second ? { second } : {}) }],
  resolution: 0.01,
  damage: 'no',
});

const lifting: Array<[size: number, least: number, printed: string]> = [
  [1 / 4, 13 / 64, '13/64'],
  [3 / 8, 19 / 64, '19/64'],
  [1 / 2, 25 / 64, '25/64'],
  [5 / 8, 31 / 64, '31/64'],
  [3 / 4, 19 / 32, '19/32'],
  [1, 13 / 16, '13/16'],
  [1.125, 29 / 32, '29/32'],
  [1.25, 1, '1'],
  [1.375, 1 + 3 / 32, '1 3/32'],
  [1.5, 1 + 3 / 16, '1 3/16'],
  [1.75, 1 + 13 / 32, '1 13/32'],
];
const liftingChecks = lifting.map(
  ([size, least, words]): Check => ({
    name: `lifting chain of ${size} in may wear to ${words} in`,
    source: '29 CFR 1910.184 table N-184-1 (2015)',
    basis: 'printed',
    inputs: chain(size, size),
    outputs: { liftingLeast: least },
  }),
);

export const chainWearChecks: CheckedWorksheet = {
  kind: 'chain-wear',
  checks: [
    ...liftingChecks,
    {
      name: '7/8 in may wear by 11/64 in, to 45/64 in, where N-184-1 prints 4 5/64',
      source: '29 CFR 1915.118 table G-2 and 1926.251 table H-1 (2015): 11/64 in',
      basis: 'printed',
      inputs: chain(0.875, 0.875),
      outputs: { liftingLeast: 45 / 64 },
    },
    {
      name: 'a maker’s limit of 13 %: 0.394 in worn to 0.342 in',
      source: 'svlux.blogspot, quoting the maker of a G80 chain: 13 %',
      basis: 'printed',
      inputs: chain(0.394, 0.342),
      outputs: { wear: printed('13') },
      verdict: 'unsatisfactory',
    },
    {
      name: 'the 12 % of ships: 0.394 in worn to 0.3467 in',
      source: 'svlux.blogspot: ships 12 %, 0.3467 in',
      basis: 'printed',
      inputs: chain(0.394, 0.3467),
      outputs: { wear: printed('12') },
    },
    {
      name: '12 % wear leaves 77.4 % of the strength',
      source: '0.88², worked by hand',
      basis: 'computed',
      inputs: tenMm(8.8),
      outputs: { strengthLeft: printed('77.4') },
    },
    {
      name: 'the mean of two directions counts, and the most worn link',
      source: 'mean of 9.2 and 9.6 is 9.4 mm, 6 %; worked by hand',
      basis: 'computed',
      inputs: tenMm(9.2, 9.6),
      outputs: { leastDiameter: 9.4, wear: 6, worstLink: 'near the anchor' },
      verdict: 'satisfactory',
    },
    {
      name: '1/4 in worn to the lifting limit has lost 18.8 %',
      source: '(1/4 − 13/64) / (1/4), worked by hand',
      basis: 'computed',
      inputs: chain(0.25, 13 / 64),
      outputs: { wear: near(18.75, 1e-9) },
    },
    {
      name: 'exactly 10 % is to be renewed, with 81 % of the strength left',
      source: 'practice (ybw forum 556989): 10 %',
      basis: 'edge',
      inputs: tenMm(9),
      outputs: { wear: 10, strengthLeft: 81, renewalDiameter: 9 },
      verdict: 'unsatisfactory',
    },
    {
      name: '9.8 % is not yet',
      source: 'practice (ybw forum 556989): 10 %',
      basis: 'edge',
      inputs: tenMm(9.02),
      verdict: 'attention',
    },
    {
      name: 'exactly 7 % calls for attention',
      source: 'our choice: 7 %',
      basis: 'edge',
      inputs: tenMm(9.3),
      verdict: 'attention',
    },
    {
      name: '6.9 % does not',
      source: 'our choice: 7 %',
      basis: 'edge',
      inputs: tenMm(9.31),
      verdict: 'satisfactory',
    },
    {
      name: '9.5 % with a calliper that shows 0.1 mm can’t be told from 10 %',
      source: 'resolution of 1 % of the diameter',
      basis: 'edge',
      inputs: { ...tenMm(9.05), resolution: 0.1, warnAt: 10 },
      verdict: 'attention',
    },
    {
      name: 'a stretch of exactly 5 % is accepted',
      source: '29 CFR 1917.42(h)(3)(iv): more than five percent',
      basis: 'edge',
      inputs: { ...tenMm(9.9), newLength: inch(40), nowLength: inch(42) },
      outputs: { stretch: 5 },
      verdict: 'satisfactory',
    },
    {
      name: 'more is not',
      source: '29 CFR 1917.42(h)(3)(iv): more than five percent',
      basis: 'edge',
      inputs: { ...tenMm(9.9), newLength: inch(40), nowLength: inch(42.01) },
      verdict: 'unsatisfactory',
    },
    {
      name: 'one length without the other, and a link fatter than its chain',
      source: 'impossible inputs',
      basis: 'edge',
      inputs: { ...tenMm(16), newLength: 1000 },
      refused: ['nowLength', 'links/1/first'],
    },
  ],
  unverified: [
    'No primary source prints a wear limit for yacht anchor chain: 10 % is practice, 12 and 13 % are quoted second hand, attention at 7 % is our choice.',
  ],
};
