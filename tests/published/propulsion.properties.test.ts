import { evaluate, InputsRefused, type WorksheetResult } from '@garboard/trade/worksheets/core/evaluate';
import type { AnyWorksheet } from '@garboard/trade/worksheets/core/worksheet';
import {
  type ClearanceTableKey,
  clearanceTables,
} from '@garboard/trade/worksheets/propulsion/bearing-clearance-table';
import { engineReadings } from '@garboard/trade/worksheets/propulsion/engine-readings';
import {
  binomialWeights,
  successiveMeans,
  weighted,
  weightsAt,
} from '@garboard/trade/worksheets/propulsion/mean-of-means';
import { propellerSlip } from '@garboard/trade/worksheets/propulsion/propeller-slip';
import { shaftSize } from '@garboard/trade/worksheets/propulsion/shaft-size';
import { services } from '@garboard/trade/worksheets/propulsion/shaft-size-table';
import { shaftWear } from '@garboard/trade/worksheets/propulsion/shaft-wear';
import {
  diameterForStress,
  shaftMaterials,
  shaftTorque,
  torsionalStress,
} from '@garboard/trade/worksheets/propulsion/shafting';
import { speedRuns } from '@garboard/trade/worksheets/propulsion/speed-runs';
import fc from 'fast-check';
import Qty from 'js-quantities';
import { evaluate as calculate } from 'mathjs';
import { max, mean, min } from 'simple-statistics';
import { describe, expect, it } from 'vitest';

const between = (least: number, most: number) => fc.double({ min: least, max: most, noNaN: true });
/** To so many decimals, as instruments show: keeps chance readings off the limits of bands by rounding alone. */
const read = (least: number, most: number, decimals = 2) =>
  fc
    .integer({ min: Math.ceil(least * 10 ** decimals), max: Math.floor(most * 10 ** decimals) })
    .map((whole) => whole / 10 ** decimals);
const close = (found: number, wanted: number, share = 1e-9) =>
  expect(Math.abs(found - wanted), `${found} for ${wanted}`).toBeLessThanOrEqual(
    Math.abs(wanted) * share + 1e-9,
  );
const value = (result: WorksheetResult, key: string) => Number(result.outputs[key]?.value);
/** js-quantities is the unit library that the worksheets don't use. */
const in_ = (amount: number, from: string, to: string) => Qty(amount, from).to(to).scalar;

/** Numbers are numbers and words are whole, whatever was accepted. */
function whole(result: WorksheetResult) {
  for (const output of Object.values(result.outputs)) {
    if (typeof output.value === 'number') expect(Number.isFinite(output.value), output.label).toBe(true);
  }
  expect(JSON.stringify(result)).not.toMatch(/NaN|undefined|Infinity/);
  expect(result.reasons.length).toBeGreaterThan(0);
}

/** Works what is accepted; a refusal must be in sentences. */
function accepted(worksheet: AnyWorksheet, inputs: unknown): WorksheetResult | undefined {
  try {
    return evaluate(worksheet, inputs);
  } catch (error) {
    if (!(error instanceof InputsRefused)) throw error;
    expect(error.problems.every((problem) => problem.message.endsWith('.'))).toBe(true);
    return undefined;
  }
}

/** Two results agree: numbers nearly, verdicts wholly. */
function same(a: WorksheetResult, b: WorksheetResult, share: number) {
  expect(b.verdict, `${a.reasons.join(' ')} | ${b.reasons.join(' ')}`).toBe(a.verdict);
  for (const [key, output] of Object.entries(a.outputs)) {
    if (typeof output.value !== 'number') continue;
    const other = Number(b.outputs[key]?.value);
    expect(Math.abs(other - output.value), key).toBeLessThanOrEqual(Math.abs(output.value) * share + 1e-7);
  }
}

const tables = fc.constantFrom(...(Object.keys(clearanceTables) as ClearanceTableKey[]));

describe('shaft wear', () => {
  const worn = fc.record({
    originalDiameter: read(15, 120),
    loss: read(0, 0.4, 4),
    play: fc.option(read(0, 8), { nil: undefined }),
    place: fc.constantFrom('bearing', 'gland', 'elsewhere'),
    surface: fc.constantFrom('smooth', 'ridged', 'pitted'),
    clearanceTable: tables,
    power: read(5, 800),
    shaftSpeed: read(300, 3000, 0),
    material: fc.constantFrom(...Object.keys(shaftMaterials)),
  });
  const given = ({ loss, ...rest }: { loss: number; originalDiameter: number }) => ({
    ...rest,
    wornDiameter: Number((rest.originalDiameter * (1 - loss)).toFixed(3)),
  });

  it('gives whole results, strength and stiffness between nothing and all, as mathjs has them', () => {
    fc.assert(
      fc.property(worn, (w) => {
        const inputs = given(w);
        const result = evaluate(shaftWear, inputs);
        whole(result);
        if (w.surface === 'pitted') {
          expect(result.outputs.strengthLeft?.value).toBeNull();
          expect(result.verdict === 'indeterminate' || result.verdict === 'unsatisfactory').toBe(true);
          return;
        }
        const scope = { d: inputs.wornDiameter, o: inputs.originalDiameter };
        close(value(result, 'strengthLeft'), calculate('100 * (d / o)^3', scope));
        close(value(result, 'stiffnessLeft'), calculate('100 * (d / o)^4', scope));
        expect(value(result, 'stiffnessLeft')).toBeLessThanOrEqual(value(result, 'strengthLeft'));
        expect(value(result, 'strengthLeft')).toBeLessThanOrEqual(100);
      }),
    );
  });

  it('loses strength and gains stress with wear', () => {
    fc.assert(
      fc.property(worn, read(0.01, 0.5), (w, more) => {
        const inputs = { ...given(w), surface: 'smooth', play: undefined };
        const further = { ...inputs, wornDiameter: inputs.wornDiameter - more };
        const [less, worse] = [evaluate(shaftWear, inputs), evaluate(shaftWear, further)];
        expect(value(worse, 'strengthLeft')).toBeLessThan(value(less, 'strengthLeft'));
        expect(value(worse, 'stressNow')).toBeGreaterThan(value(less, 'stressNow'));
        expect(value(worse, 'playWithNewBearing')).toBeGreaterThan(value(less, 'playWithNewBearing'));
      }),
    );
  });

  it('says the same in inches and millimetres, horsepower and kilowatts', () => {
    fc.assert(
      fc.property(worn, (w) => {
        const metric = given(w);
        const inches = (mm: number) => ({ value: in_(mm, 'mm', 'in'), unit: 'in' });
        const imperial = {
          ...metric,
          originalDiameter: inches(metric.originalDiameter),
          wornDiameter: inches(metric.wornDiameter),
          resolution: inches(0.02),
          play: w.play === undefined ? undefined : inches(w.play),
          power: { value: in_(w.power, 'kW', 'ft*lbf/s') / 550, unit: 'hp' },
        };
        same(evaluate(shaftWear, metric), evaluate(shaftWear, imperial), 1e-6);
      }),
    );
  });

  it('asks for more clearance in a larger shaft, by every table', () => {
    fc.assert(
      fc.property(tables, read(1, 1.5, 3), read(1, 1.5, 3), (table, a, b) => {
        const at = (inches: number) =>
          evaluate(shaftWear, {
            originalDiameter: { value: inches, unit: 'in' },
            wornDiameter: { value: inches, unit: 'in' },
            place: 'bearing',
            surface: 'smooth',
            clearanceTable: table,
          });
        const [small, large] = [at(Math.min(a, b)), at(Math.max(a, b))];
        for (const key of ['newLeast', 'newMost', 'limit']) {
          expect(value(large, key)).toBeGreaterThanOrEqual(value(small, key) - 1e-9);
        }
      }),
    );
  });
});

describe('shaft size', () => {
  const asked = fc.record({
    power: read(5, 2000),
    powerAt: fc.constantFrom('flywheel', 'shaft'),
    engineSpeed: read(300, 5000, 0),
    reduction: read(1, 4),
    material: fc.constantFrom(...Object.keys(shaftMaterials)),
    service: fc.constantFrom(...Object.keys(services)),
    fittedDiameter: fc.option(read(15, 150), { nil: undefined }),
    bearingSpacing: fc.option(read(0.3, 5), { nil: undefined }),
    sizes: fc.constantFrom('inch', 'metric'),
  });

  it('stress and diameter are inverse, as mathjs has them', () => {
    fc.assert(
      fc.property(between(1, 1e5), between(10, 600), (torque, diameter) => {
        const stress = torsionalStress(torque, diameter);
        close(stress, calculate('16 * T * 1000 / (pi * d^3)', { T: torque, d: diameter }));
        close(diameterForStress(torque, stress), diameter);
      }),
    );
  });

  it('torque agrees with the trade’s constants for horsepower and kilowatts', () => {
    fc.assert(
      fc.property(between(1, 3000), between(50, 6000), (power, rpm) => {
        close(shaftTorque(power, rpm), (9549.3 * power) / rpm, 1e-5);
        const lbfIn = in_(shaftTorque(in_(power * 550, 'ft*lbf/s', 'kW'), rpm), 'N*m', 'lbf*in');
        close(lbfIn, (63_025 * power) / rpm, 1e-5);
      }),
    );
  });

  it('gives whole results; the needed shaft has the factor asked', () => {
    fc.assert(
      fc.property(asked, (inputs) => {
        const result = evaluate(shaftSize, inputs);
        whole(result);
        const least = value(result, 'leastDiameter');
        const again = evaluate(shaftSize, { ...inputs, fittedDiameter: least * (1 + 1e-9) });
        close(value(again, 'factorFitted'), value(again, 'factorAsked'), 1e-8);
        expect(again.reasons.join(' ')).not.toContain('even the lightest');
      }),
    );
  });

  it('grows with power and factor, shrinks with speed', () => {
    fc.assert(
      fc.property(asked, between(1.01, 3), (inputs, times) => {
        const least = (changed: object) =>
          value(evaluate(shaftSize, { ...inputs, ...changed }), 'leastDiameter');
        expect(least({ power: inputs.power * times })).toBeGreaterThan(least({}));
        expect(least({ engineSpeed: inputs.engineSpeed * times })).toBeLessThan(least({}));
        expect(least({ factor: 3 * times })).toBeGreaterThan(least({ factor: 3 }));
      }),
    );
  });

  it('says the same in other units', () => {
    fc.assert(
      fc.property(asked, (inputs) => {
        const other = {
          ...inputs,
          power: { value: in_(inputs.power, 'kW', 'ft*lbf/s') / 550, unit: 'hp' },
          fittedDiameter:
            inputs.fittedDiameter === undefined
              ? undefined
              : { value: in_(inputs.fittedDiameter, 'mm', 'in'), unit: 'in' },
          bearingSpacing:
            inputs.bearingSpacing === undefined
              ? undefined
              : { value: in_(inputs.bearingSpacing, 'm', 'ft'), unit: 'ft' },
        };
        same(evaluate(shaftSize, inputs), evaluate(shaftSize, other), 1e-6);
      }),
    );
  });
});

describe('propeller slip', () => {
  const trial = fc.record({
    pitch: read(5, 60),
    engineSpeed: read(400, 6000, 0),
    reduction: read(1, 4),
    speed: read(0.1, 60),
    speedBy: fc.constantFrom('both-ways', 'water', 'one-way'),
    running: fc.constantFrom('planing', 'semi-displacement', 'displacement'),
  });

  it('is never more than all, lies within what the instruments tell, and gives the speed back', () => {
    fc.assert(
      fc.property(trial, (inputs) => {
        const result = evaluate(propellerSlip, inputs);
        whole(result);
        const slip = value(result, 'slip');
        expect(slip).toBeLessThanOrEqual(100);
        expect(value(result, 'slipLeast')).toBeLessThanOrEqual(slip);
        expect(value(result, 'slipMost')).toBeGreaterThanOrEqual(slip);
        close(value(result, 'unslippedSpeed') * (1 - slip / 100), inputs.speed, 1e-6);
      }),
    );
  });

  it('falls with speed, grows with pitch and revolutions', () => {
    fc.assert(
      fc.property(trial, between(1.01, 2), (inputs, times) => {
        const slip = (changed: object) => value(evaluate(propellerSlip, { ...inputs, ...changed }), 'slip');
        expect(slip({ speed: inputs.speed * times })).toBeLessThan(slip({}));
        expect(slip({ pitch: inputs.pitch * times })).toBeGreaterThan(slip({}));
        expect(slip({ engineSpeed: inputs.engineSpeed * times })).toBeGreaterThan(slip({}));
      }),
    );
  });

  it('says the same in inches and miles as in metres and kilometres', () => {
    fc.assert(
      fc.property(trial, (inputs) => {
        const other = {
          ...inputs,
          pitch: { value: in_(inputs.pitch, 'in', 'mm'), unit: 'mm' },
          speed: { value: inputs.speed * 1.852, unit: 'km/h' },
        };
        same(evaluate(propellerSlip, inputs), evaluate(propellerSlip, other), 1e-6);
      }),
    );
  });
});

describe('mean of means', () => {
  const moments = (n: number) =>
    fc.array(between(0.2, 2), { minLength: n, maxLength: n }).map((steps) => {
      let at = 0;
      return steps.map((step) => {
        at += step;
        return at;
      });
    });
  const count = fc.integer({ min: 2, max: 8 });

  it('weights sum to one, and are the binomial ones at equal intervals', () => {
    fc.assert(
      fc.property(count, between(0.1, 60), (n, step) => {
        close(weighted(Array(n).fill(1), binomialWeights(n)), 1);
        const at = weightsAt(Array.from({ length: n }, (_, i) => i * step));
        for (const [i, weight] of binomialWeights(n).entries()) close(at[i] as number, weight, 1e-7);
      }),
    );
  });

  it('is what repeated means of neighbours give', () => {
    fc.assert(
      fc.property(fc.array(between(0, 60), { minLength: 2, maxLength: 12 }), (speeds) => {
        close(weighted(speeds, binomialWeights(speeds.length)), successiveMeans(speeds).at(-1)?.[0] ?? -1);
      }),
    );
  });

  it('takes out every current of two degrees less than there are runs, at any times', () => {
    fc.assert(
      fc.property(
        count.chain((n) =>
          fc.tuple(
            moments(n),
            fc.array(between(-0.2, 0.2), { minLength: n - 1, maxLength: n - 1 }),
            between(5, 40),
          ),
        ),
        ([times, coefficients, speed]) => {
          const current = (t: number) => coefficients.reduce((sum, a, power) => sum + a * t ** power, 0);
          const runs = times.map((t, i) => speed + (i % 2 === 0 ? 1 : -1) * current(t));
          close(weighted(runs, weightsAt(times)), speed, 1e-6);
        },
      ),
    );
  });

  it('lies between the slowest and the fastest run; turning every run about changes nothing but the current', () => {
    fc.assert(
      fc.property(fc.array(read(1, 50), { minLength: 2, maxLength: 12 }), (speeds) => {
        const runs = (first: number) =>
          speeds.map((speed, i) => ({ along: (i + first) % 2 === 0 ? 'out' : 'back', speed }));
        const result = evaluate(speedRuns, { runs: runs(0) });
        const turned = evaluate(speedRuns, { runs: runs(1) });
        whole(result);
        expect(value(result, 'speed')).toBeGreaterThanOrEqual(min(speeds) - 1e-9);
        expect(value(result, 'speed')).toBeLessThanOrEqual(max(speeds) + 1e-9);
        close(value(result, 'plainMean'), mean(speeds));
        close(value(turned, 'speed'), value(result, 'speed'));
        close(value(turned, 'currentFirst'), -value(result, 'currentFirst'));
      }),
    );
  });

  it('says the same by speeds and by times, in knots and in kilometres an hour', () => {
    fc.assert(
      fc.property(
        fc.array(read(2, 50), { minLength: 2, maxLength: 6 }),
        read(1, 50),
        (speeds, claimedSpeed) => {
          const along = (i: number) => (i % 2 === 0 ? 'out' : 'back');
          const more = { claimedSpeed, speedResolution: 0, timeResolution: 0 };
          const bySpeed = { ...more, runs: speeds.map((speed, i) => ({ along: along(i), speed })) };
          const byTime = {
            ...more,
            distance: { value: 1852, unit: 'm' },
            runs: speeds.map((speed, i) => ({ along: along(i), time: 3600 / speed })),
          };
          const metric = {
            ...more,
            runs: speeds.map((speed, i) => ({
              along: along(i),
              speed: { value: speed * 1.852, unit: 'km/h' },
            })),
          };
          same(evaluate(speedRuns, bySpeed), evaluate(speedRuns, byTime), 1e-8);
          same(evaluate(speedRuns, bySpeed), evaluate(speedRuns, metric), 1e-8);
        },
      ),
    );
  });
});

describe('engine readings', () => {
  const readings = fc.array(read(1, 600, 1), { minLength: 1, maxLength: 12 });
  const rule = fc.constantFrom('within-70', 'within-75', 'within-15', 'within-10');
  const fuel = fc.constantFrom('petrol', 'diesel');
  const cylinders = (values: number[], unit = 'psi') => values.map((x) => ({ dry: { value: x, unit } }));

  it('spread and share are shares of the highest, as simple-statistics finds it', () => {
    fc.assert(
      fc.property(readings, rule, fuel, (values, by, kind) => {
        const result = evaluate(engineReadings, { fuel: kind, rule: by, cylinders: cylinders(values) });
        whole(result);
        close(value(result, 'spread') + value(result, 'lowestShare'), 100);
        expect(value(result, 'spread')).toBeGreaterThanOrEqual(0);
        expect(value(result, 'spread')).toBeLessThan(100);
        close(value(result, 'lowestShare'), (100 * min(values)) / max(values));
        expect(value(result, 'lowCylinders')).toBeLessThanOrEqual(values.length);
      }),
    );
  });

  it('never judges better for a weaker cylinder', () => {
    const order = ['satisfactory', 'attention', 'indeterminate', 'unsatisfactory'];
    fc.assert(
      fc.property(fc.array(read(1, 600, 1), { minLength: 2, maxLength: 8 }), rule, (values, by) => {
        const lowest = values.indexOf(min(values));
        const weaker = values.map((x, i) => (i === lowest ? x / 2 : x));
        const verdict = (list: number[]) =>
          order.indexOf(
            evaluate(engineReadings, {
              fuel: 'diesel',
              rule: by,
              gaugeResolution: 0,
              cylinders: cylinders(list),
            }).verdict,
          );
        expect(verdict(weaker)).toBeGreaterThanOrEqual(verdict(values));
      }),
    );
  });

  it('says the same in psi and bar, Fahrenheit and Celsius', () => {
    fc.assert(
      fc.property(readings, rule, fuel, read(20, 300), (values, by, kind, celsius) => {
        const common = { fuel: kind, rule: by, hose: 'epdm', guarded: 'no' };
        const warm = { wetExhaust: celsius, dryExhaust: celsius, coolant: celsius };
        const fahrenheit = { value: (celsius * 9) / 5 + 32, unit: 'degF' };
        const bar = values.map((x) => in_(x, 'psi', 'bar'));
        same(
          evaluate(engineReadings, { ...common, ...warm, cylinders: cylinders(values) }),
          evaluate(engineReadings, {
            ...common,
            wetExhaust: fahrenheit,
            dryExhaust: fahrenheit,
            coolant: fahrenheit,
            cylinders: cylinders(bar, 'bar'),
          }),
          1e-6,
        );
      }),
      // Once found by chance: a cylinder exactly at the limit, below it only in bar.
      { examples: [[[476.1, 529, 1], 'within-10', 'petrol', 20]] },
    );
  });

  it('is whole for anything it accepts', () => {
    const temperature = fc.option(read(-20, 1100), { nil: undefined });
    const anything = fc.record({
      fuel,
      rule: fc.constantFrom('manual', 'within-70', 'within-15'),
      manualLeast: fc.option(read(1, 800), { nil: undefined }),
      manualDifference: fc.option(read(1, 800), { nil: undefined }),
      cylinders: fc.option(
        fc.array(fc.record({ dry: read(0, 800), wet: fc.option(read(0, 800), { nil: undefined }) }), {
          maxLength: 6,
        }),
        { nil: undefined },
      ),
      ratedSpeed: fc.option(read(500, 6000), { nil: undefined }),
      reachedSpeed: fc.option(read(500, 6000), { nil: undefined }),
      coolant: temperature,
      wetExhaust: temperature,
      hose: fc.constantFrom('r2', 'epdm', 'silicone', 'unknown'),
      dryExhaust: temperature,
      guarded: fc.constantFrom('yes', 'no', 'not-examined'),
    });
    fc.assert(
      fc.property(anything, (inputs) => {
        const result = accepted(engineReadings, inputs);
        if (result) whole(result);
      }),
    );
  });
});
