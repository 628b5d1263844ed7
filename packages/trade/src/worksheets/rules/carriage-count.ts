import { dayText } from '../core/working.ts';
import type { Checked, Inputs } from './carriage-inputs.ts';
import {
  enginePerExtinguisher,
  extinguishersByLength,
  extinguishersByTonnage,
  extinguisherYears,
  signalTable,
  unitsOf5B,
} from './carriage-tables.ts';

/** How many surely count, how many may (not examined, no date), and why some don't. */
export interface Counted {
  sure: number;
  possible: number;
  notes: string[];
  /** Dates that are near. */
  soon: string[];
}

const nothing = (): Counted => ({ sure: 0, possible: 0, notes: [], soon: [] });
const daysBetween = (from: string, to: string): number => (Date.parse(to) - Date.parse(from)) / 86_400_000;

/** Boats with an engine carry extinguishers, unless a small outboard boat can't trap vapour. */
export function extinguishersNeeded(v: Inputs): { units: number; large: number; engineSpace: number } {
  const feet = v.length.in('ft');
  const none = { units: 0, large: 0, engineSpace: 0 };
  if (v.engine === 'none') return none;
  if (feet > 65) {
    const tons = v.grossTons ?? 0;
    const large = extinguishersByTonnage.find((row) => tons <= row.upTo)?.number ?? 8;
    const perPower = Math.ceil((v.mainPower?.in('hp') ?? 0) / enginePerExtinguisher.horsepower);
    return { units: 0, large, engineSpace: Math.min(enginePerExtinguisher.atMost, perPower) };
  }
  if (feet < 26 && v.engine === 'outboard' && v.canTrap === 'no') return none;
  const row = extinguishersByLength.findLast((r) => feet >= r.from) ?? extinguishersByLength[0];
  return { ...none, units: v.fixedSystem === 'yes' ? row.with : row.without };
}

type Extinguisher = Inputs['extinguishers'][number];

/** Why an extinguisher doesn't count, or `undefined`. */
function unfit(e: Extinguisher, v: Inputs): string | undefined {
  const year = Number(v.surveyedOn.slice(0, 4));
  if (e.rating === 'other') return 'not marked 5-B, 10-B or 20-B';
  if (e.good === 'no') return 'not good and serviceable';
  if (!e.rechargeable && e.yearMade !== undefined && year - e.yearMade > extinguisherYears) {
    return `made in ${e.yearMade}, more than ${extinguisherYears} years ago`;
  }
  if (e.rating !== 'B-I' && e.rating !== 'B-II') return undefined;
  if (v.modelYear >= 2018) return `marked ${e.rating}; from model year 2018 it must be 5-B or 20-B`;
  const fittedLate = e.newlyFitted === 'yes' || (e.yearMade ?? 0) > 2016;
  return fittedLate ? `marked ${e.rating} and put aboard after 22 August 2016` : undefined;
}

/** Whether something that counts isn't quite known. */
function unsure(e: Extinguisher): string | undefined {
  if (e.good === 'not-examined') return 'not examined';
  if (!e.rechargeable && e.yearMade === undefined) return 'year of making not found';
  const old = e.rating === 'B-I' || e.rating === 'B-II';
  if (old && e.newlyFitted !== 'no') return 'not known since when aboard';
  return undefined;
}

/** Extinguishers that count, in units of 5-B, or as pieces of 20-B (B-II on older boats) when `large`. */
export function countExtinguishers(v: Inputs, large = false): Counted {
  const counted = nothing();
  for (const e of v.extinguishers) {
    const name = `${e.number} × ${e.rating}`;
    const why = unfit(e, v) ?? (large && unitsOf5B[e.rating] < 2 ? 'smaller than 20-B' : undefined);
    if (why) {
      counted.notes.push(`${name}: ${why}`);
      continue;
    }
    const worth = e.number * (large ? 1 : unitsOf5B[e.rating]);
    const doubt = unsure(e);
    counted.possible += worth;
    if (doubt) counted.notes.push(`${name}: ${doubt}`);
    else counted.sure += worth;
    const year = Number(v.surveyedOn.slice(0, 4));
    if (!e.rechargeable && e.yearMade !== undefined && year - e.yearMade === extinguisherYears) {
      counted.soon.push(`${name} made in ${e.yearMade}: replace by 31 December ${year}`);
    }
  }
  return counted;
}

/** Signals for `day` or `night`, as sets: one light or flag is a set, three pyrotechnics together are. */
export function countSignals(v: Inputs, time: 'day' | 'night'): Counted {
  const counted = nothing();
  let sureThirds = 0;
  let possibleThirds = 0;
  for (const signal of v.signals) {
    const { [time]: serves, needed } = signalTable[signal.kind];
    if (!serves) continue;
    const name = `${signal.number} × ${signal.kind.replace('-', ' ')}`;
    const dayLeft = signal.expires === undefined ? undefined : daysBetween(v.surveyedOn, signal.expires);
    if (dayLeft !== undefined && dayLeft < 0) {
      counted.notes.push(`${name}: good until ${dayText(signal.expires ?? '')}, out of date`);
      continue;
    }
    const thirds = (signal.number * 3) / needed;
    possibleThirds += thirds;
    if (needed === 3 && dayLeft === undefined) counted.notes.push(`${name}: date not found`);
    else sureThirds += thirds;
    if (dayLeft !== undefined && dayLeft <= v.noticeDays)
      counted.soon.push(`${name}: good until ${dayText(signal.expires ?? '')}`);
  }
  if (sureThirds > 0 && sureThirds < 3) counted.notes.push(`${sureThirds} in date of the 3 that make a set`);
  counted.sure = Math.floor(sureThirds / 3);
  counted.possible = Math.floor(possibleThirds / 3);
  return counted;
}

/** Which signals the law asks for: none, for the night, or for day and night. */
export function signalsNeeded(v: Inputs): { day: boolean; night: boolean } {
  if (v.waters === 'inland') return { day: false, night: false };
  const byHand = v.engine === 'none' && ['canoe', 'rowed', 'racing', 'sailboard'].includes(v.craft);
  const openSail = v.craft === 'open-sail' && v.engine === 'none' && v.length.in('ft') < 26;
  const nightOnly = v.length.in('ft') < 16 || byHand || openSail;
  return nightOnly ? { day: false, night: v.night } : { day: true, night: true };
}

/** Sum of answers where one of several sets will do: yes if any set is whole, no if each lacks something. */
export function anyWhole(...sets: Checked[][]): Checked {
  const each = sets.map(
    (set): Checked => (set.includes('no') ? 'no' : set.includes('not-examined') ? 'not-examined' : 'yes'),
  );
  return each.includes('yes') ? 'yes' : each.includes('not-examined') ? 'not-examined' : 'no';
}
