import { choice, count, fallback, measure, optional, yesNo } from '../core/fields.ts';
import { awgChoices, insulationChoices } from './conductor-choices.ts';

export const inputs = {
  voltage: measure({ label: 'Nominal voltage', unit: 'V', above: 0, max: 1000 }),
  current: measure({
    label: 'Current of the load',
    help: 'The most it draws in use, by its plate or a clamp meter',
    unit: 'A',
    units: ['mA'],
    min: 0,
    max: 5000,
  }),
  length: measure({
    label: 'Length of conductor',
    help: 'Measured along the cable',
    unit: 'm',
    units: ['ft', 'cm', 'mm', 'in'],
    above: 0,
    max: 500,
  }),
  lengthIs: choice({
    label: 'That length is',
    help: 'Voltage is lost on the way out and on the way back',
    choices: { 'round-trip': 'Both ways: source to load and back', 'one-way': 'One way: source to load' },
  }),
  circuit: choice({
    label: 'Kind of circuit',
    choices: {
      critical:
        'Drop matters: panel feeder, navigation lights, bilge pump or blower, electronics, safety equipment',
      other: 'Other: cabin lights, windlass and what else still works at a lower voltage',
    },
  }),
  allowedDrop: optional(
    measure({
      label: 'Drop allowed',
      help: 'The firm’s or maker’s limit, if not the usual 3% or 10%',
      unit: '%',
      above: 0,
      max: 50,
    }),
  ),
  method: choice({
    label: 'Sizes and formula',
    choices: { 'circular-mils': 'AWG sizes, by circular mils', metric: 'Metric sizes, by mm²' },
  }),
  areaBasis: fallback(
    choice({
      label: 'Area of AWG sizes',
      help: 'Boat cable to SAE may be a tenth thinner than true AWG; take SAE unless the cable is marked otherwise',
      choices: { SAE: 'SAE, the least area allowed', AWG: 'True AWG area' },
    }),
    'SAE',
  ),
  fitted: optional(
    choice({
      label: 'AWG size fitted',
      help: 'As printed on the cable. Left out, the size needed is found',
      choices: awgChoices,
    }),
  ),
  fittedArea: optional(
    measure({
      label: 'Metric size fitted',
      help: 'Of one conductor, as printed on the cable. Left out, the size needed is found',
      unit: 'mm2',
      above: 0,
      max: 1000,
    }),
  ),
  parallel: fallback(count({ label: 'Conductors in parallel each way', min: 1, max: 8 }), 1),
  insulation: fallback(
    choice({
      label: 'Temperature rating of the insulation',
      help: 'Printed on the cable; 60 °C when it can’t be read',
      choices: insulationChoices,
    }),
    '60',
  ),
  engineSpace: yesNo({ label: 'Any of it runs through an engine space' }),
  run: fallback(
    choice({
      label: 'How it is run',
      choices: { single: 'Separate conductors', sheath: 'Conductors in a common sheath' },
    }),
    'single',
  ),
};
