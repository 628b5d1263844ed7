import { type Check, type CheckedWorksheet, near, printed } from '../../support/check.ts';

const fifteenPsi = {
  startPressure: { value: 15, unit: 'psi' },
  endPressure: { value: 14, unit: 'psi' },
  holdTime: 5,
  gaugeResolution: { value: 0.1, unit: 'psi' },
  startTemperature: 25,
  endTemperature: 15,
  noLiquid: true,
};
const cold = { startPressure: 500, endPressure: 500, holdTime: 3, gaugeResolution: 5, noLiquid: true };
const inches = {
  startPressure: { value: 11, unit: 'inH2O' },
  endPressure: { value: 11, unit: 'inH2O' },
  holdTime: 3,
  gaugeResolution: { value: 0.1, unit: 'inH2O' },
  noLiquid: true,
};

/** Gas shut in and warmed or cooled, as textbooks set it; only the expected pressure is compared. */
const warmed = (
  name: string,
  source: string,
  start: { value: number; unit: string },
  temperatures: [unknown, unknown],
  barometer: unknown,
  expected: ReturnType<typeof printed> | ReturnType<typeof near>,
): Check => ({
  name,
  source,
  basis: 'printed',
  inputs: {
    ...cold,
    startPressure: start,
    endPressure: start,
    barometer,
    startTemperature: temperatures[0],
    endTemperature: temperatures[1],
  },
  outputs: { expectedPressure: expected },
});

const kelvin = (value: number) => ({ value, unit: 'K' });
const psi = (value: number) => ({ value, unit: 'psi' });

const heated: Check[] = [
  warmed(
    '250 kPa at 35 °C reads 164 kPa at −40 °C',
    'OpenStax College Physics, chapter 13, problem 22 (a tyre on a ferry): 1.64×10⁵ N/m²',
    { value: 250, unit: 'kPa' },
    [35, -40],
    { value: 101.325, unit: 'kPa' },
    printed('164', 'kPa'),
  ),
  warmed(
    '3 atm absolute at 302 K is 2.59 atm at 261 K',
    'Ohio State University, department of chemistry, gas-law tutorial, panel 10; here less 1 atm, as a gauge reads',
    { value: 2 * 1013.25, unit: 'mbar' },
    [kelvin(302), kelvin(261)],
    1013.25,
    near(1.59 * 1013.25, 0.005 * 1013.25, 'mbar'),
  ),
  warmed(
    '32 psi at −10 °C reads 40.9 psi at 40 °C',
    'textbook problem 50, answer D, as printed by questionai.com; air 14.7 psi',
    psi(32),
    [-10, 40],
    psi(14.7),
    printed('40.9', 'psi'),
  ),
  warmed(
    '42.5 psi at −16 °C reads 55.9 psi at 44.2 °C',
    'physicsforums.com thread 320368, answer 55.8986 psi with 0 °C as 273 K; air 14.7 psi',
    psi(42.5),
    [-16, 44.2],
    psi(14.7),
    printed('55.9', 'psi'),
  ),
  warmed(
    '210 kPa at 25 °C reads 184 kPa at 0 °C',
    'textbook exercise on tyres, answer 183.895271 kPa, as printed by uonbi.ac.ke 13004040',
    { value: 210, unit: 'kPa' },
    [25, 0],
    { value: 101.325, unit: 'kPa' },
    printed('184', 'kPa'),
  ),
  {
    name: 'a thousandth of a mile of 10-inch main loses 903 ft³ a year',
    source:
      'engstack.com, leakage of a gas line by pressure drop: 0.903 million ft³ a year and mile, by a formula said to be within 4 %',
    basis: 'printed',
    inputs: {
      startPressure: psi(190.5),
      endPressure: psi(190),
      holdTime: { value: 1, unit: 'h' },
      gaugeResolution: psi(0.1),
      startTemperature: { value: 52, unit: 'degF' },
      endTemperature: { value: 52, unit: 'degF' },
      thermometerResolution: 0.1,
      barometer: psi(14.4),
      volume: { value: (Math.PI / 4) * 10.136 ** 2 * 63.36, unit: 'in3' },
      noLiquid: true,
    },
    outputs: { leakRate: near(48.6, 48.6 * 0.04, 'mL/min') },
    verdict: 'unsatisfactory',
  },
];

export const gasLeakDownChecks: CheckedWorksheet = {
  kind: 'gas-leak-down',
  checks: [
    ...heated,
    {
      name: '15 psi trapped, cooling from 25 to 15 °C, loses 1 psi without a leak',
      source: 'gas law in absolute units, worked by hand: 29.696 × 288.15 / 298.15 − 14.696',
      basis: 'computed',
      inputs: fifteenPsi,
      outputs: { expectedPressure: printed('14.00', 'psi') },
      verdict: 'satisfactory',
    },
    {
      name: '11 in water cooling by 1 K from 20 °C loses 1.43 in without a leak',
      source: 'gas law in absolute units, worked by hand: 417.8 in absolute / 293.15',
      basis: 'computed',
      inputs: { ...inches, startTemperature: 20, endTemperature: 19 },
      outputs: { expectedPressure: near(11 - 1.425, 0.001, 'inH2O') },
    },
    {
      name: 'the numbers of the regulation, as a fall: 2.966×10⁻⁴ mol/s is 428 mL/min at 293.15 K',
      source:
        '40 CFR 1065.644, example: 2 L, 25.3 kPa in 70 s, 293.15 K; molar rate worked by hand and taken to a volume by R = 8.314472 J/(mol·K)',
      basis: 'computed',
      inputs: {
        startPressure: { value: 50.6, unit: 'kPa' },
        endPressure: { value: 25.3, unit: 'kPa' },
        holdTime: { value: 70, unit: 's' },
        gaugeResolution: { value: 0.1, unit: 'kPa' },
        startTemperature: kelvin(293.15),
        endTemperature: kelvin(293.15),
        volume: 2,
        noLiquid: true,
      },
      outputs: { leakRate: near(2.966e-4 * ((8.314472 * 293.15) / 101_325) * 6e7, 0.1, 'mL/min') },
      verdict: 'unsatisfactory',
    },
    {
      name: '0.5 L losing 2 mbar in 3 min leaks 0.33 mL/min',
      source: 'V·Δp/(t·pₐ), worked by hand: 500 × 2 / (3 × 1013.25)',
      basis: 'computed',
      inputs: { ...cold, endPressure: 498, gaugeResolution: 1, volume: 0.5 },
      outputs: { leakRate: printed('0.33', 'mL/min') },
      verdict: 'unsatisfactory',
    },
    {
      name: 'exactly 3 minutes is long enough',
      source: 'NFPA 54 annex C: at least 3 minutes',
      basis: 'edge',
      inputs: { ...cold, startTemperature: 15, endTemperature: 15 },
      verdict: 'satisfactory',
    },
    {
      name: '2 min 59 s is not',
      source: 'NFPA 54 annex C: at least 3 minutes',
      basis: 'edge',
      inputs: { ...cold, holdTime: { value: 179, unit: 's' } },
      verdict: 'indeterminate',
    },
    {
      name: 'exactly 10 minutes is long enough where 10 are asked',
      source: '46 CFR 58.16-30(j): at least 10 minutes',
      basis: 'edge',
      inputs: { ...cold, holdTime: 10, minimumHold: 10, startTemperature: 15, endTemperature: 15 },
      verdict: 'satisfactory',
    },
    {
      name: '9 min 59 s is not',
      source: '46 CFR 58.16-30(j): at least 10 minutes',
      basis: 'edge',
      inputs: { ...cold, holdTime: { value: 599, unit: 's' }, minimumHold: 10 },
      verdict: 'indeterminate',
    },
    {
      name: 'one whole division of the gauge is a fall',
      source: '46 CFR 58.16-30(j): constant; our reading of what a gauge shows',
      basis: 'edge',
      inputs: { ...inches, endPressure: { value: 10.9, unit: 'inH2O' } },
      outputs: { shown: 'fall' },
      verdict: 'unsatisfactory',
    },
    {
      name: 'less than a division is none that this gauge can show',
      source: 'our reading of what a gauge shows',
      basis: 'edge',
      inputs: { ...inches, endPressure: { value: 10.901, unit: 'inH2O' } },
      outputs: { shown: 'none' },
      verdict: 'attention',
    },
    {
      name: 'a rise is no proof of tightness',
      source: 'heater maker’s leak test: a rise means a cylinder valve is not shut (engineering facts, 6.1)',
      basis: 'edge',
      inputs: { ...cold, endPressure: 505 },
      outputs: { shown: 'rise' },
      verdict: 'indeterminate',
    },
    {
      name: 'liquid between the valves tells nothing',
      source: 'vapour pressure, not the gas law, holds the gauge up',
      basis: 'edge',
      inputs: { ...cold, noLiquid: false },
      verdict: 'indeterminate',
    },
    {
      name: 'a temperature at one end only is refused',
      source: 'the gas law needs both',
      basis: 'edge',
      inputs: { ...cold, startTemperature: 15 },
      refused: ['endTemperature'],
    },
    {
      name: 'impossible readings are refused',
      source: 'a gauge does not read below zero, nor a test last no time',
      basis: 'edge',
      inputs: { ...cold, endPressure: -1, holdTime: 0 },
      refused: ['endPressure', 'holdTime'],
    },
    {
      name: 'a reading after the end is refused',
      source: 'the test was over',
      basis: 'edge',
      inputs: { ...cold, readings: [{ time: 4, pressure: 500 }] },
      refused: ['readings/0/time'],
    },
  ],
  unverified: [
    'ABYC A-1’s “at least 3 minutes” is from memory; 46 CFR 58.16-30(j) prints 10 minutes, NFPA 54 annex C 3.',
    'The result of the example of 40 CFR 1065.644 stands in an image: its inputs are printed, 0.00030 mol/s is from memory, 2.966×10⁻⁴ worked by hand.',
  ],
};
