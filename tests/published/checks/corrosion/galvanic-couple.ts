import { type Check, type CheckedWorksheet, near } from '../../support/check.ts';

const aca = 'galvanic series, Australasian Corrosion Association (corrosion.com.au, seawater corrosion)';

/** The published series, typed apart from the worksheet's own: volts against calomel. */
const published: ReadonlyArray<readonly [string, number, number]> = [
  ['graphite', 0.2, 0.3],
  ['platinum', 0.18, 0.26],
  ['stainless-316-passive', -0.1, 0],
  ['nickel-copper', -0.14, -0.03],
  ['stainless-304-passive', -0.1, -0.04],
  ['silver', -0.15, -0.1],
  ['nickel-aluminium-bronze', -0.22, -0.14],
  ['copper-nickel-70', -0.24, -0.17],
  ['lead', -0.25, -0.19],
  ['copper-nickel-90', -0.28, -0.22],
  ['tin-bronze', -0.32, -0.24],
  ['silicon-bronze', -0.29, -0.25],
  ['manganese-bronze', -0.34, -0.26],
  ['admiralty-brass', -0.36, -0.26],
  ['copper', -0.37, -0.3],
  ['brass', -0.4, -0.31],
  ['aluminium-bronze', -0.4, -0.31],
  ['stainless-316-active', -0.46, -0.33],
  ['stainless-304-active', -0.58, -0.44],
  ['low-alloy-steel', -0.63, -0.57],
  ['steel', -0.72, -0.6],
  ['cadmium', -0.74, -0.7],
  ['aluminium', -1.0, -0.76],
  ['zinc', -1.03, -0.98],
];

const rows = published.map(
  ([metal, low, high]): Check => ({
    name: `${metal}: ${low} to ${high} V`,
    source: aca,
    basis: 'printed',
    inputs: { metalA: metal, metalB: 'magnesium', electrolyte: 'sea', joined: 'yes' },
    outputs: {
      lowA: low * 1000,
      highA: high * 1000,
      lowB: -1630,
      highB: -1600,
      anode: 'magnesium',
      leastDifference: near(low * 1000 + 1600, 1e-6),
      greatestDifference: near(high * 1000 + 1630, 1e-6),
    },
    verdict: 'unsatisfactory',
  }),
);

const boat = { electrolyte: 'sea', joined: 'yes' };
const bolted = { ...boat, metalA: 'stainless-316-passive', metalB: 'aluminium' };
const pipe = { ...boat, metalA: 'steel', metalB: 'copper', areaA: 1, areaB: 1 };

export const galvanicCoupleChecks: CheckedWorksheet = {
  kind: 'galvanic-couple',
  checks: [
    ...rows,
    {
      name: 'stainless bolts in aluminium plate: slow',
      source: 'MIL-STD-1250A, 5.7 a: stainless bolts for aluminium sheet, but not the reverse',
      basis: 'printed',
      inputs: { ...bolted, areaA: 5, areaB: 500 },
      outputs: { anode: 'aluminium', areaRatio: 0.01 },
      verdict: 'attention',
    },
    {
      name: 'aluminium rivets in stainless plate: fast',
      source: 'MIL-STD-1250A, 5.7 a: stainless bolts for aluminium sheet, but not the reverse',
      basis: 'printed',
      inputs: { ...bolted, areaA: 500, areaB: 5 },
      outputs: { areaRatio: 100 },
      verdict: 'unsatisfactory',
    },
    {
      name: '1 mA/cm² eats 11.6 mm of iron a year',
      source: 'corrosion-doctors.org, corrosion rate conversion: 11.6 mm/y',
      basis: 'printed',
      inputs: { ...pipe, coupleCurrent: 1 },
      outputs: { rate: near(11.6, 0.05), currentDensity: 10 },
      verdict: 'unsatisfactory',
    },
    {
      name: '1 mA/cm² eats 3.28 M/nρ of zinc',
      source: 'corrosion-doctors.org: 3.28 × 65.38 / (2 × 7.14), by hand 15.0 mm/y',
      basis: 'computed',
      inputs: { ...boat, metalA: 'zinc', metalB: 'copper', areaA: 1, coupleCurrent: 1 },
      outputs: { rate: near(15.0, 0.05) },
    },
    {
      name: '1 mA/cm² eats 3.28 M/nρ of aluminium',
      source: 'corrosion-doctors.org: 3.28 × 26.98 / (3 × 2.70), by hand 10.9 mm/y',
      basis: 'computed',
      inputs: { ...boat, metalA: 'copper', metalB: 'aluminium', areaB: 1, coupleCurrent: 1 },
      outputs: { rate: near(10.9, 0.05) },
    },
    {
      name: 'brass and aluminium bronze lie in the same range: either may be attacked',
      source: aca,
      basis: 'computed',
      inputs: { ...boat, metalA: 'brass', metalB: 'aluminium-bronze' },
      outputs: { anode: null, leastDifference: 0, greatestDifference: 90 },
      verdict: 'satisfactory',
    },
    {
      name: 'a greatest difference of just the limit is harmless',
      source: `${aca}: tin bronze −320, 70-30 copper-nickel −170, 150 mV`,
      basis: 'edge',
      inputs: { ...boat, metalA: 'tin-bronze', metalB: 'copper-nickel-70', limit: 150 },
      outputs: { greatestDifference: 150 },
      verdict: 'satisfactory',
    },
    {
      name: 'a millivolt more is not',
      source: `${aca}: tin bronze −320, 70-30 copper-nickel −170, 150 mV`,
      basis: 'edge',
      inputs: { ...boat, metalA: 'tin-bronze', metalB: 'copper-nickel-70', limit: 149 },
      verdict: 'attention',
    },
    {
      name: 'a least difference of just the limit may still pass',
      source: `${aca}: steel −600, copper −370, 230 mV`,
      basis: 'edge',
      inputs: { ...boat, metalA: 'steel', metalB: 'copper', limit: 230 },
      outputs: { leastDifference: 230 },
      verdict: 'attention',
    },
    {
      name: 'and with 200 mV is too much',
      source: 'galvanic chart docslib 8174925: more than 200 mV',
      basis: 'edge',
      inputs: { ...boat, metalA: 'steel', metalB: 'copper' },
      verdict: 'unsatisfactory',
    },
    {
      name: 'a nobler area of a tenth is still slow',
      source: 'common practice: 0.1',
      basis: 'edge',
      inputs: { ...bolted, areaA: 10, areaB: 100 },
      verdict: 'attention',
    },
    {
      name: 'dry, nothing happens',
      source: 'no electrolyte, no cell',
      basis: 'edge',
      inputs: { ...bolted, electrolyte: 'dry' },
      verdict: 'satisfactory',
    },
    {
      name: 'fresh water is not judged by the series',
      source: 'the series is of sea water',
      basis: 'edge',
      inputs: { ...bolted, electrolyte: 'fresh' },
      verdict: 'indeterminate',
    },
    {
      name: 'contact not examined',
      source: 'no contact, no current',
      basis: 'edge',
      inputs: { ...bolted, joined: 'not-examined' },
      verdict: 'indeterminate',
    },
    {
      name: 'zinc fitted as an anode is as it should be',
      source: 'sacrificial protection',
      basis: 'edge',
      inputs: { ...boat, metalA: 'zinc', metalB: 'steel', sacrificial: true },
      verdict: 'satisfactory',
    },
    {
      name: 'a metal with itself is refused',
      source: 'no couple',
      basis: 'edge',
      inputs: { ...boat, metalA: 'zinc', metalB: 'zinc' },
      refused: ['metalB'],
    },
  ],
  unverified: [
    'Titanium: the series prints +0.04 to +0.06 V, probably having lost a sign; the worksheet takes −0.10 V (ASM Handbook vol. 13) to +0.06 V.',
    'A boat-trade chart gives manganese bronze −450 mV against −260 to −340 mV here and in a third chart.',
    'The ratios of area 0.1 and 10 are common practice without a source; the 200 mV is a chart’s note.',
    'Rates are given only for metals that dissolve in one way; copper alloys and stainless steels have none.',
  ],
};
