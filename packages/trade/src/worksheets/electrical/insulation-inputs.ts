import { checked, choice, fallback, measure, optional, yesNo } from '../core/fields.ts';
import type { InputProblem, Values } from '../core/worksheet.ts';

const resistance = { unit: 'Mohm', units: ['kohm', 'Gohm', 'ohm'], min: 0, max: 10_000_000 } as const;
const leakage = { unit: 'mA', units: ['uA', 'A'], min: 0, max: 100_000 } as const;

export const inputs = {
  part: choice({
    label: 'What was tested',
    choices: {
      wiring: 'Wiring, live conductors to earth',
      machine: 'Winding of a motor or generator, to its frame',
    },
  }),
  ratedVoltage: measure({ label: 'Nominal voltage', unit: 'V', units: ['kV'], above: 0, max: 15_000 }),
  resistance: optional(
    measure({
      label: 'Insulation resistance',
      help: 'Steady, or after 1 minute on a winding',
      ...resistance,
    }),
  ),
  beyondRange: fallback(
    yesNo({
      label: 'The tester showed “more than” that reading',
      help: 'Give the end of its range as the reading',
    }),
    false,
  ),
  testVoltage: optional(
    measure({ label: 'Test voltage, DC', unit: 'V', units: ['kV'], above: 0, max: 15_000 }),
  ),
  disconnected: fallback(
    checked({ label: 'Appliances, electronics and neutral-to-earth links disconnected' }),
    'not-examined',
  ),
  temperature: optional(
    measure({ label: 'Temperature of the winding', unit: 'degC', units: ['degF', 'K'], min: -20, max: 180 }),
  ),
  winding: fallback(
    choice({
      label: 'Kind of winding',
      help: 'Usually random-wound on a boat',
      choices: {
        random: 'Random-wound, or rated below 1 kV',
        form: 'Form-wound, since about 1970',
        older: 'Made before about 1970, or a field winding',
      },
    }),
    'random',
  ),
  tenMinutes: optional(measure({ label: 'Resistance of the winding after 10 minutes', ...resistance })),
  insulationClass: fallback(
    choice({ label: 'Insulation class', help: 'On the plate', choices: { A: 'A', B: 'B', F: 'F', H: 'H' } }),
    'B',
  ),
  shoreLeakage: optional(
    measure({
      label: 'Leakage current of the shore-power cord',
      help: 'Leakage clamp round the whole cord; take off what remains when the breaker on the dock is off',
      ...leakage,
    }),
  ),
  batteryLeakage: optional(
    measure({
      label: 'Leakage current from the battery',
      help: 'Milliammeter in series with the positive, everything off that can be switched off',
      ...leakage,
    }),
  ),
  meterResolution: fallback(
    measure({
      label: 'Smallest current the meter shows',
      unit: 'mA',
      units: ['uA', 'A'],
      above: 0,
      max: 100,
    }),
    0.1,
  ),
  leastResistance: optional(
    measure({
      label: 'Least resistance accepted',
      help: 'The firm’s own, if not the table’s',
      ...resistance,
    }),
  ),
  lookFurther: fallback(
    measure({ label: 'Wiring: look further below', unit: 'Mohm', units: ['kohm'], min: 0, max: 1000 }),
    2,
  ),
  mostShoreLeakage: fallback(
    measure({ label: 'Most leakage of the shore cord', unit: 'mA', above: 0, max: 500 }),
    30,
  ),
  mostBatteryLeakage: fallback(
    measure({ label: 'Most leakage of a sound battery circuit', unit: 'mA', above: 0, max: 100 }),
    1,
  ),
};

export type Asked = Values<typeof inputs>;

/** What is missing, or can't go together. */
export function problems(v: Asked): InputProblem[] {
  const found: InputProblem[] = [];
  if (!v.resistance && !v.shoreLeakage && !v.batteryLeakage) {
    found.push({
      field: 'resistance',
      message: 'Give an insulation resistance, or a leakage current of the shore cord or the battery.',
    });
  }
  if (v.resistance && !v.testVoltage) {
    found.push({
      field: 'testVoltage',
      message: 'Test voltage, DC must be given with the insulation resistance.',
    });
  }
  if (v.part === 'machine' && v.resistance && !v.temperature) {
    found.push({
      field: 'temperature',
      message: 'Temperature of the winding must be given: its resistance is compared at 40 °C.',
    });
  }
  if (v.tenMinutes && (v.part !== 'machine' || !v.resistance)) {
    found.push({
      field: 'tenMinutes',
      message: 'Resistance after 10 minutes is for a winding, beside its reading after 1 minute.',
    });
  }
  return found;
}
