import { type Check, type CheckedWorksheet, near, printed } from '../../support/check.ts';

const inches = (value: number) => ({ value, unit: 'in' });

/** An unworn shaft of so many inches, judged by a table; fine tools, so that limits are met exactly. */
const unworn = (diameter: number, clearanceTable: string, more: Record<string, unknown> = {}) => ({
  originalDiameter: inches(diameter),
  wornDiameter: inches(diameter),
  resolution: inches(0.00005),
  place: 'bearing',
  surface: 'smooth',
  clearanceTable,
  ...more,
});

/** A shaft worn from 100 mm to so many. */
const worn = (diameter: number, more: Record<string, unknown> = {}) => ({
  originalDiameter: 100,
  wornDiameter: diameter,
  resolution: 0.001,
  place: 'elsewhere',
  surface: 'smooth',
  clearanceTable: 'share-2.5',
  ...more,
});

const guide: Array<[shaft: number, least: string, most: string, source: string]> = [
  [1, '0.003', '0.008', 'a bearing maker’s technical desk, yachtforums thread 6847'],
  [1.5, '0.004', '0.009', 'quoted as the ABYC guide, trawlerforum post 984400'],
  [2, '0.005', '0.010', 'quoted as the ABYC guide, trawlerforum post 984400'],
  [2.5, '0.005', '0.011', 'quoted as the ABYC guide, trawlerforum post 984400'],
];

const guideRows = guide.map(
  ([shaft, least, most, source]): Check => ({
    name: `${shaft} in shaft: clearance ${least} to ${most} in`,
    source,
    basis: 'printed',
    inputs: unworn(shaft, 'quoted-guide'),
    outputs: {
      newLeast: printed(least, 'in'),
      newMost: printed(most, 'in'),
      limit: printed(most, 'in'),
    },
  }),
);

const navalRows = [
  [1, '0.015'],
  [1.5, '0.016'],
].map(
  ([shaft, least]): Check => ({
    name: `${shaft} in shaft: older naval least clearance ${least} in`,
    source: 'US naval table quoted in marineengine thread 398547',
    basis: 'printed',
    inputs: unworn(Number(shaft), 'naval-least'),
    outputs: { newLeast: printed(String(least), 'in'), limit: null },
  }),
);

const ratios: Array<[ratio: number, strength: string, lostShare: string]> = [
  [99, '97.03', '1'],
  [98, '94.12', '2'],
  [97, '91.27', '3'],
  [95, '85.74', '5'],
  [90, '72.90', '10'],
];

export const shaftWearChecks: CheckedWorksheet = {
  kind: 'shaft-wear',
  checks: [
    ...guideRows,
    ...navalRows,
    {
      name: 'per-inch practice: 0.001 to 0.002 in for a 1 in shaft, change at 1/32 in',
      source: 'sailnet thread 76994, post of 30 July 2011',
      basis: 'printed',
      inputs: unworn(1, 'per-inch'),
      outputs: {
        newLeast: printed('0.001', 'in'),
        newMost: printed('0.002', 'in'),
        limit: printed('0.03', 'in'),
      },
    },
    {
      name: '2 in shaft lifting 0.045 in is out by the guide, which is 0.010 in at most',
      source: 'case in trawlerforum post 984400; 0.045 − 0.010 by hand',
      basis: 'printed',
      inputs: unworn(2, 'quoted-guide', { play: inches(0.045) }),
      outputs: { overLimit: printed('0.035', 'in'), playShare: printed('2.25') },
      verdict: 'attention',
    },
    {
      name: 'the same play is within 2.5% of the diameter: the tables conflict',
      source: 'ybw thread 144416: renew when play approaches 2.5%',
      basis: 'printed',
      inputs: unworn(2, 'share-2.5', { play: inches(0.045) }),
      outputs: { limit: printed('0.050', 'in') },
      verdict: 'satisfactory',
    },
    {
      name: '100 hp at 1 800 rpm: 3 500 lbf·in, and 8 000 psi in 1.306 in',
      source:
        'torsional shear problem, tectechnicsclassroom.tectechnics.com s7p3a32; prints with 63,000 for 63,025',
      basis: 'printed',
      inputs: unworn(1.306, 'share-2.5', { power: { value: 100, unit: 'hp' }, shaftSpeed: 1800 }),
      outputs: { torque: near(3500, 3, 'lbf in'), stressNow: near(8000, 8, 'psi') },
    },
    ...ratios.map(
      ([diameter, strength, lost]): Check => ({
        name: `worn to ${diameter}% of its diameter`,
        source: `(d/d₀)³ by hand: 0.${diameter}³`,
        basis: 'computed',
        inputs: worn(diameter),
        outputs: { strengthLeft: printed(strength), diameterLostShare: printed(lost) },
      }),
    ),
    {
      name: '1.25 in worn to 1.18 at the gland leaves 84%, not the 89% of its area',
      source: 'case in sailboatowners thread 1249929384, whose area method understates; (1.18/1.25)³ by hand',
      basis: 'computed',
      inputs: {
        originalDiameter: inches(1.25),
        wornDiameter: inches(1.18),
        resolution: inches(0.001),
        place: 'gland',
        surface: 'smooth',
        clearanceTable: 'share-2.5',
      },
      outputs: { strengthLeft: printed('84.12'), stiffnessLeft: printed('79.41') },
      verdict: 'unsatisfactory',
    },
    {
      name: '1 in worn to 0.980 at the stuffing box leaves 94%',
      source: 'case in cruisersforum thread 283732; 0.98³ by hand',
      basis: 'computed',
      inputs: {
        originalDiameter: inches(1),
        wornDiameter: inches(0.98),
        resolution: inches(0.001),
        place: 'gland',
        surface: 'smooth',
        clearanceTable: 'share-2.5',
      },
      outputs: { strengthLeft: printed('94.12') },
      verdict: 'attention',
    },
    {
      name: '403 shp at 1 050 rpm in 1.75 in: 22 987 psi, factor 3.05 on 70 000 psi',
      source: 'Gerr’s example (Boat Mechanical Systems Handbook p. 10) turned round, by hand',
      basis: 'computed',
      inputs: unworn(1.75, 'share-2.5', {
        power: { value: 403, unit: 'hp' },
        shaftSpeed: 1050,
        material: 'stainless-22',
      }),
      outputs: { stressNow: near(22_987, 1, 'psi'), factorNow: printed('3.05') },
      verdict: 'satisfactory',
    },
    {
      name: '14 in propeller shaft, 5 000 hp at 189 rpm: 3 094.6 psi',
      source: 'strength of materials problem 306 (mathalino.com), worked by hand with 63,025',
      basis: 'computed',
      inputs: unworn(14, 'share-2.5', { power: { value: 5000, unit: 'hp' }, shaftSpeed: 189 }),
      outputs: { stressNow: near(3094.6, 0.1, 'psi') },
    },
    {
      name: 'yacht shaft of 104 mm carries 10.60 kN·m at 48 MPa',
      source: 'Gere, Mechanics of Materials, torsion problem (statement), worked by hand: π d³ τ / 16',
      basis: 'computed',
      inputs: {
        ...worn(100),
        originalDiameter: 104,
        wornDiameter: 104,
        power: 10.6016 * ((2 * Math.PI * 300) / 60),
        shaftSpeed: 300,
      },
      outputs: { torque: near(10_601.6, 0.1), stressNow: near(48, 0.01) },
    },
    {
      name: '1.25 in shaft with 0.010 in: over one table’s 0.0085',
      source: 'case in marineengine thread 398547; the guide’s rows interpolated by hand',
      basis: 'computed',
      inputs: unworn(1.25, 'quoted-guide', { play: inches(0.01) }),
      outputs: { limit: printed('0.0085', 'in'), overLimit: printed('0.0015', 'in') },
      verdict: 'attention',
    },
    {
      name: 'and under the 0.0155 another asks for',
      source: 'case in marineengine thread 398547; the naval rows interpolated by hand',
      basis: 'computed',
      inputs: unworn(1.25, 'naval-least', { play: inches(0.01) }),
      outputs: { newLeast: printed('0.0155', 'in') },
      verdict: 'attention',
    },
    {
      name: 'a new bearing on a shaft 0.8 mm small starts at 0.8 mm more than its own clearance',
      source: 'by hand: 0.8 + 0.1',
      basis: 'computed',
      inputs: {
        originalDiameter: 40,
        wornDiameter: 39.2,
        place: 'bearing',
        surface: 'smooth',
        clearanceTable: 'own',
        ownNewClearance: 0.1,
        ownLimit: 0.8,
        play: 1.2,
      },
      outputs: { playWithNewBearing: 0.9, bearingShare: 0.4, overLimit: 0.4 },
      verdict: 'unsatisfactory',
    },
    {
      name: 'strength exactly at the renewal limit is not below it',
      source: '0.95³ = 85.7375%, the limit set to it',
      basis: 'edge',
      inputs: worn(95, { resolution: 0.0000001, renewBelow: 85.7375, attentionBelow: 90 }),
      outputs: { strengthLeft: 85.7375 },
      verdict: 'attention',
    },
    {
      name: 'a hair under it is',
      source: '0.95³ = 85.7375%, the limit set a hair higher',
      basis: 'edge',
      inputs: worn(95, { resolution: 0.0000001, renewBelow: 85.7376, attentionBelow: 90 }),
      verdict: 'unsatisfactory',
    },
    {
      name: 'a limit within one division of the micrometer is attention, whatever the reading says',
      source: '98.4 mm leaves 95.28%; 0.2 mm either way straddles 95%',
      basis: 'edge',
      inputs: worn(98.4, { resolution: 0.2 }),
      verdict: 'attention',
    },
    {
      name: 'play just inside the greatest of the guide, in a new unit',
      source: 'quoted guide, 2 in: 0.010 in = 0.254 mm',
      basis: 'edge',
      inputs: unworn(2, 'quoted-guide', { play: 0.25 }),
      verdict: 'satisfactory',
    },
    {
      name: 'play at the greatest of the guide can’t be told from over it',
      source: 'quoted guide, 2 in: 0.010 in',
      basis: 'edge',
      inputs: unworn(2, 'quoted-guide', { play: inches(0.01) }),
      outputs: { overLimit: 0 },
      verdict: 'attention',
    },
    {
      name: 'a difference the micrometer can’t show is no wear',
      source: 'one division of 0.02 mm',
      basis: 'edge',
      inputs: worn(99.98, { resolution: 0.02 }),
      verdict: 'satisfactory',
    },
    {
      name: 'more play than every table allows',
      source: '5% of 2 in is 0.100 in',
      basis: 'edge',
      inputs: unworn(2, 'quoted-guide', { play: inches(0.1001) }),
      verdict: 'unsatisfactory',
    },
    {
      name: 'a shaft larger than the table’s last row is not judged by it',
      source: 'quoted guide ends at 2.5 in',
      basis: 'edge',
      inputs: unworn(2.51, 'quoted-guide', { play: inches(0.01) }),
      outputs: { limit: null },
      verdict: 'indeterminate',
    },
    {
      name: 'a pitted shaft has no strength by its diameter',
      source: 'applicability: even wear only',
      basis: 'edge',
      inputs: worn(99, { surface: 'pitted' }),
      outputs: { strengthLeft: null },
      verdict: 'indeterminate',
    },
    {
      name: 'worn larger than new',
      source: 'impossible by definition',
      basis: 'edge',
      inputs: worn(101),
      refused: ['wornDiameter'],
    },
    {
      name: 'power without speed, own figures without a limit',
      source: 'needed together',
      basis: 'edge',
      inputs: worn(99, { power: 50, clearanceTable: 'own', play: 0.4 }),
      refused: ['ownLimit', 'shaftSpeed'],
    },
    {
      name: 'no diameter',
      source: 'impossible by definition',
      basis: 'edge',
      inputs: worn(0),
      refused: ['wornDiameter'],
    },
  ],
  unverified: [
    'Bearing clearances: the primary tables (ABYC P-6, US Army TB 55-1900-201-45/1 table C-1 sheet 1) were not readable; the figures are those quoted by others, and they conflict.',
    'Renewal limits of 95% and 90% of strength, and 5% of the diameter as play, are common practice without a source.',
    'Shear yield by shaft material is a trade figure, for small bars; a bar’s certificate outranks it.',
  ],
};
