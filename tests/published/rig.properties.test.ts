import { evaluate } from '@garboard/trade/worksheets/core/evaluate';
import { chainWear, strengthLeft } from '@garboard/trade/worksheets/rig/chain-wear';
import { liftingLimit } from '@garboard/trade/worksheets/rig/chain-wear-table';
import { riggingWire } from '@garboard/trade/worksheets/rig/rigging-wire';
import { usualBreakingLoad } from '@garboard/trade/worksheets/rig/rigging-wire-table';
import { rode } from '@garboard/trade/worksheets/rig/rode';
import {
  lieOf,
  type Rode,
  shapeOf,
  tangentLength,
  tangentPull,
  weightInWater,
} from '@garboard/trade/worksheets/rig/rode-catenary';
import { horizontalLoads, loadColumn } from '@garboard/trade/worksheets/rig/rode-table';
import fc from 'fast-check';
import Qty from 'js-quantities';
import { evaluate as calculate } from 'mathjs';
import { describe, expect, it } from 'vitest';
import { answer, between, expectSame, expectSound, grade, value } from './support/sound.ts';

/** js-quantities is the unit library that the worksheets don't use. */
const times = (from: string, to: string, amount: number) => amount * Qty(1, from).to(to).scalar;

describe('a standing wire', () => {
  const wire = (more: Record<string, unknown>) => ({
    diameter: 7,
    construction: '1x19',
    grade: '316',
    waters: 'coastal',
    brokenWires: 'no',
    terminalFault: 'no',
    age: 3,
    ...more,
  });

  it('gives a result fit to show for whatever it accepts', () => {
    fc.assert(
      fc.property(
        fc.record({
          diameter: between(0.1, 40),
          construction: fc.constantFrom('1x19', 'other'),
          grade: fc.constantFrom('316', '302-304', 'unknown'),
          breakingLoad: fc.option(between(0.01, 1000), { nil: undefined }),
          fittingShare: between(1, 100),
          waters: fc.constantFrom('inshore', 'coastal', 'offshore'),
          load: fc.option(between(0.001, 1000), { nil: undefined }),
          displacement: fc.option(between(1, 500_000), { nil: undefined }),
          shroudsPerSide: fc.integer({ min: 1, max: 8 }),
          tension: fc.option(between(0.001, 1000), { nil: undefined }),
          age: fc.option(between(0, 100), { nil: undefined }),
          brokenWires: answer,
          terminalFault: answer,
        }),
        (inputs) => expectSound(evaluate(riggingWire, inputs)),
      ),
      { numRuns: 80 },
    );
  });

  it('is judged no better for more load, and no worse for less', () => {
    fc.assert(
      fc.property(between(0.1, 40), between(0.1, 40), (a, b) => {
        const [light, heavy] = [Math.min(a, b), Math.max(a, b)].map((load) =>
          evaluate(riggingWire, wire({ load })),
        );
        if (!light || !heavy) throw new Error('two results');
        expect(value(heavy, 'safetyFactor')).toBeLessThanOrEqual(value(light, 'safetyFactor'));
        expect(grade(heavy)).toBeGreaterThanOrEqual(grade(light));
      }),
      { numRuns: 60 },
    );
  });

  it('is the same in pounds and inches as in newtons and millimetres', () => {
    fc.assert(
      fc.property(between(500, 20_000), between(100, 5000), between(500, 50_000), (breaking, load, boat) => {
        const one = evaluate(riggingWire, {
          ...wire({ diameter: { value: 0.3, unit: 'in' } }),
          breakingLoad: { value: breaking, unit: 'lbf' },
          load: { value: load, unit: 'lbf' },
          displacement: { value: boat, unit: 'lb' },
        });
        const other = evaluate(riggingWire, {
          ...wire({ diameter: 7.62 }),
          breakingLoad: times('lbf', 'kN', breaking),
          load: times('lbf', 'kN', load),
          displacement: times('lb', 'kg', boat),
        });
        // Verdicts may part only within the other library's rounding of a limit.
        if (Math.abs(value(one, 'safetyFactor') - 3) > 1e-5) expectSame(one, other, 1e-5);
      }),
      { numRuns: 60 },
    );
  });

  it('grows stronger with size in each grade', () => {
    const sizes = [1.5875, 2.38125, 3, 3.175, 3.96875, 4, 4.7625, 5, 5.55625, 6.35, 7.14375, 7.9375, 9.525];
    for (const steel of ['302-304', '316', 'unknown'] as const) {
      const strengths = sizes.flatMap((size) => usualBreakingLoad(size, steel)?.strength.in('kN') ?? []);
      expect(strengths.length).toBeGreaterThan(9);
      expect(strengths).toEqual([...strengths].sort((a, b) => a - b));
    }
  });
});

describe('a rode as it lies', () => {
  const laid: fc.Arbitrary<Rode> = fc
    .record({
      height: between(1, 60),
      chainScope: between(0, 10),
      ropeScope: between(0, 10),
      mass: between(0.3, 20),
      pull: between(50, 50_000),
    })
    .filter((r) => r.chainScope + r.ropeScope > 1.02)
    .map((r) => ({
      chain: r.chainScope * r.height,
      rope: r.ropeScope * r.height,
      weight: weightInWater(r.mass),
      height: r.height,
      pull: r.pull,
    }));

  it('reaches from the seabed to the bow with its whole length', () => {
    fc.assert(
      fc.property(laid, (r) => {
        const lie = lieOf(r);
        const shape = shapeOf(r, lie);
        const [x, y] = shape.at(-1) ?? [0, 0];
        expect(Math.abs(x - lie.reach)).toBeLessThan(1e-6 * (1 + lie.reach));
        expect(Math.abs(y - r.height)).toBeLessThan(1e-5 * (1 + r.height));
        const long = shape
          .slice(1)
          .reduce(
            (sum, [bx, by], at) => sum + Math.hypot(bx - (shape[at]?.[0] ?? 0), by - (shape[at]?.[1] ?? 0)),
            0,
          );
        // Chords are a little shorter than the curve.
        const whole = r.chain + r.rope;
        expect(long).toBeLessThanOrEqual(whole * (1 + 1e-6));
        expect(long).toBeGreaterThan(whole * 0.995);
      }),
    );
  });

  it('of chain alone lies flat just when it is longer than the tangent length', () => {
    fc.assert(
      fc.property(laid, between(0.3, 3), (r, share) => {
        const tangent = tangentLength(r.height, r.pull, r.weight);
        const chain = Math.max(r.height * 1.001, tangent * share);
        const lie = lieOf({ ...r, chain, rope: 0 });
        if (chain > tangent * 1.0001) {
          expect(lie.angle).toBe(0);
          expect(Math.abs(chain - lie.grounded - tangent)).toBeLessThan(1e-6 * chain);
          // T = F + w h
          expect(Math.abs(lie.bowTension - r.pull - r.weight * r.height)).toBeLessThan(1e-6 * lie.bowTension);
        } else if (chain < tangent * 0.9999) {
          expect(lie.angle).toBeGreaterThan(0);
          expect(lie.grounded).toBe(0);
        }
      }),
    );
  });

  it('has the two forms of the tangent catenary as inverses, and mathjs agrees', () => {
    fc.assert(
      fc.property(laid, ({ height, pull, weight }) => {
        const long = tangentLength(height, pull, weight);
        expect(Math.abs(tangentPull(height, long, weight) - pull)).toBeLessThan(
          1e-9 * (pull + weight * height) * 10,
        );
        const same = calculate('a * sinh(acosh(h / a + 1))', { a: pull / weight, h: height });
        expect(Math.abs(same - long)).toBeLessThan(1e-5 * long);
      }),
    );
  });

  it('pulls up no more on the anchor with more rode, no less with more wind', () => {
    fc.assert(
      fc.property(laid, between(1, 2), (r, more) => {
        const lie = lieOf(r);
        expect(lieOf({ ...r, rope: r.rope + more * 5 }).angle).toBeLessThanOrEqual(lie.angle + 1e-7);
        expect(lieOf({ ...r, pull: r.pull * more }).angle).toBeGreaterThanOrEqual(lie.angle - 1e-7);
        expect(lie.angle).toBeLessThan(90);
      }),
    );
  });
});

describe('a rode', () => {
  const hauled = (more: Record<string, unknown>) => ({
    boatLength: 34,
    boat: 'sail',
    wind: '30',
    chain: 'G43',
    chainSize: '5/16 in',
    shackle: 'none',
    rope: 'none',
    ...more,
  });

  it('has loads that grow with length and with wind as its square, within what the table rounds', () => {
    for (const wind of ['15', '42', '60'] as const) {
      const share = { '15': 0.25, '42': 2, '60': 4 }[wind];
      for (const [column, load] of horizontalLoads[wind].entries()) {
        expect(Math.abs(load - share * (horizontalLoads['30'][column] ?? 0))).toBeLessThanOrEqual(2.5);
      }
    }
    fc.assert(
      fc.property(between(1, 70), between(1, 70), fc.boolean(), (a, b, highWindage) => {
        const column = (length: number) => loadColumn({ length, kind: 'power', highWindage }) ?? 99;
        expect(column(Math.max(a, b))).toBeGreaterThanOrEqual(column(Math.min(a, b)));
      }),
    );
  });

  it('gives a result fit to show for whatever it accepts', () => {
    fc.assert(
      fc.property(
        fc.record({
          boatLength: between(1, 90),
          beam: fc.option(between(1, 30), { nil: undefined }),
          boat: fc.constantFrom('sail', 'power'),
          windage: fc.constantFrom('usual', 'high'),
          wind: fc.constantFrom('15', '30', '42', '60'),
          shackle: fc.constantFrom('none', 'carbon'),
          shackleSize: fc.constant('1/2 in'),
          rope: fc.constantFrom('none', 'nylon'),
          ropeSize: fc.constant('5/8 in'),
          ropeEnd: fc.constantFrom('spliced', 'knotted'),
          depth: between(0.5, 50),
          bowHeight: between(0, 5),
          chainLength: between(60, 300),
          chainMass: between(0.2, 30),
        }),
        (inputs) => expectSound(evaluate(rode, hauled(inputs))),
      ),
      { numRuns: 80 },
    );
  });

  it('names as the weakest the least limit of its parts', () => {
    fc.assert(
      fc.property(between(100, 9000), between(100, 9000), between(100, 90_000), (chain, shackle, rope) => {
        const result = evaluate(
          rode,
          hauled({
            chain: 'marked',
            chainLimit: chain,
            shackle: 'marked',
            shackleLimit: shackle,
            rope: 'marked',
            ropeBreaking: rope,
          }),
        );
        const least = Math.min(chain, shackle, rope * 0.15);
        expect(Math.abs(value(result, 'weakestLimit') - least)).toBeLessThan(1e-6 * least);
        expect(result.verdict).toBe(least >= value(result, 'load') ? 'satisfactory' : 'unsatisfactory');
      }),
      { numRuns: 60 },
    );
  });

  it('is the same in metres and newtons as in feet and pounds', () => {
    fc.assert(
      fc.property(between(300, 4000), between(2, 15), between(3, 9), (load, depth, scope) => {
        const feet = (metres: number) => ({ value: times('m', 'ft', metres), unit: 'ft' });
        const one = evaluate(
          rode,
          hauled({ load, depth, bowHeight: 1, chainLength: (depth + 1) * scope, chainMass: 1.4 }),
        );
        const other = evaluate(
          rode,
          hauled({
            load: { value: times('lbf', 'N', load), unit: 'N' },
            depth: feet(depth),
            bowHeight: feet(1),
            chainLength: feet((depth + 1) * scope),
            chainMass: { value: times('kg/m', 'lb/ft', 1.4), unit: 'lb/ft' },
          }),
        );
        if (Math.abs(value(one, 'angle') - 8) > 1e-3) expectSame(one, other, 1e-4);
      }),
      { numRuns: 60 },
    );
  });
});

describe('a worn chain', () => {
  const measured = (asNew: number, ...links: number[]) => ({
    newDiameter: asNew,
    links: links.map((first) => ({ first })),
    damage: 'no',
  });

  it('gives a result fit to show for whatever it accepts', () => {
    fc.assert(
      fc.property(
        between(1, 100),
        fc.array(fc.record({ first: between(0.05, 1.4), second: between(0.05, 1.4) }), {
          minLength: 1,
          maxLength: 60,
        }),
        between(0.01, 2),
        answer,
        (asNew, links, resolution, damage) =>
          expectSound(
            evaluate(chainWear, {
              newDiameter: asNew,
              links: links.map((l) => ({ first: l.first * asNew, second: l.second * asNew })),
              resolution,
              damage,
            }),
          ),
      ),
      { numRuns: 60 },
    );
  });

  it('is judged by its worst link, and no better for wearing more', () => {
    fc.assert(
      fc.property(between(0.5, 1), between(0.5, 1), (a, b) => {
        const [less, more] = [Math.min(a, b), Math.max(a, b)];
        const worst = evaluate(chainWear, measured(10, 10, less * 10));
        const better = evaluate(chainWear, measured(10, 10, more * 10));
        expect(value(worst, 'wear')).toBeGreaterThanOrEqual(value(better, 'wear'));
        expect(value(worst, 'strengthLeft')).toBeLessThanOrEqual(value(better, 'strengthLeft'));
        expect(grade(worst)).toBeGreaterThanOrEqual(grade(better));
        expect(value(worst, 'wear')).toBeLessThanOrEqual(100);
        expect(strengthLeft(less * 10, 10)).toBeLessThanOrEqual(1);
      }),
      { numRuns: 60 },
    );
  });

  it('is the same in inches as in millimetres', () => {
    fc.assert(
      fc.property(between(4, 40), between(0.5, 1), (asNew, share) => {
        const inch = (mm: number) => ({ value: times('mm', 'in', mm), unit: 'in' });
        const one = evaluate(chainWear, measured(asNew, asNew * share));
        const other = evaluate(chainWear, {
          newDiameter: inch(asNew),
          links: [{ first: inch(asNew * share) }],
          damage: 'no',
        });
        const shows = 10 / asNew;
        const near = [7, 10, 10 - shows, shows].some((limit) => Math.abs(100 - 100 * share - limit) < 1e-3);
        const edge = Math.abs(
          (liftingLimit(asNew / 25.4)?.least ?? 0) - (liftingLimit(asNew / 25.4 + 1e-6)?.least ?? 0),
        );
        if (!near && edge === 0) expectSame(one, other, 1e-5);
      }),
      { numRuns: 60 },
    );
  });
});
