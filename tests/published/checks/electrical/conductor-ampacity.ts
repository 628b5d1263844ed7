import type { Check, CheckedWorksheet } from '../../support/check.ts';

const ratings = ['60', '75', '80', '90', '105', '125', '200'];

/** 33 CFR 183.425, Table 5, typed from the printed section apart from the worksheet's own table. */
const tableFive = `
  18   10  10  15  20  20  25  25
  16   15  15  20  25  25  30  35
  14   20  20  25  30  35  40  45
  12   25  25  35  40  45  50  55
  10   40  40  50  55  60  70  70
  8    55  65  70  70  80  90 100
  6    80  95 100 100 120 125 135
  4   105 125 130 135 160 170 180
  3   120 145 150 155 180 195 210
  2   140 170 175 180 210 225 240
  1   165 195 210 210 245 265 280
  1/0 195 230 245 245 285 305 325
  2/0 225 265 285 285 330 355 370
  3/0 260 310 330 330 385 410 430
  4/0 300 360 385 385 445 475 510`;

const plain = {
  size: '10 AWG',
  insulation: '105',
  voltage: 12,
  engineSpace: false,
  run: 'single',
  protected: 'not-examined',
};
const sound = { ...plain, current: 30, protected: 'yes', rating: 50, distance: 0 };

const tableChecks = tableFive
  .trim()
  .split('\n')
  .flatMap((row) => {
    const [size, ...cells] = row.trim().split(/\s+/);
    return cells.map(
      (amperes, i): Check => ({
        name: `Table 5: ${size} AWG at ${ratings[i]} °C, ${amperes} A`,
        source: '33 CFR 183.425, Table 5 (2015 edition)',
        basis: 'printed',
        inputs: { ...plain, size: `${size} AWG`, insulation: ratings[i] },
        outputs: { tableAmperes: Number(amperes), mayCarry: Number(amperes) },
      }),
    );
  });

const noteOne = [0.58, 0.75, 0.78, 0.82, 0.85, 0.89, 1].map(
  (factor, i): Check => ({
    name: `note 1: × ${factor} at ${ratings[i]} °C in an engine space`,
    source: '33 CFR 183.425, Table 5, note 1 (2015 edition)',
    basis: 'printed',
    inputs: { ...plain, insulation: ratings[i], engineSpace: true },
    outputs: { engineSpaceFactor: factor },
  }),
);

const noteTwo = (
  [
    [1, 1],
    [2, 1],
    [3, 0.7],
    [4, 0.6],
    [6, 0.6],
    [7, 0.5],
    [24, 0.5],
    [25, 0.4],
    [100, 0.4],
  ] as const
).map(
  ([bundled, factor]): Check => ({
    name: `note 2: × ${factor} for ${bundled} together at 120 V`,
    source: '33 CFR 183.425, Table 5, note 2 (2015 edition)',
    basis: bundled < 3 ? 'edge' : 'printed',
    inputs: { ...plain, voltage: 120, bundled },
    outputs: { bundleFactor: factor },
  }),
);

/** Size, rating, engine-space amperes and largest fuse below 50 V by Table 5: our arithmetic. */
const worked = (
  [
    ['10 AWG', '105', 51, 90],
    ['16 AWG', '60', 8.7, 22.5],
    ['14 AWG', '105', 29.75, 52.5],
    ['12 AWG', '80', 27.3, 52.5],
    ['4 AWG', '200', 180, 270],
    ['4/0 AWG', '105', 378.25, 667.5],
  ] as const
).map(
  ([size, insulation, mayCarry, largestRatingByTable]): Check => ({
    name: `${size} at ${insulation} °C: ${mayCarry} A in an engine space, fuse up to ${largestRatingByTable} A`,
    source: '33 CFR 183.425 note 1 and 183.455(c)(1), by hand',
    basis: 'computed',
    inputs: { ...plain, size, insulation, engineSpace: true },
    outputs: { mayCarry, largestRatingByTable, largestRating: mayCarry * 1.5 },
  }),
);

const place = (distance: number, enclosed: string, verdict: Check['verdict'], where: string): Check => ({
  name: `fuse ${distance} in from the source, ${enclosed === 'yes' ? 'enclosed' : 'not enclosed'}`,
  source: `33 CFR 183.455(b)${where} (2015 edition)`,
  basis: 'edge',
  inputs: { ...sound, distance, enclosed },
  ...(verdict ? { verdict } : {}),
});

export const conductorAmpacityChecks: CheckedWorksheet = {
  kind: 'conductor-ampacity',
  checks: [
    ...tableChecks,
    ...noteOne,
    ...noteTwo,
    ...worked,
    {
      name: 'five conductors of 50 V or more: 36 A of 60',
      source: '33 CFR 183.425 note 2, by hand: 60 × 0.60',
      basis: 'computed',
      inputs: { ...plain, voltage: 50, bundled: 5 },
      outputs: { mayCarry: 36 },
    },
    {
      name: 'and 30.6 A in an engine space',
      source: '33 CFR 183.425 notes 1 and 2 taken together, by hand: 60 × 0.85 × 0.60',
      basis: 'computed',
      inputs: { ...plain, voltage: 50, bundled: 5, engineSpace: true },
      outputs: { mayCarry: 30.6 },
    },
    {
      name: 'below 50 V a bundle takes nothing off',
      source: '33 CFR 183.435(b): note 2 for circuits of 50 V or more',
      basis: 'edge',
      inputs: { ...plain, voltage: 49.9, bundled: 5 },
      outputs: { mayCarry: 60, bundleFactor: 1 },
    },
    {
      name: 'at 120 V a conductor of 55 A takes the next standard size, 60 A',
      source: '33 CFR 183.455(c)(2) with NEC 240.6(A): 50, 60',
      basis: 'computed',
      inputs: { ...plain, insulation: '90', voltage: 120 },
      outputs: { largestRating: 60 },
    },
    {
      name: 'at 120 V a standard 60 A is its own largest',
      source: '33 CFR 183.455(c)(2) with NEC 240.6(A): 60',
      basis: 'edge',
      inputs: { ...plain, voltage: 120 },
      outputs: { largestRating: 60 },
    },
    {
      name: 'all in order',
      source: '33 CFR 183.425 and 183.455',
      basis: 'edge',
      inputs: sound,
      verdict: 'satisfactory',
    },
    {
      name: 'fuse of just 150%',
      source: '33 CFR 183.455(c)(1): 150% of 60 A',
      basis: 'edge',
      inputs: { ...sound, rating: 90 },
      verdict: 'satisfactory',
    },
    {
      name: 'fuse above 150%',
      source: '33 CFR 183.455(c)(1): 150% of 60 A',
      basis: 'edge',
      inputs: { ...sound, rating: 90.1 },
      verdict: 'unsatisfactory',
    },
    {
      name: 'in an engine space 90 A passes by Table 5',
      source: '33 CFR 183.455(c)(1) read literally',
      basis: 'edge',
      inputs: { ...sound, rating: 90, engineSpace: true, ratingBase: 'table' },
      verdict: 'satisfactory',
    },
    {
      name: 'but not by the corrected amperes',
      source: '33 CFR 183.455(c)(1) with 183.425(c): 150% of 51 A = 76.5 A',
      basis: 'edge',
      inputs: { ...sound, rating: 90, engineSpace: true },
      verdict: 'unsatisfactory',
    },
    place(7, 'no', 'satisfactory', '(1)'),
    place(7.1, 'no', 'unsatisfactory', '(1)'),
    place(40, 'yes', 'satisfactory', '(2)'),
    place(40.1, 'yes', 'unsatisfactory', '(2)'),
    place(72, 'yes', 'unsatisfactory', ': no 72 in allowance'),
    {
      name: '18 AWG run separately',
      source: '33 CFR 183.425(e): at least 16 AWG',
      basis: 'edge',
      inputs: { ...sound, size: '18 AWG', current: 5, rating: 10 },
      verdict: 'unsatisfactory',
    },
    {
      name: '18 AWG 30 in out of its sheath',
      source: '33 CFR 183.425(f): not more than 30 in',
      basis: 'edge',
      inputs: { ...sound, size: '18 AWG', run: 'sheath', outOfSheath: 30, current: 5, rating: 10 },
      verdict: 'satisfactory',
    },
    {
      name: 'breaker of 32 V in a 120 V circuit',
      source: '33 CFR 183.455(d)',
      basis: 'edge',
      inputs: { ...sound, voltage: 120, voltageRating: 32 },
      verdict: 'unsatisfactory',
    },
    {
      name: 'no fuse, yet one described',
      source: 'contradiction',
      basis: 'edge',
      inputs: { ...plain, protected: 'no', rating: 20 },
      refused: ['protected'],
    },
  ],
  unverified: [
    'Which boats 33 CFR 183 subpart I binds (183.401) is from memory.',
    'Notes 1 and 2 taken together, and the corrected amperes as base of the fuse rating, are our stricter readings; both values are shown.',
    'The CFR text is the 2015 edition: compare once with the current one.',
  ],
};
