import { type Check, type CheckedWorksheet, near, printed } from '../../support/check.ts';

const h40 = 'ABYC H-40, table of horizontal loads (starmarinedepot.com)';
const chart = 'NACM 2003 / ASTM, working load limits (1st-chainsupply.com)';
const shackles = 'forged shackles (certifiedslings.com)';

const working = {
  boatLength: 32,
  boat: 'power',
  wind: '30',
  chain: 'G30',
  chainSize: '1/4 in',
  shackle: 'carbon',
  shackleSize: '1/4 in',
  rope: 'nylon',
  ropeSize: '9/16 in',
};
const bare = {
  boatLength: 30,
  boat: 'sail',
  wind: '30',
  chain: 'G43',
  chainSize: '3/8 in',
  shackle: 'none',
  rope: 'none',
};
const laid = (more: Record<string, unknown>) => ({
  ...bare,
  chain: 'marked',
  chainSize: undefined,
  chainLimit: { value: 100, unit: 'kN' },
  bowHeight: 0,
  ...more,
});
const eightMm = laid({ load: { value: 1000, unit: 'N' }, depth: 5, chainMass: 1.35 });

const loads: Array<[wind: string, lengths: Array<[number, string]>]> = [
  [
    '15',
    [
      [20, '90'],
      [25, '125'],
      [30, '175'],
      [35, '225'],
      [40, '300'],
      [50, '400'],
      [60, '500'],
      [70, '675'],
    ],
  ],
  [
    '30',
    [
      [20, '360'],
      [25, '490'],
      [30, '700'],
      [35, '900'],
      [40, '1,200'],
      [50, '1,600'],
      [60, '2,000'],
      [70, '2,700'],
    ],
  ],
  [
    '42',
    [
      [20, '720'],
      [25, '980'],
      [30, '1,400'],
      [35, '1,800'],
      [40, '2,400'],
      [50, '3,200'],
      [60, '4,000'],
      [70, '5,400'],
    ],
  ],
  [
    '60',
    [
      [20, '1,440'],
      [25, '1,960'],
      [30, '2,800'],
      [35, '3,600'],
      [40, '4,800'],
      [50, '6,400'],
      [60, '8,000'],
      [70, '10,800'],
    ],
  ],
];
const loadChecks = loads.flatMap(([wind, lengths]) =>
  lengths.map(
    ([feet, load]): Check => ({
      name: `${feet} ft at ${wind} kn: ${load} lb`,
      source: h40,
      basis: 'printed',
      inputs: { ...bare, boatLength: feet, wind },
      outputs: { load: printed(load, 'lbf') },
    }),
  ),
);

const chains: Array<[grade: string, size: string, limit: string]> = [
  ['G30', '1/8 in', '400'],
  ['G30', '5/16 in', '1,900'],
  ['G30', '1 in', '17,900'],
  ['G43', '1/4 in', '2,600'],
  ['G43', '1/2 in', '9,200'],
  ['G70', '3/8 in', '6,600'],
  ['G70', '3/4 in', '24,700'],
];
const chainChecks = chains.map(
  ([grade, size, limit]): Check => ({
    name: `${grade} chain of ${size}: ${limit} lb`,
    source: chart,
    basis: 'printed',
    inputs: { ...bare, chain: grade, chainSize: size },
    outputs: { chainLimit: printed(limit, 'lbf') },
  }),
);

export const rodeChecks: CheckedWorksheet = {
  kind: 'rode',
  checks: [
    {
      name: 'a 32 ft power boat of 12 ft beam: 900 lb, 4.0 kN, 408 kg; the rode the standard asks for holds it',
      source:
        'boat systems handbook, ch. 24, worked example from ABYC H-40 tables 1 and AP-1 (issuhub 10037 p. 395)',
      basis: 'printed',
      inputs: { ...working, beam: 12 },
      outputs: { load: printed('4.0', 'kN') },
      verdict: 'satisfactory',
    },
    {
      name: 'the same load in kilograms',
      source: 'the same example: 408 kg',
      basis: 'printed',
      inputs: { ...working, beam: 12 },
      outputs: { load: printed('408', 'kgf'), shackleLimit: printed('1,000', 'lbf') },
    },
    ...loadChecks,
    ...chainChecks,
    {
      name: '5/8 in carbon shackle: 3 1/4 tons',
      source: shackles,
      basis: 'printed',
      inputs: { ...bare, shackle: 'carbon', shackleSize: '5/8 in' },
      outputs: { shackleLimit: printed('6,500', 'lbf') },
    },
    {
      name: '3/8 in alloy shackle of 2 tons is weaker than 3/8 in G43 chain',
      source: `${shackles}: 2 tons; ${chart}: 5,400 lb`,
      basis: 'printed',
      inputs: { ...bare, shackle: 'alloy', shackleSize: '3/8 in' },
      outputs: { weakest: 'shackle', weakestLimit: printed('4,000', 'lbf') },
    },
    {
      name: '5/16 in carbon shackle is weaker than 5/16 in G30 chain',
      source: `${shackles}: 3/4 ton; ${chart}: 1,900 lb`,
      basis: 'computed',
      inputs: { ...bare, chain: 'G30', chainSize: '5/16 in', shackle: 'carbon', shackleSize: '5/16 in' },
      outputs: { weakest: 'shackle', weakestLimit: printed('1,500', 'lbf') },
    },
    {
      name: '7/16 in carbon shackle is not weaker than 3/8 in G30 chain',
      source: `${shackles}: 1 1/2 tons; ${chart}: 2,650 lb`,
      basis: 'computed',
      inputs: { ...bare, chain: 'G30', chainSize: '3/8 in', shackle: 'carbon', shackleSize: '7/16 in' },
      outputs: {
        weakest: 'chain',
        weakestLimit: printed('2,650', 'lbf'),
        chainBreaking: printed('10,600', 'lbf'),
      },
    },
    {
      name: '3/8 in G43 breaks at 16,200 lb, 3 times its limit',
      source: `${chart}: G43 breaks at 3 times; worked by hand`,
      basis: 'computed',
      inputs: bare,
      outputs: { chainBreaking: printed('16,200', 'lbf') },
    },
    {
      name: '3/8 in G70 breaks at 26,400 lb, 4 times its limit',
      source: `${chart}: G70 breaks at 4 times; worked by hand`,
      basis: 'computed',
      inputs: { ...bare, chain: 'G70' },
      outputs: { chainBreaking: printed('26,400', 'lbf') },
    },
    {
      name: '8 mm chain, 5 m, 1 000 N: 29.89 m lie flat; 1 057.6 N at the bow',
      source: 'L = √(h(h + 2F/w)) and T = F + wh (tooljolt.com), w = 1.35 kg/m × 0.87 g; worked apart',
      basis: 'computed',
      inputs: { ...eightMm, chainLength: 40 },
      outputs: { tangentLength: printed('29.89'), bowTension: printed('1057.6'), angle: 0 },
      verdict: 'satisfactory',
    },
    {
      name: '8 mm chain, 10 m, 3 000 N: 72.9 m lie flat',
      source: 'L = √(h(h + 2F/w)), worked apart',
      basis: 'computed',
      inputs: laid({ load: { value: 3000, unit: 'N' }, depth: 10, chainMass: 1.35, chainLength: 80 }),
      outputs: { tangentLength: printed('72.9') },
    },
    {
      name: '10 mm chain, 6 m, 4 000 N: 49.8 m lie flat',
      source: 'L = √(h(h + 2F/w)), worked apart',
      basis: 'computed',
      inputs: laid({ load: { value: 4000, unit: 'N' }, depth: 6, chainMass: 2.3, chainLength: 60 }),
      outputs: { tangentLength: printed('49.8') },
    },
    {
      name: 'rope alone is a straight line: asin(10/50) at the anchor',
      source: 'right-angled triangle: 11.54°',
      basis: 'computed',
      inputs: {
        ...bare,
        chain: 'none',
        chainSize: undefined,
        rope: 'marked',
        ropeBreaking: { value: 100, unit: 'kN' },
        depth: 9,
        bowHeight: 1,
        ropeLength: 50,
      },
      outputs: { angle: near(11.537, 0.001), scope: 5 },
      verdict: 'unsatisfactory',
    },
    {
      name: 'chain of just the tangent length has none on the seabed and no lift',
      source: 'the two forms of the catenary meet',
      basis: 'edge',
      inputs: { ...eightMm, chainLength: 29.8878 },
      outputs: { grounded: near(0, 0.01), angle: near(0, 0.01) },
      verdict: 'satisfactory',
    },
    {
      name: 'a part working exactly at its limit is enough',
      source: `${chart}: 3/8 in G43, 5,400 lb`,
      basis: 'edge',
      inputs: { ...bare, load: 5400 },
      outputs: { margin: 1 },
      verdict: 'satisfactory',
    },
    {
      name: 'one pound more is not',
      source: `${chart}: 3/8 in G43, 5,400 lb`,
      basis: 'edge',
      inputs: { ...bare, load: 5401 },
      verdict: 'unsatisfactory',
    },
    {
      name: '1/2 in nylon at 15 % is short of the 900 lb for which the standard asks for 9/16 in',
      source: 'engineeringtoolbox.com: 5,670 lb; H-40 table AP-1 as quoted (issuhub 10037 p. 395): 9/16 in',
      basis: 'edge',
      inputs: { ...working, ropeSize: '1/2 in' },
      outputs: { ropeLimit: near(850.5, 1e-9) },
      verdict: 'unsatisfactory',
    },
    {
      name: 'exactly 40 ft, in metres, still takes the column of 40 ft',
      source: h40,
      basis: 'edge',
      inputs: { ...bare, boatLength: { value: 12.192, unit: 'm' } },
      outputs: { load: printed('1,200', 'lbf') },
    },
    {
      name: 'a boat over 70 ft can’t be judged by the table',
      source: h40,
      basis: 'edge',
      inputs: { ...bare, boatLength: 70.1 },
      verdict: 'indeterminate',
    },
    {
      name: 'grade without a size, size without print, a rode of nothing',
      source: 'what is missing is asked for',
      basis: 'edge',
      inputs: { ...bare, chain: 'G70', chainSize: '1/8 in', shackle: 'marked', rope: 'nylon' },
      refused: ['chainSize', 'shackleLimit', 'ropeSize'],
    },
    {
      name: 'a rode that can’t reach the bottom',
      source: 'length below depth and bow height',
      basis: 'edge',
      inputs: { ...eightMm, bowHeight: 1, chainLength: 6 },
      refused: ['chainLength'],
    },
  ],
  unverified: [
    'The beam columns of ABYC H-40 are from memory; they matter only when a beam is given and is large for the length.',
    'ABYC H-40 itself was not seen, only reprints; one other reprint has two columns shifted and was not used.',
    'Rope: the share of 15 % is the low end of a printed range of 15 to 25 %; rope makers ask for as little as 8 %.',
  ],
};
