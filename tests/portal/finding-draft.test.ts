import type { Finding } from '@garboard/contract/findings';
import { putTogether } from '@garboard/portal/app/merge';
import { costFrom, costProblem, draftOfCost, noCost } from '@garboard/portal/pages/findings/costDraft';
import { bodyOf, draftOf, missingFrom } from '@garboard/portal/pages/findings/findingDraft';
import { numbersIn, numbersOf } from '@garboard/portal/pages/findings/photoNumbers';
import { refilled, slotsIn } from '@garboard/portal/pages/findings/slotTexts';
import { describe, expect, it } from 'vitest';

describe('photos by number', () => {
  it('are read in the order written, runs and all, and written back', () => {
    expect(numbersIn('3, 7-9', 60)).toEqual({ numbers: [3, 7, 8, 9], unread: [] });
    expect(numbersIn(' 9 ;2 – 4, 3', 60).numbers).toEqual([9, 2, 3, 4]);
    expect(numbersIn('', 60)).toEqual({ numbers: [], unread: [] });
    expect(numbersOf([3, 7, 8, 9, 2, 1])).toBe('3, 7-9, 2, 1');
    expect(numbersIn(numbersOf([5, 6, 1, 2, 3]), 6).numbers).toEqual([5, 6, 1, 2, 3]);
  });

  it('that name none are told, the others are kept', () => {
    expect(numbersIn('0, 4, 61, 9-7, x, 3-', 60)).toEqual({
      numbers: [4],
      unread: ['0', '61', '9-7', 'x', '3-'],
    });
  });
});

describe('a cost being written', () => {
  const written = (low: string, high = '', currency = 'EUR') => costFrom({ ...noCost, low, high, currency });

  it('is read in the ways people write amounts', () => {
    expect(written('1200')).toMatchObject({ low: 120_000, high: 120_000, basis: 'opinion' });
    expect(written('1,200', '1 800.50')).toMatchObject({ low: 120_000, high: 180_050 });
    expect(written('1.200,5')).toMatchObject({ low: 120_050 });
    expect(written('12,50')).toMatchObject({ low: 1250 });
    expect(written('41500', '', 'jpy')).toMatchObject({ low: 41_500, currency: 'JPY' });
    expect(written('1.500', '', 'KWD')).toMatchObject({ low: 1500 });
    expect(written('')).toBeNull();
  });

  it('is refused with a sentence while it can’t be read', () => {
    for (const [low, high, currency] of [
      ['12', '', ''],
      ['12', '', 'XQQ'],
      ['twelve', '', 'EUR'],
      ['12.345', '6', 'EUR'],
      ['20', '10', 'EUR'],
      ['-4', '', 'EUR'],
      ['10.5', '', 'JPY'],
    ] as const) {
      expect(written(low, high, currency)).toBeUndefined();
      expect(costProblem({ ...noCost, low, high, currency })).toMatch(/\.$/);
    }
  });

  it('comes back as it was kept', () => {
    const kept: Finding['cost'] = { low: 5, high: 180_050, currency: 'EUR', basis: 'quotation', note: 'n' };
    expect(costFrom(draftOfCost(kept))).toEqual(kept);
    expect(draftOfCost(kept)).toMatchObject({ low: '0.05', high: '1800.50' });
    expect(draftOfCost({ ...kept, low: 41_500, high: 41_500 })).toMatchObject({ low: '415', high: '' });
  });
});

describe('a finding being written', () => {
  it('says what it still needs before it can be kept', () => {
    const empty = draftOf(null);
    expect(missingFrom(empty)).toEqual(['a title', 'the system', 'how soon']);
    expect(() => bodyOf(empty)).toThrow(/a title, the system and how soon/);
    const draft = { ...empty, title: 'Worn', system: 'deck', urgency: 'within-days' } as const;
    expect(missingFrom(draft)).toEqual(['the days']);
    expect(missingFrom({ ...draft, withinDays: '30', cost: { ...noCost, low: 'x' } })).toEqual([
      'the rest of the cost',
    ]);
    expect(bodyOf({ ...draft, withinDays: '30' })).toMatchObject({
      withinDays: 30,
      cost: null,
      grading: null,
    });
  });
});

describe('slots of a known defect', () => {
  const template = {
    title: 'Seacock seized',
    observed: 'The seacock {location} serving {item} is seized.',
    consequence: 'It cannot be shut.',
    recommendation: 'Renew {item}.',
  };

  it('are asked for once each and fill every text until it is edited by hand', () => {
    expect(slotsIn(template)).toEqual(['location', 'item']);
    const first = refilled(template, template, {}, { item: 'the heads' });
    expect(first).toMatchObject({
      observed: 'The seacock {location} serving the heads is seized.',
      recommendation: 'Renew the heads.',
    });
    const edited = { ...template, ...first, recommendation: 'Renew both.' };
    const next = refilled(template, edited, { item: 'the heads' }, { item: 'the galley', location: 'aft' });
    expect(next.observed).toBe('The seacock aft serving the galley is seized.');
    expect(next).not.toHaveProperty('recommendation');
  });
});

describe('two people’s changes', () => {
  const base = { a: '1', b: '1', c: ['x'] };
  it('are put together unless they are of the same field', () => {
    expect(putTogether(base, { ...base, a: '2' }, { ...base, b: '3' })).toEqual({ ...base, a: '2', b: '3' });
    expect(putTogether(base, { ...base, a: '2' }, { ...base, a: '2' })).toEqual({ ...base, a: '2' });
    expect(putTogether(base, { ...base, c: ['x', 'y'] }, { ...base, c: [] })).toBeNull();
  });
});
