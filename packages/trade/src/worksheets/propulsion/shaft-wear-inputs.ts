import { choice, fallback, measure, optional, plainNumber } from '../core/fields.ts';
import type { Values } from '../core/worksheet.ts';
import { clearanceTables } from './bearing-clearance-table.ts';
import { shaftMaterialWords } from './shafting.ts';

const length = { unit: 'mm', units: ['in', 'mil', 'cm'] } as const;

const tableWords = Object.fromEntries(
  Object.entries(clearanceTables).map(([key, table]) => [key, table.words]),
) as Record<keyof typeof clearanceTables, string>;

export const shaftWearInputs = {
  originalDiameter: measure({
    label: 'Diameter as new',
    help: 'Measured on the same shaft where nothing has run on it, not taken from the size it is sold by',
    above: 0,
    max: 600,
    ...length,
  }),
  wornDiameter: measure({
    label: 'Smallest diameter where worn',
    help: 'By micrometer, in two directions; the smaller',
    above: 0,
    max: 600,
    ...length,
  }),
  resolution: fallback(
    measure({
      label: 'Smallest difference the micrometer and feelers show',
      above: 0,
      max: 2,
      ...length,
    }),
    0.02,
  ),
  place: choice({
    label: 'Where it is worn',
    choices: {
      bearing: 'In a bearing',
      gland: 'At the gland or seal',
      elsewhere: 'Elsewhere, or not worn',
    },
  }),
  surface: choice({
    label: 'Surface there',
    choices: {
      smooth: 'Smooth and even',
      ridged: 'Ridged, stepped or grooved',
      pitted: 'Pitted, cracked or corroded in a crevice',
    },
  }),
  play: optional(
    measure({
      label: 'Play of the shaft in the bearing',
      help: 'Across the diameter: by feelers at both ends of the bearing, or by a dial indicator while the shaft is lifted',
      min: 0,
      max: 60,
      ...length,
    }),
  ),
  clearanceTable: choice({
    label: 'Table the play is judged by',
    help: 'Published tables conflict; the maker’s figure outranks them all. The others are shown beside the one chosen',
    choices: { own: 'The bearing maker’s or the firm’s own figures, given below', ...tableWords },
  }),
  ownNewClearance: optional(
    measure({ label: 'Own figures: clearance of a new bearing', min: 0, max: 60, ...length }),
  ),
  ownLimit: optional(measure({ label: 'Own figures: play at which to renew', above: 0, max: 60, ...length })),
  power: optional(
    measure({
      label: 'Rated power at the shaft',
      help: 'About 0.96 of the engine’s rating; with the speed it gives the stress',
      unit: 'kW',
      units: ['hp', 'PS'],
      above: 0,
      max: 20_000,
    }),
  ),
  shaftSpeed: optional(
    measure({
      label: 'Shaft speed at that power',
      help: 'After the gear',
      unit: 'rpm',
      above: 0,
      max: 10_000,
    }),
  ),
  material: optional(choice({ label: 'Material of the shaft', choices: shaftMaterialWords })),
  yieldStrength: optional(
    measure({
      label: 'Yield strength in shear, instead',
      help: 'From the bar’s certificate, in torsion',
      unit: 'MPa',
      units: ['psi', 'ksi'],
      above: 0,
      max: 2000,
    }),
  ),
  leastFactor: fallback(plainNumber({ label: 'Least factor of safety accepted', min: 1, max: 20 }), 3),
  attentionBelow: fallback(
    measure({ label: 'Attention when strength left is below', unit: '%', min: 50, max: 100 }),
    95,
  ),
  renewBelow: fallback(
    measure({ label: 'Renewal limit: strength left below', unit: '%', min: 50, max: 100 }),
    90,
  ),
};

export type ShaftWearValues = Values<typeof shaftWearInputs>;
