import { checked, choice, fallback, measure, optional } from '../core/fields.ts';
import { rows } from '../core/list-fields.ts';
import type { InputProblem, Values } from '../core/worksheet.ts';
import type { HeelReading } from './inclining-fit.ts';

const mass = { unit: 'kg', units: ['t', 'lb', 'lton', 'ston'] } as const;
const short = { unit: 'm', units: ['mm', 'cm', 'ft', 'in'] } as const;
const deflection = { unit: 'mm', units: ['cm', 'm', 'in'], min: -5000, max: 5000 } as const;
const pendulum = { ...short, above: 0, max: 30 } as const;

export const inputs = {
  displacement: measure({
    label: 'Displacement as inclined',
    help: 'From drafts and density read on the day, weights on board for the test included',
    unit: 't',
    units: ['kg', 'lb', 'lton', 'ston'],
    above: 0,
    max: 500_000,
  }),
  countedFrom: fallback(
    choice({
      label: 'Readings counted from',
      choices: { start: 'The mark before the first shift', scale: 'Any mark on the scale' },
    }),
    'start',
  ),
  firstPendulum: optional(
    measure({ label: 'Length of the first pendulum', help: 'From its pivot to the batten', ...pendulum }),
  ),
  secondPendulum: optional(measure({ label: 'Length of the second pendulum', ...pendulum })),
  thirdPendulum: optional(measure({ label: 'Length of the third pendulum', ...pendulum })),
  shifts: rows({
    label: 'Shifts',
    help: 'After each shift: the weight that lies away from where it started, how far, and what was read. To starboard positive, to port negative',
    each: 'shift',
    max: 40,
    columns: {
      weight: measure({ label: 'Weight', min: 0, max: 5_000_000, ...mass }),
      distance: measure({ label: 'Distance moved', min: -60, max: 60, ...short }),
      first: optional(measure({ label: 'First pendulum', ...deflection })),
      second: optional(measure({ label: 'Second pendulum', ...deflection })),
      third: optional(measure({ label: 'Third pendulum', ...deflection })),
      heel: optional(
        measure({ label: 'Heel by inclinometer', unit: 'deg', units: ['rad'], min: -20, max: 20 }),
      ),
    },
  }),
  division: fallback(
    measure({ label: 'Smallest division of the batten', unit: 'mm', units: ['in'], above: 0, max: 20 }),
    1,
  ),
  heightOfMetacentre: optional(
    measure({
      label: 'Height of the metacentre above the keel, KM',
      help: 'From the hydrostatic particulars at this draft and trim',
      ...short,
      above: 0,
      max: 60,
    }),
  ),
  leastGm: fallback(measure({ label: 'Least metacentric height accepted', ...short, min: 0, max: 10 }), 0.15),
  departureLimit: fallback(
    measure({
      label: 'Greatest departure of a reading from the line',
      help: 'In per cent of the greatest moment',
      unit: '%',
      above: 0,
      max: 50,
    }),
    5,
  ),
  tanks: checked({ label: 'Tanks and bilges empty or pressed full, loose gear off' }),
  free: checked({ label: 'Moorings slack, afloat all round, no wind or current across' }),
};

/** What was given of an inclining test. */
export type IncliningGiven = Values<typeof inputs>;

const pendulums = [
  { column: 'first', length: 'firstPendulum', name: 'first' },
  { column: 'second', length: 'secondPendulum', name: 'second' },
  { column: 'third', length: 'thirdPendulum', name: 'third' },
] as const;

/** One reading, with the length of its pendulum in mm if a pendulum gave it. */
export interface TestReading extends HeelReading {
  pendulum: number | null;
}

/** Readings of a test as moments (t·m) and tangents. */
export function readingsOf(v: IncliningGiven): TestReading[] {
  return v.shifts.flatMap((shift): TestReading[] => {
    const moment = shift.weight.in('t') * shift.distance.in('m');
    const byPendulum = pendulums.flatMap(({ column, length, name }): TestReading[] => {
      const read = shift[column];
      const long = v[length];
      if (!read || !long) return [];
      return [{ instrument: name, moment, tangent: read.in('m') / long.in('m'), pendulum: long.in('mm') }];
    });
    if (!shift.heel) return byPendulum;
    const tangent = Math.tan(shift.heel.in('rad'));
    return [...byPendulum, { instrument: 'inclinometer', moment, tangent, pendulum: null }];
  });
}

/** Readings that have no pendulum, shifts that have no reading. */
export function incliningProblems(v: IncliningGiven): InputProblem[] {
  const problems: InputProblem[] = [];
  for (const { column, length, name } of pendulums) {
    if (!v[length] && v.shifts.some((shift) => shift[column]))
      problems.push({ field: length, message: `Give the length of the ${name} pendulum: it was read.` });
  }
  for (const [at, shift] of v.shifts.entries()) {
    if (!shift.first && !shift.second && !shift.third && !shift.heel)
      problems.push({
        field: `shifts/${at}`,
        message: `Shift ${at + 1} has no reading: give a pendulum or the heel.`,
      });
    if (shift.weight.in('t') >= v.displacement.in('t'))
      problems.push({
        field: `shifts/${at}/weight`,
        message: `Shift ${at + 1} moves ${shift.weight.text()}, no less than the whole displacement of ${v.displacement.text()}.`,
      });
  }
  return problems;
}
