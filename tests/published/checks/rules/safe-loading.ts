import { type Check, type CheckedWorksheet, near, printed } from '../../support/check.ts';

const boat = (more: Record<string, unknown>) => ({
  boat: 'outboard',
  length: 16,
  maximumDisplacement: 3000,
  boatWeight: 600,
  ...more,
});
/** An outboard boat whose persons capacity by weight alone is this many pounds (motor and gear 100 lb). */
const carrying = (pounds: number, more: Record<string, unknown> = {}) =>
  boat({ maximumDisplacement: 600 + 5 * (pounds + 100), equipmentWeight: 100, ...more });
/** A rowing boat whose persons capacity is this many pounds. */
const rowing = (pounds: number): Record<string, unknown> =>
  boat({ boat: 'manual', maximumDisplacement: 600 + (pounds / 0.9) * (10 / 3) });
const handbook =
  'U.S. Coast Guard Boatbuilder’s Handbook, safe loading part J, uscgboating.org safe_subc_partj.aspx';
const truncated = 'the handbook cuts the quotient off after two decimals';

const persons: Array<[pounds: number, persons: number]> = [
  [109, 1],
  [250, 2],
  [461, 3],
  [462, 4],
  [900, 7],
  [1000, 7],
];

export const safeLoadingChecks: CheckedWorksheet = {
  kind: 'safe-loading',
  checks: [
    {
      name: '550 lb: 4.12, or 4 persons',
      source: `${handbook}; ${truncated}`,
      basis: 'printed',
      inputs: carrying(550),
      outputs: {
        personsExact: near(4.12, 0.01),
        persons: printed('4'),
        personsWeight: 550,
        sideTest: 'not-needed',
      },
    },
    {
      name: '547 lb with 545 lb held along the side: 908 lb by test, so 547; 4.10, 4 persons',
      source: `${handbook}; ${truncated}`,
      basis: 'printed',
      inputs: carrying(547, { sideTest: 545 }),
      outputs: {
        testedPersonsWeight: printed('908'),
        personsWeight: printed('547'),
        personsExact: near(4.1, 0.01),
        persons: printed('4'),
      },
    },
    {
      name: '547 lb with 328 lb held: 546 lb by test, so 546; 4.09, 4 persons',
      source: `${handbook}; the handbook cuts 546.67 off`,
      basis: 'printed',
      inputs: carrying(547, { sideTest: 328 }),
      outputs: {
        testedPersonsWeight: near(546, 1),
        personsWeight: near(546, 1),
        personsExact: near(4.09, 0.015),
        persons: printed('4'),
      },
    },
    {
      name: 'rule of thumb: 18 by 6 carries seven',
      source: 'boat-ed.com California study guide: 108 divided by 15 equals seven',
      basis: 'printed',
      inputs: boat({ length: 18, beam: 6 }),
      outputs: { ruleOfThumb: printed('7') },
    },
    {
      name: 'weight capacity of an outboard boat: (3000 − 600) / 5',
      source: '33 CFR 183.35(a), by hand',
      basis: 'computed',
      inputs: boat({ markedWeight: 480 }),
      outputs: { weightCapacity: 480 },
      verdict: 'satisfactory',
    },
    {
      name: 'weight capacity of a rowing boat: 3/10 of (1000 − 150), persons 0.9 of it',
      source: '33 CFR 183.37(a), 183.43(a)(1), by hand',
      basis: 'computed',
      inputs: boat({ boat: 'manual', maximumDisplacement: 1000, boatWeight: 150 }),
      outputs: { weightCapacity: 255, personsWeight: 229.5, persons: 2 },
    },
    {
      name: 'the same with a motor of 2 hp: 25 lb less',
      source: '33 CFR 183.43(a)(2), by hand',
      basis: 'computed',
      inputs: boat({ boat: 'up-to-2hp', maximumDisplacement: 1000, boatWeight: 150 }),
      outputs: { personsWeight: 204.5, persons: 2 },
    },
    {
      name: 'displacement from a volume of 50 ft³ of fresh water',
      source: '50 × 62.4 = 3120 lb; (3120 − 600) / 5, by hand',
      basis: 'computed',
      inputs: { boat: 'outboard', length: 16, immersedVolume: 50, boatWeight: 600 },
      outputs: { weightCapacity: 504 },
    },
    ...persons.map(
      ([pounds, number]): Check => ({
        name: `${pounds} lb: ${number} persons`,
        source: '33 CFR 183.43(b): (P + 32) / 141 to the nearest, by hand',
        basis: 'computed',
        inputs: rowing(pounds),
        outputs: { personsWeight: near(pounds, 1e-6), persons: number },
      }),
    ),
    {
      name: 'exactly half a person rounds up: 320.5 lb is 2.5, three persons',
      source: '33 CFR 183.43(b): equal to or greater than one-half, round up',
      basis: 'edge',
      inputs: carrying(320.5, { sideTest: 1000 }),
      outputs: { personsExact: 2.5, persons: 3 },
    },
    {
      name: 'a little less rounds down',
      source: '33 CFR 183.41(b): less than one-half, round down',
      basis: 'edge',
      inputs: carrying(320.4, { sideTest: 1000 }),
      outputs: { persons: 2 },
    },
    {
      name: 'just under 550 lb the side-loading test is needed',
      source: '33 CFR 183.41(a)(2): less than 550 pounds',
      basis: 'edge',
      inputs: carrying(549.9, { markedPersons: 4 }),
      outputs: { sideTest: 'missing' },
      verdict: 'indeterminate',
    },
    {
      name: 'at 550 lb it isn’t',
      source: '33 CFR 183.41(a)(2): less than 550 pounds',
      basis: 'edge',
      inputs: carrying(550, { markedPersons: 4 }),
      verdict: 'satisfactory',
    },
    {
      name: 'a label of one pound too much',
      source: '33 CFR 183.35(a): must not exceed',
      basis: 'edge',
      inputs: boat({ markedWeight: 481 }),
      verdict: 'unsatisfactory',
    },
    {
      name: 'a label of one person too many',
      source: '33 CFR 183.41(b): must not exceed',
      basis: 'edge',
      inputs: carrying(550, { markedPersons: 5 }),
      verdict: 'unsatisfactory',
    },
    {
      name: 'motor and gear heavier than the capacity leave nobody',
      source: '33 CFR 183.41(a)(1), by hand: 480 − 500',
      basis: 'computed',
      inputs: boat({ equipmentWeight: 500, sideTest: 100, markedPersons: 1 }),
      outputs: { personsWeight: 0, persons: 0 },
      verdict: 'unsatisfactory',
    },
    {
      name: '20 ft is outside the rule',
      source: '33 CFR 183.31: less than 20 feet',
      basis: 'edge',
      inputs: boat({ length: 20 }),
      verdict: 'indeterminate',
    },
    {
      name: 'inboards can’t be judged: the formulas are only a picture',
      source: '33 CFR 183.33(a), graphic TC18OC91.020',
      basis: 'computed',
      inputs: boat({ boat: 'inboard' }),
      verdict: 'indeterminate',
    },
    {
      name: 'a boat heavier than what she can displace',
      source: 'she would float with water coming in',
      basis: 'edge',
      inputs: boat({ boatWeight: 3000 }),
      refused: ['boatWeight'],
    },
    {
      name: 'neither displacement nor volume',
      source: '33 CFR 183.35(a) starts from maximum displacement',
      basis: 'edge',
      inputs: { boat: 'outboard', length: 16, boatWeight: 600 },
      refused: ['maximumDisplacement'],
    },
  ],
  unverified: [
    'The inboard and stern-drive formulas of 33 CFR 183.33(a) are an image in every copy found, so they are not worked: the verdict is “can’t be judged”.',
    'The weight table of 33 CFR 183.75 was not found in an official text: the weight is asked for.',
    'The handbook’s figures are cut off after two decimals; they are met within that.',
  ],
};
