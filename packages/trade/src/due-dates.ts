import type { Urgency } from './vocabulary.ts';

/** A calendar day, `YYYY-MM-DD`, without time or zone. */
export type Day = string;

/** How a firm reckons due dates that a finding doesn't state itself. */
export interface DueDefaults {
  /** Days after issue by which findings before next use are due. */
  beforeUseDays: number;
  /** Whether findings for the next lay-up must be cleared, and so have a day at all. */
  layupRequiresClearing: boolean;
  /** Days after issue by which those are due, or a day of the year, `MM-DD`; one of the two at most. */
  layupDays: number | null;
  layupDay: string | null;
}

export const usualDueDefaults: DueDefaults = {
  beforeUseDays: 0,
  layupRequiresClearing: false,
  layupDays: null,
  layupDay: null,
};

/** Boats are laid up once a year, so without the firm's word the next lay-up is due within one. Our rule, no source. */
const daysToLayup = 365;

/**
 * The last day by which a finding should be put right.
 *
 * `before-use` is due on the day of issue, or the firm's days after it: the boat is not to be used until then.
 * `within-days` is due that many days after issue. `next-layup` has a date only where it must be cleared: the firm's
 * days after issue, its next day of the year after the day of issue, or a year. A note asks for nothing. Common practice,
 * no source.
 *
 * @throws RangeError when `within-days` comes without a whole number of days, or the day isn't a calendar day.
 */
export function dueOn(
  urgency: Urgency,
  withinDays: number | null,
  issuedOn: Day,
  defaults: DueDefaults = usualDueDefaults,
): Day | null {
  if (urgency === 'before-use') return addDays(issuedOn, defaults.beforeUseDays);
  if (urgency === 'next-layup') return defaults.layupRequiresClearing ? layupDue(issuedOn, defaults) : null;
  if (urgency !== 'within-days') return null;
  if (withinDays === null || !Number.isInteger(withinDays) || withinDays < 1) {
    throw new RangeError('A finding to be put right within days needs a whole number of days, 1 or more.');
  }
  return addDays(issuedOn, withinDays);
}

function layupDue(issuedOn: Day, { layupDays, layupDay }: DueDefaults): Day {
  if (layupDay === null) return addDays(issuedOn, layupDays ?? daysToLayup);
  const year = Number(issuedOn.slice(0, 4));
  const thisYear = `${issuedOn.slice(0, 4)}-${layupDay}`;
  return thisYear > issuedOn ? thisYear : `${String(year + 1).padStart(4, '0')}-${layupDay}`;
}

/** The day that lies `days` after `day` in the proleptic Gregorian calendar. */
export function addDays(day: Day, days: number): Day {
  const start = new Date(`${day}T00:00:00Z`);
  if (Number.isNaN(start.getTime())) throw new RangeError(`${day} is not a calendar day written YYYY-MM-DD.`);
  start.setUTCDate(start.getUTCDate() + days);
  return start.toISOString().slice(0, 10);
}

/** The calendar day at an instant, in an IANA time zone such as `Europe/Lisbon`. */
export function dayIn(timeZone: string, instant: Date): Day {
  // The Swedish locale writes dates as ISO 8601 does.
  return new Intl.DateTimeFormat('sv-SE', { timeZone, dateStyle: 'short' }).format(instant);
}
