import type { Day } from './due-dates.ts';
import type { System } from './vocabulary.ts';

/** A usual kind of equipment: what it is called, where it belongs and the date by which it is judged. */
export interface UsualEquipment {
  name: string;
  system: System;
  /** `expiry` is marked with a last day, `age` is judged by when it was made or fitted. */
  dated: 'expiry' | 'age';
}

/** Equipment whose date matters on most boats; offered to choose from, never required. Common practice, no source. */
export const usualEquipment: readonly UsualEquipment[] = [
  { name: 'Portable extinguisher, dry powder', system: 'fire-safety', dated: 'expiry' },
  { name: 'Portable extinguisher, foam', system: 'fire-safety', dated: 'expiry' },
  { name: 'Portable extinguisher, carbon dioxide', system: 'fire-safety', dated: 'expiry' },
  { name: 'Fixed extinguisher of the engine space', system: 'fire-safety', dated: 'expiry' },
  { name: 'Fire blanket', system: 'fire-safety', dated: 'age' },
  { name: 'Smoke alarm', system: 'fire-safety', dated: 'expiry' },
  { name: 'Carbon monoxide alarm', system: 'fire-safety', dated: 'expiry' },
  { name: 'Parachute rockets', system: 'life-saving', dated: 'expiry' },
  { name: 'Red hand flares', system: 'life-saving', dated: 'expiry' },
  { name: 'Orange smoke signals', system: 'life-saving', dated: 'expiry' },
  { name: 'Liferaft', system: 'life-saving', dated: 'expiry' },
  { name: 'Hydrostatic release', system: 'life-saving', dated: 'expiry' },
  { name: 'Distress beacon (EPIRB)', system: 'life-saving', dated: 'expiry' },
  { name: 'Personal locator beacon', system: 'life-saving', dated: 'expiry' },
  { name: 'Inflatable lifejackets', system: 'life-saving', dated: 'expiry' },
  { name: 'Lifebuoy with light', system: 'life-saving', dated: 'age' },
  { name: 'First-aid kit', system: 'life-saving', dated: 'expiry' },
  { name: 'Gas hose', system: 'gas', dated: 'expiry' },
  { name: 'Gas regulator', system: 'gas', dated: 'expiry' },
  { name: 'Gas detector', system: 'gas', dated: 'expiry' },
  { name: 'Standing rigging', system: 'rig-sails', dated: 'age' },
  { name: 'Lifelines', system: 'deck', dated: 'age' },
  { name: 'Fuel hose', system: 'fuel', dated: 'age' },
  { name: 'Exhaust hose', system: 'exhaust', dated: 'age' },
  { name: 'Seal of the sail drive', system: 'shaft-propeller', dated: 'age' },
  { name: 'Service batteries', system: 'dc-electrical', dated: 'age' },
];

/** Years beyond which a date is taken for a slip of the pen. Common practice, no source. */
export const dateLimits = { yearsAhead: 50, yearsBack: 150 } as const;

const yearsFrom = (day: Day, years: number): Day => {
  const moved = `${String(Number(day.slice(0, 4)) + years).padStart(4, '0')}${day.slice(4)}`;
  // 29 February exists only every fourth year.
  return moved.endsWith('-02-29') ? `${moved.slice(0, 5)}02-28` : moved;
};

export interface DateFault {
  field: 'madeOn' | 'expiresOn';
  detail: string;
}

/** What can't be true of a piece of equipment's dates on a given day; nothing when they can. */
export function dateFaults(
  { madeOn, expiresOn }: { madeOn: Day | null; expiresOn: Day | null },
  today: Day,
): DateFault[] {
  const faults: DateFault[] = [];
  const earliest = yearsFrom(today, -dateLimits.yearsBack);
  const latest = yearsFrom(today, dateLimits.yearsAhead);
  if (madeOn !== null && madeOn > today) {
    faults.push({
      field: 'madeOn',
      detail: 'The day it was made lies in the future. Look at the year again.',
    });
  } else if (madeOn !== null && madeOn < earliest) {
    faults.push({
      field: 'madeOn',
      detail: `Made more than ${dateLimits.yearsBack} years ago. Look at the year again.`,
    });
  }
  if (expiresOn !== null && expiresOn > latest) {
    faults.push({
      field: 'expiresOn',
      detail: `Expires more than ${dateLimits.yearsAhead} years from now. Look at the year again, or leave it empty.`,
    });
  } else if (expiresOn !== null && expiresOn < earliest) {
    faults.push({
      field: 'expiresOn',
      detail: `Expired more than ${dateLimits.yearsBack} years ago. Look at the year again.`,
    });
  } else if (madeOn !== null && expiresOn !== null && expiresOn < madeOn) {
    faults.push({
      field: 'expiresOn',
      detail: 'It would expire before it was made. One of the two dates is wrong.',
    });
  }
  return faults;
}

/** Whether equipment marked with a last day is past it on a given day; that day itself still counts. */
export const hasExpired = (expiresOn: Day | null, on: Day): boolean => expiresOn !== null && expiresOn < on;

/** Whole years from a day to another. */
export function yearsBetween(from: Day, to: Day): number {
  const years = Number(to.slice(0, 4)) - Number(from.slice(0, 4));
  return to.slice(5) < from.slice(5) ? years - 1 : years;
}
