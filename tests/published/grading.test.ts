import { openSlots } from '@garboard/trade/catalogue/slots';
import { costsByUrgency, costsInAll, decimalsOf, isCurrency, writtenCost } from '@garboard/trade/costs';
import { probabilityLevels, severityCategories, suggestUrgency } from '@garboard/trade/grading';
import { expect, it } from 'vitest';

// MIL-STD-882E (11 May 2012), table III, by rows A to F and columns 1 to 4, as printed.
const printed = [
  ['High', 'High', 'Serious', 'Medium'],
  ['High', 'High', 'Serious', 'Medium'],
  ['High', 'Serious', 'Medium', 'Low'],
  ['Serious', 'Medium', 'Medium', 'Low'],
  ['Medium', 'Medium', 'Medium', 'Low'],
  ['Eliminated', 'Eliminated', 'Eliminated', 'Eliminated'],
];
const ours: Record<string, string> = {
  ...{ High: 'before-use', Serious: 'within-days 30', Medium: 'next-layup', Low: 'note', Eliminated: 'note' },
};

it('suggests an urgency for each of the 24 printed cells, in the words of the cell', () => {
  for (const [row, probability] of probabilityLevels.entries()) {
    for (const [column, severity] of severityCategories.entries()) {
      const cell = printed[row]?.[column] ?? '';
      const { code, risk, words, urgency, withinDays } = suggestUrgency({ severity, probability });
      expect(code).toBe(`${severity}${probability}`);
      expect(risk).toBe(cell.toLowerCase());
      expect(words).toContain(code);
      expect(words).toContain(cell === 'Eliminated' ? 'Hazard eliminated' : `${cell} risk`);
      expect([urgency, withinDays].filter(Boolean).join(' ')).toBe(ours[cell]);
    }
  }
  expect(suggestUrgency({ severity: 2, probability: 'C' }).words).toBe(
    'Serious risk (2C: critical, occasional)',
  );
  expect(() => suggestUrgency({ severity: 7 as 1, probability: 'A' })).toThrow(RangeError);
});

it('adds costs by urgency and currency, never one currency to another', () => {
  const cost = { low: 100, high: 250, currency: 'EUR', basis: 'opinion' } as const;
  const totals = costsByUrgency([
    { urgency: 'note', cost },
    { urgency: 'before-use', cost: { ...cost, basis: 'quotation' } },
    { urgency: 'before-use', cost },
    { urgency: 'before-use', cost: { ...cost, currency: 'GBP' } },
    { urgency: 'next-layup', cost: null },
  ]);
  expect(totals.map((t) => [t.urgency, t.currency, t.low, t.high, t.findings, t.opinions])).toEqual([
    ['before-use', 'EUR', 200, 500, 2, 1],
    ['before-use', 'GBP', 100, 250, 1, 1],
    ['note', 'EUR', 100, 250, 1, 1],
  ]);
  expect(costsInAll(totals)).toEqual([
    { currency: 'EUR', low: 300, high: 750, findings: 3, opinions: 2 },
    { currency: 'GBP', low: 100, high: 250, findings: 1, opinions: 1 },
  ]);
});

it('writes amounts with the decimals of their currency', () => {
  expect(['EUR', 'JPY', 'KWD'].map(decimalsOf)).toEqual([2, 0, 3]);
  expect(writtenCost({ low: 120_000, high: 180_050, currency: 'EUR' })).toBe('1,200 to 1,800.50 EUR');
  expect(writtenCost({ low: 41_500, high: 41_500, currency: 'JPY' })).toBe('41,500 JPY');
  expect(writtenCost({ low: 1500, high: 1500, currency: 'KWD' })).toBe('1.500 KWD');
  expect([isCurrency('EUR'), isCurrency('eur'), isCurrency('XQQ')]).toEqual([true, false, false]);
});

it('tells gaps left open from other braces', () => {
  expect(openSlots(['The {item} {location}', 'Set {x} and {item}', '{}'])).toEqual(['item', 'location']);
});
