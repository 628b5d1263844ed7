import { choice, count, measure, optional } from '../core/fields.ts';
import type { Values } from '../core/worksheet.ts';

const weight = { unit: 'lb', units: ['kg'] } as const;
const span = { unit: 'ft', units: ['m', 'in', 'cm'], above: 0 } as const;

/** What is asked for a weight and persons capacity. */
export const inputs = {
  boat: choice({
    label: 'Boat',
    choices: {
      outboard: 'Monohull for outboard motors of more than 2 hp',
      'up-to-2hp': 'Monohull for outboard motors of 2 hp or less',
      manual: 'Monohull for oars or paddles only',
      inboard: 'Monohull with inboard or stern drive',
      multihull: 'Catamaran, pontoon boat or other multihull',
      excluded: 'Sailing boat, canoe, kayak or inflatable',
    },
  }),
  length: measure({ label: 'Length', help: 'Over the deck, without fittings', max: 100, ...span }),
  beam: optional(
    measure({
      label: 'Greatest beam',
      help: 'Only for the rule of thumb, where a boat has no label',
      max: 40,
      ...span,
    }),
  ),
  maximumDisplacement: optional(
    measure({
      label: 'Maximum displacement',
      help: 'Weight of water displaced when the boat lies level and water is about to come in; or give the volume below',
      above: 0,
      max: 200_000,
      ...weight,
    }),
  ),
  immersedVolume: optional(
    measure({
      label: 'Volume up to where water comes in',
      help: 'In place of the displacement; taken as fresh water of 62.4 lb/ft³',
      unit: 'ft3',
      units: ['m3', 'in3', 'L'],
      above: 0,
      max: 3000,
    }),
  ),
  boatWeight: measure({
    label: 'Boat weight',
    help: 'Hull, deck, superstructure and fixed gear; for outboards of more than 2 hp also the full permanent fuel tanks',
    above: 0,
    max: 100_000,
    ...weight,
  }),
  equipmentWeight: optional(
    measure({
      label: 'Weight of motor, controls, battery and full portable tank',
      help: 'For the marked horsepower, from the table of 33 CFR 183.75; only for outboards of more than 2 hp',
      min: 0,
      max: 20_000,
      ...weight,
    }),
  ),
  sideTest: optional(
    measure({
      label: 'Weight held along one side',
      help: 'Side-loading test: the weights added along one side until water is about to come in',
      min: 0,
      max: 20_000,
      ...weight,
    }),
  ),
  markedWeight: optional(
    measure({ label: 'Label: persons, motor and gear', min: 0, max: 100_000, ...weight }),
  ),
  markedPersonsWeight: optional(
    measure({ label: 'Label: weight of persons', min: 0, max: 100_000, ...weight }),
  ),
  markedPersons: optional(count({ label: 'Label: number of persons', min: 0, max: 200 })),
};

export type Given = Values<typeof inputs>;
