import { type CheckedWorksheet, near, printed } from '../../support/check.ts';

const sound = { brokenWires: 'no', terminalFault: 'no', age: 4, construction: '1x19' };
const quarter302 = {
  ...sound,
  diameter: { value: 0.25, unit: 'in' },
  grade: '302-304',
  waters: 'offshore',
  fittingShare: 100,
};
const sevenMm = { ...sound, diameter: 7, grade: '316', waters: 'coastal', load: 8 };
const fiveMm = { ...sound, diameter: 5, grade: '316', waters: 'coastal', load: 5 };
const exampleBoat = {
  ...quarter302,
  diameter: { value: 0.0625, unit: 'in' },
  displacement: { value: 2305, unit: 'lb' },
  fittingShare: 90,
};

export const riggingWireChecks: CheckedWorksheet = {
  kind: 'rigging-wire',
  checks: [
    {
      name: '1/16 in of 304 breaks at 500 lb',
      source: '0685.com 44804: 1x19 of 304-grade, 1/16 in, 500 lb',
      basis: 'printed',
      inputs: { ...quarter302, diameter: { value: 0.0625, unit: 'in' } },
      outputs: { breakingLoad: printed('500', 'lbf') },
    },
    {
      name: '1/16 in of 316 breaks at 480 lb',
      source: '0685.com 44804: the same cable of 316-grade, 480 lb',
      basis: 'printed',
      inputs: { ...quarter302, grade: '316', diameter: { value: 0.0625, unit: 'in' } },
      outputs: { breakingLoad: printed('480', 'lbf') },
    },
    {
      name: '1/4 in of 302 breaks at 8,200 lb',
      source: 'ericsonyachts forum 13231',
      basis: 'printed',
      inputs: quarter302,
      outputs: { breakingLoad: printed('8,200', 'lbf') },
    },
    {
      name: '1/4 in of 316 breaks at 6,900 lb',
      source: 'ericsonyachts forum 13231',
      basis: 'printed',
      inputs: { ...quarter302, grade: '316' },
      outputs: { breakingLoad: printed('6,900', 'lbf') },
    },
    {
      name: '350 kg on 7 mm wire is 10 % of its 3,500 kg',
      source: 'mitron.se: 7 mm breaks at 3 500 kg, 10 % is 350 kg',
      basis: 'printed',
      inputs: { ...sevenMm, tension: { value: 350, unit: 'kgf' } },
      outputs: { breakingLoad: printed('3500', 'kgf'), tensionShare: printed('10') },
    },
    {
      name: '300 kg on 5 mm wire is 15 % of its 2,000 kg',
      source: 'mitron.se: 5 mm breaks at 2 000 kg, 15 % is 300 kg',
      basis: 'printed',
      inputs: { ...fiveMm, tension: { value: 300, unit: 'kgf' } },
      outputs: { tensionShare: printed('15') },
      verdict: 'satisfactory',
    },
    {
      name: '4 mm over 2 m is 20 % of the breaking load',
      source: 'zeilersforum.nl 23222: 4 mm over 2 m, 20 %',
      basis: 'printed',
      inputs: { ...fiveMm, stretch: 4 },
      outputs: { tensionShare: printed('20') },
    },
    {
      name: 'a boat of 2,305 lb offshore: 1,383 lb on each of two shrouds',
      source:
        'sailboatowners 1249934718: 2,305 × 1.2 = 2,766 lb, 1,383 lb a shroud, 1,537 lb with a 90 % swage',
      basis: 'printed',
      inputs: exampleBoat,
      outputs: { perShroud: printed('1,383', 'lbf'), ruleBreakingLoad: printed('1,537', 'lbf') },
      verdict: 'unsatisfactory',
    },
    {
      name: '1/4 in of 302 at 2,000 lb: 4.10 times',
      source: '8,200 / 2,000, worked by hand',
      basis: 'computed',
      inputs: { ...quarter302, load: { value: 2000, unit: 'lbf' } },
      outputs: { safetyFactor: 4.1 },
      verdict: 'satisfactory',
    },
    {
      name: '1/4 in of 316 at 2,000 lb: 3.45 times, short of 4 offshore',
      source: '6,900 / 2,000, worked by hand',
      basis: 'computed',
      inputs: { ...quarter302, grade: '316', load: { value: 2000, unit: 'lbf' } },
      outputs: { safetyFactor: 3.45 },
      verdict: 'unsatisfactory',
    },
    {
      name: '3/16 in of 302 at 1,200 lb: 3.92 times, and its figure is disputed',
      source: '4,700 / 1,200, worked by hand',
      basis: 'computed',
      inputs: {
        ...quarter302,
        waters: 'coastal',
        diameter: { value: 0.1875, unit: 'in' },
        load: { value: 1200, unit: 'lbf' },
      },
      outputs: { safetyFactor: near(3.92, 0.005) },
      verdict: 'attention',
    },
    {
      name: 'exactly 4 times is enough offshore',
      source: 'forum practice (boatbanter 590059): 4 offshore',
      basis: 'edge',
      inputs: { ...quarter302, load: { value: 2050, unit: 'lbf' } },
      outputs: { safetyFactor: 4 },
      verdict: 'satisfactory',
    },
    {
      name: 'a pound more is not',
      source: 'forum practice (boatbanter 590059): 4 offshore',
      basis: 'edge',
      inputs: { ...quarter302, load: { value: 2051, unit: 'lbf' } },
      verdict: 'unsatisfactory',
    },
    {
      name: 'a stretch of 5 mm, 25 %, is at the ceiling and accepted',
      source: 'zeilersforum.nl 23222: 5 mm, 25 %, is the cap',
      basis: 'edge',
      inputs: { ...fiveMm, stretch: 5 },
      outputs: { tensionShare: printed('25') },
      verdict: 'satisfactory',
    },
    {
      name: 'a stretch of 5.1 mm is above it',
      source: 'zeilersforum.nl 23222: 5 mm, 25 %, is the cap',
      basis: 'edge',
      inputs: { ...fiveMm, stretch: 5.1 },
      verdict: 'unsatisfactory',
    },
    {
      name: 'ten years to the day calls for attention',
      source: 'common practice, no source: 10 years',
      basis: 'edge',
      inputs: { ...fiveMm, age: 10 },
      verdict: 'attention',
    },
    {
      name: 'no figure for 6 mm: can’t be judged',
      source: 'the table is not interpolated',
      basis: 'edge',
      inputs: { ...fiveMm, diameter: 6 },
      verdict: 'indeterminate',
    },
    {
      name: 'tension and stretch together are refused',
      source: 'two answers to one question',
      basis: 'edge',
      inputs: { ...fiveMm, stretch: 3, tension: 2 },
      refused: ['stretch'],
    },
  ],
  unverified: [
    'Breaking loads of 1x19 wire in 3/32, 1/8, 5/32, 7/32, 9/32, 5/16 and 3/8 in, and of 3/16 in of 316, are from memory: table I of MIL-DTL-87161 was not readable in any public copy found. They are marked so to the reader and keep the verdict from being satisfactory.',
    '3/16 in of 302/304: one print gives 4,700 lb, another 3,960 lb; 4,700 is used and marked as disputed.',
    'The printed figures are from suppliers’ and forum pages, not from a standard.',
  ],
};
