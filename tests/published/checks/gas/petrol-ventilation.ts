import { type Check, type CheckedWorksheet, near, printed } from '../../support/check.ts';

const seen = {
  engine: 'petrol-starter',
  intakeLow: 'yes',
  intakeAboveBilge: 'yes',
  label: 'yes',
  flowAccuracy: 0,
};
/** A compartment of so many ft³ with blowers that suffice for any of them. */
const of = (netVolume: unknown, more: Record<string, unknown> = {}) => ({
  ...seen,
  netVolume,
  ratedCapacity: 5000,
  measuredOutput: 5000,
  ...more,
});

const table = '33 CFR 183.610, table: ';
const worked: Array<[number, number, number, string]> = [
  [60, 90, 36, '1.5 V and 0.6 V'],
  [150, 175, 70, 'V/2 + 100 and 0.2 V + 40'],
  [400, 300, 120, 'V/2 + 100 and 0.2 V + 40'],
];

const inTable: Check[] = [
  ...[1, 10, 33.9].map(
    (volume): Check => ({
      name: `${volume} ft³ needs 50 rated and 20 output`,
      source: `${table}below 34: 50 and 20`,
      basis: 'printed',
      inputs: of(volume),
      outputs: { requiredRated: 50, requiredOutput: 20 },
      verdict: 'satisfactory',
    }),
  ),
  {
    name: '319.7 ft³ needs 259.8 rated and 103.9 output',
    source: 'Westlawn Masthead 21, page 14, worked example (prints 259.8 for 259.85)',
    basis: 'printed',
    inputs: of(319.7, { ratedCapacity: 350, measuredOutput: 175 }),
    outputs: { requiredRated: near(259.8, 0.051, 'cfm'), requiredOutput: printed('103.9', 'cfm') },
    verdict: 'satisfactory',
  },
  {
    name: 'and a blower of 250 is not enough',
    source: 'Westlawn Masthead 21, page 14: not met with a single 250 ft³/min blower',
    basis: 'printed',
    inputs: of(319.7, { ratedCapacity: 250, measuredOutput: 125 }),
    verdict: 'unsatisfactory',
  },
  {
    name: '290 ft³ needs an output of 98; 162.5 meets it',
    source: 'Boat Mechanical Systems Handbook, chapter 16, worked example after table 16-2',
    basis: 'printed',
    inputs: of(290, { ratedCapacity: 250, measuredOutput: 162.5 }),
    outputs: { requiredOutput: printed('98', 'cfm') },
    verdict: 'satisfactory',
  },
  ...worked.map(
    ([volume, rated, output, formula]): Check => ({
      name: `${volume} ft³ needs ${rated} rated and ${output} output`,
      source: `${table}${formula}, worked by hand`,
      basis: 'computed',
      inputs: of(volume, { ratedCapacity: rated, measuredOutput: output }),
      outputs: { requiredRated: rated, requiredOutput: output },
      verdict: 'satisfactory',
    }),
  ),
];

export const petrolVentilationChecks: CheckedWorksheet = {
  kind: 'petrol-ventilation',
  checks: [
    ...inTable,
    {
      name: 'exactly 34 ft³ is in the middle band',
      source: `${table}34 to 100: 1.5 V and 0.6 V`,
      basis: 'edge',
      inputs: of(34),
      outputs: { requiredRated: 51, requiredOutput: 20.4 },
    },
    {
      name: '34 ft³ given in litres too',
      source: `${table}34 to 100`,
      basis: 'edge',
      inputs: of({ value: 34 * 28.316846592, unit: 'L' }),
      outputs: { requiredRated: 51 },
    },
    {
      name: 'exactly 100 ft³: both bands agree',
      source: `${table}34 to 100 and over 100`,
      basis: 'edge',
      inputs: of(100, { ratedCapacity: 150, measuredOutput: 60 }),
      outputs: { requiredRated: 150, requiredOutput: 60 },
      verdict: 'satisfactory',
    },
    {
      name: 'a tenth below the rated capacity required fails',
      source: `${table}34 to 100`,
      basis: 'edge',
      inputs: of(100, { ratedCapacity: 149.9 }),
      verdict: 'unsatisfactory',
    },
    {
      name: 'a tenth below the output required fails',
      source: `${table}34 to 100`,
      basis: 'edge',
      inputs: of(100, { measuredOutput: 59.9 }),
      verdict: 'unsatisfactory',
    },
    {
      name: 'met within what the instrument may be wrong by: attention',
      source: 'our reading of a measurement at a limit',
      basis: 'edge',
      inputs: of(100, { measuredOutput: 65, flowAccuracy: 10 }),
      verdict: 'attention',
    },
    {
      name: '15 in² for each ft³ is open to the atmosphere: no blower needed',
      source: '33 CFR 183.605 and 183.610(a)(1)',
      basis: 'edge',
      inputs: of(20, { openArea: 300, ratedCapacity: 0, measuredOutput: undefined }),
      outputs: { openAreaNeeded: 300, openToAtmosphere: true },
      verdict: 'satisfactory',
    },
    {
      name: 'a square inch less is not',
      source: '33 CFR 183.605',
      basis: 'edge',
      inputs: of(20, { openArea: 299, ratedCapacity: 0, measuredOutput: undefined }),
      outputs: { openToAtmosphere: false },
      verdict: 'unsatisfactory',
    },
    {
      name: 'output not measured can’t be judged',
      source: '33 CFR 183.610(c) asks for the output, not the rating alone',
      basis: 'edge',
      inputs: of(60, { measuredOutput: undefined }),
      verdict: 'indeterminate',
    },
    {
      name: 'diesel is outside the rule',
      source: '33 CFR 183.610(a)',
      basis: 'edge',
      inputs: of(60, { engine: 'other' }),
      verdict: 'indeterminate',
    },
    {
      name: 'a compartment of no volume is refused',
      source: 'impossible',
      basis: 'edge',
      inputs: of(0),
      refused: ['netVolume'],
    },
  ],
  unverified: [
    'The text of 33 CFR 183.605 and 183.610 was read in the 2015 annual edition; a newer copy’s table was not seen whole.',
  ],
};
