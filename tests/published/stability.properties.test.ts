import { evaluate } from '@garboard/trade/worksheets/core/evaluate';
import { inclining } from '@garboard/trade/worksheets/stability/inclining';
import { fitHeel } from '@garboard/trade/worksheets/stability/inclining-fit';
import { rollPeriod } from '@garboard/trade/worksheets/stability/roll-period';
import {
  computedFactor,
  gmOfPeriod,
  metricToFeet,
  periodOfGm,
  rollFactors,
} from '@garboard/trade/worksheets/stability/roll-period-factors';
import fc from 'fast-check';
import Qty from 'js-quantities';
import { evaluate as calculate } from 'mathjs';
import { linearRegression } from 'simple-statistics';
import { describe, expect, it } from 'vitest';
import { answer, between, expectSame, expectSound, grade, value } from './support/sound.ts';

/** js-quantities is the unit library that the worksheets don't use. */
const times = (from: string, to: string, amount: number) => amount * Qty(1, from).to(to).scalar;

describe('the line through an inclining test', () => {
  const readings = fc
    .array(
      fc.record({
        instrument: fc.constant('first'),
        moment: between(-50, 50),
        tangent: between(-0.15, 0.15),
      }),
      {
        minLength: 3,
        maxLength: 30,
      },
    )
    .filter((all) => Math.max(...all.map((r) => r.tangent)) - Math.min(...all.map((r) => r.tangent)) > 0.01);

  it('is that of simple-statistics when its intercept is free', () => {
    fc.assert(
      fc.property(readings, (all) => {
        const theirs = linearRegression(all.map((r) => [r.tangent, r.moment]));
        const ours = fitHeel(all, false);
        fc.pre(ours !== undefined && Math.abs(theirs.m) > 1e-3);
        if (!ours) throw new Error('a line');
        const scale = 1 + Math.abs(theirs.m);
        expect(Math.abs(ours.slope - theirs.m)).toBeLessThan(1e-7 * scale);
        // Upright is where their line crosses no moment.
        const crossing = theirs.b / theirs.m;
        for (const [at, r] of all.entries())
          expect(Math.abs((ours.readings[at]?.tangent ?? 0) - r.tangent - crossing)).toBeLessThan(
            1e-6 * (1 + Math.abs(crossing)),
          );
      }),
    );
  });

  it('sees no constant added to one instrument', () => {
    fc.assert(
      fc.property(readings, readings, between(-0.1, 0.1), (first, second, zero) => {
        const both = (shift: number) => [
          ...first,
          ...second.map((r) => ({ ...r, instrument: 'second', tangent: r.tangent + shift })),
        ];
        const [plain, moved] = [fitHeel(both(0), false), fitHeel(both(zero), false)];
        fc.pre(plain !== undefined && moved !== undefined && Math.abs(plain.slope) > 1e-3);
        expect(Math.abs((plain?.slope ?? 0) - (moved?.slope ?? 1))).toBeLessThan(
          1e-7 * (1 + Math.abs(plain?.slope ?? 0)),
        );
      }),
    );
  });

  it('through the origin is what mathjs makes of Σ(t·m)/Σt², and that of a doubled, mirrored set', () => {
    fc.assert(
      fc.property(readings, (all) => {
        const ours = fitHeel(all, true);
        fc.pre(ours !== undefined);
        if (!ours) throw new Error('a line');
        const slope = calculate('sum(dotMultiply(t, m)) / sum(dotMultiply(t, t))', {
          t: all.map((r) => r.tangent),
          m: all.map((r) => r.moment),
        });
        expect(Math.abs(ours.slope - slope)).toBeLessThan(1e-8 * (1 + Math.abs(slope)));
        // Mirrored readings have their mean at the origin, so that a free line goes through it.
        const mirrored = all.flatMap((r) => [
          [r.tangent, r.moment],
          [-r.tangent, -r.moment],
        ]);
        expect(Math.abs(linearRegression(mirrored).m - ours.slope)).toBeLessThan(
          1e-7 * (1 + Math.abs(slope)),
        );
      }),
    );
  });
});

describe('an inclining test', () => {
  /** Readings of a boat of so many t and GM (m) without error, at these deflections in mm of a 2 m pendulum. */
  const exact = (tonnes: number, gm: number, deflections: readonly number[]) => ({
    displacement: tonnes,
    firstPendulum: 2,
    tanks: 'yes',
    free: 'yes',
    shifts: deflections.map((first) => ({
      weight: { value: (Math.abs(first) / 2000) * gm * tonnes, unit: 't' },
      distance: Math.sign(first),
      first,
    })),
  });
  const four = [-70, -40, 40, 70];

  it('gives back the height that the readings were made from', () => {
    fc.assert(
      fc.property(between(0.5, 5000), between(0.15, 5), (tonnes, gm) => {
        const result = evaluate(inclining, exact(tonnes, gm, four));
        expect(Math.abs(value(result, 'gm') - gm)).toBeLessThan(1e-9 * gm * 10);
        expect(value(result, 'departure')).toBeLessThan(1e-6);
      }),
      { numRuns: 60 },
    );
  });

  it('is the same in feet, inches and long tons', () => {
    fc.assert(
      fc.property(between(1, 500), between(0.2, 4), between(0.9, 1.1), (tonnes, gm, error) => {
        const given = exact(tonnes, gm, four);
        const shifts = given.shifts.map((s, at) => ({ ...s, first: at === 0 ? s.first * error : s.first }));
        const one = evaluate(inclining, { ...given, shifts, heightOfMetacentre: 5 });
        const other = evaluate(inclining, {
          ...given,
          displacement: { value: times('tonne', 'lb', tonnes), unit: 'lb' },
          firstPendulum: { value: times('m', 'ft', 2), unit: 'ft' },
          heightOfMetacentre: { value: times('m', 'ft', 5), unit: 'ft' },
          shifts: shifts.map((s) => ({
            weight: { value: times('tonne', 'lb', s.weight.value), unit: 'lb' },
            distance: { value: times('m', 'ft', s.distance), unit: 'ft' },
            first: { value: times('mm', 'in', s.first), unit: 'in' },
          })),
        });
        if (Math.abs(value(one, 'departure') - 5) > 1e-3) expectSame(one, other, 1e-5);
      }),
      { numRuns: 60 },
    );
  });

  it('gives a result fit to show for whatever it accepts', () => {
    fc.assert(
      fc.property(
        between(1, 1000),
        fc.array(
          fc.record({
            weight: between(0, 900),
            distance: between(-60, 60),
            first: between(-400, 400),
            heel: between(-9, 9),
          }),
          { minLength: 1, maxLength: 12 },
        ),
        between(2, 30),
        fc.constantFrom('start', 'scale'),
        answer,
        answer,
        (displacement, shifts, firstPendulum, countedFrom, tanks, free) =>
          expectSound(
            evaluate(inclining, {
              displacement,
              shifts,
              firstPendulum,
              countedFrom,
              tanks,
              free,
              heightOfMetacentre: 3,
            }),
          ),
      ),
      { numRuns: 80 },
    );
  });

  it('finds more height where the same weights heel less', () => {
    fc.assert(
      fc.property(between(0.2, 3), between(1.05, 3), (gm, less) => {
        const given = exact(20, gm, four);
        const stiff = given.shifts.map((s) => ({ ...s, first: s.first / less }));
        const ratio = value(evaluate(inclining, { ...given, shifts: stiff }), 'gm') / gm;
        expect(Math.abs(ratio - less)).toBeLessThan(1e-8);
      }),
      { numRuns: 40 },
    );
  });
});

describe('a rolling test', () => {
  const rolled = (beam: unknown, period: number) => ({
    beam,
    runs: [5, 6, 7].map((rolls) => ({ rolls, time: rolls * period })),
    condition: 'light',
  });

  it('has period and height as inverses', () => {
    fc.assert(
      fc.property(between(0.3, 1.2), between(0.5, 30), between(0.01, 10), (factor, beam, gm) => {
        expect(Math.abs(gmOfPeriod(factor, beam, periodOfGm(factor, beam, gm)) - gm)).toBeLessThan(
          1e-12 * gm * 100,
        );
      }),
    );
  });

  it('finds less height for a slower roll, and is judged no better', () => {
    fc.assert(
      fc.property(between(1, 30), between(1, 30), between(1, 12), (a, b, beam) => {
        const quick = evaluate(rollPeriod, rolled(beam, Math.min(a, b)));
        const slow = evaluate(rollPeriod, rolled(beam, Math.max(a, b)));
        expect(value(slow, 'gm')).toBeLessThanOrEqual(value(quick, 'gm'));
        expect(grade(slow)).toBeGreaterThanOrEqual(grade(quick));
        expect(value(slow, 'gmLow')).toBeLessThanOrEqual(value(slow, 'gm'));
        expect(value(slow, 'gmHigh')).toBeGreaterThanOrEqual(value(slow, 'gm'));
      }),
      { numRuns: 60 },
    );
  });

  it('is the same for a beam in feet, with either table', () => {
    fc.assert(
      fc.property(
        between(1, 15),
        between(1, 20),
        fc.constantFrom('metric', 'feet'),
        (beam, period, table) => {
          const one = evaluate(rollPeriod, { ...rolled(beam, period), table });
          const feet = { value: times('m', 'ft', beam), unit: 'ft' };
          const other = evaluate(rollPeriod, { ...rolled(feet, period), table });
          const near = ['gm', 'gmLow'].some((key) => Math.abs(value(one, key) - 0.15) < 1e-5);
          if (!near) expectSame(one, other, 1e-5);
        },
      ),
      { numRuns: 60 },
    );
  });

  it('has factors for feet that are those for metres to within their rounding', () => {
    for (const factor of Object.values<{ metric: number; feet?: number }>(rollFactors)) {
      if (factor.feet !== undefined)
        expect(Math.abs(factor.metric * metricToFeet - factor.feet)).toBeLessThan(0.005);
    }
  });

  it('has the factor of the weather criterion as mathjs works it', () => {
    fc.assert(
      fc.property(between(2, 20), between(0.3, 8), between(4, 70), (beam, draft, waterline) => {
        const c = calculate('0.373 + 0.023 * B / d - 0.043 * L / 100', { B: beam, d: draft, L: waterline });
        expect(Math.abs(computedFactor({ beam, draft, waterline }) - 2 * c)).toBeLessThan(1e-12 * 10);
      }),
    );
  });

  it('gives a result fit to show for whatever it accepts', () => {
    fc.assert(
      fc.property(
        fc.record({
          beam: between(0.1, 40),
          hull: fc.constantFrom('one', 'several'),
          runs: fc.array(fc.record({ rolls: fc.integer({ min: 1, max: 100 }), time: between(5.1, 3600) }), {
            minLength: 1,
            maxLength: 20,
          }),
          timing: between(0, 5),
          condition: fc.constantFrom('light', 'computed', 'own'),
          ownFactor: between(0.01, 2),
          draft: between(0.1, 20),
          waterlineLength: between(1, 90),
        }),
        (inputs) => expectSound(evaluate(rollPeriod, inputs)),
      ),
      { numRuns: 80 },
    );
  });
});
