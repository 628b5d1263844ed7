import { meshOf, unionPaths } from '@garboard/trade/drawing/union-path';
import { evaluate } from '@garboard/trade/worksheets/core/evaluate';
import { moistureMap } from '@garboard/trade/worksheets/structure/moisture-map';
import { pointCells } from '@garboard/trade/worksheets/structure/point-cells';
import { baselineOf, scoreOf, shareInterval } from '@garboard/trade/worksheets/structure/robust';
import { soundingMap } from '@garboard/trade/worksheets/structure/sounding-map';
import fc from 'fast-check';
import { median, medianAbsoluteDeviation } from 'simple-statistics';
import { describe, expect, it } from 'vitest';
import { leastMs } from '../support/least-time.ts';
import { expectSame, expectSound, value } from './support/sound.ts';

const meterReadings = fc.array(fc.integer({ min: 0, max: 100 }), { minLength: 7, maxLength: 60 });

/** A grid of `columns` by up to 12 rows from a flat list of cells. */
const gridOf = <T>(cell: fc.Arbitrary<T>) =>
  fc
    .record({ columns: fc.integer({ min: 1, max: 12 }), rows: fc.integer({ min: 1, max: 12 }) })
    .chain(({ columns, rows }) =>
      fc.array(fc.array(cell, { minLength: columns, maxLength: columns }), {
        minLength: rows,
        maxLength: rows,
      }),
    );

const sounded = gridOf(fc.constantFrom(0, 0, 0, 1, 2, null)).filter((rows) =>
  rows.flat().some((answer) => answer !== null),
);

const freePoints = fc.uniqueArray(
  fc.record({
    forward: fc.integer({ min: 0, max: 40 }).map((n) => n / 10),
    toPort: fc.integer({ min: -10, max: 10 }).map((n) => n / 10),
    reading: fc.integer({ min: 0, max: 60 }),
  }),
  { minLength: 7, maxLength: 40, selector: (p) => `${p.forward} ${p.toPort}` },
);

describe('baseline and scores', () => {
  it('agree with simple-statistics', () => {
    fc.assert(
      fc.property(meterReadings, (readings) => {
        const base = baselineOf(readings, 1);
        expect(base.median).toBeCloseTo(median(readings), 10);
        expect(base.mad).toBeCloseTo(medianAbsoluteDeviation(readings), 10);
        if (base.from !== 'mad') return;
        for (const reading of readings) {
          const score = (0.6745 * (reading - median(readings))) / medianAbsoluteDeviation(readings);
          expect(scoreOf(reading, base)).toBeCloseTo(score, 8);
        }
      }),
    );
  });

  it('never divide by nothing', () => {
    fc.assert(
      fc.property(fc.constantFrom(0, 10), fc.integer({ min: 7, max: 30 }), (reading, count) => {
        const base = baselineOf(
          Array.from({ length: count }, () => reading),
          0.5,
        );
        expect(base).toEqual({ median: reading, mad: 0, spread: 0.5, from: 'step' });
      }),
    );
  });

  it('stay the same when the meter’s zero and scale are changed', () => {
    fc.assert(
      fc.property(
        meterReadings,
        fc.integer({ min: 1, max: 9 }),
        fc.integer({ min: 0, max: 50 }),
        (readings, by, up) => {
          const one = baselineOf(readings, 1);
          const other = baselineOf(
            readings.map((reading) => by * reading + up),
            by,
          );
          for (const reading of readings) {
            expect(scoreOf(by * reading + up, other)).toBeCloseTo(scoreOf(reading, one), 8);
          }
        },
      ),
    );
  });

  it('give an interval that holds the share found and mirrors its complement', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 500 }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (tried, part) => {
          const found = Math.round(part * tried);
          const [low, high] = shareInterval(found, tried);
          expect(low).toBeGreaterThanOrEqual(0);
          expect(low).toBeLessThanOrEqual(found / tried);
          expect(high).toBeGreaterThanOrEqual(found / tried);
          expect(high).toBeLessThanOrEqual(1);
          const [otherLow, otherHigh] = shareInterval(tried - found, tried);
          expect(otherLow).toBeCloseTo(1 - high, 12);
          expect(otherHigh).toBeCloseTo(1 - low, 12);
        },
      ),
    );
  });
});

/** Regions of a grid counted another way: each cell takes the least label around it until nothing changes. */
function regionsByLabels(rows: ReadonlyArray<ReadonlyArray<number | null>>): number {
  const labels = rows.map((row, y) => row.map((answer, x) => ((answer ?? 0) > 0 ? y * 100 + x : -1)));
  const at = (y: number, x: number) => labels[y]?.[x] ?? -1;
  for (let changed = true; changed; ) {
    changed = false;
    for (const [y, row] of labels.entries()) {
      for (const [x, own] of row.entries()) {
        if (own < 0) continue;
        const around = [at(y - 1, x), at(y + 1, x), at(y, x - 1), at(y, x + 1)].filter((label) => label >= 0);
        const least = Math.min(own, ...around);
        if (least < own) {
          row[x] = least;
          changed = true;
        }
      }
    }
  }
  return new Set(labels.flat().filter((label) => label >= 0)).size;
}

describe('a sounding map on a grid', () => {
  it('counts regions and areas as another count does', () => {
    fc.assert(
      fc.property(sounded, (readings) => {
        const result = evaluate(soundingMap, { readings, spacingAlong: 0.4, spacingAcross: 0.25 });
        expectSound(result);
        const taken = readings.flat().filter((answer) => answer !== null);
        const of = (answer: number) => taken.filter((found) => found === answer).length;
        expect(value(result, 'regions')).toBe(regionsByLabels(readings));
        expect(value(result, 'voidArea')).toBeCloseTo(of(2) * 0.1, 9);
        expect(value(result, 'dullArea')).toBeCloseTo(of(1) * 0.1, 9);
        expect(value(result, 'mappedArea')).toBeCloseTo(taken.length * 0.1, 9);
        expect(value(result, 'voidShare')).toBeLessThanOrEqual(100);
      }),
      { numRuns: 60 },
    );
  });

  it('is the same in feet as in metres', () => {
    fc.assert(
      fc.property(sounded, fc.integer({ min: 4, max: 40 }), (readings, inches) => {
        const one = evaluate(soundingMap, { readings, spacingAlong: { value: inches, unit: 'in' } });
        const other = evaluate(soundingMap, { readings, spacingAlong: (inches * 25.4) / 1000 });
        expectSame(one, other);
      }),
      { numRuns: 40 },
    );
  });

  it('is the same turned end for end', () => {
    fc.assert(
      fc.property(sounded, (readings) => {
        const turned = readings.map((row) => [...row].reverse()).reverse();
        expectSame(
          evaluate(soundingMap, { readings, spacingAlong: 0.3 }),
          evaluate(soundingMap, { readings: turned, spacingAlong: 0.3 }),
        );
      }),
      { numRuns: 40 },
    );
  });
});

describe('a moisture map', () => {
  const grids = gridOf(fc.oneof(fc.integer({ min: 8, max: 18 }), fc.integer({ min: 0, max: 100 })));

  it('is sound for whatever is accepted', () => {
    fc.assert(
      fc.property(grids, (readings) => {
        expectSound(evaluate(moistureMap, { readings, spacingAlong: 0.2 }));
      }),
      { numRuns: 60 },
    );
  });

  it('finds no more with a higher limit', () => {
    fc.assert(
      fc.property(grids, fc.integer({ min: 10, max: 60 }), (readings, tenths) => {
        const wet = (wetScore: number) =>
          value(evaluate(moistureMap, { readings, spacingAlong: 0.2, wetScore }), 'wetReadings');
        const [low, high] = [wet(tenths / 10), wet(tenths / 10 + 1)];
        if (readings.flat().length >= 7) expect(high).toBeLessThanOrEqual(low);
      }),
      { numRuns: 60 },
    );
  });

  it('is sound for free points, and their cells never overlap the deck', () => {
    fc.assert(
      fc.property(freePoints, fc.integer({ min: 1, max: 20 }), (points, tenths) => {
        const outline = [
          { forward: 0, toPort: -0.8 },
          { forward: 3, toPort: -1 },
          { forward: 4, toPort: 0 },
          { forward: 3, toPort: 1 },
          { forward: 0, toPort: 0.8 },
        ];
        const result = evaluate(moistureMap, { points, reach: tenths / 10, outline });
        expectSound(result);
        const deck = 3 * 1.8 + 1;
        expect(value(result, 'mappedArea')).toBeLessThanOrEqual(deck + 1e-9);
        expect(value(result, 'wetShare')).toBeLessThanOrEqual(100);
      }),
      { numRuns: 60 },
    );
  });

  it('is the same in inches as in metres for free points', () => {
    fc.assert(
      fc.property(freePoints, (points) => {
        const inches = (metres: number) => ({ value: metres / 0.0254, unit: 'in' });
        const same = points.map((p) => ({ ...p, forward: inches(p.forward), toPort: inches(p.toPort) }));
        expectSame(
          evaluate(moistureMap, { points, reach: 0.37 }),
          evaluate(moistureMap, { points: same, reach: { value: 370, unit: 'mm' } }),
        );
      }),
      { numRuns: 40 },
    );
  });
});

describe('cells of free points', () => {
  it('are where a reading is the nearest, within its reach', () => {
    fc.assert(
      fc.property(freePoints, (points) => {
        const places = points.map((p): [number, number] => [p.forward, p.toPort]);
        const reach = 0.45;
        const cells = pointCells(places, reach);
        const counted = places.map(() => 0);
        const fine = 0.02;
        for (let x = -0.5 + fine / 2; x < 4.5; x += fine) {
          for (let y = -1.5 + fine / 2; y < 1.5; y += fine) {
            let nearest = -1;
            let least = reach * reach;
            for (const [i, [px, py]] of places.entries()) {
              const away = (px - x) ** 2 + (py - y) ** 2;
              if (away < least) {
                least = away;
                nearest = i;
              }
            }
            if (nearest >= 0) counted[nearest] = (counted[nearest] ?? 0) + fine * fine;
          }
        }
        // A cell's rim passes through at most some 2 πr / 0.02 squares, half of them wrong by half.
        for (const [i, cell] of cells.entries())
          expect(Math.abs(cell.area - (counted[i] ?? 0))).toBeLessThan(0.02);
      }),
      { numRuns: 12 },
    );
  });

  it('know their neighbours both ways', () => {
    fc.assert(
      fc.property(freePoints, (points) => {
        const cells = pointCells(
          points.map((p): [number, number] => [p.forward, p.toPort]),
          0.6,
        );
        for (const [i, cell] of cells.entries()) {
          for (const beyond of cell.across) if (beyond >= 0) expect(cells[beyond]?.across).toContain(i);
        }
      }),
    );
  });
});

/** Area inside path data made of M, h, v, l and z, by the shoelace formula. */
function pathArea(path: string): number {
  let area = 0;
  for (const ring of path.split('z').filter(Boolean)) {
    let [x, y] = [0, 0];
    let [startX, startY] = [0, 0];
    for (const [, command = '', numbers = ''] of ring.matchAll(/([Mhvl])([^Mhvl]*)/g)) {
      const [a = 0, b = 0] = (numbers.match(/-?[\d.]+/g) ?? []).map(Number);
      const [fromX, fromY] = [x, y];
      if (command === 'M') [x, y, startX, startY] = [a, b, a, b];
      else if (command === 'h') x += a;
      else if (command === 'v') y += a;
      else [x, y] = [x + a, y + b];
      if (command !== 'M') area += fromX * y - x * fromY;
    }
    area += x * startY - startX * y;
  }
  return Math.abs(area / 2);
}

describe('outlines drawn', () => {
  it('enclose the area of their cells', () => {
    fc.assert(
      fc.property(sounded, (readings) => {
        const columns = readings[0]?.length ?? 0;
        const values = readings.flat().map((answer) => answer ?? 3);
        const patches = values.map((_, i) => {
          const [x, y] = [i % columns, Math.floor(i / columns)];
          const at = (dx: number, dy: number): [number, number] => [x + dx, y + dy];
          const beyond = (dx: number, dy: number) =>
            x + dx < 0 || x + dx >= columns || y + dy < 0 || y + dy >= readings.length
              ? -1
              : i + dx + dy * columns;
          return {
            ring: [at(0, 0), at(1, 0), at(1, 1), at(0, 1)],
            across: [beyond(0, -1), beyond(1, 0), beyond(0, 1), beyond(-1, 0)],
          };
        });
        const mesh = meshOf(patches, { left: 10, top: 200, scale: 10 });
        const paths = unionPaths(mesh, (i) => values[i] ?? -1);
        for (const answer of [0, 1, 2, 3]) {
          const count = values.filter((found) => found === answer).length;
          expect(pathArea(paths.get(answer) ?? '')).toBeCloseTo(100 * count, 6);
        }
      }),
    );
  });
});

describe('a map of 10,000 readings', () => {
  // Rough on purpose: a third of the readings wet, each where it happens to be.
  const rough = Array.from({ length: 100 }, (_, y) =>
    Array.from(
      { length: 100 },
      (_, x) => 12 + ((x * 7 + y * 13) % 5) + ((x * 31 + y * 17 + x * y) % 3 === 0 ? 25 : 0),
    ),
  );

  it('is worked and drawn in under 50 ms', () => {
    const least = leastMs(25, () => evaluate(moistureMap, { readings: rough, spacingAlong: 0.1 }));
    expect(least).toBeLessThan(50);
  });

  it('takes less than 400 kB to draw', () => {
    const [map] = evaluate(moistureMap, { readings: rough, spacingAlong: 0.1 }).drawings;
    expect(map?.svg.length).toBeGreaterThan(1000);
    expect(map?.svg.length).toBeLessThan(400_000);
  });
});
