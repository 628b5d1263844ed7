import type { Urgency } from './vocabulary.ts';

/** A calendar day, `YYYY-MM-DD`, without time or zone. */
export type Day = string;

/**
 * The last day by which a finding should be put right.
 *
 * `before-use` is due on the day of issue: the boat is not to be used until then. `within-days` is due that
 * many days after issue. The other urgencies carry no date: a lay-up has none that we know, and a note asks for
 * nothing. Common practice, no source.
 *
 * @throws RangeError when `within-days` comes without a whole number of days, or the day isn't a calendar day.
 */
export function dueOn(urgency: Urgency, withinDays: number | null, issuedOn: Day): Day | null {
  if (urgency === 'before-use') return issuedOn;
  if (urgency !== 'within-days') return null;
  if (withinDays === null || !Number.isInteger(withinDays) || withinDays < 1) {
    throw new RangeError('A finding to be put right within days needs a whole number of days, 1 or more.');
  }
  return addDays(issuedOn, withinDays);
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
