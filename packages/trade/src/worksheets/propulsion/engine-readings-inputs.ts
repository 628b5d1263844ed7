import { checked, choice, fallback, measure, optional, words } from '../core/fields.ts';
import { rows } from '../core/list-fields.ts';
import type { InputProblem, Values } from '../core/worksheet.ts';
import { compressionRules, hoses } from './engine-rules-table.ts';

const pressure = { unit: 'psi', units: ['bar', 'kPa', 'MPa', 'kgf/cm2'], max: 1500 } as const;
const temperature = { unit: 'degC', units: ['degF'], min: -20, max: 1100 } as const;

const ruleWords = Object.fromEntries(
  Object.entries(compressionRules).map(([key, rule]) => [key, rule.words]),
) as Record<keyof typeof compressionRules, string>;

const hoseWords = Object.fromEntries(Object.entries(hoses).map(([key, hose]) => [key, hose.words])) as Record<
  keyof typeof hoses,
  string
>;

export const engineReadingsInputs = {
  fuel: choice({ label: 'Engine', choices: { petrol: 'Petrol', diesel: 'Diesel' } }),
  cylinders: optional(
    rows({
      label: 'Compression by cylinder',
      help: 'Engine warm, throttle wide open, ignition and fuel disabled, four strokes or more each; neighbours in order',
      each: 'cylinder',
      min: 0,
      max: 24,
      columns: {
        name: optional(words({ label: 'Cylinder', max: 12 })),
        dry: measure({ label: 'Compression', min: 0, ...pressure }),
        wet: optional(measure({ label: 'With a little oil', min: 0, ...pressure })),
      },
    }),
  ),
  rule: fallback(
    choice({
      label: 'Compression judged by',
      help: 'The engine’s own manual first; printed rules differ',
      choices: { manual: 'This engine’s manual, figures given below', ...ruleWords },
    }),
    'within-75',
  ),
  manualLeast: optional(measure({ label: 'Manual: least compression', above: 0, ...pressure })),
  manualDifference: optional(
    measure({ label: 'Manual: greatest difference between cylinders', above: 0, ...pressure }),
  ),
  gaugeResolution: fallback(
    measure({ label: 'Smallest change the compression gauge shows', min: 0, ...pressure, max: 100 }),
    2,
  ),
  ratedSpeed: optional(measure({ label: 'Rated full-throttle speed', unit: 'rpm', above: 0, max: 20_000 })),
  reachedSpeed: optional(
    measure({
      label: 'Full-throttle speed reached',
      help: 'Under way, loaded as used, by a tachometer that was checked',
      unit: 'rpm',
      above: 0,
      max: 20_000,
    }),
  ),
  shortfallAllowed: fallback(
    measure({ label: 'Unsatisfactory when short of rated speed by more than', unit: '%', min: 0, max: 30 }),
    5,
  ),
  excessAllowed: fallback(
    measure({ label: 'Attention when above rated speed by more than', unit: '%', min: 0, max: 30 }),
    5,
  ),
  tachometerResolution: fallback(
    measure({ label: 'Smallest change the tachometer shows', unit: 'rpm', min: 0, max: 500 }),
    25,
  ),
  coolant: optional(
    measure({ label: 'Coolant temperature at full throttle', help: 'Where the sender sits', ...temperature }),
  ),
  coolantMost: fallback(
    measure({ label: 'Coolant temperature accepted, at most', help: 'By the manual', ...temperature }),
    95,
  ),
  wetExhaust: optional(
    measure({
      label: 'Exhaust hose temperature',
      help: 'Outside of the hose, just after the water is injected, at full throttle',
      ...temperature,
    }),
  ),
  hose: fallback(choice({ label: 'Exhaust hose', choices: hoseWords }), 'unknown'),
  dryExhaust: optional(
    measure({
      label: 'Hottest dry exhaust surface',
      help: 'Riser or manifold before the water, where a hand can reach',
      ...temperature,
    }),
  ),
  guarded: fallback(checked({ label: 'Hot dry surfaces lagged or guarded' }), 'not-examined'),
};

export type EngineValues = Values<typeof engineReadingsInputs>;

export function refuseEngineReadings(v: EngineValues): InputProblem[] {
  const problems: InputProblem[] = [];
  const cylinders = v.cylinders ?? [];
  if (cylinders.length === 0 && !v.reachedSpeed && !v.coolant && !v.wetExhaust && !v.dryExhaust) {
    problems.push({
      field: 'cylinders',
      message: 'Give at least one reading: compression, full-throttle speed or a temperature.',
    });
  }
  if (cylinders.length > 0 && v.rule === 'manual' && !v.manualLeast && !v.manualDifference) {
    problems.push({
      field: 'manualLeast',
      message: 'Give the manual’s least compression or greatest difference, or choose another rule.',
    });
  }
  if ((v.ratedSpeed === undefined) !== (v.reachedSpeed === undefined)) {
    problems.push({
      field: v.ratedSpeed ? 'reachedSpeed' : 'ratedSpeed',
      message: 'Give the rated speed and the speed reached, or leave both out.',
    });
  }
  if (cylinders.length > 0 && cylinders.every((cylinder) => cylinder.dry.value === 0)) {
    problems.push({
      field: 'cylinders/0/dry',
      message: 'No cylinder shows any compression: check the gauge and that the engine was turning.',
    });
  }
  return problems;
}
