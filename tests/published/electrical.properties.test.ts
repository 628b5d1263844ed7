import { evaluate } from '@garboard/trade/worksheets/core/evaluate';
import { conductorAmpacity } from '@garboard/trade/worksheets/electrical/conductor-ampacity';
import {
  awgSizes,
  bundleFactor,
  engineSpaceFactor,
  gauges,
  insulationRatings,
  metricSizes,
  tableAmperes,
} from '@garboard/trade/worksheets/electrical/conductor-table';
import { dcVoltageDrop } from '@garboard/trade/worksheets/electrical/dc-voltage-drop';
import { areaForDrop, dropInArea } from '@garboard/trade/worksheets/electrical/dc-voltage-drop-sizes';
import { at40 } from '@garboard/trade/worksheets/electrical/insulation-limits';
import { insulationResistance } from '@garboard/trade/worksheets/electrical/insulation-resistance';
import { largestGuard } from '@garboard/trade/worksheets/electrical/overcurrent';
import fc from 'fast-check';
import Qty from 'js-quantities';
import { evaluate as calculate } from 'mathjs';
import { describe, expect, it } from 'vitest';
import { answer, between, expectSame, expectSound, grade, value } from './support/sound.ts';

/** js-quantities is the unit library that the worksheets don't use. */
const times = (from: string, to: string, amount: number) => amount * Qty(1, from).to(to).scalar;
const close = (found: number, wanted: number, share = 1e-9) =>
  expect(Math.abs(found - wanted)).toBeLessThanOrEqual(Math.abs(wanted) * share + 1e-12);
const rating = fc.constantFrom(...insulationRatings);
const size = fc.constantFrom(...awgSizes);
const rung = fc.constantFrom(...gauges('SAE').map((conductor) => conductor.name));

describe('voltage drop', () => {
  const circuit = fc.record(
    {
      voltage: between(1, 50),
      current: between(0, 400),
      length: between(0.1, 60),
      lengthIs: fc.constantFrom('round-trip', 'one-way'),
      circuit: fc.constantFrom('critical', 'other'),
      insulation: rating,
      engineSpace: fc.boolean(),
      run: fc.constantFrom('single', 'sheath'),
      parallel: fc.integer({ min: 1, max: 4 }),
    },
    { noNullPrototype: true },
  );
  const gauge = (more: object) => ({ method: 'circular-mils', ...more });

  it('is sound for every circuit, fitted or not, by AWG and metric', () => {
    fc.assert(
      fc.property(circuit, rung, between(0.1, 300), (c, fitted, fittedArea) => {
        expectSound(evaluate(dcVoltageDrop, gauge(c)));
        expectSound(evaluate(dcVoltageDrop, gauge({ ...c, fitted })));
        expectSound(evaluate(dcVoltageDrop, { ...c, method: 'metric' }));
        expectSound(evaluate(dcVoltageDrop, { ...c, method: 'metric', fittedArea }));
      }),
    );
  });

  it('area and drop are each other’s inverse, as mathjs works them', () => {
    fc.assert(
      fc.property(between(0.01, 500), between(0.1, 500), between(0.01, 10), (amperes, length, volts) => {
        const area = areaForDrop(10.75, amperes, length, volts);
        close(dropInArea(10.75, amperes, length, area), volts);
        close(area, calculate('10.75 * I * L / E', { I: amperes, L: length, E: volts }));
      }),
    );
  });

  it('the size found loses no more than allowed, and the next thinner one more', () => {
    fc.assert(
      fc.property(circuit, (c) => {
        const result = evaluate(dcVoltageDrop, gauge(c));
        const found = result.outputs.sizeForDrop?.value;
        const sizes = gauges('SAE');
        const at = sizes.findIndex((conductor) => conductor.name === found);
        const needed = value(result, 'areaNeeded');
        if (at >= 0) expect(sizes[at]?.area).toBeGreaterThanOrEqual(needed * (1 - 1e-9));
        if (at > 0) expect(sizes[at - 1]?.area).toBeLessThan(needed * (1 + 1e-9));
      }),
    );
  });

  it('the size found, fitted, is never unsatisfactory', () => {
    fc.assert(
      fc.property(circuit, (c) => {
        const fitted = evaluate(dcVoltageDrop, gauge(c)).outputs.sizeNeeded?.value;
        if (fitted !== null)
          expect(evaluate(dcVoltageDrop, gauge({ ...c, fitted })).verdict).toBe('satisfactory');
      }),
    );
  });

  it('more current and more length never make it better', () => {
    fc.assert(
      fc.property(circuit, rung, between(1, 3), (c, fitted, more) => {
        const base = grade(evaluate(dcVoltageDrop, gauge({ ...c, fitted })));
        const longer = { ...c, fitted, length: c.length * more };
        const fuller = { ...c, fitted, current: c.current * more };
        expect(grade(evaluate(dcVoltageDrop, gauge(longer)))).toBeGreaterThanOrEqual(base);
        expect(grade(evaluate(dcVoltageDrop, gauge(fuller)))).toBeGreaterThanOrEqual(base);
      }),
    );
  });

  it('is the same in feet and milliamperes', () => {
    fc.assert(
      fc.property(circuit, (c) => {
        const feet = { value: times('m', 'ft', c.length), unit: 'ft' };
        const current = { value: times('A', 'mA', c.current), unit: 'mA' };
        const one = evaluate(dcVoltageDrop, gauge(c));
        const other = evaluate(dcVoltageDrop, gauge({ ...c, length: feet, current }));
        // js-quantities keeps units to some 1e-7: a size may turn where the need lies that near to it.
        const near = gauges('SAE').some(
          ({ area }) => Math.abs(area / Math.max(1, value(one, 'areaNeeded')) - 1) < 1e-6,
        );
        if (!near) expectSame(one, other);
      }),
    );
  });

  it('the two formulas differ by the known 8%', () => {
    // One circular mil in mm², by js-quantities.
    const cmil = (Math.PI / 4) * times('in', 'mm', 0.001) ** 2;
    const metricK = (10.75 * cmil) / times('ft', 'm', 1);
    expect(0.0164 / metricK).toBeCloseTo(0.918, 3);
  });

  it('a metric size carries no more than a gauge it reaches', () => {
    const cmil = (Math.PI / 4) * times('in', 'mm', 0.001) ** 2;
    for (const metric of metricSizes) {
      const own = gauges('SAE').find((conductor) => conductor.awg === metric.awg);
      if (own) expect(metric.area).toBeGreaterThanOrEqual(own.area * cmil * (1 - 1e-6));
    }
  });
});

describe('conductor amperes', () => {
  it('grow with size and with insulation; factors stay from 0 to 1', () => {
    for (const [i, thin] of awgSizes.entries()) {
      const thick = awgSizes[i + 1];
      for (const [j, cool] of insulationRatings.entries()) {
        const hot = insulationRatings[j + 1];
        if (thick) expect(tableAmperes(thick, cool)).toBeGreaterThan(tableAmperes(thin, cool));
        if (hot) expect(tableAmperes(thin, hot)).toBeGreaterThanOrEqual(tableAmperes(thin, cool));
        if (hot) expect(engineSpaceFactor(hot)).toBeGreaterThan(engineSpaceFactor(cool));
      }
    }
    for (let n = 1; n < 60; n += 1) expect(bundleFactor(n + 1)).toBeLessThanOrEqual(bundleFactor(n));
  });

  it('the largest fuse lies from 100% to 150% of the amperes', () => {
    fc.assert(
      fc.property(between(1, 700), fc.boolean(), (amperes, low) => {
        const largest = largestGuard(amperes, low);
        expect(largest).toBeGreaterThanOrEqual(amperes);
        expect(largest).toBeLessThanOrEqual(amperes * 1.5);
      }),
    );
  });

  const found = fc.record({
    size,
    insulation: rating,
    voltage: between(1, 300),
    engineSpace: fc.boolean(),
    run: fc.constantFrom('single', 'sheath'),
    bundled: fc.integer({ min: 1, max: 40 }),
    current: between(0, 600),
    rating: between(0.5, 900),
    distance: between(0, 100),
    enclosed: answer,
  });

  it('is sound; inches and millimetres give the same', () => {
    fc.assert(
      fc.property(found, (f) => {
        const one = evaluate(conductorAmpacity, { ...f, protected: 'yes' });
        expectSound(one);
        const distance = { value: times('in', 'mm', f.distance), unit: 'mm' };
        const other = evaluate(conductorAmpacity, { ...f, protected: 'yes', distance });
        const near = [0, 7, 40].some((limit) => Math.abs(f.distance - limit) < 1e-5);
        if (!near) expect(other.verdict).toBe(one.verdict);
      }),
    );
  });

  it('more current, a larger fuse or a longer way to it never make it better', () => {
    fc.assert(
      fc.property(found, between(1, 3), (f, more) => {
        const base = evaluate(conductorAmpacity, { ...f, protected: 'yes' });
        for (const key of ['current', 'rating', 'distance'] as const) {
          const worse = evaluate(conductorAmpacity, { ...f, protected: 'yes', [key]: f[key] * more });
          expect(grade(worse)).toBeGreaterThanOrEqual(grade(base));
        }
      }),
    );
  });
});

describe('insulation', () => {
  it('at 40 °C as mathjs works it; twice as much 10 °C cooler', () => {
    fc.assert(
      fc.property(between(0.01, 10_000), between(-20, 180), (resistance, temperature) => {
        close(
          at40(resistance, temperature),
          calculate('R * 0.5 ^ ((40 - T) / 10)', { R: resistance, T: temperature }),
        );
        close(at40(2 * resistance, temperature - 10), at40(resistance, temperature), 1e-9);
      }),
    );
  });

  const reading = fc.record({
    part: fc.constantFrom('wiring', 'machine'),
    ratedVoltage: between(1, 900),
    resistance: between(0, 5000),
    testVoltage: fc.constantFrom(250, 500, 1000),
    temperature: between(-20, 120),
    winding: fc.constantFrom('random', 'form', 'older'),
    disconnected: answer,
    beyondRange: fc.boolean(),
    shoreLeakage: between(0, 500),
    batteryLeakage: between(0, 500),
  });

  it('is sound; ohms, kelvin and microamperes give the same', () => {
    fc.assert(
      fc.property(reading, (r) => {
        const one = evaluate(insulationResistance, r);
        expectSound(one);
        const other = evaluate(insulationResistance, {
          ...r,
          resistance: { value: times('Mohm', 'kohm', r.resistance), unit: 'kohm' },
          temperature: { value: r.temperature + 273.15, unit: 'K' },
          shoreLeakage: { value: times('mA', 'uA', r.shoreLeakage), unit: 'uA' },
        });
        expectSame(one, other);
      }),
    );
  });

  it('more resistance and less leakage never make it worse', () => {
    fc.assert(
      fc.property(reading, between(1, 10), (r, more) => {
        const base = grade(evaluate(insulationResistance, r));
        const drier = { ...r, resistance: r.resistance * more, shoreLeakage: r.shoreLeakage / more };
        expect(grade(evaluate(insulationResistance, drier))).toBeLessThanOrEqual(base);
      }),
    );
  });
});
