import { agreementText } from '@garboard/trade/engagement';
import { feeLines, type Rates, reckonLine, totalsOf, writtenAmount, writtenRate } from '@garboard/trade/fees';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

const rates: Rates = {
  ...{ currency: 'EUR', perLength: 2_450, lengthUnit: 'm', perHour: 9_500, perDistance: 42 },
  ...{ distanceUnit: 'km', minimum: 45_000, taxRate: 20_000 },
};
const line = (price: number, taxRate: number, quantity = 1_000) =>
  reckonLine({ text: 'Work', unit: '', quantity, price, taxRate });

describe('tax, each line rounded half up', () => {
  // developer.wafeq.com/reference/calculations-and-rounding prints 45.30 at 5% as 2.27 and 33.45 at 10% as 3.35,
  // together 5.62 on 78.75, in all 84.37; both halves go up.
  it('is as a published example has it', () => {
    const lines = [line(4_530, 5_000), line(3_345, 10_000)];
    expect(lines.map((l) => l.tax)).toEqual([227, 335]);
    expect(totalsOf(lines)).toEqual({ net: 7_875, tax: 562, total: 8_437 });
  });
  // wiki.dolibarr.org, VAT setup, calculation and rounding rules: twice 1.24 at 10%, rounded line by line, is 0.24;
  // rounded on the sum it would be 0.25.
  it('is the sum of rounded lines, not the rounded tax of the sum', () => {
    expect(totalsOf([line(124, 10_000), line(124, 10_000)]).tax).toBe(24);
    expect(line(248, 10_000).tax).toBe(25);
  });
  it('takes a reduction off as the same charge was put on', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 1_000_000 }),
        fc.integer({ min: 1, max: 100_000 }),
        fc.integer({ min: 0, max: 100_000 }),
        (price, quantity, taxRate) => {
          const [on, off] = [line(price, taxRate, quantity), line(-price, taxRate, quantity)];
          expect([on.net + off.net, on.tax + off.tax]).toEqual([0, 0]);
          // By exact thirds of a unit beyond floating point: within half a minor unit of the true value.
          expect(Math.abs(on.net * 1_000 - price * quantity)).toBeLessThanOrEqual(500);
          expect(Math.abs(on.tax * 100_000 - on.net * taxRate)).toBeLessThanOrEqual(50_000);
        },
      ),
    );
  });
});

describe('a fee by the firm’s rates', () => {
  it('is by length, by hour and travel', () => {
    const lines = feeLines(rates, { lengthM: 11.28, hours: 6.5, distance: 84.3 });
    expect(lines.map(({ quantity, unit, net }) => [quantity, unit, net])).toEqual([
      [11_280, 'm', 27_636],
      [6_500, 'h', 61_750],
      [84_300, 'km', 3_541],
    ]);
    // 92,927 net; tax 5,527.20, 12,350.00 and 708.20 in minor units.
    expect(totalsOf(lines)).toEqual({ net: 92_927, tax: 18_585, total: 111_512 });
  });
  it('is made up to the minimum before travel', () => {
    const lines = feeLines(rates, { lengthM: 6, distance: 10 });
    expect(lines.map((l) => l.net)).toEqual([14_700, 30_300, 420]);
  });
  it('takes feet to the tenth where the firm charges by them', () => {
    const [first] = feeLines({ ...rates, lengthUnit: 'ft', perLength: 1_800 }, { lengthM: 11.28 });
    // 11.28 m / 0.3048 is 37.0079 ft.
    expect(first).toMatchObject({ quantity: 37_000, unit: 'ft', net: 66_600 });
  });
  it('makes no line of what isn’t charged', () => {
    const free = { ...rates, perLength: 0, perHour: 0, perDistance: 0, minimum: 0 };
    expect(feeLines(free, { lengthM: 10, hours: 4, distance: 50 })).toEqual([]);
  });
  it('is written with the decimals of its currency', () => {
    expect([writtenAmount(123_450, 'EUR'), writtenAmount(1_500, 'JPY'), writtenAmount(1_500, 'KWD')]).toEqual(
      ['1,234.50 EUR', '1,500 JPY', '1.500 KWD'],
    );
    expect([writtenRate(20_000), writtenRate(8_875)]).toEqual(['20%', '8.875%']);
  });
});

describe('the text that is accepted', () => {
  it('is the same for the same document and says fee, tax, scope and terms', () => {
    const lines = feeLines(rates, { lengthM: 10 });
    const document = {
      firm: { name: 'Larch Point Surveys', addressLines: [], email: null, phone: null },
      ...{ addressee: 'Ines Tolland', revision: 2, sentOn: '2026-05-04', validUntil: '2026-06-03' },
      survey: { number: '2026-0042', purpose: 'Pre-purchase survey' },
      vessel: { name: 'Pepper Skiffle', particulars: '' },
      ...{ currency: 'EUR', taxName: 'VAT', lines, ...totalsOf(lines) },
      scope: 'Hull and rig.\n\nNot the engine.',
      terms: { version: 3, text: 'Paid within 14 days.' },
    };
    expect(agreementText(document)).toBe(
      [
        'Quotation and terms for survey 2026-0042, revision 2',
        'Larch Point Surveys offers Ines Tolland the survey described here, for the fee and on the terms below.',
        'Vessel: Pepper Skiffle. Purpose: Pre-purchase survey. Survey number 2026-0042.',
        'Offered on 4 May 2026; it can be accepted until 3 June 2026.',
        'Fee',
        'Survey, by length overall (10 m at 24.50 EUR): 245.00 EUR',
        'Made up to the minimum fee: 205.00 EUR',
        'VAT 20% on 450.00 EUR: 90.00 EUR',
        'Total: 540.00 EUR',
        'What is surveyed',
        'Hull and rig.',
        'Not the engine.',
        'Terms of business, version 3',
        'Paid within 14 days.\n',
      ].join('\n\n'),
    );
  });
});
