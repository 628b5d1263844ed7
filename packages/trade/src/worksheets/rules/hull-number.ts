import { choice, count, day, measure, optional, words } from '../core/fields.ts';
import { number, said } from '../core/outputs.ts';
import { conclude, type Judgement } from '../core/verdict.ts';
import { line } from '../core/working.ts';
import { defineWorksheet, type InputProblem, type Values } from '../core/worksheet.ts';
import { monthCount, monthName } from './hull-number-date.ts';
import {
  decodeHullNumber,
  type HullNumber,
  mendedReadings,
  partNumber,
  strangeCharacters,
} from './hull-number-decode.ts';
import { characterRows, dateWords, formatWords, shownNumber } from './hull-number-words.ts';

const inputs = {
  marked: words({
    label: 'Number on the hull',
    help: 'As marked, with the country code if there is one: starboard side of the transom, near the top',
    max: 24,
  }),
  onPapers: optional(words({ label: 'Number on the papers', max: 24 })),
  yearBuilt: optional(count({ label: 'Year built by the papers', min: 1850, max: 2150 })),
  examinedOn: optional(
    day({ label: 'Day of the examination', help: 'A later date in the number is a fault' }),
  ),
  condition: optional(
    choice({
      label: 'Characters',
      choices: {
        undisturbed: 'Undisturbed',
        disturbed: 'Ground, filled, re-marked or on a plate that was moved',
        'not-examined': 'Not examined',
      },
    }),
  ),
  characterHeight: optional(
    measure({ label: 'Height of the characters', unit: 'in', units: ['mm', 'cm'], above: 0, max: 12 }),
  ),
  duplicate: optional(
    choice({
      label: 'Second, hidden number',
      choices: {
        same: 'Found, the same',
        different: 'Found, different',
        'not-found': 'Looked for, not found',
        'not-examined': 'Not examined',
      },
    }),
  ),
};

type Given = Values<typeof inputs>;

function strange(field: 'marked' | 'onPapers', text: string | undefined): InputProblem[] {
  if (text === undefined) return [];
  const found = [...new Set(text.toUpperCase().match(strangeCharacters) ?? [])];
  const label = field === 'marked' ? 'Number on the hull' : 'Number on the papers';
  if (found.length > 0) {
    const message = `${label}: only letters A to Z, digits, spaces, hyphens, slashes and points are taken; found ${found.join(' ')}.`;
    return [{ field, message }];
  }
  return partNumber(text).body === ''
    ? [{ field, message: `${label}: give the number itself, not only separators.` }]
    : [];
}

function judgeForm(decoded: HullNumber): Judgement[] {
  const judgements = decoded.faults.map(
    ({ gravity, sentence }): Judgement => ({
      verdict: gravity === 'fault' ? 'unsatisfactory' : 'attention',
      reason: sentence,
    }),
  );
  if (decoded.faults.length === 0) {
    const reason = `The number follows the ${formatWords(decoded.date.format)}: ${dateWords(decoded.date)}.`;
    judgements.push({ verdict: 'satisfactory', reason });
  }
  const { month, year, otherYear, modelYear } = decoded.date;
  if (month !== null && otherYear !== null) {
    const reason = `Sources differ on the calendar year: model year ${modelYear} runs from 1 August ${year} by its definition, so ${monthName(month)} is of ${year}; another published reading takes ${otherYear}.`;
    judgements.push({ verdict: 'satisfactory', reason });
  }
  return judgements;
}

function judgePapers(v: Given, decoded: HullNumber): Judgement[] {
  const judgements: Judgement[] = [];
  if (v.onPapers !== undefined) {
    const papers = partNumber(v.onPapers);
    const differing = [...decoded.body.padEnd(papers.body.length, ' ')].flatMap((character, index) =>
      character === (papers.body[index] ?? ' ') ? [] : [index + 1],
    );
    const prefixes = [decoded.prefix, papers.prefix];
    if (differing.length > 0) {
      const at = `${differing.length === 1 ? 'character' : 'characters'} ${differing.join(', ')}`;
      const reason = `The papers give ${papers.body} and the hull ${decoded.body}: they differ at ${at}.`;
      judgements.push({ verdict: 'unsatisfactory', reason });
    } else if (prefixes.every((prefix) => prefix !== null) && prefixes[0] !== prefixes[1]) {
      const reason = `The country code is ${papers.prefix} on the papers and ${decoded.prefix} on the hull.`;
      judgements.push({ verdict: 'attention', reason });
    } else {
      judgements.push({ verdict: 'satisfactory', reason: 'The number on the papers is the same.' });
    }
  }
  const { year, otherYear, modelYear, month } = decoded.date;
  if (v.yearBuilt !== undefined && (year !== null || modelYear !== null)) {
    const known = [...new Set([year, otherYear, modelYear].filter((y) => y !== null))];
    const agrees = known.includes(v.yearBuilt);
    judgements.push({
      verdict: agrees ? 'satisfactory' : 'attention',
      reason: agrees
        ? `The papers’ year built, ${v.yearBuilt}, agrees with the number.`
        : `The papers give ${v.yearBuilt} as year built; the number tells ${known.join(' or ')}.`,
    });
  }
  if (v.examinedOn !== undefined && year !== null && month !== null) {
    const [examinedYear = 0, examinedMonth = 1] = v.examinedOn.split('-').map(Number);
    if (monthCount(year, month) > monthCount(examinedYear, examinedMonth)) {
      const reason = `The number tells ${monthName(month)} ${year}, later than the day of the examination.`;
      judgements.push({ verdict: 'unsatisfactory', reason });
    }
  }
  return judgements;
}

const conditionJudgements: Record<NonNullable<Given['condition']>, Judgement> = {
  undisturbed: { verdict: 'satisfactory', reason: 'The characters are undisturbed.' },
  disturbed: {
    verdict: 'unsatisfactory',
    reason:
      'The characters show signs of alteration. Ask the registering authority before anything is paid or insured.',
  },
  'not-examined': { verdict: 'attention', reason: 'The characters were not examined for alteration.' },
};

const duplicateJudgements: Record<NonNullable<Given['duplicate']>, Judgement> = {
  same: { verdict: 'satisfactory', reason: 'The second, hidden number is the same.' },
  different: {
    verdict: 'unsatisfactory',
    reason: 'The second, hidden number differs from the first. Ask the registering authority.',
  },
  'not-found': {
    verdict: 'attention',
    reason: 'No second number was found; the rule wants one in a place hidden inside or under a fitting.',
  },
  'not-examined': { verdict: 'attention', reason: 'The second, hidden number was not looked for.' },
};

function judgeMarking(v: Given): Judgement[] {
  const judgements: Judgement[] = [];
  if (v.condition) judgements.push(conditionJudgements[v.condition]);
  if (v.duplicate) judgements.push(duplicateJudgements[v.duplicate]);
  if (v.characterHeight) {
    const tall = v.characterHeight.in('in') >= 0.25;
    judgements.push({
      verdict: tall ? 'satisfactory' : 'attention',
      reason: `The characters are ${v.characterHeight.text(3)} high; the rule wants at least 1/4 in (6.35 mm).`,
    });
  }
  return judgements;
}

/** The hull identification number: decoded, its faults named, compared with the papers. */
export const hullNumber = defineWorksheet({
  kind: 'hull-number',
  version: 1,
  title: 'Hull identification number',
  group: 'rules',
  system: 'hull',
  purpose:
    'Decodes a hull number in the current and the two older formats, names every fault in it, and compares it with the papers.',
  inputs,
  refuse: (v) => [...strange('marked', v.marked), ...strange('onPapers', v.onPapers)],
  applicability:
    'United States, boats from November 1972; elsewhere the same twelve characters behind a country code (ISO 10087), where the country’s own rule governs. The manufacturer’s code is not looked up.',
  compute: (v) => {
    const decoded = decodeHullNumber(v.marked);
    const { date } = decoded;
    const readings = mendedReadings(decoded);
    const mended: Judgement[] =
      readings.length === 0
        ? []
        : [
            {
              verdict: 'attention',
              reason: `One character may be misread: ${readings.map((r) => `${shownNumber(r)} would be ${dateWords(r.date)}`).join('; ')}. Look again.`,
            },
          ];
    return {
      outputs: {
        number: said('Number', shownNumber(decoded)),
        country: said('Country', decoded.prefix, decoded.country ?? decoded.prefix ?? 'not marked'),
        manufacturer: said('Manufacturer’s code', decoded.manufacturer),
        serial: said('Serial number', decoded.serial),
        format: said('Format', date.format, formatWords(date.format)),
        month: number('Month', date.month),
        year: said('Calendar year', date.year === null ? null : String(date.year)),
        otherYear: said(
          'Calendar year by another reading',
          date.otherYear === null ? null : String(date.otherYear),
          date.otherYear === null ? 'none' : String(date.otherYear),
        ),
        modelYear: said(
          'Model year',
          date.modelYear === null ? null : String(date.modelYear),
          date.modelYear === null ? 'not told' : String(date.modelYear),
        ),
        faults: number('Faults and doubts in the number', decoded.faults.length),
        likelyReading: said(
          'Likely reading',
          readings[0] ? shownNumber(readings[0]) : null,
          readings[0]
            ? shownNumber(readings[0])
            : decoded.faults.length === 0
              ? 'as given'
              : 'no better one found',
        ),
      },
      tables: [
        {
          title: 'Character by character',
          columns: ['Place', 'Marked', 'Meaning'],
          rows: characterRows(decoded),
        },
      ],
      ...conclude([...judgeForm(decoded), ...mended, ...judgePapers(v, decoded), ...judgeMarking(v)]),
      working: [
        line('Number without separators', shownNumber(decoded)),
        ...characterRows(decoded).map(([place, marked, meaning]) => `${place}: ${marked}: ${meaning}`),
        ...(date.format === 'current' && date.year !== null
          ? [
              `Year: the last one ending in ${date.year % 10} that is at most two years before model year ${date.modelYear}, ${date.year}`,
            ]
          : []),
        ...(date.format === 'model-year' && date.year !== null
          ? [
              `Year: months August to December belong to the calendar year before the model year, so ${date.year}`,
            ]
          : []),
      ],
    };
  },
  cautions: [
    'A well-formed number is no proof of title or identity. Compare it with the hidden number, the registration and the papers.',
    'A number that is altered, missing or differs between hull and papers is for the registering authority or the police; the surveyor only reports it.',
  ],
  sources: [
    {
      citation: 'United States, 33 CFR 181.25: format of the number; 181.3: model year',
      standing: 'printed',
      note: '2015 edition; 181.25 also in a copy current to 30 September 2024',
    },
    {
      citation: '33 CFR 181.23, 181.27, 181.29: two numbers, “US-” beside it, place and height of characters',
      standing: 'printed',
    },
    {
      citation: 'U.S. Coast Guard, hull number validation guide (2018): numbers from 1 November 1972',
      standing: 'secondary',
    },
    {
      citation:
        'Older formats: Australian Personal Property Securities Register, hull identification number; sailboatdata.com forum reply 85740',
      standing: 'secondary',
      note: 'the current format compulsory from 1 August 1984',
    },
    {
      citation:
        'ISO 10087: two-letter country code and hyphen before the twelve characters, no check character',
      standing: 'memory',
      note: 'codes of ISO 3166 from memory; the layout is seen in the register’s example',
    },
    {
      citation:
        'Decade of the year digit: at most two years before the model year; 72 to 99 taken as 1972 to 1999',
      standing: 'practice',
      note: 'no source; our rule',
    },
  ],
});
