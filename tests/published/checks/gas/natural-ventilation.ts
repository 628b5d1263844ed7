import { type Check, type CheckedWorksheet, printed } from '../../support/check.ts';

const seen = {
  why: 'engine',
  exhaustLow: 'yes',
  aboveBilge: 'yes',
  supplyOutside: 'yes',
};
const both = (area: unknown, more: Record<string, unknown> = {}) => [
  { use: 'supply', area, ...more },
  { use: 'exhaust', area, ...more },
];
const of = (netVolume: unknown, apertures: unknown[], more: Record<string, unknown> = {}) => ({
  ...seen,
  netVolume,
  apertures,
  ...more,
});

const formula = '33 CFR 183.630(d), A = 5 ln(V/5), worked by hand';
const areas: Array<[number, string]> = [
  [10, '3.4657'],
  [34, '9.5846'],
  [60, '12.4245'],
  [100, '14.9787'],
];

/** Volumes below 9.11 ft³: only the floor of 3 in² for each opening decides. */
const small = 8;

const inRule: Check[] = [
  {
    name: 'an opening of 3.0 in² does not exceed 3.0 in²',
    source: '33 CFR 183.630(e): must exceed 3.0 square inches',
    basis: 'printed',
    inputs: of(small, both(3)),
    verdict: 'unsatisfactory',
  },
  {
    name: 'one of 3.01 in² does',
    source: '33 CFR 183.630(e): must exceed 3.0 square inches',
    basis: 'printed',
    inputs: of(small, both(3.01)),
    verdict: 'satisfactory',
  },
  {
    name: 'an end fitting of 80 per cent of its duct counts as the duct',
    source: '33 CFR 183.630(f): not less than 80 percent',
    basis: 'printed',
    inputs: of(20, both(10, { fitting: 8 })),
    outputs: { supplyArea: 10, exhaustArea: 10 },
    verdict: 'satisfactory',
  },
  {
    name: '15 in² for each ft³ is open to the atmosphere',
    source: '33 CFR 183.605: 15 square inches for each cubic foot; 183.620(a)',
    basis: 'printed',
    inputs: of(20, [], { openArea: 300 }),
    outputs: { openToAtmosphere: true },
    verdict: 'satisfactory',
  },
  {
    name: 'exactly 2 per cent of a bulkhead open does not join the compartments',
    source: '33 CFR 183.630(d)(2): openings that exceed 2 percent',
    basis: 'printed',
    inputs: of(50, both(15), { adjoiningVolume: 50, bulkheadArea: 25, bulkheadOpenings: 0.5 }),
    outputs: { countedVolume: 50, bulkheadOpen: 2 },
    verdict: 'satisfactory',
  },
];

export const naturalVentilationChecks: CheckedWorksheet = {
  kind: 'natural-ventilation',
  checks: [
    ...inRule,
    ...areas.map(
      ([volume, area]): Check => ({
        name: `${volume} ft³ needs ${area} in²`,
        source: formula,
        basis: 'computed',
        inputs: of(volume, both(15)),
        outputs: { requiredArea: printed(area, 'in2') },
        verdict: 'satisfactory',
      }),
    ),
    {
      name: 'at 100 ft³ an end fitting of 11.983 in² is enough for a duct of 14.979 in²',
      source: `${formula}; 183.630(f), 80 percent`,
      basis: 'computed',
      inputs: of(100, both(14.979, { fitting: 11.983 })),
      outputs: { supplyArea: printed('14.979', 'in2') },
      verdict: 'satisfactory',
    },
    {
      name: 'a round duct of 4 in has 12.57 in²',
      source: 'π/4 d², worked by hand',
      basis: 'computed',
      inputs: of(60, [
        { use: 'supply', diameter: 4 },
        { use: 'exhaust', diameter: { value: 101.6, unit: 'mm' } },
      ]),
      outputs: { supplyArea: printed('12.57', 'in2'), exhaustArea: printed('12.57', 'in2') },
      verdict: 'satisfactory',
    },
    {
      name: 'just over 2 per cent joins them',
      source: '33 CFR 183.630(d)(2): openings that exceed 2 percent',
      basis: 'edge',
      inputs: of(50, both(15), { adjoiningVolume: 50, bulkheadArea: 25, bulkheadOpenings: 0.501 }),
      outputs: { countedVolume: 100, requiredArea: printed('14.9787', 'in2') },
      verdict: 'satisfactory',
    },
    {
      name: 'a fitting under 80 per cent takes its share from the duct',
      source: '33 CFR 183.630(f): not less than 80 percent',
      basis: 'edge',
      inputs: of(20, both(7, { fitting: 5.5 })),
      outputs: { supplyArea: 6.875 },
      verdict: 'unsatisfactory',
    },
    {
      name: 'below 5 ft³ the formula would go below zero: nothing, and 3 in² each',
      source: `${formula}: ln of less than one`,
      basis: 'edge',
      inputs: of(4, both(3.1)),
      outputs: { requiredArea: 0 },
      verdict: 'satisfactory',
    },
    {
      name: 'enough supply and no exhaust fails',
      source: '33 CFR 183.630(a)(2)',
      basis: 'edge',
      inputs: of(20, [{ use: 'supply', area: 20 }]),
      verdict: 'unsatisfactory',
    },
    {
      name: 'a square inch short of open to the atmosphere',
      source: '33 CFR 183.605',
      basis: 'edge',
      inputs: of(20, [], { openArea: 299 }),
      outputs: { openToAtmosphere: false },
      verdict: 'unsatisfactory',
    },
    {
      name: 'not required: not judged',
      source: '33 CFR 183.620(a)',
      basis: 'edge',
      inputs: of(20, [], { why: 'none' }),
      verdict: 'indeterminate',
    },
    {
      name: 'an opening with two sizes, and one with none, are refused',
      source: 'contradiction',
      basis: 'edge',
      inputs: of(20, [{ use: 'supply', area: 5, diameter: 2 }, { use: 'exhaust' }]),
      refused: ['apertures/0/area', 'apertures/1/diameter'],
    },
    {
      name: 'half a bulkhead is refused',
      source: 'the three belong together',
      basis: 'edge',
      inputs: of(20, both(10), { adjoiningVolume: 50 }),
      refused: ['bulkheadArea', 'bulkheadOpenings'],
    },
  ],
  unverified: [
    'No printed worked example of A = 5 ln(V/5) was found: its areas are worked by hand; the printed figures are the limits of 33 CFR 183.605 to 183.630.',
    'That several small fittings may add up, each counting for 1/0.8 of its own area up to its duct’s, is our reading of 183.630(f).',
  ],
};
