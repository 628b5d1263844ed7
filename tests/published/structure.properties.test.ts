import { evaluate } from '@garboard/trade/worksheets/core/evaluate';
import {
  inflow,
  leftOf,
  openingFor,
  roundArea,
} from '@garboard/trade/worksheets/structure/flooding-arithmetic';
import { floodingRate } from '@garboard/trade/worksheets/structure/flooding-rate';
import { lossOf, statisticsOf } from '@garboard/trade/worksheets/structure/plate-arithmetic';
import { plateThickness } from '@garboard/trade/worksheets/structure/plate-thickness';
import fc from 'fast-check';
import Qty from 'js-quantities';
import { evaluate as expression } from 'mathjs';
import { mean, min, sampleStandardDeviation } from 'simple-statistics';
import { describe, expect, it } from 'vitest';
import { between, expectSame, expectSound, grade, value } from './support/sound.ts';

const tenths = (from: number, to: number) => fc.integer({ min: from, max: to }).map((n) => n / 10);
const gauged = fc.array(tenths(1, 120), { minLength: 2, maxLength: 12 });

const onePlate = (original: number, readings: number[], more: Record<string, unknown> = {}) => ({
  plates: [{ plate: 'A', original, ...more }],
  readings: readings.map((thickness) => ({ plate: 'A', thickness })),
});

describe('plate thickness', () => {
  it('agrees with simple-statistics', () => {
    fc.assert(
      fc.property(gauged, (readings) => {
        const found = statisticsOf(readings);
        expect(found.mean).toBeCloseTo(mean(readings), 9);
        expect(found.least).toBe(min(readings));
        expect(found.deviation).toBeCloseTo(sampleStandardDeviation(readings), 9);
      }),
    );
  });

  it('is sound for whatever is accepted, and losses lie between nothing and all', () => {
    fc.assert(
      fc.property(
        tenths(20, 120),
        gauged,
        fc.option(tenths(1, 20), { nil: undefined }),
        fc.option(fc.integer({ min: 0, max: 100 }), { nil: undefined }),
        (original, readings, pitDepth, pitted) => {
          const result = evaluate(plateThickness, onePlate(original, readings, { pitDepth, pitted }));
          expectSound(result);
          for (const key of ['worstMeanLoss', 'greatestLoss', 'meanLoss']) {
            expect(value(result, key)).toBeGreaterThanOrEqual(0);
            expect(value(result, key)).toBeLessThanOrEqual(100);
          }
        },
      ),
    );
  });

  it('never judges thinner plating better', () => {
    fc.assert(
      fc.property(tenths(30, 120), gauged, tenths(1, 10), (original, thick, lost) => {
        const readings = thick.map((t) => Math.min(t, original));
        const thinner = readings.map((t) => Math.max(0.05, t - lost));
        const one = evaluate(plateThickness, onePlate(original, readings));
        const other = evaluate(plateThickness, onePlate(original, thinner));
        expect(grade(other)).toBeGreaterThanOrEqual(grade(one));
        expect(value(other, 'worstMeanLoss')).toBeGreaterThanOrEqual(value(one, 'worstMeanLoss') - 1e-9);
      }),
    );
  });

  it('doesn’t depend on the order of the readings', () => {
    fc.assert(
      fc.property(tenths(30, 120), gauged, (original, readings) => {
        expectSame(
          evaluate(plateThickness, onePlate(original, readings)),
          evaluate(plateThickness, onePlate(original, [...readings].reverse())),
        );
      }),
    );
  });

  it('is the same in inches, converted by another library', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 100, max: 500 }),
        fc.array(fc.integer({ min: 80, max: 510 }), { minLength: 2, maxLength: 8 }),
        (original, readings) => {
          const inches = (thousandths: number) => ({ value: thousandths / 1000, unit: 'in' });
          const mm = (thousandths: number) => Qty(thousandths / 1000, 'in').to('mm').scalar;
          const one = evaluate(plateThickness, {
            plates: [{ plate: 'A', original: inches(original) }],
            readings: readings.map((t) => ({ plate: 'A', thickness: inches(t) })),
          });
          // The allowance of 0.3 mm lies at no whole thousandth, so no rounding can tip a reading over it.
          expectSame(one, evaluate(plateThickness, onePlate(mm(original), readings.map(mm))), 1e-5);
        },
      ),
    );
  });

  it('gives back the thickness that a loss leaves', () => {
    fc.assert(
      fc.property(between(1, 50), between(0, 100), (original, loss) => {
        expect(lossOf(original, original * (1 - loss / 100))).toBeCloseTo(loss, 8);
      }),
    );
  });
});

const flood = fc.record({
  diameter: fc.integer({ min: 5, max: 200 }),
  depth: tenths(1, 40),
  volume: fc.integer({ min: 10, max: 50_000 }),
});
const withPump = (inputs: object, flow: number) => ({
  ...inputs,
  pumps: [{ pump: 'aft', basis: 'measured', flow }],
});

describe('flooding rate', () => {
  it('agrees with mathjs working the formula with units', () => {
    fc.assert(
      fc.property(flood, (inputs) => {
        const result = evaluate(floodingRate, inputs);
        const flow = expression(
          `(1.0 * pi / 4 * (${inputs.diameter} mm)^2 * sqrt(2 * 9.80665 m/s^2 * ${inputs.depth} m)) to (l/minute)`,
        );
        expect(value(result, 'inflowSmooth') / flow.toNumber('l/minute')).toBeCloseTo(1, 9);
        expect(value(result, 'inflowSharp') / flow.toNumber('l/minute')).toBeCloseTo(0.6, 9);
        expectSound(result);
      }),
      { numRuns: 40 },
    );
  });

  it('lets in √2 times as much at twice the depth and four times as much through twice the diameter', () => {
    fc.assert(
      fc.property(between(0.001, 0.5), between(0.01, 10), (diameter, depth) => {
        const once = inflow(roundArea(diameter), depth, 0.6);
        expect(inflow(roundArea(diameter), 2 * depth, 0.6) / once).toBeCloseTo(Math.SQRT2, 9);
        expect(inflow(roundArea(2 * diameter), depth, 0.6) / once).toBeCloseTo(4, 9);
        expect(openingFor(once, depth, 0.6)).toBeCloseTo(diameter, 9);
      }),
    );
  });

  it('is the same in inches, feet and gallons, converted by another library', () => {
    fc.assert(
      fc.property(flood, (inputs) => {
        const other = {
          diameter: { value: Qty(inputs.diameter, 'mm').to('in').scalar, unit: 'in' },
          depth: { value: Qty(inputs.depth, 'm').to('ft').scalar, unit: 'ft' },
          volume: { value: Qty(inputs.volume, 'l').to('m3').scalar, unit: 'm3' },
        };
        expectSame(evaluate(floodingRate, inputs), evaluate(floodingRate, other), 1e-5);
      }),
    );
  });

  it('fills the volume in the time it says', () => {
    fc.assert(
      fc.property(flood, fc.integer({ min: 0, max: 400 }), (inputs, pump) => {
        const result = evaluate(floodingRate, withPump(inputs, pump));
        expectSound(result);
        for (const [time, gain] of [
          ['timeSoonest', 'gainSmooth'],
          ['timeLatest', 'gainSharp'],
        ] as const) {
          if (result.outputs[time]?.value === null) expect(value(result, gain)).toBe(0);
          else expect((value(result, time) * value(result, gain)) / inputs.volume).toBeCloseTo(1, 6);
        }
      }),
    );
  });

  it('never judges a stronger pump worse', () => {
    fc.assert(
      fc.property(
        flood,
        fc.integer({ min: 0, max: 400 }),
        fc.integer({ min: 1, max: 60 }),
        (inputs, pump, leastTime) => {
          const weak = evaluate(floodingRate, withPump({ ...inputs, leastTime }, pump));
          const strong = evaluate(floodingRate, withPump({ ...inputs, leastTime }, pump + 50));
          expect(grade(strong)).toBeLessThanOrEqual(grade(weak));
        },
      ),
    );
  });

  it('loses more with every bend, valve and ridge, and never all', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 30 }),
        fc.boolean(),
        fc.boolean(),
        fc.boolean(),
        (bends, onBattery, checkValve, corrugated) => {
          const left = leftOf({ bends, onBattery, checkValve, corrugated });
          expect(left).toBeGreaterThan(0);
          expect(left).toBeLessThanOrEqual(1);
          expect(leftOf({ bends: bends + 1, onBattery, checkValve, corrugated })).toBeLessThan(left);
        },
      ),
    );
  });
});
