import {
  checked,
  choice,
  count,
  day,
  fallback,
  measure,
  optional,
  plainNumber,
  yesNo,
} from '../core/fields.ts';
import { rows } from '../core/list-fields.ts';
import type { Values } from '../core/worksheet.ts';
import { ratings, signalKinds } from './carriage-tables.ts';

/** An item of the inventory; left alone it counts as not examined. */
const item = (label: string, help?: string) =>
  fallback(checked({ label, ...(help ? { help } : {}) }), 'not-examined');

export const inputs = {
  surveyedOn: day({ label: 'Day of the inventory' }),
  craft: choice({
    label: 'Craft',
    choices: {
      motor: 'Motorboat',
      sail: 'Sailing boat',
      'open-sail': 'Sailing boat, wholly open',
      canoe: 'Canoe or kayak',
      rowed: 'Rowing boat, or other paddled craft',
      racing: 'Racing shell, scull, racing canoe or kayak',
      sailboard: 'Sailboard',
    },
  }),
  engine: choice({
    label: 'Engine',
    choices: {
      none: 'None',
      outboard: 'Outboard',
      'inboard-petrol': 'Inboard or stern drive, petrol',
      'inboard-other': 'Inboard, diesel or electric',
    },
  }),
  length: measure({
    label: 'Length',
    help: 'Of the hull from end to end, without bowsprit, brackets and rudder',
    unit: 'ft',
    units: ['m', 'in'],
    above: 0,
    max: 164,
  }),
  modelYear: count({ label: 'Model year', min: 1850, max: 2100 }),
  persons: count({ label: 'Persons she is equipped for', min: 1, max: 200 }),
  waters: choice({
    label: 'Waters',
    choices: {
      inland: 'Inland only, off the coastal waters',
      coastal: 'Coastal waters or the Great Lakes',
      ocean: 'Also beyond the territorial sea',
    },
  }),
  night: yesNo({
    label: 'Used between sunset and sunrise',
    help: 'Yes too if she may be caught in fog: lights are for that as well',
  }),

  wearable: count({
    label: 'Life jackets to wear',
    help: 'Approved, sound, of a size for those aboard, within reach',
    min: 0,
    max: 500,
  }),
  throwable: count({
    label: 'Throwable buoys or cushions',
    help: 'Approved, sound, at hand',
    min: 0,
    max: 100,
  }),
  signals: fallback(
    rows({
      label: 'Visual distress signals',
      help: 'Serviceable ones only; a launcher with those that need one',
      each: 'signal',
      min: 0,
      max: 30,
      columns: {
        kind: choice({ label: 'Kind', choices: signalKinds }),
        number: count({ label: 'How many', min: 1, max: 100 }),
        expires: optional(day({ label: 'Good until' })),
      },
    }),
    [],
  ),
  extinguishers: fallback(
    rows({
      label: 'Portable fire extinguishers',
      each: 'extinguisher',
      min: 0,
      max: 40,
      columns: {
        rating: choice({ label: 'Marked', choices: ratings }),
        number: count({ label: 'How many', min: 1, max: 40 }),
        yearMade: optional(count({ label: 'Year made, stamped', min: 1900, max: 2100 })),
        rechargeable: yesNo({ label: 'Rechargeable' }),
        good: checked({
          label: 'Good and serviceable',
          help: 'Approved, within reach, gauge in range, pin in place, nozzle clear, no corrosion or damage',
        }),
        newlyFitted: optional(checked({ label: 'Put aboard after 22 August 2016' })),
      },
    }),
    [],
  ),
  canTrap: item(
    'Can trap gas or vapour, or has a built-in fuel tank',
    'Closed space for tanks, living or stowage; double bottom neither sealed nor filled. Bait wells, glove boxes, ice chests and slatted floors don’t count',
  ),
  fixedSystem: item(
    'Fixed fire-extinguishing system in the engine space',
    'Approved and in order. Over 300 gross tons a 160-B semi-portable one will do',
  ),
  grossTons: optional(plainNumber({ label: 'Gross tons', help: 'Over 65 ft only', above: 0, max: 5000 })),
  mainPower: optional(
    measure({
      label: 'Power of the main engines',
      help: 'All together; over 65 ft only',
      unit: 'hp',
      units: ['kW', 'PS'],
      above: 0,
      max: 20_000,
    }),
  ),
  flameControl: item('Backfire flame control on each petrol inboard', 'Approved, tight and clean'),
  sidelights: item('Sidelights, working'),
  sternLight: item('Sternlight, working'),
  mastheadLight: item('Masthead light, working'),
  allRoundLight: item('All-round white light, working'),
  torch: item('Torch or lantern at hand, white'),
  soundSignal: item('Whistle or horn', 'Under 12 m anything that makes an efficient sound'),
  bell: item('Bell'),
  rulesBook: item('Copy of the Inland Navigation Rules'),
  oilPlacard: item(
    'Placard: discharge of oil prohibited',
    'At least 5 by 8 in, in each engine space or at the bilge pump control',
  ),
  garbagePlacard: item(
    'Placard: discharge of garbage',
    'At least 8 by 5 in, where crew and passengers read it',
  ),
  galleyAndBerths: yesNo({ label: 'Has a galley and berths' }),
  garbagePlan: item('Garbage management plan, written'),
  toilet: choice({
    label: 'Toilet',
    choices: {
      none: 'None, or portable',
      'type-1': 'Installed, type I device',
      'type-2': 'Installed, type II device',
      'type-3': 'Installed, type III (holding tank)',
      'no-device': 'Installed, discharging without a device',
    },
  }),
  deviceWorks: item('Sanitation device labelled and working'),
  noticeDays: fallback(count({ label: 'Days ahead to warn of dates', min: 0, max: 730 }), 90),
};

export type Inputs = Values<typeof inputs>;
export type Checked = Inputs['bell'];
