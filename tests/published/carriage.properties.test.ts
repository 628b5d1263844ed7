import { evaluate, InputsRefused, type WorksheetResult } from '@garboard/trade/worksheets/core/evaluate';
import { carriage } from '@garboard/trade/worksheets/rules/carriage';
import { ratings, signalKinds } from '@garboard/trade/worksheets/rules/carriage-tables';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

const answer = fc.constantFrom('yes', 'no', 'not-examined');
const ticks = [
  'canTrap',
  'fixedSystem',
  'flameControl',
  'sidelights',
  'sternLight',
  'mastheadLight',
  'allRoundLight',
  'torch',
  'soundSignal',
  'bell',
  'rulesBook',
  'oilPlacard',
  'garbagePlacard',
  'garbagePlan',
  'deviceWorks',
];

const boat = fc.record({
  surveyedOn: fc.constant('2026-06-01'),
  craft: fc.constantFrom('motor', 'sail', 'open-sail', 'canoe', 'rowed', 'racing', 'sailboard'),
  engine: fc.constantFrom('none', 'outboard', 'inboard-petrol', 'inboard-other'),
  length: fc.integer({ min: 7, max: 160 }),
  modelYear: fc.integer({ min: 1940, max: 2026 }),
  persons: fc.integer({ min: 1, max: 12 }),
  waters: fc.constantFrom('inland', 'coastal', 'ocean'),
  night: fc.boolean(),
  wearable: fc.integer({ min: 0, max: 14 }),
  throwable: fc.integer({ min: 0, max: 2 }),
  signals: fc.array(
    fc.record({
      kind: fc.constantFrom(...Object.keys(signalKinds)),
      number: fc.integer({ min: 1, max: 4 }),
      expires: fc.constantFrom('2026-05-31', '2026-06-01', '2028-01-31'),
    }),
    { maxLength: 4 },
  ),
  extinguishers: fc.array(
    fc.record({
      rating: fc.constantFrom(...Object.keys(ratings)),
      number: fc.integer({ min: 1, max: 3 }),
      yearMade: fc.integer({ min: 2008, max: 2026 }),
      rechargeable: fc.boolean(),
      good: answer,
      newlyFitted: answer,
    }),
    { maxLength: 4 },
  ),
  grossTons: fc.integer({ min: 1, max: 1200 }),
  mainPower: fc.integer({ min: 1, max: 9000 }),
  toilet: fc.constantFrom('none', 'type-1', 'type-2', 'type-3', 'no-device'),
  galleyAndBerths: fc.boolean(),
  items: fc.record(Object.fromEntries(ticks.map((key) => [key, answer]))),
});
type Boat = typeof boat extends fc.Arbitrary<infer B> ? B : never;

function surveyed(
  { items, ...rest }: Boat,
  changes: Record<string, unknown> = {},
): WorksheetResult | undefined {
  try {
    return evaluate(carriage, { ...rest, ...items, ...changes });
  } catch (error) {
    if (error instanceof InputsRefused) return undefined;
    throw error;
  }
}
const count = (result: WorksheetResult | undefined, key: string) => Number(result?.outputs[key]?.value);

describe('carriage', () => {
  it('says satisfactory only when nothing is missing or uncertain, and never NaN', () => {
    fc.assert(
      fc.property(boat, (b) => {
        const result = surveyed(b);
        if (!result) return;
        expect(JSON.stringify(result)).not.toMatch(/NaN|undefined|Infinity/);
        const expected =
          count(result, 'missing') > 0
            ? ['unsatisfactory']
            : count(result, 'uncertain') > 0
              ? ['indeterminate']
              : ['satisfactory', 'attention'];
        expect(expected).toContain(result.verdict);
        const listed = result.tables.find((table) => table.title.startsWith('Missing'))?.rows.length ?? 0;
        expect(listed).toBe(count(result, 'missing'));
      }),
    );
  });

  it('is the same by feet, metres and inches', () => {
    fc.assert(
      fc.property(boat, (b) => {
        const feet = surveyed(b);
        for (const length of [
          { value: b.length * 0.3048, unit: 'm' },
          { value: b.length * 12, unit: 'in' },
        ]) {
          const other = surveyed(b, { length });
          expect(other?.outputs).toEqual(feet?.outputs);
          expect(other?.verdict).toBe(feet?.verdict);
        }
      }),
    );
  });

  it('more on board is never worse', () => {
    fc.assert(
      fc.property(boat, (b) => {
        const before = surveyed(b);
        const after = surveyed(b, {
          wearable: b.wearable + 1,
          throwable: b.throwable + 1,
          signals: [...b.signals, { kind: 'hand-flare', number: 3, expires: '2030-01-31' }],
          extinguishers: [
            ...b.extinguishers,
            { rating: '20-B', number: 1, yearMade: 2024, rechargeable: false, good: 'yes' },
          ],
          bell: 'yes',
          torch: 'yes',
          oilPlacard: 'yes',
        });
        if (before && after) expect(count(after, 'missing')).toBeLessThanOrEqual(count(before, 'missing'));
      }),
    );
  });

  it('a longer boat of up to 65 ft needs no fewer extinguishers, life jackets or placards', () => {
    fc.assert(
      fc.property(boat, fc.integer({ min: 7, max: 65 }), fc.integer({ min: 7, max: 65 }), (b, one, two) => {
        const short = surveyed(b, { length: Math.min(one, two) });
        const long = surveyed(b, { length: Math.max(one, two) });
        if (!short || !long) return;
        for (const key of ['extinguishersRequired', 'wearableRequired', 'throwableRequired']) {
          expect(count(long, key)).toBeGreaterThanOrEqual(count(short, key));
        }
        for (const key of ['oilPlacardRequired', 'garbagePlacardRequired', 'garbagePlanRequired']) {
          expect(Number(long.outputs[key]?.value)).toBeGreaterThanOrEqual(Number(short.outputs[key]?.value));
        }
      }),
    );
  });
});
