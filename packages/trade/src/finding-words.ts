import { plainWord } from './finding-columns.ts';
import {
  type Harm,
  harmLabels,
  type System,
  systemLabels,
  type Urgency,
  urgencyLabels,
} from './vocabulary.ts';

function reader<K extends string>(
  labels: Readonly<Record<K, string>>,
  also: Readonly<Record<string, K>> = {},
) {
  const words = new Map<string, K>();
  for (const [key, label] of Object.entries(labels) as [K, string][]) {
    words.set(plainWord(key), key);
    words.set(plainWord(label), key);
  }
  for (const [word, key] of Object.entries(also)) words.set(plainWord(word), key);
  return (word: string): K | null => words.get(plainWord(word)) ?? null;
}

/** A system by its key or its name. */
export const readSystem = reader<System>(systemLabels);

/** A kind of harm by its key or its name. */
export const readHarm = reader<Harm>(harmLabels);

const urgencyOf = reader<Urgency>(urgencyLabels, {
  'before use': 'before-use',
  immediately: 'before-use',
  'at once': 'before-use',
  'within days': 'within-days',
  'next lay-up': 'next-layup',
  'next layup': 'next-layup',
  'next haul-out': 'next-layup',
  'at next lay-up': 'next-layup',
  'at next haul-out': 'next-layup',
  'for information': 'note',
});

/** An urgency as people write it; “within 30 days” names the days too. Null when it isn't understood. */
export function readUrgency(word: string): { urgency: Urgency; days: number | null } | null {
  const days = /^(?:within )?(\d{1,4}) days?$/.exec(plainWord(word))?.[1];
  if (days) return { urgency: 'within-days', days: Number(days) };
  const urgency = urgencyOf(word);
  return urgency && { urgency, days: null };
}

const months = 'jan feb mar apr may jun jul aug sep oct nov dec'.split(' ');

/**
 * A day as people write it, as YYYY-MM-DD: 2027-03-31, 31.3.2027, 31 March 2027, 31/03/2027. A day with strokes that
 * could be read both ways is `ambiguous`, what is no day is null.
 */
export function readDay(word: string): string | 'ambiguous' | null {
  const iso = /^(\d{4})-(\d{1,2})-(\d{1,2})(?:[T ]00:00(?::00)?)?$/.exec(word);
  if (iso) return dayOf(iso[1], iso[2], iso[3]);
  const dots = /^(\d{1,2})\.\s?(\d{1,2})\.\s?(\d{4})$/.exec(word);
  if (dots) return dayOf(dots[3], dots[2], dots[1]);
  const named = /^(\d{1,2})\.? ([a-z]{3})[a-z]*\.?,? (\d{4})$/i.exec(word);
  const month = months.indexOf((named?.[2] ?? '').toLowerCase()) + 1;
  if (named && month > 0) return dayOf(named[3], String(month), named[1]);
  const strokes = /^(\d{1,2})[/-](\d{1,2})[/-](\d{4})$/.exec(word);
  if (!strokes) return null;
  const [first, second] = [Number(strokes[1]), Number(strokes[2])];
  if (first <= 12 && second <= 12 && first !== second) return 'ambiguous';
  return first > 12 ? dayOf(strokes[3], strokes[2], strokes[1]) : dayOf(strokes[3], strokes[1], strokes[2]);
}

function dayOf(year = '', month = '', day = ''): string | null {
  const text = `${year}-${month.padStart(2, '0')}-${day.padStart(2, '0')}`;
  const at = new Date(`${text}T00:00:00Z`);
  return !Number.isNaN(at.getTime()) && at.toISOString().startsWith(text) ? text : null;
}

/**
 * An amount of money in minor units: 1250, 1250.50, 1 250,50, 1.250,50. One whose only mark could part thousands or
 * decimals (1,250) is `ambiguous`, what is no amount is null.
 */
export function readAmount(word: string, decimals: number): number | 'ambiguous' | null {
  const bare = word.replace(/[\s\u00a0\u202f']/g, '');
  if (!/^\d[\d.,]*$/.test(bare)) return null;
  const marks = bare.replace(/\d/g, '');
  const last = marks.at(-1);
  if (last === undefined) return Number(bare) * 10 ** decimals;
  const after = bare.length - 1 - bare.lastIndexOf(last);
  const one = marks.length === 1;
  if (one && after === 3 && decimals < 3) return 'ambiguous';
  const isDecimal = one || (marks.indexOf(last) === marks.length - 1 && after <= decimals);
  const grouped = isDecimal ? bare.slice(0, bare.lastIndexOf(last)) : bare;
  if (/[.,]/.test(grouped) && !/^\d{1,3}([.,]\d{3})+$/.test(grouped)) return null;
  const fraction = isDecimal ? bare.slice(bare.lastIndexOf(last) + 1) : '';
  if (fraction.length > decimals) return null;
  const whole = Number(grouped.replace(/[.,]/g, ''));
  return whole * 10 ** decimals + Number(fraction.padEnd(decimals, '0') || 0);
}
