import { findingCreate } from '@garboard/contract/findings';
import { costBasisLabels, decimalsOf, isCurrency } from '@garboard/trade/costs';
import { type FindingColumnKey, plainWord } from '@garboard/trade/finding-columns';
import { readAmount, readDay, readHarm, readSystem, readUrgency } from '@garboard/trade/finding-words';
import type { z } from 'zod';
import { listOf, type Remark, type RowCells } from './row-cells.ts';

export type NewFinding = z.output<typeof findingCreate>;

/** Words that a row with a catalogue key and without a title takes from that entry. */
export interface EntryTexts {
  system: string;
  title: string;
  observed: string;
  consequence: string;
  recommendation: string;
  urgency: string;
  harms: string[];
  references: string[];
}

/** Fields of a finding by the column that they come from. */
const columnOfField: Record<string, FindingColumnKey> = {
  ...{ title: 'title', system: 'system', observed: 'observed', consequence: 'consequence' },
  ...{ recommendation: 'recommendation', urgency: 'urgency', withinDays: 'days', dueOnSet: 'dueBy' },
  ...{ harms: 'harms', references: 'standards', items: 'items', photoIds: 'photos', position: 'side' },
  ...{ catalogueKey: 'catalogueKey', catalogueVersion: 'catalogueVersion', cost: 'costFrom' },
  grading: 'severity',
};

/** The column behind a pointer of the contract's, such as `/withinDays`. */
export const columnBehind = (cells: RowCells, pointer: string): string => {
  const key = columnOfField[pointer.split('/')[1] ?? ''];
  return key ? cells.heading(key) : '';
};

/**
 * Reads a row as a finding of the contract. Photos are matched apart.
 *
 * @param entry of the row's catalogue key, when it has one that the firm's catalogue knows
 */
export function rowFinding(
  cells: RowCells,
  { entry, appendOthers }: { entry: EntryTexts | null; appendOthers: boolean },
): { finding: NewFinding | null; problems: Remark[] } {
  const problems = [...cells.problems];
  const wrong = (key: FindingColumnKey, detail: string): undefined => {
    problems.push({ column: cells.heading(key), detail });
    return undefined;
  };
  const text = (key: FindingColumnKey) => cells.cell(key);
  // The entry's words only where the row says nothing itself: a row with a title is the surveyor's own.
  const from = text('title') === '' ? entry : null;
  const urgency = readUrgencyCells(cells, from, wrong);
  const given = {
    system: readOne(cells, 'system', readSystem, wrong) ?? from?.system,
    title: text('title') || from?.title || '',
    observed: observedOf(cells, from, appendOthers),
    consequence: text('consequence') || from?.consequence || '',
    recommendation: text('recommendation') || from?.recommendation || '',
    ...urgency,
    harms: readHarms(cells, wrong) ?? from?.harms ?? [],
    references: text('standards') ? listOf(text('standards'), /;/) : (from?.references ?? []),
    items: listOf(text('items'), /;/).map((item) => ({ text: item })),
    catalogueKey: text('catalogueKey') || null,
    catalogueVersion: readWhole(cells, 'catalogueVersion', wrong),
    dueOnSet: readDueBy(cells, wrong),
    position: readPosition(cells, wrong),
    cost: readCost(cells, wrong),
    grading: readGrading(cells, wrong),
  };
  if (given.system === undefined && !text('system'))
    wrong('system', 'Say which part of the boat it is about.');
  if (!given.title) wrong('title', 'Give it a title: what one would say on the telephone.');
  if (problems.length > 0) return { finding: null, problems };
  const parsed = findingCreate.safeParse(given);
  if (parsed.success) return { finding: parsed.data, problems };
  for (const { path, message } of parsed.error.issues) {
    problems.push({ column: columnBehind(cells, `/${String(path[0])}`), detail: message });
  }
  return { finding: null, problems };
}

type Wrong = (key: FindingColumnKey, detail: string) => undefined;

function observedOf(cells: RowCells, from: EntryTexts | null, appendOthers: boolean): string {
  const others = appendOthers ? cells.others.map(({ heading, text }) => `${heading}: ${text}`) : [];
  const where = cells.cell('location').trim();
  const seen = cells.cell('observed') || from?.observed || '';
  return [seen, where && `Where: ${where}`, ...others].filter(Boolean).join('\n\n');
}

function readOne<K>(cells: RowCells, key: FindingColumnKey, read: (word: string) => K | null, wrong: Wrong) {
  const word = cells.cell(key);
  if (!word) return undefined;
  return (
    read(word) ??
    wrong(
      key,
      `“${word.slice(0, 60)}” is no system of the boat. Write one by its name in the portal, such as Engines or Gas (LPG).`,
    )
  );
}

function readUrgencyCells(cells: RowCells, from: EntryTexts | null, wrong: Wrong) {
  const word = cells.cell('urgency');
  const days = readWhole(cells, 'days', wrong);
  if (!word) {
    if (from) return { urgency: from.urgency, withinDays: days };
    return wrong('urgency', 'Say how urgent it is: before use, within days, next lay-up or note.') ?? {};
  }
  const read = readUrgency(word);
  if (!read) {
    const detail = `“${word.slice(0, 60)}” is no urgency. Write before use, within 30 days, next lay-up or note.`;
    return wrong('urgency', detail) ?? {};
  }
  const both = read.days !== null && days !== null && read.days !== days;
  if (both) wrong('days', `The urgency says ${read.days} days, this says ${days}. Leave one of them.`);
  return { urgency: read.urgency, withinDays: read.days ?? days };
}

function readHarms(cells: RowCells, wrong: Wrong) {
  const words = listOf(cells.cell('harms'), /[;,]/);
  if (words.length === 0) return undefined;
  return words.flatMap((word) => {
    const harm = readHarm(word);
    if (!harm)
      wrong('harms', `“${word.slice(0, 60)}” is no kind of harm. Write such as Flooding or Electric shock.`);
    return harm ? [harm] : [];
  });
}

function readWhole(cells: RowCells, key: FindingColumnKey, wrong: Wrong): number | null {
  const word = cells.cell(key).trim();
  if (!word) return null;
  if (/^\d{1,9}([.,]0+)?$/.test(word)) return Number.parseInt(word, 10);
  return wrong(key, `“${word.slice(0, 40)}” is no whole number.`) ?? null;
}

function readDueBy(cells: RowCells, wrong: Wrong): string | null {
  const word = cells.cell('dueBy').trim();
  if (!word) return null;
  const day = readDay(word);
  if (day === 'ambiguous') {
    return wrong('dueBy', `“${word}” can be read as two days. Write it as 2027-03-31.`) ?? null;
  }
  return day ?? wrong('dueBy', `“${word.slice(0, 40)}” is no day. Write it as 2027-03-31.`) ?? null;
}

/** From 0 to 1, or in per cent. */
function readShare(cells: RowCells, key: FindingColumnKey, wrong: Wrong): number | undefined {
  const word = cells.cell(key).trim().replace(',', '.');
  if (!word)
    return wrong(key, 'A place on the outline needs side, from stem and above keel, or none of them.');
  const percent = /^(\d+(?:\.\d+)?) ?%$/.exec(word)?.[1];
  const share = percent ? Number(percent) / 100 : Number(word);
  const fits = /^[\d.]+(e-?\d+)?( ?%)?$/i.test(word) && share >= 0 && share <= 1;
  return fits ? share : wrong(key, `“${word.slice(0, 40)}” is no share from 0 to 1, and no percentage.`);
}

const sides = new Map([
  ...['port', 'p', 'left'].map((word) => [word, 'port'] as const),
  ...['centre', 'center', 'c', 'middle', 'centreline', 'centerline'].map((word) => [word, 'centre'] as const),
  ...['starboard', 'stbd', 's', 'right'].map((word) => [word, 'starboard'] as const),
]);

function readPosition(cells: RowCells, wrong: Wrong) {
  const word = cells.cell('side').trim();
  if (!word && !cells.cell('along') && !cells.cell('height')) return null;
  const side = sides.get(plainWord(word));
  if (!side) wrong('side', `“${word.slice(0, 40)}” is no side. Write port, centre or starboard.`);
  return { side, along: readShare(cells, 'along', wrong), height: readShare(cells, 'height', wrong) };
}

function readCost(cells: RowCells, wrong: Wrong) {
  const [low, high] = [cells.cell('costFrom').trim(), cells.cell('costTo').trim()];
  const currency = cells.cell('currency').trim().toUpperCase();
  if (!low && !high) return null;
  if (!isCurrency(currency)) {
    return wrong('currency', 'Give the currency of the cost by its three letters, such as EUR.') ?? null;
  }
  const amount = (key: 'costFrom' | 'costTo', word: string) => {
    const read = readAmount(word, decimalsOf(currency));
    if (read === 'ambiguous')
      return wrong(key, `“${word}” may be a thousand or a fraction. Write 1250 or 1250.00.`);
    return read ?? wrong(key, `“${word.slice(0, 40)}” is no amount. Write 1250 or 1250.50.`);
  };
  const word = plainWord(cells.cell('costBasis'));
  const basis = (Object.entries(costBasisLabels) as [keyof typeof costBasisLabels, string][]).find(
    ([key, label]) => word === key || word === plainWord(label),
  )?.[0];
  if (word && !basis) wrong('costBasis', 'Write opinion or quotation.');
  return {
    low: amount('costFrom', low || high),
    high: amount('costTo', high || low),
    ...{ currency, basis: basis ?? 'opinion', note: cells.cell('costNote') },
  };
}

function readGrading(cells: RowCells, wrong: Wrong) {
  const probability = cells.cell('probability').trim().toUpperCase();
  const severity = readWhole(cells, 'severity', wrong);
  if (severity === null && !probability) return null;
  if (severity === null) return wrong('severity', 'Severity and probability go together.') ?? null;
  if (!probability) return wrong('probability', 'Severity and probability go together.') ?? null;
  return { severity, probability };
}
