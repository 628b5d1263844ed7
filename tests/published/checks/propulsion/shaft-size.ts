import { type Check, type CheckedWorksheet, printed } from '../../support/check.ts';

const hp = (value: number) => ({ value, unit: 'hp' });
const psi = (value: number) => ({ value, unit: 'psi' });
const inches = (value: number) => ({ value, unit: 'in' });

const gerr = {
  power: hp(403),
  powerAt: 'shaft',
  engineSpeed: 1050,
  material: 'stainless-22',
  service: 'yacht',
};

/** A shaft whose torque at 300 rpm is so many N·m. */
const ofTorque = (newtonMetres: number, more: Record<string, unknown>) => ({
  power: (newtonMetres * 2 * Math.PI * 300) / 60 / 1000,
  powerAt: 'shaft',
  engineSpeed: 300,
  material: 'other',
  service: 'yacht',
  ...more,
});

/** Torque in N·m that stresses a shaft of so many mm to 100 MPa. */
const torqueAt100 = (mm: number) => (Math.PI * mm ** 3 * 100) / 16 / 1000;

const yields: Array<[material: string, psi: string]> = [
  ['stainless-22', '70000'],
  ['stainless-18', '60000'],
  ['stainless-17', '70000'],
  ['nickel-copper-400', '40000'],
  ['nickel-copper-k500', '67000'],
  ['tobin-bronze', '20000'],
  ['stainless-304', '20000'],
];

const factors: Array<[service: string, factor: number]> = [
  ['light-petrol', 2],
  ['yacht', 3],
  ['long-range', 4],
  ['racing', 5],
  ['patrol', 6],
  ['passenger', 7.5],
];

export const shaftSizeChecks: CheckedWorksheet = {
  kind: 'shaft-size',
  checks: [
    {
      name: '403 shp, factor 3, 70 000 psi, 1 050 rpm: 1.74 in, use 1¾',
      source: 'Gerr, Boat Mechanical Systems Handbook, p. 10, formula 1-2',
      basis: 'printed',
      inputs: gerr,
      outputs: { leastDiameter: printed('1.74', 'in'), stockSize: '1.75 in' },
      verdict: 'indeterminate',
    },
    {
      name: '300 kW, factor 3, 482 000 kPa, 1 050 rpm: 44.2 mm, use 45 mm',
      source: 'Gerr, Boat Mechanical Systems Handbook, p. 10, metric formula 1-2',
      basis: 'printed',
      inputs: { ...gerr, power: 300, material: 'other', yieldStrength: 482, sizes: 'metric' },
      outputs: { leastDiameter: printed('44.2', 'mm'), stockSize: '45 mm' },
    },
    {
      name: '42 shp at 2 000 rpm, factor 3, Tobin bronze: one inch',
      source: 'electricboats.co.uk, shaft diameter',
      basis: 'printed',
      inputs: { ...gerr, power: hp(42), engineSpeed: 2000, material: 'tobin-bronze' },
      outputs: { leastDiameter: printed('1.0', 'in') },
    },
    {
      name: '100 hp at 1 800 rpm, 8 000 psi: 1.306 in',
      source: 'torsional shear problem, tectechnicsclassroom.tectechnics.com s7p3a32, turned round',
      basis: 'printed',
      inputs: {
        ...gerr,
        power: hp(100),
        engineSpeed: 1800,
        material: 'other',
        yieldStrength: psi(8000),
        factor: 1,
      },
      outputs: { leastDiameter: printed('1.306', 'in') },
    },
    {
      name: '424.413 N·m at 75 MPa: 30.660 mm',
      source: 'solid shaft torsion example M6.17, mecmovies',
      basis: 'printed',
      inputs: ofTorque(424.413, { yieldStrength: 75, factor: 1 }),
      outputs: { leastDiameter: printed('30.660', 'mm') },
    },
    {
      name: '24 in propeller: 1.71 in by the quick rule',
      source: 'Gerr, Boat Mechanical Systems Handbook, p. 10',
      basis: 'printed',
      inputs: { ...gerr, propellerDiameter: inches(24) },
      outputs: { quickRule: printed('1.71', 'in') },
    },
    ...yields.map(
      ([material, value]): Check => ({
        name: `${material}: yield in torsional shear ${value} psi`,
        source: 'electricboats.co.uk, shaft materials; speedafloat.com, shaft size',
        basis: 'printed',
        inputs: { ...gerr, material },
        outputs: { yieldStrength: printed(value, 'psi') },
      }),
    ),
    ...factors.map(
      ([service, factor]): Check => ({
        name: `${service}: factor of safety ${factor}`,
        source: 'Gerr, Boat Mechanical Systems Handbook, p. 10, safety factors',
        basis: 'printed',
        inputs: { ...gerr, service },
        outputs: { factorAsked: factor },
      }),
    ),
    {
      name: '420 bhp at the flywheel are 403 at the shaft, 1.742 in',
      source: '0.96 × 420 by hand; the formula by hand',
      basis: 'computed',
      inputs: { ...gerr, power: hp(420), powerAt: 'flywheel', engineSpeed: 2100, reduction: 2 },
      outputs: { shaftPower: printed('403', 'hp'), leastDiameter: printed('1.742', 'in'), shaftSpeed: 1050 },
    },
    {
      name: '300 shp, factor 2, 70 000 psi, 1 200 rpm: 1.319 in',
      source: '∛(321,000 × 300 × 2 / (70,000 × 1,200)) by hand',
      basis: 'computed',
      inputs: { ...gerr, power: hp(300), engineSpeed: 1200, service: 'light-petrol' },
      outputs: { leastDiameter: printed('1.319', 'in') },
    },
    {
      name: '50 shp, factor 3, 20 000 psi, 900 rpm: 1.388 in',
      source: '∛(321,000 × 50 × 3 / (20,000 × 900)) by hand',
      basis: 'computed',
      inputs: { ...gerr, power: hp(50), engineSpeed: 900, material: 'stainless-304' },
      outputs: { leastDiameter: printed('1.388', 'in') },
    },
    {
      name: '1.75 in of grade 22 at 1 050 rpm spans 7.28 ft',
      source: '√(3.21 × 1.75 / 1,050) × (28,000,000 / 0.285)^¼ by hand, speedafloat.com’s formula',
      basis: 'computed',
      inputs: { ...gerr, fittedDiameter: inches(1.75) },
      outputs: { longestSpan: printed('7.28', 'ft'), factorFitted: printed('3.05') },
      verdict: 'satisfactory',
    },
    {
      name: 'exactly the factor asked is enough',
      source: 'factor 3 for average yachts, Gerr p. 10; torque made to fit',
      basis: 'edge',
      inputs: ofTorque(torqueAt100(40), { yieldStrength: 300, fittedDiameter: 40 }),
      outputs: { factorFitted: 3 },
      verdict: 'satisfactory',
    },
    {
      name: 'a hair less is attention',
      source: 'factor 3 for average yachts, Gerr p. 10; torque made to fit',
      basis: 'edge',
      inputs: ofTorque(torqueAt100(40), { yieldStrength: 299.99, fittedDiameter: 40 }),
      verdict: 'attention',
    },
    {
      name: 'less than the lightest service’s 2 is unsatisfactory',
      source: 'factor 2 for light petrol yachts, Gerr p. 10; torque made to fit',
      basis: 'edge',
      inputs: ofTorque(torqueAt100(40), { yieldStrength: 199.99, fittedDiameter: 40 }),
      verdict: 'unsatisfactory',
    },
    {
      name: 'exactly 2 in of grade 22 still has the printed strength',
      source: 'grade 22: 70,000 psi for 2 in and under',
      basis: 'edge',
      inputs: { ...gerr, fittedDiameter: inches(2) },
      verdict: 'satisfactory',
    },
    {
      name: 'a larger bar of grade 22 may not',
      source: 'grade 22: 70,000 psi for 2 in and under',
      basis: 'edge',
      inputs: { ...gerr, fittedDiameter: inches(2.01) },
      verdict: 'attention',
    },
    {
      name: 'another material without its strength',
      source: 'needed together',
      basis: 'edge',
      inputs: { ...gerr, material: 'other' },
      refused: ['yieldStrength'],
    },
    {
      name: 'no power and a gear that cannot be',
      source: 'impossible by definition',
      basis: 'edge',
      inputs: { ...gerr, power: 0, reduction: 0 },
      refused: ['power', 'reduction'],
    },
  ],
  unverified: [
    'The span between bearings is printed by one builder’s page only (speedafloat.com); no printed worked example was found.',
    'Gerr’s table 1-1 of divisors by blades and material is scrambled in the copy read; only the plain rule of 1/14 is used.',
  ],
};
