import type { MeasureSystem } from '@garboard/contract/people';
import type { SnapshotFinding } from '@garboard/contract/report-snapshot';
import { dayIn } from '@garboard/trade/due-dates';
import { urgencyLabels } from '@garboard/trade/vocabulary';

const months = [
  'January',
  'February',
  'March',
  'April',
  'May',
  'June',
  'July',
  'August',
  'September',
  'October',
  'November',
  'December',
] as const;

/** A calendar day `YYYY-MM-DD` as `4 May 2026`. */
export function writtenDay(day: string): string {
  const [year, month, date] = day.split('-').map(Number);
  return `${date} ${months[(month ?? 1) - 1]} ${year}`;
}

/** The day of an instant in an IANA time zone, as `4 May 2026`. */
export function writtenDayOf(instant: string, timeZone: string): string {
  return writtenDay(dayIn(timeZone, new Date(instant)));
}

/** A whole number with a comma between thousands. */
export function grouped(value: number): string {
  return String(Math.round(value)).replace(/\B(?=(\d{3})+$)/g, ',');
}

const metresPerInch = 0.0254;
const kilogramsPerPound = 0.45359237;

/** A length in metres to the centimetre, in feet and whole inches, or the first with the second in parentheses. */
export function length(metres: number, measures: MeasureSystem = 'both'): string {
  const inches = Math.round(metres / metresPerInch);
  const us = `${Math.floor(inches / 12)} ft ${inches % 12} in`;
  return written({ metric: `${metres.toFixed(2)} m`, us }, measures);
}

/** A mass in kilograms, in pounds rounded to what the figure can bear (three digits), or both. */
export function mass(kilograms: number, measures: MeasureSystem = 'both'): string {
  const pounds = Number((kilograms / kilogramsPerPound).toPrecision(3));
  return written({ metric: `${grouped(kilograms)} kg`, us: `${grouped(pounds)} lb` }, measures);
}

function written({ metric, us }: { metric: string; us: string }, measures: MeasureSystem): string {
  return measures === 'both' ? `${metric} (${us})` : measures === 'us' ? us : metric;
}

/** The urgency in words, with the number of days where one was stated. */
export function urgencyWords(finding: Pick<SnapshotFinding, 'urgency' | 'withinDays'>): string {
  if (finding.urgency !== 'within-days' || finding.withinDays === null) return urgencyLabels[finding.urgency];
  return finding.withinDays === 1 ? 'Within 1 day' : `Within ${finding.withinDays} days`;
}

/** By when to put it right: a date where there is one, else in words. */
export function dueWords(finding: Pick<SnapshotFinding, 'urgency' | 'dueOn' | 'dueStated'>): string {
  if (finding.urgency === 'before-use') {
    return finding.dueStated && finding.dueOn !== null
      ? `Before next use, at the latest ${writtenDay(finding.dueOn)}`
      : 'Before next use';
  }
  if (finding.dueOn !== null) return writtenDay(finding.dueOn);
  return finding.urgency === 'next-layup' ? 'Next haul-out or lay-up' : 'No date';
}

/** `1 finding`, `3 findings`, `No findings`. */
export function counted(count: number, one: string, many: string): string {
  return count === 0 ? `No ${many}` : `${count} ${count === 1 ? one : many}`;
}

/** Items joined as in speech: `a, b and c`. */
export function listed(items: readonly string[]): string {
  if (items.length < 2) return items.join('');
  return `${items.slice(0, -1).join(', ')} and ${items.at(-1)}`;
}

/** The first `max` characters of a line, with an ellipsis when something was left out. */
export function shortened(line: string, max: number): string {
  const characters = [...line];
  return characters.length <= max
    ? line
    : `${characters
        .slice(0, max - 1)
        .join('')
        .trimEnd()}…`;
}

/** Which issue of the document this is: `revision 2`, or `draft`, which has no number. */
export const revisionWords = ({ preview, revision }: { preview: boolean; revision: number }): string =>
  preview ? 'draft' : `revision ${revision}`;
