/** How the last four characters of a hull number tell its date. */
export type DateFormat = 'current' | 'model-year' | 'straight-year';

/** What is wrong: a `fault` breaks the format, a `doubt` is possible but asks for a second look. */
export interface Fault {
  gravity: 'fault' | 'doubt';
  sentence: string;
}

export interface HullDate {
  /** Nothing when the four characters fit no format. */
  format: DateFormat | null;
  /** 1 to 12. */
  month: number | null;
  year: number | null;
  /** The other calendar year that published readings give, where they disagree. */
  otherYear: number | null;
  modelYear: number | null;
  faults: Fault[];
}

const monthNames =
  'January February March April May June July August September October November December'.split(' ');
export const monthName = (month: number): string => monthNames[month - 1] ?? String(month);

/** Hull numbers began in November 1972: 72 to 99 are of the last century, 00 to 71 of this one. */
const century = (twoDigits: number): number => (twoDigits >= 72 ? 1900 : 2000) + twoDigits;

const letterIndex = (letter: string): number => letter.charCodeAt(0) - 65;
const nothing = { month: null, year: null, otherYear: null, modelYear: null };

/** Months since the year 0, to compare dates by. */
export const monthCount = (year: number, month: number): number => year * 12 + month - 1;
const firstNumbers = monthCount(1972, 11);
const newFormat = monthCount(1984, 8);

function outsidePeriod(year: number, month: number): Fault[] {
  const at = monthCount(year, month);
  if (at >= firstNumbers && at < newFormat) return [];
  const why =
    at < firstNumbers
      ? 'hull numbers began in November 1972'
      : 'from August 1984 the month letter comes first, before the year and the model year';
  return [
    {
      gravity: 'doubt',
      sentence: `${monthName(month)} ${year} does not suit this older format: ${why}. Read the last four characters again.`,
    },
  ];
}

function straightYear(tail: string): HullDate {
  const month = Number(tail.slice(0, 2));
  const year = century(Number(tail.slice(2)));
  return { ...nothing, format: 'straight-year', month, year, faults: outsidePeriod(year, month) };
}

/** `M`, model year, and a month letter counted from August: A to E lie in the calendar year before. */
function modelYearFormat(tail: string): HullDate {
  const modelYear = century(Number(tail.slice(1, 3)));
  const index = letterIndex(tail.charAt(3));
  const month = ((7 + index) % 12) + 1;
  const before = month >= 8;
  const year = before ? modelYear - 1 : modelYear;
  return {
    format: 'model-year',
    month,
    year,
    otherYear: before ? modelYear : null,
    modelYear,
    faults: outsidePeriod(year, month),
  };
}

/** Month letter counted from January, last digit of the year, model year. */
function currentFormat(tail: string): HullDate {
  const month = letterIndex(tail.charAt(0)) + 1;
  const modelYear = century(Number(tail.slice(2)));
  const digit = Number(tail.charAt(1));
  const year =
    [modelYear, modelYear - 1, modelYear - 2].find((candidate) => candidate % 10 === digit) ?? null;
  const faults: Fault[] = [];
  if (year === null) {
    faults.push({
      gravity: 'fault',
      sentence: `Characters 10 to 12 contradict each other: no year ending in ${digit} lies within two years before model year ${modelYear}.`,
    });
  } else if (
    monthCount(year, month) < monthCount(modelYear - 1, 8) ||
    monthCount(year, month) > monthCount(modelYear, 7)
  ) {
    faults.push({
      gravity: 'doubt',
      sentence: `${monthName(month)} ${year} lies outside model year ${modelYear}, which runs from 1 August ${modelYear - 1} to 31 July ${modelYear}. The maker may have counted otherwise; compare with the papers.`,
    });
  }
  if (modelYear < 1982) {
    faults.push({
      gravity: 'doubt',
      sentence: `Model year ${modelYear} is earlier than this format. Read the last four characters again.`,
    });
  }
  return { ...nothing, format: 'current', month, year, modelYear, faults };
}

const monthLetters = 'the letters A to L';
/** What each of the last four characters must be, by the format that the ninth points to. */
const shapes: Record<DateFormat, Array<{ test: RegExp; wanted: string }>> = {
  'model-year': [
    { test: /M/, wanted: 'the letter M' },
    { test: /\d/, wanted: 'a digit of the model year' },
    { test: /\d/, wanted: 'a digit of the model year' },
    { test: /[A-L]/, wanted: `a month, ${monthLetters}` },
  ],
  'straight-year': [
    { test: /[01]/, wanted: 'the first digit of a month, 0 or 1' },
    { test: /\d/, wanted: 'the second digit of a month' },
    { test: /\d/, wanted: 'a digit of the year' },
    { test: /\d/, wanted: 'a digit of the year' },
  ],
  current: [
    { test: /[A-L]/, wanted: `a month, ${monthLetters}` },
    { test: /\d/, wanted: 'the last digit of the year' },
    { test: /\d/, wanted: 'a digit of the model year' },
    { test: /\d/, wanted: 'a digit of the model year' },
  ],
};

function unreadable(tail: string): HullDate {
  const first = tail.charAt(0);
  const leaning: DateFormat = first === 'M' ? 'model-year' : /\d/.test(first) ? 'straight-year' : 'current';
  const faults = shapes[leaning].flatMap(({ test, wanted }, index): Fault[] =>
    test.test(tail.charAt(index))
      ? []
      : [
          {
            gravity: 'fault',
            sentence: `Character ${index + 9} is “${tail.charAt(index)}”; it must be ${wanted}.`,
          },
        ],
  );
  if (faults.length === 0) {
    faults.push({
      gravity: 'fault',
      sentence: `Characters 9 and 10 are “${tail.slice(0, 2)}”; as a month they must be 01 to 12.`,
    });
  }
  return { ...nothing, format: null, faults };
}

/** Reads characters 9 to 12. */
export function readDate(tail: string): HullDate {
  if (/^M\d\d[A-L]$/.test(tail)) return modelYearFormat(tail);
  if (/^(0[1-9]|1[0-2])\d\d$/.test(tail)) return straightYear(tail);
  if (/^[A-L]\d{3}$/.test(tail)) return currentFormat(tail);
  return unreadable(tail);
}
