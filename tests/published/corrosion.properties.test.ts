import { evaluate, InputsRefused } from '@garboard/trade/worksheets/core/evaluate';
import { alloyNeeded, coatingBreakdown, yearsOf } from '@garboard/trade/worksheets/corrosion/anode-demand';
import { anodeLife } from '@garboard/trade/worksheets/corrosion/anode-life';
import {
  anyShape,
  longFlush,
  longSlender,
  radiusAtEnd,
  shortSlender,
} from '@garboard/trade/worksheets/corrosion/anode-resistance';
import {
  convertPotential,
  type Electrode,
  electrodes,
} from '@garboard/trade/worksheets/corrosion/electrodes';
import { galvanicCouple } from '@garboard/trade/worksheets/corrosion/galvanic-couple';
import {
  couple,
  type MetalKey,
  metalOf,
  penetration,
  series,
} from '@garboard/trade/worksheets/corrosion/galvanic-series';
import { criteria } from '@garboard/trade/worksheets/corrosion/hull-criteria';
import { hullPotential } from '@garboard/trade/worksheets/corrosion/hull-potential';
import fc from 'fast-check';
import Qty from 'js-quantities';
import { evaluate as calculate } from 'mathjs';
import { mean } from 'simple-statistics';
import { describe, expect, it } from 'vitest';
import { answer, between, expectSame, expectSound, grade, value } from './support/sound.ts';

/** js-quantities is the unit library that the worksheets don't use. */
const times = (from: string, to: string, amount: number) => amount * Qty(1, from).to(to).scalar;
const close = (found: number, wanted: number, share = 1e-9) =>
  expect(Math.abs(found - wanted)).toBeLessThanOrEqual(Math.abs(wanted) * share + 1e-9);
const electrode = fc.constantFrom(...(Object.keys(electrodes) as Electrode[]));
const metal = fc.constantFrom(...(Object.keys(series) as MetalKey[]));

describe('hull potential', () => {
  const hull = fc.constantFrom(...Object.keys(criteria));
  // Whole, as a meter shows them: a fraction of a few millivolts is taken for volts and refused.
  const millivolts = (min: number, max: number) => fc.integer({ min, max });

  it('converts there and back, and by any way round', () => {
    fc.assert(
      fc.property(between(-2000, 2000), electrode, electrode, electrode, (reading, a, b, c) => {
        close(convertPotential(convertPotential(reading, a, b), b, a), reading);
        close(convertPotential(convertPotential(reading, a, b), b, c), convertPotential(reading, a, c));
      }),
    );
  });

  it('is the same boat by every electrode and in volts', () => {
    fc.assert(
      fc.property(hull, millivolts(-1990, 290), electrode, (kind, silver, by) => {
        const open = evaluate(hullPotential, {
          hull: kind,
          reading: silver,
          electrode: 'silver-seawater',
          water: 'sea',
        });
        const reading = convertPotential(silver, 'silver-seawater', by);
        const input = { hull: kind, reading, electrode: by, water: 'sea' };
        const one = evaluate(hullPotential, input);
        close(value(one, 'silver'), silver, 1e-9);
        for (const key of ['copperSulphate', 'zinc', 'calomel'])
          close(value(one, key), value(open, key), 1e-9);
        expectSame(
          one,
          evaluate(hullPotential, { ...input, reading: { value: times('mV', 'V', reading), unit: 'V' } }),
        );
      }),
    );
  });

  it('is sound with and without a reading at rest, in every water', () => {
    fc.assert(
      fc.property(
        hull,
        millivolts(-1900, 200),
        millivolts(-1900, 200),
        fc.constantFrom('sea', 'brackish', 'fresh'),
        fc.option(fc.constantFrom('bronze', 'stainless', 'steel', 'aluminium'), { nil: undefined }),
        (kind, reading, restReading, water, least) => {
          const input = {
            hull: kind,
            reading,
            water,
            electrode: 'silver-seawater',
            ...(least ? { metal: least } : {}),
          };
          expectSound(evaluate(hullPotential, input));
          expectSound(evaluate(hullPotential, { ...input, restReading }));
        },
      ),
    );
  });

  it('goes from too little over well to too much, never back', () => {
    const rank = { under: 0, well: 1, over: 2 };
    fc.assert(
      fc.property(hull, millivolts(-1900, 200), millivolts(0, 90), (kind, reading, more) => {
        const at = (mV: number) =>
          evaluate(hullPotential, { hull: kind, reading: mV, electrode: 'silver-seawater', water: 'sea' })
            .outputs.state?.value as keyof typeof rank;
        expect(rank[at(reading - more)]).toBeGreaterThanOrEqual(rank[at(reading)]);
      }),
    );
  });
});

describe('anodes', () => {
  it('alloy needed and years it lasts are each other’s inverse, as mathjs works them', () => {
    fc.assert(
      fc.property(
        between(0.01, 500),
        between(0.1, 40),
        between(0.5, 1),
        between(500, 2500),
        (current, years, use, capacity) => {
          const mass = alloyNeeded(current, years, use, capacity);
          close(yearsOf(mass, current, use, capacity), years);
          close(mass, calculate('I * t * 8760 / (u * c)', { I: current, t: years, u: use, c: capacity }));
        },
      ),
    );
  });

  it('resistances as mathjs works them, falling with size', () => {
    fc.assert(
      fc.property(between(0.15, 50), between(0.1, 3), between(0.01, 0.5), (rho, length, r) => {
        const scope = { p: rho, L: length, r };
        close(longSlender(rho, length, r), calculate('p/(2 pi L) * (log(4 L / r) - 1)', scope), 1e-8);
        close(
          shortSlender(rho, length, r),
          calculate('p/(2 pi L)*(log(2 L/r*(1+sqrt(1+(r/(2 L))^2)))+r/(2 L)-sqrt(1+(r/(2 L))^2))', scope),
          1e-8,
        );
        close(longFlush(rho, length, r), calculate('p / (2 * (L + r) / 2)', scope));
        close(anyShape(rho, r), calculate('0.315 p / sqrt(r)', scope));
        expect(shortSlender(rho, length, r * 1.1)).toBeLessThan(shortSlender(rho, length, r));
        expect(shortSlender(rho, length * 1.1, r)).toBeLessThan(shortSlender(rho, length, r));
      }),
    );
  });

  it('the two slender forms differ by 6.8% where they meet', () => {
    expect(shortSlender(0.3, 0.4, 0.1) / longSlender(0.3, 0.4, 0.1)).toBeCloseTo(1.068, 3);
  });

  it('a worn anode is thinner than new and no thinner than its core', () => {
    fc.assert(
      fc.property(between(0.02, 0.5), between(0, 0.9), between(0.5, 0.99), (radius, share, use) => {
        const core = 2 * radius * share;
        const end = radiusAtEnd({ length: 1, radius, core }, use);
        expect(end).toBeGreaterThanOrEqual(core / 2 - 1e-12);
        if (use > 0.1) expect(end).toBeLessThan(radius);
      }),
    );
  });

  it('a coating never fails by more than all, and its mean is the mean of its ends', () => {
    fc.assert(
      fc.property(between(0, 1), between(0, 1), between(0, 50), (start, perYear, years) => {
        expect(coatingBreakdown(start, perYear, years)).toBeLessThanOrEqual(1);
        if (start + perYear * years < 1) {
          const ends = [start, coatingBreakdown(start, perYear, years)];
          close(coatingBreakdown(start, perYear, years / 2), mean(ends));
        }
      }),
    );
  });

  const worn = fc.record({
    alloy: fc.constantFrom('zinc', 'aluminium', 'magnesium'),
    count: fc.integer({ min: 1, max: 12 }),
    newMass: between(0.1, 20),
    wasted: between(0, 100),
    inService: between(0.5, 60),
    untilNext: between(0.5, 36),
    area: between(0.1, 100),
    meanDensity: between(1, 500),
    bareStart: between(0, 1),
    barePerYear: between(0, 0.5),
  });

  it('is sound; pounds, inches, years and square feet give the same', () => {
    fc.assert(
      fc.property(worn, between(50, 400), (w, length) => {
        const shaped = { ...w, shape: 'long-flush', length, width: length / 5, depth: length / 8 };
        const one = evaluate(anodeLife, shaped);
        expectSound(one);
        const other = evaluate(anodeLife, {
          ...shaped,
          newMass: { value: times('kg', 'lb', w.newMass), unit: 'lb' },
          inService: { value: w.inService / 12, unit: 'year' },
          area: { value: times('m^2', 'ft^2', w.area), unit: 'ft2' },
          length: { value: times('mm', 'in', length), unit: 'in' },
        });
        // Whole numbers of anodes may turn where a count lies as near as the conversion is good to.
        for (const key of ['massNeeded', 'timeLeft', 'resistance', 'current', 'currentGiven'])
          close(value(other, key), value(one, key), 1e-6);
      }),
    );
  });

  it('more wasted leaves no more time, and never a better verdict', () => {
    fc.assert(
      fc.property(worn, between(1, 2), (w, more) => {
        const wasted = Math.max(10, w.wasted);
        const after = Math.min(100, wasted * more);
        const { area: _a, meanDensity: _d, ...plain } = w;
        const one = evaluate(anodeLife, { ...plain, wasted });
        const other = evaluate(anodeLife, { ...plain, wasted: after });
        expect(value(other, 'timeLeft')).toBeLessThanOrEqual(value(one, 'timeLeft') + 1e-9);
        expect(grade(other)).toBeGreaterThanOrEqual(grade(one));
      }),
    );
  });

  it('every shape is worked or refused, never half', () => {
    const shape = fc.constantFrom('long-slender', 'short-slender', 'long-flush', 'other');
    fc.assert(
      fc.property(
        shape,
        between(1, 3000),
        between(1, 1000),
        between(1, 1000),
        between(0, 500),
        between(0, 600),
        (kind, length, width, depth, coreWidth, standOff) => {
          const input = {
            ...{ alloy: 'aluminium', newMass: 10, meanCurrent: 1, shape: kind, exposedArea: 500 },
            ...{ length, width, depth, coreWidth, standOff },
          };
          try {
            expectSound(evaluate(anodeLife, input));
          } catch (error) {
            if (!(error instanceof InputsRefused)) throw error;
          }
        },
      ),
    );
  });
});

describe('a galvanic couple', () => {
  it('is the same either way round', () => {
    fc.assert(
      fc.property(metal, metal, (a, b) => {
        if (a === b) return;
        const one = couple(a, b);
        const other = couple(b, a);
        expect([other.least, other.greatest, other.told]).toEqual([one.least, one.greatest, one.told]);
        if (one.told) expect(other.anode).toBe(one.anode);
        expect(one.greatest).toBeGreaterThanOrEqual(one.least);
      }),
    );
  });

  it('is sound; square inches and amperes give the same', () => {
    fc.assert(
      fc.property(
        metal,
        metal,
        between(0.1, 10_000),
        between(0.1, 10_000),
        between(0, 100),
        fc.constantFrom('sea', 'brackish', 'spray', 'fresh', 'dry'),
        answer,
        (metalA, metalB, areaA, areaB, coupleCurrent, electrolyte, joined) => {
          if (metalA === metalB) return;
          const input = { metalA, metalB, areaA, areaB, coupleCurrent, electrolyte, joined };
          const one = evaluate(galvanicCouple, input);
          expectSound(one);
          const other = evaluate(galvanicCouple, {
            ...input,
            areaA: { value: times('cm^2', 'in^2', areaA), unit: 'in2' },
            areaB: { value: times('cm^2', 'in^2', areaB), unit: 'in2' },
            coupleCurrent: { value: times('mA', 'A', coupleCurrent), unit: 'A' },
          });
          expectSame(one, other);
        },
      ),
    );
  });

  it('eats away in proportion to the current, as mathjs works Faraday’s law', () => {
    fc.assert(
      fc.property(between(0.001, 1000), (density) => {
        close(
          penetration(metalOf('steel'), density) as number,
          calculate('1000 * i * 55.845 / 2 * 365 * 86400 / (96485.332 * 7.87e6)', { i: density }),
        );
        close(
          penetration(metalOf('zinc'), 2 * density) as number,
          2 * (penetration(metalOf('zinc'), density) as number),
        );
      }),
    );
  });

  it('more of the nobler metal never makes it better', () => {
    fc.assert(
      fc.property(metal, metal, between(0.01, 100), between(1, 10), (a, b, ratio, more) => {
        if (a === b || !couple(a, b).told) return;
        const { anode, cathode } = couple(a, b);
        const at = (areaB: number) =>
          grade(
            evaluate(galvanicCouple, {
              ...{ metalA: anode, metalB: cathode, areaA: 1, areaB, electrolyte: 'sea', joined: 'yes' },
            }),
          );
        expect(at(ratio * more)).toBeGreaterThanOrEqual(at(ratio));
      }),
    );
  });
});
