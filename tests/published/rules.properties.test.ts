import type { Verdict } from '@garboard/trade/vocabulary';
import { evaluate, InputsRefused, type WorksheetResult } from '@garboard/trade/worksheets/core/evaluate';
import { hullNumber } from '@garboard/trade/worksheets/rules/hull-number';
import { decodeHullNumber, mendedReadings } from '@garboard/trade/worksheets/rules/hull-number-decode';
import { navigationLights } from '@garboard/trade/worksheets/rules/navigation-lights';
import {
  mastheadHeightNeeded,
  mastheadSpacingNeeded,
} from '@garboard/trade/worksheets/rules/navigation-lights-heights';
import {
  arcs,
  intensityFor,
  intensityRequired,
  lightLabels,
  rangeOf,
  rangeRequired,
} from '@garboard/trade/worksheets/rules/navigation-lights-rules';
import { safeLoading } from '@garboard/trade/worksheets/rules/safe-loading';
import { personsFromWeight, weightCapacity } from '@garboard/trade/worksheets/rules/safe-loading-rule';
import { powerLimit, raisedToFive, safePower } from '@garboard/trade/worksheets/rules/safe-power';
import { tonnage } from '@garboard/trade/worksheets/rules/tonnage';
import fc from 'fast-check';
import Qty from 'js-quantities';
import { evaluate as calculate } from 'mathjs';
import { describe, expect, it } from 'vitest';

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const close = (found: number, wanted: number, share = 1e-6) =>
  expect(Math.abs(found - wanted)).toBeLessThanOrEqual(Math.abs(wanted) * share + 1e-9);
/** js-quantities is the unit library that the worksheets don't use. */
const times = (from: string, to: string, amount: number) => amount * Qty(1, from).to(to).scalar;
const value = (result: WorksheetResult, key: string) => Number(result.outputs[key]?.value);

function whole(result: WorksheetResult) {
  for (const output of Object.values(result.outputs)) {
    if (typeof output.value === 'number') expect(Number.isFinite(output.value), output.label).toBe(true);
    expect(output.text).not.toMatch(/NaN|undefined|Infinity/);
  }
  expect([...result.reasons, ...result.working].join(' ')).not.toMatch(/NaN|undefined|Infinity/);
  expect(result.reasons.length).toBeGreaterThan(0);
  for (const drawing of result.drawings) expect(drawing.svg).not.toMatch(/NaN|undefined|Infinity/);
}

/** The same result apart from how the inputs were written. */
const judged = ({ outputs, verdict }: WorksheetResult) => ({
  verdict,
  values: Object.fromEntries(Object.entries(outputs).map(([key, output]) => [key, output.value])),
});

describe('simplified tonnage', () => {
  const tenths = (least: number, most: number) =>
    fc.integer({ min: least * 10, max: most * 10 }).map((n) => n / 10);
  const vessel = fc.record({
    sailing: fc.boolean(),
    propulsion: fc.constantFrom('in-hull', 'outside', 'none'),
    length: tenths(20, 78),
    breadth: tenths(3, 20),
    depth: tenths(1, 15),
  });
  const inputs = (v: {
    sailing: boolean;
    propulsion: string;
    length: number;
    breadth: number;
    depth: number;
  }) => ({
    designedForSailing: v.sailing,
    propulsion: v.propulsion,
    use: 'other',
    hulls: [{ shape: 'faired', length: v.length, breadth: v.breadth, depth: v.depth }],
  });

  it('is what mathjs makes of the printed formulas; net is never more than gross', () => {
    fc.assert(
      fc.property(vessel, (v) => {
        const result = evaluate(tonnage, inputs(v));
        whole(result);
        const c = v.sailing ? 0.5 : 0.67;
        close(
          value(result, 'gross'),
          calculate('c * l * b * d / 100', { c, l: v.length, b: v.breadth, d: v.depth }),
        );
        expect(value(result, 'net')).toBeLessThanOrEqual(value(result, 'gross'));
      }),
    );
  });

  it('grows with each dimension and does not care for the unit', () => {
    fc.assert(
      fc.property(
        vessel,
        fc.constantFrom('length' as const, 'breadth' as const, 'depth' as const),
        (v, dimension) => {
          const [hull] = inputs(v).hulls;
          const inInches = {
            ...inputs(v),
            hulls: [
              {
                ...hull,
                length: { value: times('ft', 'in', v.length), unit: 'in' },
                breadth: { value: times('ft', 'in', v.breadth), unit: 'in' },
              },
            ],
          };
          const result = evaluate(tonnage, inputs(v));
          expect(judged(evaluate(tonnage, inInches))).toEqual(judged(result));
          const larger = evaluate(
            tonnage,
            inputs({ ...v, length: v.length + 0.1, [dimension]: v[dimension] + 0.1 }),
          );
          expect(value(larger, 'gross')).toBeGreaterThan(value(result, 'gross'));
        },
      ),
    );
  });
});

describe('the outboard power limit', () => {
  const form = fc.record({ flatBottom: fc.boolean(), remoteAndHigh: fc.boolean() });

  it('never falls as the factor grows, and a flat bottom never allows more', () => {
    fc.assert(
      fc.property(between(1, 400), between(0, 100), form, (factor, more, given) => {
        expect(powerLimit(factor + more, given)).toBeGreaterThanOrEqual(powerLimit(factor, given));
        expect(powerLimit(factor, { ...given, flatBottom: true })).toBeLessThanOrEqual(
          powerLimit(factor, { ...given, flatBottom: false }),
        );
      }),
    );
  });

  it('is what mathjs makes of the formulas above 52.5', () => {
    fc.assert(
      fc.property(between(52.6, 400), form, (F, given) => {
        const formula = given.remoteAndHigh
          ? '2 * F - 90'
          : given.flatBottom
            ? '0.5 * F - 15'
            : '0.8 * F - 25';
        close(powerLimit(F, given), calculate(formula, { F }), 1e-12);
      }),
    );
  });

  it('is raised to the next multiple of five, by less than five', () => {
    fc.assert(
      fc.property(between(0.1, 700), (hp) => {
        const raised = raisedToFive(hp);
        expect(raised % 5).toBe(0);
        expect(raised).toBeGreaterThanOrEqual(hp - 1e-9);
        expect(raised - hp).toBeLessThan(5);
      }),
    );
  });

  it('does not care for the unit, and a boat within it stays so with less power', () => {
    const eighths = (least: number, most: number) =>
      fc.integer({ min: least * 8, max: most * 8 }).map((n) => n / 8);
    fc.assert(
      fc.property(
        eighths(8, 19),
        eighths(3, 8),
        between(1, 300),
        fc.boolean(),
        (length, width, hp, remote) => {
          const boat = {
            boat: 'outboard',
            length,
            beam: 8,
            transomWidth: width,
            aftBeam: width,
            flatBottom: false,
            remoteSteering: remote,
            transomHeight: 20,
            fitted: hp,
          };
          const result = evaluate(safePower, boat);
          whole(result);
          const other = {
            ...boat,
            length: { value: times('ft', 'in', length), unit: 'in' },
            transomHeight: { value: times('in', 'cm', 20), unit: 'cm' },
          };
          expect(judged(evaluate(safePower, other))).toEqual(judged(result));
          if (result.verdict === 'satisfactory')
            expect(evaluate(safePower, { ...boat, fitted: hp / 2 }).verdict).toBe('satisfactory');
        },
      ),
    );
  });
});

describe('weight and persons capacity', () => {
  const boats = fc.constantFrom('outboard' as const, 'up-to-2hp' as const, 'manual' as const);

  it('is what mathjs makes of the printed formulas', () => {
    fc.assert(
      fc.property(boats, between(200, 9000), between(10, 190), (boat, displaced, weight) => {
        const wanted = calculate(boat === 'outboard' ? '(d - w) / 5' : '3 / 10 * (d - w)', {
          d: displaced,
          w: weight,
        });
        close(weightCapacity(boat, displaced, weight), wanted, 1e-11);
      }),
    );
  });

  it('rounds persons to the nearest, never fewer for more weight', () => {
    fc.assert(
      fc.property(between(0, 5000), between(0, 500), (pounds, more) => {
        const persons = personsFromWeight(pounds);
        expect(Math.abs(persons - (pounds + 32) / 141)).toBeLessThanOrEqual(0.5 + 1e-9);
        expect(personsFromWeight(pounds + more)).toBeGreaterThanOrEqual(persons);
      }),
    );
  });

  it('is the lesser of weight and side-loading test, in pounds and in kilograms', () => {
    const pounds = (min: number, max: number) => fc.integer({ min, max });
    fc.assert(
      fc.property(pounds(2000, 6000), pounds(100, 1500), pounds(0, 900), pounds(0, 800), (d, w, e, a) => {
        const given = {
          boat: 'outboard',
          length: 16,
          maximumDisplacement: d,
          boatWeight: w,
          equipmentWeight: e,
          sideTest: a,
          markedPersons: 3,
        };
        const result = evaluate(safeLoading, given);
        whole(result);
        const byWeight = (d - w) / 5 - e;
        const wanted = byWeight < 550 ? Math.max(0, Math.min(byWeight, a / 0.6)) : byWeight;
        close(value(result, 'personsWeight'), wanted, 1e-9);
        const inKilograms = {
          ...given,
          maximumDisplacement: { value: times('lb', 'kg', d), unit: 'kg' },
          boatWeight: { value: times('lb', 'kg', w), unit: 'kg' },
          length: { value: times('ft', 'm', 16), unit: 'm' },
        };
        const other = evaluate(safeLoading, inKilograms);
        expect(other.verdict).toBe(result.verdict);
        expect(value(other, 'persons')).toBe(value(result, 'persons'));
        close(value(other, 'personsWeight'), wanted, 1e-6);
      }),
    );
  });
});

describe('a hull number', () => {
  const characters = 'ABCDEFGHJKLMNPRSTUVWXYZ0123456789';
  const text = (from: string, length: number) =>
    fc
      .array(fc.constantFrom(...from), { minLength: length, maxLength: length })
      .map((letters) => letters.join(''));
  const maker = text('ABCDEFGHIJKLMNOPQRSTUVWXYZ', 3);
  const serial = text(characters, 5);
  const two = (n: number) => String(n % 100).padStart(2, '0');
  const letter = (index: number) => 'ABCDEFGHIJKL'.charAt(index);

  it('in the current format gives back what it was made of', () => {
    fc.assert(
      fc.property(
        maker,
        serial,
        fc.integer({ min: 1984, max: 2070 }),
        fc.nat(11),
        (code, run, model, index) => {
          // index counts the months of the model year from August.
          const month = ((index + 7) % 12) + 1;
          const year = month >= 8 ? model - 1 : model;
          const decoded = decodeHullNumber(`${code}${run}${letter(month - 1)}${year % 10}${two(model)}`);
          expect(decoded).toMatchObject({ manufacturer: code, serial: run, faults: [] });
          expect(decoded.date).toMatchObject({ format: 'current', month, year, modelYear: model });
        },
      ),
    );
  });

  it('in the older formats gives back month and year', () => {
    fc.assert(
      fc.property(
        maker,
        serial,
        fc.integer({ min: 1974, max: 1984 }),
        fc.nat(11),
        (code, run, model, index) => {
          const month = ((index + 7) % 12) + 1;
          const year = month >= 8 ? model - 1 : model;
          const byModel = decodeHullNumber(`${code}${run}M${two(model)}${letter(index)}`);
          expect(byModel.date).toMatchObject({
            format: 'model-year',
            month,
            year,
            modelYear: model,
            faults: [],
          });
          const straight = decodeHullNumber(`US-${code}${run}${two(month)}${two(year)}`);
          expect(straight).toMatchObject({ prefix: 'US', country: 'United States', faults: [] });
          expect(straight.date).toMatchObject({ format: 'straight-year', month, year });
        },
      ),
    );
  });

  it('of any characters is either refused with a sentence or judged in sentences', () => {
    const anything = fc.oneof(
      fc.string({ maxLength: 26 }),
      text('ABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789- ', 12),
      text('ABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789-', 14),
    );
    fc.assert(
      fc.property(anything, anything, (marked, onPapers) => {
        try {
          const result = evaluate(hullNumber, { marked, onPapers });
          whole(result);
          for (const reason of result.reasons) expect(reason).toMatch(/\.$/);
        } catch (error) {
          if (!(error instanceof InputsRefused)) throw error;
          for (const problem of error.problems) expect(problem.message).toMatch(/\.$/);
        }
      }),
    );
  });

  it('is mended in one place only, and the mended reading has no fault', () => {
    fc.assert(
      fc.property(text('ABCISOQZ0125678', 12), (marked) => {
        const decoded = decodeHullNumber(marked);
        for (const reading of mendedReadings(decoded)) {
          expect(reading.faults).toEqual([]);
          expect([...reading.body].filter((character, at) => character !== decoded.body[at])).toHaveLength(1);
        }
      }),
    );
  });
});

describe('navigation lights', () => {
  it('are as bright as mathjs makes them, and range and intensity are each other’s inverse', () => {
    fc.assert(
      fc.property(between(0.1, 30), (range) => {
        const candela = intensityFor(range);
        close(candela, calculate('3.43e6 * 2e-7 * D^2 * 0.8^(-D)', { D: range }), 1e-12);
        close(rangeOf(candela), range, 1e-9);
        expect(intensityFor(range + 0.1)).toBeGreaterThan(candela);
      }),
    );
  });

  it('have printed intensities that round the formula', () => {
    for (const range of [1, 2, 3, 4, 5, 6]) {
      const digits = intensityRequired(range) < 10 ? 1 : 0;
      expect(intensityRequired(range)).toBe(Number(intensityFor(range).toFixed(digits)));
    }
  });

  it('close the horizon: two sidelights and a sternlight, a masthead light and a sternlight', () => {
    expect(arcs.port.degrees + arcs.starboard.degrees + arcs.stern.degrees).toBe(360);
    expect(arcs.masthead.degrees + arcs.stern.degrees).toBe(360);
  });

  it('need no less for a longer or broader vessel', () => {
    const light = fc.constantFrom(
      'masthead' as const,
      'port' as const,
      'stern' as const,
      'all-round' as const,
    );
    const rules = fc.constantFrom('international' as const, 'inland' as const);
    fc.assert(
      fc.property(light, rules, between(1, 200), between(0, 100), (kind, given, size, more) => {
        expect(rangeRequired(kind, size + more)).toBeGreaterThanOrEqual(rangeRequired(kind, size));
        expect(mastheadHeightNeeded(size + more, given)).toBeGreaterThanOrEqual(
          mastheadHeightNeeded(size, given),
        );
        expect(mastheadHeightNeeded(size, 'international')).toBeGreaterThanOrEqual(
          mastheadHeightNeeded(size, 'inland'),
        );
        expect(mastheadSpacingNeeded(size + more, given)).toBeGreaterThanOrEqual(
          mastheadSpacingNeeded(size, given),
        );
      }),
    );
  });

  const answer = fc.constantFrom('yes', 'no', 'not-examined');
  const row = fc.record(
    {
      light: fc.constantFrom(...Object.keys(lightLabels)),
      range: between(0, 8),
      intensity: between(0, 120),
      arc: between(0, 360),
      lights: answer,
      unobstructed: answer,
    },
    { requiredKeys: ['light'] },
  );
  const vessel = fc.record({
    rules: fc.constantFrom('international', 'inland'),
    vessel: fc.constantFrom('power', 'auxiliary', 'sail', 'oars'),
    length: between(2, 90),
    fitted: fc.array(row, { maxLength: 8 }),
    mastheadAboveSidelights: between(0, 5),
  });
  const order: Verdict[] = ['satisfactory', 'attention', 'indeterminate', 'unsatisfactory'];

  it('are judged in full for whatever is fitted, in metres as in feet', () => {
    fc.assert(
      fc.property(vessel, (given) => {
        const result = evaluate(navigationLights, given);
        whole(result);
        const inFeet = { ...given, length: { value: given.length / times('ft', 'm', 1), unit: 'ft' } };
        expect(evaluate(navigationLights, inFeet).verdict).toBe(result.verdict);
      }),
    );
  });

  it('are never the worse for another light in order', () => {
    fc.assert(
      fc.property(
        vessel,
        fc.constantFrom('masthead', 'port', 'starboard', 'stern', 'all-round'),
        (given, kind) => {
          const before = evaluate(navigationLights, given);
          const good = { light: kind, range: 6, lights: 'yes', unobstructed: 'yes' };
          const after = evaluate(navigationLights, { ...given, fitted: [...given.fitted, good] });
          expect(value(after, 'missing') + value(after, 'faulty')).toBeLessThanOrEqual(
            value(before, 'missing') + value(before, 'faulty'),
          );
          expect(order.indexOf(after.verdict)).toBeLessThanOrEqual(
            Math.max(order.indexOf(before.verdict), order.indexOf('attention')),
          );
        },
      ),
    );
  });
});
