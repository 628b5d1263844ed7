import { choice, fallback, measure, optional, words } from '../core/fields.ts';
import { rows } from '../core/list-fields.ts';
import type { InputProblem, Values } from '../core/worksheet.ts';
import { type Cell, gridCells, type Place, ringArea } from './cells.ts';
import { pointCells } from './point-cells.ts';

const lengths = { unit: 'm', units: ['mm', 'cm', 'in', 'ft'] } as const;

/** Positions of a free reading, for the columns of its row. */
export const placeColumns = {
  forward: measure({ label: 'Forward of the datum', help: 'Minus for aft', min: -200, max: 200, ...lengths }),
  toPort: measure({ label: 'To port', help: 'Minus for starboard', min: -50, max: 50, ...lengths }),
};

/** What lays readings out on the plan, shared by every map. */
export const layoutFields = {
  spacingAlong: optional(
    measure({
      label: 'Grid: spacing along the boat',
      help: 'Between readings of one row',
      above: 0,
      max: 5,
      ...lengths,
    }),
  ),
  spacingAcross: optional(
    measure({
      label: 'Grid: spacing between rows',
      help: 'As along the boat when left out',
      above: 0,
      max: 5,
      ...lengths,
    }),
  ),
  readingsAt: fallback(
    choice({
      label: 'Grid: where the readings stand',
      help: 'Readings on the rim of the surface count for half a field, in its corners for a quarter',
      choices: { middles: 'In the middle of fields', rim: 'At crossings, the outer ones on the rim' },
    }),
    'middles',
  ),
  aftmost: fallback(
    measure({
      label: 'Grid: aft-most readings, forward of the datum',
      min: -200,
      max: 200,
      ...lengths,
    }),
    0,
  ),
  starboardmost: optional(
    measure({
      label: 'Grid: starboard-most row, to port of the datum',
      help: 'Minus for starboard; the grid is centred when left out',
      min: -50,
      max: 50,
      ...lengths,
    }),
  ),
  reach: fallback(
    measure({
      label: 'Free points: a reading speaks for the surface up to',
      help: 'And no further than half-way to the next reading',
      above: 0,
      max: 5,
      ...lengths,
    }),
    0.25,
  ),
  datum: fallback(words({ label: 'Positions are measured from', max: 80 }), 'the stern on the centreline'),
  outline: optional(
    rows({
      label: 'Outline of the deck',
      help: 'Its corners in order round the boat; drawn, and free points speak only for what lies inside',
      each: 'corner',
      min: 3,
      max: 200,
      columns: placeColumns,
    }),
  ),
};

type Layout = Values<typeof layoutFields>;
type FreePoint = Values<typeof placeColumns>;
type Readings = ReadonlyArray<ReadonlyArray<number | null>>;

interface Given extends Layout {
  readings?: Readings | undefined;
  points?: readonly FreePoint[] | undefined;
}

const placeOf = (point: FreePoint): Place => [point.forward.in('m'), point.toPort.in('m')];

/** What contradicts itself in the layout of a map. */
export function layoutProblems(v: Given): InputProblem[] {
  if ((v.readings === undefined) === (v.points === undefined)) {
    const message = 'Give either a grid of readings or readings at free points.';
    return [{ field: v.readings ? 'points' : 'readings', message }];
  }
  const problems: InputProblem[] = [];
  if (v.readings && !v.spacingAlong) {
    const message = 'Grid: spacing along the boat must be given with a grid of readings.';
    problems.push({ field: 'spacingAlong', message });
  }
  if (v.readings && v.readingsAt === 'rim' && (v.readings.length < 2 || (v.readings[0]?.length ?? 0) < 2)) {
    const message = 'Readings on the rim span a surface only with at least two rows of two.';
    problems.push({ field: 'readingsAt', message });
  }
  return [...problems, ...samePlaces(v.points ?? []), ...outlineProblems(v)];
}

function samePlaces(points: readonly FreePoint[]): InputProblem[] {
  const x = Float64Array.from(points, (point) => point.forward.in('m'));
  const y = Float64Array.from(points, (point) => point.toPort.in('m'));
  const at = (row: number) => [x[row] ?? 0, y[row] ?? 0] as const;
  const order = Uint32Array.from(points.keys()).sort((a, b) => {
    const [here, there] = [at(a), at(b)];
    return here[0] - there[0] || here[1] - there[1] || a - b;
  });
  // The first row, in the order given, that stands where an earlier one does.
  let found: { row: number; earlier: number } | undefined;
  for (let i = 1; i < order.length; i++) {
    const [earlier, row] = [order[i - 1] ?? 0, order[i] ?? 0];
    if (x[earlier] !== x[row] || y[earlier] !== y[row] || (found && found.row < row)) continue;
    found = { row, earlier };
  }
  if (!found) return [];
  const message = `Readings at points, row ${found.row + 1}: stands where row ${found.earlier + 1} does; keep one of them.`;
  return [{ field: `points/${found.row}`, message }];
}

const turn = (a: Place, b: Place, c: Place) => (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]);

function outlineProblems({ outline }: Layout): InputProblem[] {
  if (!outline) return [];
  const corners = outline.map(placeOf);
  if (Math.abs(ringArea(corners)) < 1e-6) {
    return [{ field: 'outline', message: 'Outline of the deck: its corners enclose no area.' }];
  }
  const side = (i: number): [Place, Place] => [
    corners[i] ?? [0, 0],
    corners[(i + 1) % corners.length] ?? [0, 0],
  ];
  for (let i = 0; i < corners.length; i++) {
    for (let j = i + 2; j < corners.length; j++) {
      if (i === 0 && j === corners.length - 1) continue;
      const [a, b] = side(i);
      const [c, d] = side(j);
      if (turn(a, b, c) * turn(a, b, d) < 0 && turn(c, d, a) * turn(c, d, b) < 0) {
        const message = `Outline of the deck: the side from corner ${i + 1} crosses the side from corner ${j + 1}; give the corners in order round the boat.`;
        return [{ field: 'outline', message }];
      }
    }
  }
  return [];
}

/** The outline's corners in m, anticlockwise, if it was given. */
export function outlineOf({ outline }: Layout): Place[] | undefined {
  const corners = outline?.map(placeOf);
  return corners && ringArea(corners) < 0 ? corners.reverse() : corners;
}

/** The cells of the readings taken, in the order of {@link takenOf}. */
export function cellsOf(v: Given): Cell[] {
  if (v.points) return pointCells(v.points.map(placeOf), v.reach.in('m'), outlineOf(v));
  const readings = v.readings ?? [];
  const along = v.spacingAlong?.in('m') ?? 1;
  const across = v.spacingAcross?.in('m') ?? along;
  const starboard = v.starboardmost?.in('m') ?? -((readings.length - 1) * across) / 2;
  return gridCells(
    {
      rows: readings.length,
      columns: readings[0]?.length ?? 0,
      along,
      across,
      corner: [v.aftmost.in('m'), starboard],
      rimmed: v.readingsAt === 'rim',
    },
    (row, column) => typeof readings[row]?.[column] === 'number',
  );
}

/** The readings of a grid that were taken, row by row. */
export function takenOf(readings: Readings): number[] {
  const taken: number[] = [];
  for (const row of readings) for (const value of row) if (value !== null) taken.push(value);
  return taken;
}
