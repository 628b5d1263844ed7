import { type CheckedWorksheet, printed } from '../../support/check.ts';

const hull = (length: number, breadth: number, depth: number, more: Record<string, unknown> = {}) => ({
  shape: 'faired',
  length,
  breadth,
  depth,
  ...more,
});
const vessel = (more: Record<string, unknown>) => ({
  designedForSailing: false,
  propulsion: 'in-hull',
  use: 'pleasure',
  ...more,
});
/** 100 ft³ of L × B × D: gross tonnage is then the coefficient itself, as printed. */
const hundred = (more: Record<string, unknown> = {}) => [hull(10, 5, 2, more)];
const sheet = 'U.S. Coast Guard Marine Safety Center, simplified measurement formulas';

export const tonnageChecks: CheckedWorksheet = {
  kind: 'tonnage',
  checks: [
    {
      name: 'coefficient of a sailing hull',
      source: '46 CFR 69.209(a)(1): 0.50 LBD/100; (b)(1)(i): net 90 percent',
      basis: 'printed',
      inputs: vessel({ designedForSailing: true, hulls: hundred() }),
      outputs: { gross: printed('0.50'), net: 0.45 },
    },
    {
      name: 'coefficient of a hull not for sailing',
      source: '46 CFR 69.209(a)(1): 0.67 LBD/100; (b)(1)(ii): net 80 percent',
      basis: 'printed',
      inputs: vessel({ hulls: hundred() }),
      outputs: { gross: printed('0.67'), net: 0.536 },
    },
    {
      name: 'coefficient of a barge shape, no machinery: net is gross',
      source: '46 CFR 69.209(a)(2): 0.84 LBD/100; (b)(2)',
      basis: 'printed',
      inputs: vessel({ propulsion: 'none', hulls: hundred({ shape: 'barge' }) }),
      outputs: { gross: printed('0.84'), net: printed('0.84') },
    },
    {
      name: 'coefficient with the keel in the depth',
      source: `${sheet}: sailing hulls, keel included in D, 0.375 LBD/100`,
      basis: 'printed',
      inputs: vessel({ designedForSailing: true, hulls: hundred({ keelInDepth: true }) }),
      outputs: { gross: printed('0.375') },
    },
    {
      name: '27 ft 5 in by 8 ft 6 in by 3 ft 9 in, box-shaped: 7 gross tons',
      source: 'owner’s report of an accepted measurement, c-brats.com post 158383 (weak: a single report)',
      basis: 'printed',
      inputs: vessel({
        propulsion: 'outside',
        hulls: [
          {
            shape: 'barge',
            length: { value: 329, unit: 'in' },
            breadth: { value: 102, unit: 'in' },
            depth: { value: 45, unit: 'in' },
          },
        ],
      }),
      outputs: { grossWhole: 7, gross: printed('7.43') },
    },
    {
      name: 'auxiliary sloop 36.0 × 11.5 × 6.0',
      source: '0.5 × 36 × 11.5 × 6 / 100 and 0.9 of it, by hand',
      basis: 'computed',
      inputs: vessel({ designedForSailing: true, hulls: [hull(36, 11.5, 6)] }),
      outputs: { gross: 12.42, net: 11.178, grossWhole: 12, netWhole: 11 },
      verdict: 'satisfactory',
    },
    {
      name: 'the same with the keel in a depth of 9.0',
      source: '0.375 × 36 × 11.5 × 9 / 100, by hand',
      basis: 'computed',
      inputs: vessel({ designedForSailing: true, hulls: [hull(36, 11.5, 9, { keelInDepth: true })] }),
      outputs: { gross: 13.9725, net: 12.57525 },
    },
    {
      name: 'power 42 × 14 × 7, inboard',
      source: '0.67 × 42 × 14 × 7 / 100 and 0.8 of it, by hand',
      basis: 'computed',
      inputs: vessel({ hulls: [hull(42, 14, 7)], statedGross: 27, statedNet: 22 }),
      outputs: { gross: 27.5772, net: 22.06176 },
      verdict: 'satisfactory',
    },
    {
      name: 'the same with outboards: net is gross, and the papers’ 22 net disagree',
      source: '46 CFR 69.209(b)(2)',
      basis: 'computed',
      inputs: vessel({ propulsion: 'outside', hulls: [hull(42, 14, 7)], statedNet: 22 }),
      outputs: { net: 27.5772 },
      verdict: 'attention',
    },
    {
      name: 'box hull 40 × 12 × 4, inboard',
      source: '0.84 × 40 × 12 × 4 / 100 and 0.8 of it, by hand',
      basis: 'computed',
      inputs: vessel({ hulls: [hull(40, 12, 4, { shape: 'barge' })] }),
      outputs: { gross: 16.128, net: 12.9024 },
    },
    {
      name: 'catamaran: the sum of her hulls, in metres',
      source: '2 × 0.5 × 39.4 × 6.6 × 5.9 / 100 (12.0, 2.0 and 1.8 m to a tenth of a foot), by hand',
      basis: 'computed',
      inputs: vessel({
        designedForSailing: true,
        propulsion: 'outside',
        hulls: [1, 2].map(() => ({
          shape: 'faired',
          length: { value: 12, unit: 'm' },
          breadth: { value: 2, unit: 'm' },
          depth: { value: 1.8, unit: 'm' },
        })),
      }),
      outputs: { gross: 15.34236 },
    },
    {
      name: 'deck structure as large as the hull is added',
      source: '46 CFR 69.209(a)(4): as large as, or larger',
      basis: 'edge',
      inputs: vessel({
        propulsion: 'none',
        hulls: [hull(20, 10, 5, { shape: 'barge' })],
        deckLength: 20,
        deckBreadth: 10,
        deckHeight: 4.2,
      }),
      outputs: { gross: 16.8, deckStructureCounts: true },
    },
    {
      name: 'a tenth of a foot lower it is not',
      source: '46 CFR 69.209(a)(4)',
      basis: 'edge',
      inputs: vessel({
        propulsion: 'none',
        hulls: [hull(20, 10, 5, { shape: 'barge' })],
        deckLength: 20,
        deckBreadth: 10,
        deckHeight: 4.1,
      }),
      outputs: { gross: 8.4, deckStructureCounts: false },
    },
    {
      name: 'exactly five net tons can be documented',
      source: '46 CFR 67.5: at least five net tons; 0.5 × 20 × 10 × 5 / 100 = 5 and no machinery',
      basis: 'edge',
      inputs: vessel({
        designedForSailing: true,
        propulsion: 'none',
        hulls: [hull(20, 10, 5)],
        statedNet: 5,
      }),
      outputs: { net: 5, documentable: true },
      verdict: 'satisfactory',
    },
    {
      name: 'just under five can’t',
      source: '46 CFR 67.5',
      basis: 'edge',
      inputs: vessel({
        designedForSailing: true,
        propulsion: 'none',
        hulls: [hull(20, 10, 4.9)],
        statedNet: 5,
      }),
      outputs: { net: 4.9, documentable: false },
      verdict: 'attention',
    },
    {
      name: '79 feet, self-propelled and working: formal measurement',
      source: '46 U.S.C. 14511(2): at least 24 metres (79 feet)',
      basis: 'edge',
      inputs: vessel({ use: 'other', hulls: [hull(79, 20, 10)] }),
      verdict: 'indeterminate',
    },
    {
      name: '79 feet for pleasure is still simplified',
      source: '46 U.S.C. 14511(2)(C)',
      basis: 'edge',
      inputs: vessel({ hulls: [hull(79, 20, 10)] }),
      outputs: { gross: 105.86 },
      verdict: 'satisfactory',
    },
    {
      name: 'keel in the depth of a motor boat',
      source: '46 CFR 69.203',
      basis: 'edge',
      inputs: vessel({ hulls: [hull(30, 10, 5, { keelInDepth: true })] }),
      refused: ['hulls/0/keelInDepth'],
    },
    {
      name: 'a depth of nothing, and half a deck structure',
      source: 'a hull has depth',
      basis: 'edge',
      inputs: vessel({ hulls: [hull(30, 10, 0)] }),
      refused: ['hulls/0/depth'],
    },
    {
      name: 'half a deck structure',
      source: '46 CFR 69.209(a)(4): the product of its average dimensions',
      basis: 'edge',
      inputs: vessel({ hulls: [hull(30, 10, 5)], deckLength: 20 }),
      refused: ['deckBreadth', 'deckHeight'],
    },
  ],
  unverified: [
    'No worked example with all its dimensions was found in an official text; the coefficients are checked as printed, the rest is arithmetic.',
    'That fractions of a ton are dropped on the certificate is from memory.',
    'How the hull’s volume is found for the comparison with the deck structure is our reading: by the hull’s own formula.',
  ],
};
