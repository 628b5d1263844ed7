import { type Check, type CheckedWorksheet, printed } from '../../support/check.ts';

const kilovolts = (value: number) => ({ value, unit: 'kV' });
const wiring = { part: 'wiring', ratedVoltage: 230, testVoltage: 500, disconnected: 'yes' };
const machine = { part: 'machine', ratedVoltage: 230, testVoltage: 500, temperature: 40 };
const leak = { part: 'wiring', ratedVoltage: 12 };

const test = (ratedVoltage: number, testVoltage: string): Check => ({
  name: `a machine of ${ratedVoltage} V is tested at ${testVoltage}`,
  source: 'IEEE 43-2000, table of test voltages, as reprinted by EASA and Keysight',
  basis: 'printed',
  inputs: { ...machine, ratedVoltage, resistance: 1000 },
  outputs: { testVoltage },
});

const table64 = (ratedVoltage: number, volts: number, least: number): Check => ({
  name: `wiring of ${ratedVoltage} V: ${least} MΩ at ${volts} V`,
  source: 'BS 7671 table 64, as reprinted at elec-mate.com and icertifi.co.uk',
  basis: 'printed',
  inputs: { ...wiring, ratedVoltage, testVoltage: volts, resistance: least },
  outputs: { least, testVoltage: `${volts} V` },
});

export const insulationResistanceChecks: CheckedWorksheet = {
  kind: 'insulation-resistance',
  checks: [
    table64(12, 250, 0.5),
    table64(230, 500, 1),
    table64(690, 1000, 1),
    {
      name: 'a winding of 11 kV needs 12 MΩ',
      source: 'kV + 1 of IEEE 43, worked at eblogbd.com: 11 kV, 12 MΩ',
      basis: 'printed',
      inputs: {
        ...machine,
        ratedVoltage: kilovolts(11),
        testVoltage: kilovolts(5),
        winding: 'older',
        resistance: 50,
      },
      outputs: { least: 12 },
    },
    {
      name: 'a winding of 220 V needs 1.2 MΩ',
      source: 'kV + 1 of IEEE 43, worked at eblogbd.com: prints 1.2 (exact 1.22)',
      basis: 'printed',
      inputs: { ...machine, ratedVoltage: 220, winding: 'older', resistance: 50 },
      outputs: { least: printed('1.2') },
    },
    test(999, '500 V'),
    test(2500, '500 to 1000 V'),
    test(5000, '1000 to 2500 V'),
    test(12_000, '2500 to 5000 V'),
    test(13_000, '5000 to 10000 V'),
    {
      name: '150 MΩ at 20 °C and 75 MΩ at 30 °C are the same insulation: 37.5 MΩ at 40 °C',
      source: 'insulation tester manual, p. 16 (manualshive.com 3251965): 150 MΩ at 20 °C is 75 MΩ at 30 °C',
      basis: 'printed',
      inputs: { ...machine, temperature: 30, resistance: 75 },
      outputs: { compared: printed('37.5') },
    },
    {
      name: 'the same from 20 °C',
      source: 'R·0.5^((40 − T)/10), IEEE 43, by hand: 150 × 0.25',
      basis: 'computed',
      inputs: { ...machine, temperature: 20, resistance: 150 },
      outputs: { compared: printed('37.5') },
    },
    {
      name: 'polarisation index 1.9 of class A is enough',
      source: 'IEEE 43-2000 as printed in a tester’s manual, p. 170 (manualshive.com 2137473): class A 1.5',
      basis: 'printed',
      inputs: { ...machine, winding: 'form', resistance: 200, tenMinutes: 380, insulationClass: 'A' },
      outputs: { polarisationIndex: printed('1.9') },
      verdict: 'satisfactory',
    },
    {
      name: 'of class F it is not',
      source: 'IEEE 43-2000 as printed in a tester’s manual, p. 170 (manualshive.com 2137473): class F 2.0',
      basis: 'printed',
      inputs: { ...machine, winding: 'form', resistance: 200, tenMinutes: 380, insulationClass: 'F' },
      verdict: 'attention',
    },
    {
      name: '230 V over 1 MΩ leaks 230 µA',
      source: 'Ohm’s law, by hand',
      basis: 'computed',
      inputs: { ...wiring, resistance: 1 },
      outputs: { leakageAtRated: 230 },
    },
    {
      name: '280 mA leaking by a shore cord',
      source: 'stevedmarineconsulting.com, December 2023: 280 mA measured, danger above 30 mA',
      basis: 'printed',
      inputs: { ...leak, shoreLeakage: 280 },
      verdict: 'unsatisfactory',
    },
    {
      name: 'just 1 MΩ passes, with a word of caution',
      source: 'BS 7671 table 64: 1.0 MΩ at 500 V',
      basis: 'edge',
      inputs: { ...wiring, resistance: 1 },
      verdict: 'attention',
    },
    {
      name: '0.99 MΩ does not',
      source: 'BS 7671 table 64: 1.0 MΩ at 500 V',
      basis: 'edge',
      inputs: { ...wiring, resistance: { value: 990, unit: 'kohm' } },
      verdict: 'unsatisfactory',
    },
    {
      name: 'low with appliances connected tells nothing yet',
      source: 'BS 7671 643.3.2: equipment disconnected',
      basis: 'edge',
      inputs: { ...wiring, disconnected: 'not-examined', resistance: 0.2 },
      verdict: 'indeterminate',
    },
    {
      name: '2 MΩ needs no further look',
      source: 'gospry2_031: values about 2 MΩ to be investigated',
      basis: 'edge',
      inputs: { ...wiring, resistance: 2 },
      verdict: 'satisfactory',
    },
    {
      name: 'tested at 250 V instead of 500 V, not comparable',
      source: 'BS 7671 table 64: 500 V',
      basis: 'edge',
      inputs: { ...wiring, testVoltage: 250, resistance: 50 },
      verdict: 'indeterminate',
    },
    {
      name: 'at 250 V with equipment connected it is',
      source: 'BS 7671 643.3.3: 250 V with equipment connected',
      basis: 'edge',
      inputs: { ...wiring, testVoltage: 250, disconnected: 'no', resistance: 50 },
      verdict: 'satisfactory',
    },
    {
      name: '“more than 0.2 MΩ” tells nothing',
      source: 'end of the tester’s range below the limit',
      basis: 'edge',
      inputs: { ...wiring, resistance: 0.2, beyondRange: true },
      verdict: 'indeterminate',
    },
    {
      name: '30 mA of shore leakage',
      source: 'NEC 555.35: not more than 30 mA',
      basis: 'edge',
      inputs: { ...leak, shoreLeakage: 30 },
      verdict: 'attention',
    },
    {
      name: '30.1 mA of shore leakage',
      source: 'NEC 555.35: not more than 30 mA',
      basis: 'edge',
      inputs: { ...leak, shoreLeakage: 30.1 },
      verdict: 'unsatisfactory',
    },
    {
      name: '1 mA from the battery',
      source: 'ab-marine.com: a clean system leaks less than 1 mA',
      basis: 'edge',
      inputs: { ...leak, batteryLeakage: 1 },
      verdict: 'satisfactory',
    },
    {
      name: '5 mA from the battery',
      source: 'ab-marine.com: a few mA, to be located and corrected',
      basis: 'edge',
      inputs: { ...leak, batteryLeakage: 5 },
      verdict: 'attention',
    },
    {
      name: 'a meter that shows no less than 10 mA',
      source: 'resolution coarser than the limit',
      basis: 'edge',
      inputs: { ...leak, batteryLeakage: 0, meterResolution: 10 },
      verdict: 'indeterminate',
    },
    {
      name: 'nothing measured',
      source: 'nothing to judge',
      basis: 'edge',
      inputs: leak,
      refused: ['resistance'],
    },
    {
      name: 'a winding without its temperature',
      source: 'IEEE 43: compared at 40 °C',
      basis: 'edge',
      inputs: { part: 'machine', ratedVoltage: 230, resistance: 10 },
      refused: ['temperature', 'testVoltage'],
    },
  ],
  unverified: [
    'IEEE 43-2013’s 5 MΩ and 100 MΩ: the figures were seen reported, which machines they are for is from memory.',
    'BS 7671 is a rule for buildings; no boat standard’s own insulation table was found.',
    'That 100 mA from the battery must not wait, and that a 30 mA device may trip from half, have no source.',
  ],
};
