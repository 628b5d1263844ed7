import { choice, fallback, measure, optional, plainNumber } from '../core/fields.ts';
import type { Values } from '../core/worksheet.ts';
import { serviceWords } from './shaft-size-table.ts';
import { shaftMaterialWords } from './shafting.ts';

export const shaftSizeInputs = {
  power: measure({
    label: 'Rated power of the engine',
    unit: 'kW',
    units: ['hp', 'PS'],
    above: 0,
    max: 20_000,
  }),
  powerAt: choice({
    label: 'That power is',
    choices: { flywheel: 'At the flywheel (0.96 of it reaches the shaft)', shaft: 'At the shaft already' },
  }),
  engineSpeed: measure({ label: 'Engine speed at that power', unit: 'rpm', above: 0, max: 20_000 }),
  reduction: fallback(
    plainNumber({
      label: 'Reduction of the gear',
      help: 'Engine turns for one turn of the shaft: 2 for 2:1',
      min: 0.5,
      max: 20,
    }),
    1,
  ),
  material: choice({
    label: 'Material of the shaft',
    choices: { ...shaftMaterialWords, other: 'Another, its yield strength given' },
  }),
  yieldStrength: optional(
    measure({
      label: 'Yield strength in shear',
      help: 'In torsion, from the bar’s certificate; used instead of the table’s',
      unit: 'MPa',
      units: ['psi', 'ksi'],
      above: 0,
      max: 2000,
    }),
  ),
  service: choice({ label: 'Service', choices: serviceWords }),
  factor: optional(
    plainNumber({
      label: 'Factor of safety, instead',
      help: 'The firm’s own, or a rule’s',
      min: 1,
      max: 20,
    }),
  ),
  fittedDiameter: optional(
    measure({
      label: 'Diameter fitted',
      help: 'By micrometer, at its smallest; nothing is judged without it',
      unit: 'mm',
      units: ['in', 'cm'],
      above: 0,
      max: 600,
    }),
  ),
  bearingSpacing: optional(
    measure({
      label: 'Longest distance between shaft bearings',
      help: 'Centre to centre',
      unit: 'm',
      units: ['ft', 'in', 'mm', 'cm'],
      above: 0,
      max: 30,
    }),
  ),
  propellerDiameter: optional(
    measure({
      label: 'Diameter of the propeller',
      help: 'For the quick rule only',
      unit: 'mm',
      units: ['in', 'cm', 'm'],
      above: 0,
      max: 5000,
    }),
  ),
  sizes: fallback(
    choice({ label: 'Bar stock', choices: { inch: 'Inch sizes', metric: 'Metric sizes' } }),
    'inch',
  ),
};

export type ShaftSizeValues = Values<typeof shaftSizeInputs>;
