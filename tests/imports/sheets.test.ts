import { findingCreate } from '@garboard/contract/findings';
import { namesIn, photoFinder } from '@garboard/core/imports/photo-names';
import { readSheet } from '@garboard/core/imports/read-sheet';
import { listOf, rowCells } from '@garboard/core/imports/row-cells';
import { rowFinding } from '@garboard/core/imports/row-finding';
import { findingsSheet, sampleSheet, type WritableFinding } from '@garboard/core/imports/write-sheet';
import { columnOf, findingColumns } from '@garboard/trade/finding-columns';
import { readAmount, readDay, readUrgency } from '@garboard/trade/finding-words';
import { harms, systems } from '@garboard/trade/vocabulary';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

const bytes = (text: string, encoding: BufferEncoding = 'utf8') => Buffer.from(text, encoding);
const swapped = (buffer: Buffer) => Buffer.from(buffer).swap16();

/** A sheet's rows as findings, or the problems of each. */
function read(text: string | Buffer) {
  const sheet = readSheet(typeof text === 'string' ? bytes(text) : text);
  return sheet.rows.map(({ line, cells }) => ({
    line,
    ...rowFinding(rowCells(sheet, cells), { entry: null, appendOthers: true }),
  }));
}
const first = (text: string | Buffer) => read(text)[0];
const problemsOf = (text: string) =>
  (first(text)?.problems ?? []).map(({ column, detail }) => `${column}: ${detail}`).join(' ');

describe('sheets as spreadsheets write them', () => {
  const text = 'Title,System,Urgency\r\nRöhre 5 mm “weich”,gas,Before use\r\n';
  const title = 'Röhre 5 mm “weich”';
  it.each<[string, Buffer]>([
    ['UTF-8', bytes(text)],
    ['UTF-8 with a mark', bytes(`\ufeff${text}`)],
    ['UTF-16 little end first, with a mark', bytes(`\ufeff${text}`, 'utf16le')],
    ['UTF-16 big end first, with a mark', swapped(bytes(`\ufeff${text}`, 'utf16le'))],
    ['UTF-16 little end first, without', bytes(text, 'utf16le')],
    ['UTF-16 big end first, without', swapped(bytes(text, 'utf16le'))],
    ['semicolons', bytes(text.replaceAll(',', ';'))],
    ['tabs', bytes(text.replaceAll(',', '\t'))],
    ['upright strokes', bytes(text.replaceAll(',', '|'))],
    ['a line that says what parts the cells', bytes(`sep=;\r\n${text.replaceAll(',', ';')}`)],
    ['line feeds', bytes(text.replaceAll('\r\n', '\n'))],
    ['carriage returns', bytes(text.replaceAll('\r\n', '\r'))],
    ['mixed line ends', bytes(text.replace('\r\n', '\n'))],
    ['empty lines and columns', bytes(text.replaceAll('\r\n', ',,,\r\n,,,\r\n'))],
    ['UTF-16 with tabs', bytes(`\ufeff${text.replaceAll(',', '\t')}`, 'utf16le')],
  ])('%s', (_what, buffer) => {
    const { finding, problems } = first(buffer) ?? {};
    expect(problems).toEqual([]);
    expect(finding).toMatchObject({ title, system: 'gas', urgency: 'before-use' });
  });

  it('Windows-1252, and says so', () => {
    const sheet = readSheet(Buffer.from('Title;System;Urgency\nR\xf6hre \x96 5 \x80;gas;note\n', 'latin1'));
    expect(sheet.rows[0]?.cells[0]).toBe('Röhre – 5 €');
    expect(sheet.remarks.join()).toContain('Windows-1252');
  });

  it('quotes, quotes within, commas and line breaks in cells, and the line where each row begins', () => {
    const sheet = [
      'URGENCY ,what_was-seen,SYSTEM,title',
      'note,"First line.',
      '',
      'Third, with ""quotes"".",Gas (LPG),"Hose, ""soft"""',
      '',
      'note,x,rig-sails,5" hose',
    ].join('\n');
    const rows = read(sheet);
    expect(rows.map(({ line }) => line)).toEqual([2, 6]);
    expect(rows[0]?.finding).toMatchObject({
      ...{ title: 'Hose, "soft"', observed: 'First line.\n\nThird, with "quotes".', system: 'gas' },
    });
    expect(rows[1]?.finding).toMatchObject({ title: '5" hose', system: 'rig-sails' });
  });

  it('cells that look like formulas stay text', () => {
    const sheet = `Title,System,Urgency,What was seen\n=1+1,gas,note,'=HYPERLINK("x")\n"@SUM(A1)",gas,note,-5 V\n`;
    const [one, two] = read(sheet);
    expect(one?.finding).toMatchObject({ title: '=1+1', observed: '=HYPERLINK("x")' });
    expect(two?.finding).toMatchObject({ title: '@SUM(A1)', observed: '-5 V' });
    const { text } = findingsSheet('x.csv', [{ ...plain, title: '=1+1', observed: '\'=A1"' }]);
    expect(text).toContain("'=1+1,");
    expect(text).toContain("''=A1");
    expect(first(text)?.finding).toMatchObject({ title: '=1+1', observed: '\'=A1"' });
  });
});

const plain: WritableFinding = {
  ...{ system: 'gas', title: 'Hose', observed: '', consequence: '', recommendation: '', urgency: 'note' },
  ...{ withinDays: null, dueOnSet: null, harms: [], references: [], catalogueKey: null, position: null },
  ...{ catalogueVersion: null, cost: null, grading: null, items: [], photos: [] },
};

describe('sheets that can’t be read', () => {
  it.each<[string, string | Buffer, string]>([
    ['nothing', '   \n\n', 'empty'],
    ['headings alone', 'Title,System,Urgency\n', 'no row below'],
    ['no headings', 'Hose,gas,note\nRail,deck,note\n', 'no column “Title”, “System”, “Urgency”'],
    ['one heading missing', 'Title,System\nHose,gas\n', 'no column “Urgency”'],
    [
      'two that mean the same',
      'Title,Heading,System,Urgency\na,b,gas,note\n',
      '“Title” and “Heading” mean the same',
    ],
    ['a quote never closed', 'Title,System,Urgency\n"Hose,gas,note\nRail,deck,note\n', 'never closed'],
    ['a program’s own file', Buffer.from([1, 2, 0, 3, 0, 0, 255, 254, 0, 9]), 'no plain text'],
    ['too many rows', `Title,System,Urgency\n${'Hose,gas,note\n'.repeat(1001)}`, 'at most 1000'],
    ['too many columns', `Title,System,Urgency${',x'.repeat(200)}y\nHose,gas,note\n`, 'at most 100'],
  ])('%s', (_what, text, words) => {
    expect(() => readSheet(typeof text === 'string' ? bytes(text) : text)).toThrow(words);
  });
});

describe('cells that are wrong are named with what to do', () => {
  const row = (heading: string, cell: string) =>
    problemsOf(`Title,System,Urgency,${heading}\nHose,gas,before use,${cell}\n`);
  it.each<[string, string, string]>([
    ['Days', '14', 'Days: State the number of days'],
    ['Days', 'soon', 'Days: “soon” is no whole number'],
    ['Due by', '03/04/2027', 'can be read as two days'],
    ['Due by', '31.2.2027', 'is no day'],
    ['Side', 'left-ish', 'is no side'],
    ['From stem', '1.2', 'is no share'],
    ['Harms', 'Boredom', 'is no kind of harm'],
    ['Cost', '1250', 'Currency: Give the currency'],
    ['Severity', '2', 'go together'],
    ['Photos,', 'a.jpg,b.jpg', 'stands under no heading'],
  ])('%s %s', (heading, cell, words) => {
    expect(row(heading, cell)).toContain(words);
  });
  it('money', () => {
    const sheet = (from: string, to: string, currency: string, basis = '') =>
      `Title;System;Urgency;Cost from;Cost to;Currency;Cost basis\nHose;gas;note;${from};${to};${currency};${basis}\n`;
    expect(first(sheet('1250,50', '', 'eur'))?.finding?.cost).toMatchObject({
      ...{ low: 125_050, high: 125_050, currency: 'EUR', basis: 'opinion' },
    });
    expect(first(sheet('900', '1 250', 'JPY', 'Yard’s quotation'))?.finding?.cost).toMatchObject({
      ...{ low: 900, high: 1250, basis: 'quotation' },
    });
    expect(problemsOf(sheet('1,250', '', 'EUR'))).toContain('may be a thousand or a fraction');
    expect(problemsOf(sheet('20', '10', 'EUR'))).toContain('upper end');
  });
  it('missing words', () => {
    expect(problemsOf('Title,System,Urgency\n,,note\n')).toBe(
      'System: Say which part of the boat it is about. Title: Give it a title: what one would say on the telephone.',
    );
    expect(problemsOf(`Title,System,Urgency\n${'x'.repeat(201)},gas,note\n`)).toContain(
      'At most 200 characters',
    );
  });
});

describe('words as people write them', () => {
  it.each([
    ['Before next use', 'before-use', null],
    ['BEFORE USE', 'before-use', null],
    ['within 30 days', 'within-days', 30],
    ['7 days', 'within-days', 7],
    ['At next haul-out', 'next-layup', null],
    ['next-layup', 'next-layup', null],
    ['Note', 'note', null],
  ])('%s', (word, urgency, days) => expect(readUrgency(word)).toEqual({ urgency, days }));
  it.each([
    ['2027-03-31', '2027-03-31'],
    ['31.3.2027', '2027-03-31'],
    ['31/03/2027', '2027-03-31'],
    ['3/31/2027', '2027-03-31'],
    ['4/4/2027', '2027-04-04'],
    ['31 March 2027', '2027-03-31'],
    ['1. Sept. 2027', '2027-09-01'],
    ['2027-02-29', null],
    ['tomorrow', null],
  ])('%s', (word, day) => expect(readDay(word)).toBe(day));
  it.each<[string, number | string | null]>([
    ['1250', 125_000],
    ['1,250.50', 125_050],
    ['1.250,50', 125_050],
    ["1'250", 125_000],
    ['1.234.567', 123_456_700],
    ['12,34,5', null],
    ['1.5', 150],
    ['-3', null],
    ['1e3', null],
  ])('%s', (word, minor) => expect(readAmount(word, 2)).toBe(minor));
  it('columns that we don’t know and places in words go to the end of what was seen', () => {
    const sheet = 'Title,System,Urgency,Seen,Where,Inspector’s mood\nHose,gas,note,Soft.,Locker,Good\n';
    expect(first(sheet)?.finding?.observed).toBe('Soft.\n\nWhere: Locker\n\nInspector’s mood: Good');
  });
  it('lists', () => {
    expect(listOf('a; b ;', /;/)).toEqual(['a', 'b']);
    expect(listOf('a; b\nc', /;/)).toEqual(['a; b', 'c']);
  });
});

describe('names of photos', () => {
  const given = ['Deck/IMG_1.JPG', 'hull/IMG_1.jpg', 'hull/IMG_2.jpeg', 'a, b.jpg'].map((name) => ({
    ...{ name, photoId: null },
  }));
  const find = photoFinder(given, [{ name: 'IMG_9.jpg', photoId: '9' }]);
  const found = (name: string) => {
    const match = find(name);
    return 'photo' in match ? match.photo.name : 'several' in match ? match.several.length : null;
  };
  it.each<[string, string | number | null]>([
    ['deck/img_1.jpg', 'Deck/IMG_1.JPG'],
    ['.\\Deck\\IMG_1.jpg', 'Deck/IMG_1.JPG'],
    ['C:\\Photos\\IMG_2.jpeg', 'hull/IMG_2.jpeg'],
    ['IMG_2', 'hull/IMG_2.jpeg'],
    ['IMG_1.jpg', 2],
    ['IMG_9.JPG', 'IMG_9.jpg'],
    ['IMG_3.jpg', null],
    ['', null],
  ])('%s', (name, expected) => expect(found(name)).toBe(expected));
  it('are parted, unless the whole is one', () => {
    expect(namesIn('a, b.jpg', find)).toEqual(['a, b.jpg']);
    expect(namesIn('IMG_2.jpeg, IMG_9.jpg;x.jpg', find)).toEqual(['IMG_2.jpeg', 'IMG_9.jpg', 'x.jpg']);
    expect(namesIn('a, b.jpg\nIMG_2\n', find)).toEqual(['a, b.jpg', 'IMG_2']);
  });
});

describe('the sample', () => {
  it('has every column under its own heading, and is read without a word', () => {
    const sample = bytes(sampleSheet().text);
    expect(readSheet(sample).headings.map(columnOf)).toEqual(findingColumns.map(({ key }) => key));
    expect(first(sample)?.problems).toEqual([]);
  });
});

// Any text that the contract takes, with what breaks careless writers of CSV in it.
const piece = fc.oneof(
  fc.constantFrom(
    '"',
    '""',
    ',',
    ';',
    '|',
    '\t',
    '\n',
    '\n\n',
    "'",
    '=',
    '+',
    '-',
    '@',
    'sep=;',
    ' ',
    '·',
    '🚤',
    'é',
  ),
  fc.fullUnicodeString({ maxLength: 8 }),
  fc.string({ maxLength: 12 }),
);
const words = fc.array(piece, { maxLength: 8 }).map((parts) => parts.join(''));
const oneLine = words.map((text) => text.replace(/\s+/g, ' ')).filter((text) => text.trim() !== '');
const share = fc.double({ min: 0, max: 1, noNaN: true });
const anyFinding = fc
  .record({
    system: fc.constantFrom(...systems),
    title: oneLine,
    observed: words,
    consequence: words,
    recommendation: words,
    timing: fc.oneof(
      fc.constantFrom('before-use', 'next-layup', 'note').map((urgency) => ({ urgency })),
      fc.integer({ min: 1, max: 3650 }).map((withinDays) => ({ urgency: 'within-days', withinDays })),
    ),
    harms: fc.uniqueArray(fc.constantFrom(...harms), { maxLength: 4 }),
    references: fc.array(oneLine, { maxLength: 3 }),
    items: fc.array(
      oneLine.map((text) => ({ text })),
      { maxLength: 3 },
    ),
    catalogueKey: fc.option(fc.constantFrom('gas-hose-perished', 'hull-osmosis')),
    position: fc.option(
      fc.record({ along: share, height: share, side: fc.constantFrom('port', 'centre', 'starboard') }),
    ),
    cost: fc.option(
      fc.record({
        low: fc.integer({ min: 0, max: 1_000_000 }),
        more: fc.integer({ min: 0, max: 1_000_000 }),
        currency: fc.constantFrom('EUR', 'JPY', 'KWD', 'USD'),
        basis: fc.constantFrom('quotation', 'opinion'),
        note: words,
      }),
    ),
    grading: fc.option(
      fc.record({ severity: fc.constantFrom(1, 2, 3, 4), probability: fc.constantFrom('A', 'C', 'F') }),
    ),
    dueOnSet: fc.option(fc.constantFrom('2027-03-31', '2030-01-02')),
  })
  .map(({ timing, cost, ...rest }) => {
    const { low, more, ...other } = cost ?? { low: 0, more: 0 };
    return { ...rest, ...timing, cost: cost && { ...other, low, high: low + more } };
  })
  .map((finding) => findingCreate.safeParse(finding))
  .filter((parsed) => parsed.success)
  .map((parsed) => parsed.data as NonNullable<typeof parsed.data>);

describe('any findings', () => {
  it('written as a sheet are read as the same findings', () => {
    fc.assert(
      fc.property(fc.array(anyFinding, { minLength: 1, maxLength: 4 }), (findings) => {
        const { text } = findingsSheet(
          'x.csv',
          findings.map((finding) => ({ ...finding, photos: [] })),
        );
        const rows = read(text);
        expect(rows.flatMap(({ problems }) => problems)).toEqual([]);
        expect(rows.map(({ finding }) => finding)).toEqual(findings);
      }),
      { numRuns: 300 },
    );
  });
});
