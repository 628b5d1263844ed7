import { type Check, type CheckedWorksheet, printed } from '../../support/check.ts';

const straight = (costNew: number | string, effectiveAge: number, remainingLife: number, more = {}) => ({
  part: 'Boat',
  costNew,
  effectiveAge,
  remainingLife,
  ...more,
});
const given = (parts: unknown[], more: Record<string, unknown> = {}) => ({
  currency: 'USD',
  method: 'straight',
  parts,
  ...more,
});
const declining = (costNew: number, effectiveAge: number, rate: number) =>
  given([{ part: 'Boat', costNew, effectiveAge, rate }], { method: 'declining' });

/** What a declining balance of 50,000 at 20 per cent leaves at the end of each of ten years. */
const balances = [40_000, 32_000, 25_600, 20_480, 16_384, 13_107, 10_486, 8_389, 6_711, 5_369];

export const costLessDepreciationChecks: CheckedWorksheet = {
  kind: 'cost-less-depreciation',
  checks: [
    {
      name: '20 of 40 years of 41,493,430, site 1,143,450 added',
      source: 'appraisersforum.com thread 170531, age-life method example',
      basis: 'printed',
      inputs: given([straight(41_493_430, 20, 20)], { added: 1_143_450 }),
      outputs: { incurable: '20746715.00', indicated: '21890165.00' },
    },
    {
      name: 'effective age 15, 45 years left, cost 60,000: 25 per cent, 15,000',
      source: 'georgiaappraiser.com, age-life depreciation example',
      basis: 'printed',
      inputs: given([straight(60_000, 15, 45)]),
      outputs: { depreciated: printed('25', '%'), depreciation: '15000.00', indicated: '45000.00' },
      verdict: 'satisfactory',
    },
    {
      name: '10 of 30 years of 300,000: 100,000 is the depreciation',
      source:
        'hpdconsult.com, economic age-life; its text calls the figure the depreciated value, a slip in the label',
      basis: 'printed',
      inputs: given([straight(300_000, 10, 20)]),
      outputs: { depreciation: '100000.00', indicated: '200000.00' },
    },
    {
      name: '5 of 25 years is 20 per cent',
      source: 'investorwords, age-life (engineering.md 12.2)',
      basis: 'printed',
      inputs: given([straight(1000, 5, 20)]),
      outputs: { depreciated: printed('20', '%') },
    },
    {
      name: 'curable first: 350,000 less 45,000, then 15 of 65 years, leaves 234,615',
      source: 'qammunity.org question 7484329, answer D (modified age-life; age as if cured)',
      basis: 'printed',
      inputs: given([straight(350_000, 15, 50, { curable: 45_000 })]),
      outputs: { indicated: printed('234615'), incurable: printed('70385') },
    },
    ...balances.map(
      (left, i): Check => ({
        name: `50,000 declining by 20 per cent: ${left} after ${i + 1} years`,
        source: 'calculattor.com, double-declining balance table, 10 years',
        basis: 'printed',
        inputs: declining(50_000, i + 1, 20),
        outputs: { indicated: printed(String(left)) },
      }),
    ),
    {
      name: '6,000 declining by 40 per cent: 1,296 after 3 years',
      source: 'homeworksource.com question 973773',
      basis: 'printed',
      inputs: declining(6000, 3, 40),
      outputs: { indicated: '1296.00' },
    },
    {
      name: 'the known misprint is not followed: 240,000 × 25% is 60,000, 120,000 with the curable',
      source:
        'formula of georgiaappraiser.com, modified age-life, by hand; its example prints 80,000 and 140,000',
      basis: 'computed',
      inputs: given([straight(300_000, 15, 45, { curable: 60_000 })]),
      outputs: { incurable: '60000.00', depreciation: '120000.00', indicated: '180000.00' },
    },
    {
      name: 'hull and engines apart, obsolescence and a trailer',
      source:
        'by hand: 180,000 × 12/40 + (40,000 − 4,000) × 6/15 + 4,000 = 72,400; 220,000 − 72,400 − 8,000 − 3,000 + 5,000',
      basis: 'computed',
      inputs: given(
        [straight(180_000, 12, 28), { ...straight(40_000, 6, 9, { curable: 4000 }), part: 'Engines' }],
        { functional: 8000, external: 3000, added: 5000 },
      ),
      outputs: { indicated: '141600.00', obsolescence: '11000.00', value: '142000.00' },
    },
    {
      name: 'half a year at 8 per cent a year, given in months',
      source: '100,000 × 0.92 ^ 0.5 = 95,916.63, another program (bc)',
      basis: 'computed',
      inputs: given(
        [{ part: 'Boat', costNew: 100_000, effectiveAge: { value: 6, unit: 'month' }, rate: 8 }],
        { method: 'declining' },
      ),
      outputs: { indicated: '95916.63' },
    },
    {
      name: 'both ways shown when lives and rates are given',
      source: '100,000 × 20/30 and 100,000 × 0.94 ^ 10 by hand',
      basis: 'computed',
      inputs: given([straight(100_000, 10, 20, { rate: 6 })]),
      outputs: { indicated: '66666.67', otherMethod: '53861.51' },
    },
    {
      name: 'new today: nothing is worn',
      source: 'age ratio 0',
      basis: 'edge',
      inputs: given([straight(100_000, 0, 30)]),
      outputs: { depreciation: '0.00', value: '100000.00' },
      verdict: 'satisfactory',
    },
    {
      name: 'no life left: everything is worn',
      source: 'age ratio 1',
      basis: 'edge',
      inputs: given([straight(100_000, 30, 0)]),
      outputs: { depreciation: '100000.00', value: '0.00' },
      verdict: 'attention',
    },
    {
      name: 'exactly 75 per cent depreciated still tells',
      source: 'firm’s limit, 75%',
      basis: 'edge',
      inputs: given([straight(100_000, 30, 10)]),
      verdict: 'satisfactory',
    },
    {
      name: 'a cent more tells little',
      source: 'firm’s limit, 75%',
      basis: 'edge',
      inputs: given([straight(100_000, 30, 10)], { external: '0.01' }),
      verdict: 'attention',
    },
    {
      name: 'obsolescence of all that is left leaves nothing',
      source: 'limit of obsolescence',
      basis: 'edge',
      inputs: given([straight(100_000, 10, 10)], { functional: 50_000 }),
      outputs: { indicated: '0.00' },
    },
    {
      name: 'a cent more than is left is refused',
      source: 'limit of obsolescence',
      basis: 'edge',
      inputs: given([straight(100_000, 10, 10)], { functional: '50000.01' }),
      refused: ['external'],
    },
    {
      name: 'curable above the cost, no life given, no rate given',
      source: 'impossible inputs',
      basis: 'computed',
      inputs: given([
        straight(1000, 1, 1, { curable: 1001 }),
        { part: 'Rig', costNew: 1000, effectiveAge: 3 },
        straight(1000, 0, 0),
      ]),
      refused: ['parts/0/curable', 'parts/1/remainingLife', 'parts/2/remainingLife'],
    },
    {
      name: 'declining needs its rate',
      source: 'impossible inputs',
      basis: 'computed',
      inputs: given([straight(1000, 1, 1)], { method: 'declining' }),
      refused: ['parts/0/rate'],
    },
  ],
  unverified: [
    'No printed example of age-life depreciation of a boat was found: the printed ones are of buildings and equipment. Yearly rates for boats are practice without a source and are left to the surveyor.',
  ],
};
