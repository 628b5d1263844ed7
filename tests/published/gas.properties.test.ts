import type { Verdict } from '@garboard/trade/vocabulary';
import { evaluate, type WorksheetResult } from '@garboard/trade/worksheets/core/evaluate';
import { airNeeded, openingNeeded } from '@garboard/trade/worksheets/gas/battery-gas-table';
import { batteryVentilation } from '@garboard/trade/worksheets/gas/battery-ventilation';
import { gasLeakDown } from '@garboard/trade/worksheets/gas/gas-leak-down';
import { gasLocker } from '@garboard/trade/worksheets/gas/gas-locker';
import { naturalArea, tally } from '@garboard/trade/worksheets/gas/natural-area';
import { naturalVentilation } from '@garboard/trade/worksheets/gas/natural-ventilation';
import { blowerNeeds, petrolVentilation } from '@garboard/trade/worksheets/gas/petrol-ventilation';
import { explainHold, leakRate } from '@garboard/trade/worksheets/gas/pressure-hold';
import fc from 'fast-check';
import Qty from 'js-quantities';
import { evaluate as calculate } from 'mathjs';
import { describe, expect, it } from 'vitest';

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const answer = fc.constantFrom('yes', 'no', 'not-examined');
const close = (found: number, wanted: number, share = 1e-6) =>
  expect(Math.abs(found - wanted)).toBeLessThanOrEqual(Math.abs(wanted) * share + 1e-9);
/** js-quantities is the unit library that the worksheets don't use. */
const times = (from: string, to: string, amount: number) => amount * Qty(1, from).to(to).scalar;
const value = (result: WorksheetResult, key: string) => Number(result.outputs[key]?.value);

/** No output of an accepted input is NaN or infinite, and each reason and line of working is free of them too. */
function whole(result: WorksheetResult) {
  for (const output of Object.values(result.outputs)) {
    if (typeof output.value === 'number') expect(Number.isFinite(output.value), output.label).toBe(true);
    expect(output.text).not.toMatch(/NaN|undefined|Infinity/);
  }
  expect([...result.reasons, ...result.working].join(' ')).not.toMatch(/NaN|undefined|Infinity/);
  expect(result.reasons.length).toBeGreaterThan(0);
  for (const drawing of result.drawings) expect(drawing.svg).not.toMatch(/NaN|undefined|Infinity/);
}

const order: Verdict[] = ['satisfactory', 'attention', 'indeterminate', 'unsatisfactory'];

describe('a pressure hold', () => {
  const held = fc.record({
    start: between(1, 20_000),
    end: between(0, 20_000),
    air: fc.record({ start: between(800, 1100), end: between(800, 1100) }),
    resolution: between(0.01, 100),
    warmth: fc.record({ start: between(233, 343), end: between(233, 343), resolution: between(0.01, 5) }),
  });

  it('expects what mathjs expects of the gas law', () => {
    fc.assert(
      fc.property(held, (h) => {
        const expected = calculate('(p + a) * t2 / t1 - b', {
          p: h.start,
          a: h.air.start,
          b: h.air.end,
          t1: h.warmth.start,
          t2: h.warmth.end,
        });
        close(explainHold(h).expected, expected, 1e-9);
      }),
    );
  });

  it('has no fall and no leak when it ends where the gas law says', () => {
    fc.assert(
      fc.property(held, between(10, 1e6), between(1, 1440), (h, volume, minutes) => {
        const tight = { ...h, end: explainHold(h).expected };
        expect(Math.abs(explainHold(tight).fall)).toBeLessThan(1e-5);
        expect(Math.abs(leakRate(tight, volume, minutes))).toBeLessThan(1e-6 * volume);
      }),
    );
  });

  it('agrees with the molar form of 40 CFR 1065.644', () => {
    fc.assert(
      fc.property(held, between(0.01, 1000), between(1, 1440), (h, litres, minutes) => {
        const molesPerSecond = calculate('V / R * (p1 / T1 - p2 / T2) / t', {
          V: litres / 1000,
          R: 8.314472,
          p1: (h.start + h.air.start) * 100,
          p2: (h.end + h.air.end) * 100,
          T1: h.warmth.start,
          T2: h.warmth.end,
          t: minutes * 60,
        });
        const millilitres = molesPerSecond * ((8.314472 * h.warmth.start) / (h.air.start * 100)) * 6e7;
        expect(Math.abs(leakRate(h, litres * 1000, minutes) - millilitres)).toBeLessThan(
          1e-9 * litres * 1000 * (h.start + h.end + 2000),
        );
      }),
    );
  });

  it('is judged no better for ending lower, temperature known', () => {
    fc.assert(
      fc.property(between(10, 2000), between(0, 1), between(0, 1), (start, a, b) => {
        const at = (share: number) =>
          evaluate(gasLeakDown, {
            startPressure: start,
            endPressure: start * share,
            holdTime: 10,
            gaugeResolution: start / 200,
            startTemperature: 15,
            endTemperature: 15,
            noLiquid: true,
          });
        const [low, high] = [at(Math.min(a, b)), at(Math.max(a, b))];
        expect(value(low, 'fall')).toBeGreaterThanOrEqual(value(high, 'fall'));
        expect(order.indexOf(low.verdict)).toBeGreaterThanOrEqual(order.indexOf(high.verdict));
      }),
      { numRuns: 60 },
    );
  });

  it('is the same in psi as in mbar, and in °F as in °C', () => {
    fc.assert(
      fc.property(
        between(1, 100),
        between(0, 1),
        between(-30, 60),
        between(-30, 60),
        (psi, share, t1, t2) => {
          const mbar = (value: number) => times('psi', 'mbar', value);
          const fahrenheit = (celsius: number) => ({ value: celsius * 1.8 + 32, unit: 'degF' });
          const common = { holdTime: 5, noLiquid: true, volume: 0.7 };
          const one = evaluate(gasLeakDown, {
            ...common,
            startPressure: { value: psi, unit: 'psi' },
            endPressure: { value: psi * share, unit: 'psi' },
            gaugeResolution: { value: 0.25, unit: 'psi' },
            startTemperature: t1,
            endTemperature: t2,
          });
          const other = evaluate(gasLeakDown, {
            ...common,
            startPressure: mbar(psi),
            endPressure: mbar(psi * share),
            gaugeResolution: mbar(0.25),
            startTemperature: fahrenheit(t1),
            endTemperature: fahrenheit(t2),
          });
          // js-quantities rounds its psi to about 1e-7
          const scale = mbar(psi) + 1013.25;
          for (const key of ['expectedPressure', 'fall', 'leastFall'])
            expect(Math.abs(value(one, key) - value(other, key))).toBeLessThan(scale * 1e-6);
          const margin = Math.abs(Math.abs(value(one, 'fall')) - value(one, 'leastFall'));
          if (margin > scale * 1e-6) expect(one.outputs.shown?.value).toBe(other.outputs.shown?.value);
        },
      ),
      { numRuns: 60 },
    );
  });

  it('gives whole results for any accepted reading', () => {
    const reading = fc.record(
      {
        startPressure: between(0.01, 20_000),
        endPressure: between(0, 20_000),
        holdTime: between(0.1, 1440),
        gaugeResolution: between(0.001, 20_000),
        thermometerResolution: between(0.01, 5),
        volume: between(0.001, 1000),
        barometer: between(800, 1100),
        endBarometer: between(800, 1100),
        noLiquid: fc.boolean(),
      },
      { requiredKeys: ['startPressure', 'endPressure', 'holdTime', 'gaugeResolution', 'noLiquid'] },
    );
    const temperatures = fc.option(fc.tuple(between(-40, 70), between(-40, 70)), { nil: undefined });
    fc.assert(
      fc.property(reading, temperatures, (given, pair) => {
        const warmth = pair ? { startTemperature: pair[0], endTemperature: pair[1] } : {};
        whole(evaluate(gasLeakDown, { ...given, ...warmth }));
      }),
    );
  });
});

describe('a gas locker', () => {
  const points = Object.fromEntries(
    [
      'vapourTight',
      'opensTop',
      'gasketLatch',
      'passagesSealed',
      'drainLowest',
      'drainFalls',
      'drainClear',
      'nothingElse',
      'secured',
      'noIgnition',
    ].map((key) => [key, answer]),
  );
  const locker = fc.record({
    rule: fc.constantFrom('iso-10239', 'abyc-a1', 'uk-inland'),
    drainBore: between(0, 300),
    outletHeight: between(-2000, 5000),
    outletDistance: between(0, 50_000),
    before2000: answer,
    gasCarried: between(0.1, 1000),
    ...points,
  });

  it('gives whole results, and is never satisfactory with a point that fails or was not looked at', () => {
    fc.assert(
      fc.property(locker, (given) => {
        const result = evaluate(gasLocker, given);
        whole(result);
        const answers = Object.keys(points).map((key) => given[key as keyof typeof given]);
        if (answers.some((a) => a !== 'yes')) expect(result.verdict).not.toBe('satisfactory');
      }),
    );
  });

  it('is judged no worse for a larger bore, a higher outlet, a farther opening', () => {
    fc.assert(
      fc.property(locker, between(0, 100), (given, more) => {
        const better = {
          ...given,
          drainBore: Math.min(300, given.drainBore + more),
          outletHeight: Math.min(5000, given.outletHeight + more),
          outletDistance: Math.min(50_000, given.outletDistance + more),
        };
        const rank = (inputs: unknown) => order.indexOf(evaluate(gasLocker, inputs).verdict);
        expect(rank(better)).toBeLessThanOrEqual(rank(given));
      }),
      { numRuns: 60 },
    );
  });
});

describe('petrol ventilation', () => {
  it('asks for no less in a larger compartment, and less output than rating', () => {
    fc.assert(
      fc.property(between(0.1, 5000), between(0.1, 5000), (a, b) => {
        const [small, large] = [blowerNeeds(Math.min(a, b)), blowerNeeds(Math.max(a, b))];
        expect(large.rated).toBeGreaterThanOrEqual(small.rated);
        expect(large.output).toBeGreaterThanOrEqual(small.output);
        // the table's least efficiency of a blower system is 40 %
        close(small.output / small.rated, 0.4);
      }),
    );
  });

  it('is the same in cubic metres, and gives whole results', () => {
    fc.assert(
      fc.property(
        between(0.5, 5000),
        between(0, 5000),
        between(0, 5000),
        answer,
        (volume, rated, output, seen) => {
          const given = (netVolume: unknown, flow: (cfm: number) => unknown) => ({
            engine: 'petrol-starter',
            netVolume,
            ratedCapacity: flow(rated),
            measuredOutput: flow(output),
            intakeLow: seen,
          });
          const one = evaluate(
            petrolVentilation,
            given(volume, (cfm) => cfm),
          );
          const cubicMetres = { value: times('ft^3', 'm^3', volume), unit: 'm3' };
          const other = evaluate(
            petrolVentilation,
            given(cubicMetres, (cfm) => ({ value: times('ft^3/min', 'm^3/h', cfm), unit: 'm3/h' })),
          );
          whole(one);
          if (Math.abs(volume - 34) > 1e-3)
            for (const key of ['requiredRated', 'requiredOutput', 'ratedShare'])
              close(value(other, key), value(one, key), 1e-5);
        },
      ),
      { numRuns: 60 },
    );
  });
});

describe('natural ventilation', () => {
  it('takes the area that mathjs takes, growing with volume and never below zero', () => {
    fc.assert(
      fc.property(between(0.01, 10_000), between(0.01, 10_000), (a, b) => {
        close(naturalArea(a), Math.max(0, calculate('5 * log(v / 5)', { v: a })), 1e-9);
        expect(naturalArea(Math.max(a, b))).toBeGreaterThanOrEqual(naturalArea(Math.min(a, b)));
      }),
    );
  });

  it('never counts more than the duct, and less with a smaller fitting', () => {
    fc.assert(
      fc.property(between(0.1, 500), between(0.1, 500), between(0, 1), (area, fitting, share) => {
        const total = (of: number) => tally([{ use: 'supply', area, fitting: of }]).total;
        expect(total(fitting)).toBeLessThanOrEqual(area * (1 + 1e-9));
        expect(total(fitting * share)).toBeLessThanOrEqual(total(fitting));
      }),
    );
  });

  it('is the same for a diameter as for its area, and gives whole results', () => {
    fc.assert(
      fc.property(between(0.1, 2000), between(0.2, 30), answer, (netVolume, diameter, seen) => {
        const area = (Math.PI / 4) * diameter ** 2;
        const given = (size: Record<string, unknown>) => ({
          why: 'engine',
          netVolume,
          exhaustLow: seen,
          apertures: ['supply', 'exhaust'].map((use) => ({ use, ...size })),
        });
        const one = evaluate(naturalVentilation, given({ diameter }));
        const other = evaluate(naturalVentilation, given({ area }));
        whole(one);
        close(value(other, 'supplyArea'), value(one, 'supplyArea'), 1e-9);
        expect(other.verdict).toBe(one.verdict);
      }),
      { numRuns: 60 },
    );
  });
});

describe('battery ventilation', () => {
  it('grows in proportion to cells, gas current and capacity', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 100 }), between(0.1, 100), between(1, 5000), (n, i, c) => {
        close(airNeeded(2 * n, i, c), 2 * airNeeded(n, i, c), 1e-9);
        close(airNeeded(n, i, 3 * c), 3 * airNeeded(n, i, c), 1e-9);
        close(
          openingNeeded(airNeeded(n, i, c)),
          calculate('28 * 0.05 * n * i * c * 1e-3', { n, i, c }),
          1e-9,
        );
      }),
    );
  });

  it('passes openings of just what it asks for, in either unit, and gives whole results', () => {
    const battery = fc.constantFrom('vented-lead', 'valve-regulated-lead', 'vented-nickel-cadmium');
    const charge = fc.constantFrom('float', 'boost');
    fc.assert(
      fc.property(
        battery,
        charge,
        fc.integer({ min: 1, max: 300 }),
        between(1, 9000),
        (kind, how, cells, capacity) => {
          const common = {
            battery: kind,
            charge: how,
            cells,
            capacity,
            outletHigh: 'yes',
            leadsOutside: 'yes',
            noSparks: 'yes',
          };
          const asked = evaluate(batteryVentilation, common);
          whole(asked);
          const area = value(asked, 'openingArea');
          if (area > 90_000) return;
          const square = (cm2: number) => ({ value: times('cm^2', 'in^2', cm2), unit: 'in2' });
          const verdict = (inlet: unknown, outlet: unknown) =>
            evaluate(batteryVentilation, { ...common, inlet, outlet }).verdict;
          expect(verdict(area, area)).toBe('satisfactory');
          expect(verdict(square(area * 1.00001), square(area * 1.00001))).toBe('satisfactory');
          expect(verdict(area * 0.9999, area)).toBe('unsatisfactory');
        },
      ),
      { numRuns: 60 },
    );
  });
});
