import { evaluate, InputsRefused } from '@garboard/trade/worksheets/core/evaluate';
import { Money } from '@garboard/trade/worksheets/core/money';
import { comparableSales } from '@garboard/trade/worksheets/value/comparable-sales';
import { costLessDepreciation } from '@garboard/trade/worksheets/value/cost-less-depreciation';
import {
  mean,
  median,
  medianAbsoluteDeviation,
  modifiedZ,
  quantile,
} from '@garboard/trade/worksheets/value/decimal-statistics';
import { reconcile } from '@garboard/trade/worksheets/value/reconcile';
import { downToStep, marketStep, toStep, upToStep } from '@garboard/trade/worksheets/value/rounding';
import fc from 'fast-check';
import * as statistics from 'simple-statistics';
import { describe, expect, it } from 'vitest';

const cents = (most = 50_000_000) => fc.integer({ min: 100, max: most }).map((n) => (n / 100).toFixed(2));
const share = (most: number) => fc.integer({ min: -most * 100, max: most * 100 }).map((n) => `${n / 100}%`);
const date = fc
  .integer({ min: 0, max: 1500 })
  .map((n) => new Date(Date.UTC(2023, 0, 1 + n)).toISOString().slice(0, 10));
const maybe = <T>(arbitrary: fc.Arbitrary<T>) => fc.option(arbitrary, { nil: undefined });

const sale = fc.record({
  boat: fc.constantFrom('Sloop', 'Ketch <b>', 'Launch & tender'),
  price: cents(),
  basis: fc.constantFrom('sold', 'asking'),
  date,
  terms: maybe(share(20)),
  outlay: maybe(fc.integer({ min: 0, max: 5000 })),
  location: maybe(share(10)),
  condition: maybe(fc.oneof(share(10), fc.integer({ min: -3000, max: 3000 }))),
  equipment: maybe(fc.integer({ min: -3000, max: 3000 })),
});
const sales = fc.record({
  currency: fc.constantFrom('USD', 'eur', 'GBP'),
  valueOn: date,
  marketChange: fc.integer({ min: -12, max: 12 }),
  askingGap: fc.integer({ min: 0, max: 20 }),
  method: fc.constantFrom('median', 'mean', 'least-adjusted'),
  sales: fc.array(sale, { minLength: 1, maxLength: 12 }),
});

const outcome = (worksheet: Parameters<typeof evaluate>[0], inputs: unknown) => {
  try {
    return evaluate(worksheet, JSON.parse(JSON.stringify(inputs)));
  } catch (error) {
    if (error instanceof InputsRefused) return undefined;
    throw error;
  }
};
const found = (result: ReturnType<typeof evaluate>, key: string) => Number(result.outputs[key]?.value);
const amounts = (written: readonly string[]) => written.map((w) => new Money(w));

describe('decimal statistics against simple-statistics', () => {
  it('mean, median, quartiles, median absolute deviation', () => {
    fc.assert(
      fc.property(fc.array(cents(), { minLength: 1, maxLength: 40 }), (written) => {
        const ours = amounts(written);
        const theirs = written.map(Number);
        const same = (a: Money, b: number) => expect(Math.abs(a.toNumber() - b)).toBeLessThan(1e-6);
        same(mean(ours), statistics.mean(theirs));
        same(median(ours), statistics.median(theirs));
        same(quantile(ours, 0.25), statistics.quantile(theirs, 0.25));
        same(quantile(ours, 0.75), statistics.quantile(theirs, 0.75));
        same(medianAbsoluteDeviation(ours), statistics.medianAbsoluteDeviation(theirs));
      }),
    );
  });

  it('modified z moves neither with the currency nor with an amount added to all', () => {
    fc.assert(
      fc.property(fc.array(cents(), { minLength: 3, maxLength: 20 }), cents(10_000), (written, factor) => {
        const z = modifiedZ(amounts(written));
        const moved = modifiedZ(amounts(written).map((a) => a.mul(factor).add(1000)));
        for (const [i, score] of z.entries()) {
          expect(moved[i]?.sub(score).abs().lt('1e-20')).toBe(true);
        }
      }),
    );
  });
});

describe('rounding to a market’s step', () => {
  it('the value lies within half a step, the range holds it, and the step is at most a hundredth', () => {
    fc.assert(
      fc.property(cents(2_000_000_000), (written) => {
        const value = new Money(written);
        const step = marketStep(value);
        expect(step.lte(Money.max(value.div(100), '0.01'))).toBe(true);
        expect(step.mul(10).gt(value.div(100))).toBe(true);
        expect(toStep(value, step).sub(value).abs().lte(step.div(2))).toBe(true);
        expect(downToStep(value, step).lte(value) && upToStep(value, step).gte(value)).toBe(true);
      }),
    );
  });
});

describe('comparable sales', () => {
  it('the range holds the value, the value lies among the prices, and nothing is NaN', () => {
    fc.assert(
      fc.property(sales, (inputs) => {
        const result = outcome(comparableSales, inputs);
        if (!result) return;
        expect(JSON.stringify(result)).not.toMatch(/NaN|undefined|Infinity/);
        if (result.outputs.value?.value === null) {
          expect(result.verdict).toBe('indeterminate');
          return;
        }
        const of = (key: string) => found(result, key);
        expect(of('low')).toBeLessThanOrEqual(of('value'));
        expect(of('high')).toBeGreaterThanOrEqual(of('value'));
        expect(of('indicated')).toBeGreaterThanOrEqual(of('lowest') - 0.01);
        expect(of('indicated')).toBeLessThanOrEqual(of('highest') + 0.01);
      }),
      { numRuns: 60 },
    );
  });

  it('median and mean of the adjusted prices agree with simple-statistics', () => {
    fc.assert(
      fc.property(fc.array(cents(), { minLength: 3, maxLength: 15 }), (prices) => {
        const on = '2026-06-01';
        const result = evaluate(comparableSales, {
          currency: 'USD',
          valueOn: on,
          sales: prices.map((price) => ({ boat: 'Boat', price, basis: 'sold', date: on })),
        });
        expect(found(result, 'median')).toBeCloseTo(statistics.median(prices.map(Number)), 1);
        expect(found(result, 'mean')).toBeCloseTo(statistics.mean(prices.map(Number)), 1);
      }),
      { numRuns: 60 },
    );
  });

  it('an adjustment upward never lowers the value, and the order of the sales changes nothing', () => {
    fc.assert(
      fc.property(sales, fc.nat(11), (inputs, which) => {
        const plain = { ...inputs, method: 'mean', fewestSales: 1 };
        const raised = plain.sales.map((s, i) =>
          i === which % plain.sales.length ? { ...s, equipment: 3001 } : s,
        );
        const [before, after, turned] = [
          plain,
          { ...plain, sales: raised },
          { ...plain, sales: plain.sales.toReversed() },
        ].map((given) => outcome(comparableSales, given));
        if (!before || !after || !turned) return;
        expect(found(after, 'indicated')).toBeGreaterThanOrEqual(found(before, 'indicated'));
        expect(turned.outputs).toEqual(before.outputs);
        expect(turned.verdict).toBe(before.verdict);
      }),
      { numRuns: 60 },
    );
  });

  it('a sale is the same with its adjustment in money or in per cent', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 1000 }),
        fc.integer({ min: -90, max: 100 }),
        (hundreds, percent) => {
          const of = (condition: unknown) =>
            evaluate(comparableSales, {
              currency: 'USD',
              valueOn: '2026-06-01',
              fewestSales: 1,
              sales: [{ boat: 'Boat', price: hundreds * 100, basis: 'sold', date: '2026-06-01', condition }],
            });
          expect(of(`${percent}%`).outputs).toEqual(of(hundreds * percent).outputs);
        },
      ),
      { numRuns: 40 },
    );
  });
});

const part = fc.record({
  part: fc.constant('Hull'),
  costNew: cents(),
  curable: maybe(fc.integer({ min: 0, max: 1000 })),
  effectiveAge: fc.integer({ min: 0, max: 60 }),
  remainingLife: fc.integer({ min: 0, max: 60 }),
  rate: fc.integer({ min: 0, max: 40 }),
});

describe('cost less depreciation', () => {
  const parts = fc.array(part, { minLength: 1, maxLength: 5 });
  const method = fc.constantFrom('straight', 'declining');
  const given = (m: string, p: unknown, more = {}) => ({ currency: 'USD', method: m, parts: p, ...more });

  it('parts add up, the share stays between 0 and 100 per cent, and nothing is NaN', () => {
    fc.assert(
      fc.property(parts, method, (p, m) => {
        const result = outcome(costLessDepreciation, given(m, p));
        if (!result) return;
        expect(JSON.stringify(result)).not.toMatch(/NaN|undefined|Infinity/);
        const of = (key: string) => found(result, key);
        expect(of('depreciated')).toBeGreaterThanOrEqual(0);
        expect(of('depreciated')).toBeLessThanOrEqual(100);
        expect(of('costNew') - of('depreciation')).toBeCloseTo(of('indicated'), 1);
        expect(of('curable') + of('incurable') + of('obsolescence')).toBeCloseTo(of('depreciation'), 1);
      }),
      { numRuns: 60 },
    );
  });

  it('older is worth no more, either way of counting; months count as years', () => {
    fc.assert(
      fc.property(part, method, fc.integer({ min: 1, max: 20 }), (p, m, years) => {
        const whole = { ...p, remainingLife: p.remainingLife + 1 };
        const young = outcome(costLessDepreciation, given(m, [whole]));
        const old = outcome(
          costLessDepreciation,
          given(m, [{ ...whole, effectiveAge: p.effectiveAge + years }]),
        );
        const months = { value: p.effectiveAge * 12, unit: 'month' };
        const inMonths = outcome(costLessDepreciation, given(m, [{ ...whole, effectiveAge: months }]));
        if (!young || !old || !inMonths) return;
        expect(found(old, 'indicated')).toBeLessThanOrEqual(found(young, 'indicated'));
        expect(found(inMonths, 'indicated')).toBeCloseTo(found(young, 'indicated'), 2);
        expect(inMonths.verdict).toBe(young.verdict);
      }),
      { numRuns: 60 },
    );
  });

  it('declining agrees with a plain power', () => {
    fc.assert(
      fc.property(part, (p) => {
        const result = outcome(costLessDepreciation, given('declining', [p]));
        if (!result) return;
        const curable = p.curable ?? 0;
        const left = (Number(p.costNew) - curable) * (1 - p.rate / 100) ** p.effectiveAge;
        expect(Math.abs(found(result, 'indicated') - left)).toBeLessThan(0.011);
      }),
      { numRuns: 60 },
    );
  });
});

describe('reconcile', () => {
  it('the value lies between the approaches and the range holds it', () => {
    fc.assert(
      fc.property(cents(), cents(), fc.integer({ min: 1, max: 99 }), (salesValue, costValue, salesWeight) => {
        const why = 'judged by its evidence';
        const result = evaluate(reconcile, {
          currency: 'USD',
          valueOn: '2026-06-01',
          kindOfValue: 'market',
          salesValue,
          salesWeight,
          costValue,
          costWeight: 100 - salesWeight,
          salesReason: why,
          costReason: why,
          incomeReason: why,
        });
        const of = (key: string) => found(result, key);
        expect(JSON.stringify(result)).not.toMatch(/NaN|undefined|Infinity/);
        expect(of('indicated')).toBeGreaterThanOrEqual(
          Math.min(Number(salesValue), Number(costValue)) - 0.01,
        );
        expect(of('indicated')).toBeLessThanOrEqual(Math.max(Number(salesValue), Number(costValue)) + 0.01);
        expect(of('low')).toBeLessThanOrEqual(of('value'));
        expect(of('high')).toBeGreaterThanOrEqual(of('value'));
        expect(of('salesPart') + of('costPart')).toBeCloseTo(of('indicated'), 1);
      }),
      { numRuns: 80 },
    );
  });
});
