import { type Check, type CheckedWorksheet, near, printed } from '../../support/check.ts';

const inches = (value: number) => ({ value, unit: 'in' });
const feet = (value: number) => ({ value, unit: 'ft' });
const usgph = (value: number) => ({ value, unit: 'usgph' });
const barrel = { value: 55, unit: 'usgal' };
const hole = (diameter: number, depth: number) => ({
  diameter: inches(diameter),
  depth: feet(depth),
  volume: barrel,
});
const measuredPump = (flow: unknown) => [{ pump: 'aft', basis: 'measured', flow }];

const club = 'yacht-club table of flooding rates, whsyc.org/Flooding (equals Cd 1.0)';

/** Rows of the table, US gal/min, for openings of 1 to 4 in by half inches. */
const table: Array<[depth: number, cells: string[]]> = [
  [1, ['19.4', '43.8', '77.9', '121.7', '175.3', '238.6', '311.6']],
  [2, ['27.8', '62.5', '111.1', '173.6', '250.0', '340.2', '444.4']],
  [3, ['33.9', '76.3', '135.7', '212.0', '305.3', '415.6', '542.8']],
  [4, ['39.3', '88.4', '157.1', '245.3', '353.5', '481.2', '628.4']],
];

const tableChecks = table.flatMap(([depth, cells]) =>
  cells.map((cell, i): Check => {
    const diameter = 1 + i / 2;
    const flow = Number(cell);
    return {
      name: `${diameter} in at ${depth} ft: ${cell} US gal/min`,
      source: `${club}, row ${depth} ft`,
      basis: 'printed',
      inputs: hole(diameter, depth),
      outputs: {
        // Printed from rounded roots and constants: 0.025 per cent off at 2 ft, up to 1.3 per cent elsewhere.
        inflowSmooth: near(flow, depth === 2 ? Math.max(0.05, 0.00025 * flow) : 0.013 * flow, 'usgpm'),
      },
    };
  }),
);

export const floodingRateChecks: CheckedWorksheet = {
  kind: 'flooding-rate',
  checks: [
    ...tableChecks,
    {
      name: '2 in at 1 ft: 47 US gal/min',
      source: 'Ocean Navigator, voyaging tips, June 2021 (equals Cd 0.6)',
      basis: 'printed',
      inputs: hole(2, 1),
      outputs: { inflowSharp: printed('47', 'usgpm') },
    },
    {
      name: '2 in at 1 ft fills 55 US gal in 42.4 s',
      source: `${club}: 42.4 seconds, from its own 77.9 US gal/min, 1 % low`,
      basis: 'printed',
      inputs: hole(2, 1),
      outputs: { timeSoonest: near(42.4, 0.5, 's') },
    },
    {
      name: 'a pump of 4,000 US gal/h moves 2,600 at 3 ft: 43.3 US gal/min',
      source: club,
      basis: 'printed',
      inputs: {
        ...hole(1, 2),
        pumps: [{ pump: 'main', basis: 'curve', flow: usgph(2600), onBattery: false }],
      },
      outputs: { pumpFlow: printed('43.3', 'usgpm') },
      verdict: 'satisfactory',
    },
    {
      name: '1,600 US gal/h are 26.7 US gal/min and hold 1 in at 2 ft at best',
      source: `${club}; 0.98 in by the formula`,
      basis: 'printed',
      inputs: { ...hole(1, 2), pumps: measuredPump(usgph(1600)) },
      outputs: { pumpFlow: printed('26.7', 'usgpm'), heldOpening: near(0.98, 0.005, 'in') },
    },
    {
      name: '50 mm at 0.6 m, sharp-edged: 242.5 L/min',
      source: 'engineering facts 5.1, worked by hand',
      basis: 'computed',
      inputs: { diameter: 50, depth: 0.6, volume: 1000 },
      outputs: { inflowSharp: printed('242.5', 'L/min') },
    },
    {
      name: '1.5 in at 3 ft, sharp-edged: 45.9 US gal/min',
      source: 'US form gpm = 19.64 Cd D² √h, worked by hand',
      basis: 'computed',
      inputs: hole(1.5, 3),
      outputs: { inflowSharp: printed('45.9', 'usgpm') },
    },
    {
      name: 'battery, one bend and corrugated hose leave 0.504 of the curve',
      source: 'engineering facts 5.2: 0.80 × 0.90 × 0.70',
      basis: 'computed',
      inputs: {
        ...hole(1, 2),
        pumps: [{ pump: 'main', basis: 'curve', flow: 100, bends: 1, corrugated: true }],
      },
      outputs: { pumpFlow: 50.4 },
    },
    {
      name: 'half of a label of 1,000 US gal/h: 8.33 US gal/min',
      source: 'the rule of one half, worked by hand: 1,000 / 2 / 60',
      basis: 'computed',
      inputs: { ...hole(1, 2), pumps: [{ pump: 'main', basis: 'label', flow: usgph(1000) }] },
      outputs: { pumpFlow: printed('8.33', 'usgpm') },
    },
    {
      name: 'not the rule 20 D √H: 4 in at 1 ft would be 80 by it',
      source: 'engineering facts 5.1, trap: the rule is linear in D; 19.64 × 16 by the formula',
      basis: 'computed',
      inputs: hole(4, 1),
      outputs: { inflowSmooth: near(314.2, 0.1, 'usgpm') },
    },
    {
      name: 'pumps that move exactly what comes in keep up',
      source: 'own rule: a gain needs more in than out; A = 0.01 m² by g: √(2 g h) = 1 m/s at h = 1 / (2 g)',
      basis: 'edge',
      inputs: {
        area: { value: 0.001, unit: 'm2' },
        depth: 1 / (2 * 9.80665),
        volume: 100,
        pumps: measuredPump(60),
      },
      outputs: { inflowSmooth: 60, gainSmooth: 0, timeSoonest: null },
      verdict: 'satisfactory',
    },
    {
      name: 'pumps that move a little less don’t',
      source: 'own rule: a gain needs more in than out',
      basis: 'edge',
      inputs: {
        area: { value: 0.001, unit: 'm2' },
        depth: 1 / (2 * 9.80665),
        volume: 100,
        pumps: measuredPump(59),
      },
      outputs: { gainSmooth: 1, timeSoonest: 100, timeLatest: null },
      verdict: 'attention',
    },
    {
      name: 'exactly the time wanted is enough',
      source: 'own rule: 100 L at 1 m/s through 10 cm² take 100 s',
      basis: 'edge',
      inputs: {
        area: 10,
        depth: 1 / (2 * 9.80665),
        volume: 100,
        leastTime: { value: 100, unit: 's' },
      },
      outputs: { timeSoonest: near(100, 1e-9, 's') },
      verdict: 'attention',
    },
    {
      name: 'less than the time wanted is not',
      source: 'own rule',
      basis: 'edge',
      inputs: {
        area: 10,
        depth: 1 / (2 * 9.80665),
        volume: 100,
        leastTime: { value: 101, unit: 's' },
      },
      verdict: 'unsatisfactory',
    },
    {
      name: 'diameter and area together are refused, and losses on a measured flow',
      source: 'own rule',
      basis: 'edge',
      inputs: {
        diameter: 50,
        area: 10,
        depth: 1,
        volume: 100,
        pumps: [{ pump: 'x', basis: 'measured', flow: 10, bends: 2 }],
      },
      refused: ['area', 'pumps/0/bends'],
    },
    {
      name: 'an opening at the waterline is refused',
      source: 'own rule',
      basis: 'edge',
      inputs: { diameter: 50, depth: 0, volume: 100 },
      refused: ['depth'],
    },
  ],
  unverified: [
    'The factors for voltage, bends, check valves and hose are trade articles’ figures; the middle of a printed range is taken for the check valve.',
    'Time to a volume takes depth and inflow as constant; sinkage and the rising level inside are not modelled.',
  ],
};
