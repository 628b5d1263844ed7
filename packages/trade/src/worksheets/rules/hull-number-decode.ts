import { type Fault, type HullDate, readDate } from './hull-number-date.ts';

export interface HullNumber {
  /** Two letters before the number proper, if any. */
  prefix: string | null;
  /** The name of the country they stand for, if they do. */
  country: string | null;
  /** The number proper without separators: twelve characters when it is well formed. */
  body: string;
  manufacturer: string | null;
  serial: string | null;
  date: HullDate;
  faults: Fault[];
}

/** Everything but letters, digits and the separators people write. */
export const strangeCharacters = /[^A-Z0-9\s/.-]/g;
const separators = /[\s/.-]/g;

const regions = new Intl.DisplayNames(['en'], { type: 'region', fallback: 'none' });
/** Codes left to users, and what the library names without their being countries. */
const notCountries = /^(AA|EU|EZ|Q[M-Z]|UN|X[A-JL-Z]|ZZ)$/;
const countryOf = (code: string): string | null =>
  notCountries.test(code) ? null : (regions.of(code) ?? null);

const noDate: HullDate = {
  format: null,
  month: null,
  year: null,
  otherYear: null,
  modelYear: null,
  faults: [],
};

/** Parts a number as marked into country prefix and number proper; tells whether separators stand within the latter. */
export function partNumber(marked: string): { prefix: string | null; body: string; interrupted: boolean } {
  const text = marked.toUpperCase().trim();
  const compact = text.replace(separators, '');
  const apart = /^[A-Z]{2}[\s/.-]/.test(text) && compact.length >= 13;
  const prefixed = apart || (compact.length === 14 && /^[A-Z]{2}/.test(compact));
  const proper = prefixed ? text.slice(2).replace(/^[\s/.-]+/, '') : text;
  const body = proper.replace(separators, '');
  return { prefix: prefixed ? text.slice(0, 2) : null, body, interrupted: body !== proper };
}

function serialFaults(serial: string): Fault[] {
  return [...serial].flatMap((character, index): Fault[] =>
    'IOQ'.includes(character)
      ? [
          {
            gravity: 'fault',
            sentence: `Character ${index + 4} is the letter ${character}; a serial number has no I, O or Q. It may be a ${character === 'I' ? '1' : '0'}.`,
          },
        ]
      : [],
  );
}

/** Decodes a hull identification number as marked, and names everything that is wrong with it. */
export function decodeHullNumber(marked: string): HullNumber {
  const { prefix, body, interrupted } = partNumber(marked);
  const country = prefix === null ? null : countryOf(prefix);
  const faults: Fault[] = [];
  if (prefix !== null && country === null) {
    faults.push({ gravity: 'fault', sentence: `“${prefix}” before the number is no country’s code.` });
  }
  if (interrupted) {
    faults.push({
      gravity: 'doubt',
      sentence:
        'Spaces, hyphens or slashes stand within the number. If they are marked so on the hull, they should not be: the twelve characters run on without a break.',
    });
  }
  if (body.length !== 12) {
    const sentence = `The number has ${body.length} characters${prefix === null ? '' : ` after “${prefix}”`}; it must have twelve.`;
    faults.unshift({ gravity: 'fault', sentence });
    return { prefix, country, body, manufacturer: null, serial: null, date: noDate, faults };
  }
  const manufacturer = body.slice(0, 3);
  const serial = body.slice(3, 8);
  const date = readDate(body.slice(8));
  if (!/^[A-Z]{3}$/.test(manufacturer)) {
    faults.push({
      gravity: 'doubt',
      sentence: `The manufacturer’s code is “${manufacturer}”; the codes assigned are of three letters.`,
    });
  }
  faults.push(...serialFaults(serial), ...date.faults);
  return { prefix, country, body, manufacturer, serial, date, faults };
}

const lookAlikes: Record<string, string> = {
  I: '1',
  '1': 'I',
  O: '0',
  Q: '0',
  '0': 'O',
  B: '8',
  '8': 'B',
  S: '5',
  '5': 'S',
  Z: '2',
  '2': 'Z',
  G: '6',
  '6': 'G',
};

/** A number with faults or doubts, one character read as its look-alike, wherever that clears all of them. */
export function mendedReadings({ prefix, body }: HullNumber): HullNumber[] {
  const read = (proper: string) => decodeHullNumber(prefix === null ? proper : `${prefix}-${proper}`);
  if (body.length !== 12 || read(body).faults.length === 0) return [];
  return [...body].flatMap((character, index) => {
    const other = lookAlikes[character];
    if (other === undefined) return [];
    const reading = read(body.slice(0, index) + other + body.slice(index + 1));
    return reading.faults.length === 0 ? [reading] : [];
  });
}
