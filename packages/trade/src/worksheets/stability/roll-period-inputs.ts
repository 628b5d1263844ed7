import { choice, count, fallback, measure, optional, plainNumber } from '../core/fields.ts';
import { rows } from '../core/list-fields.ts';
import type { InputProblem, Values } from '../core/worksheet.ts';
import { computedFactor, type RollFactor, rollFactors } from './roll-period-factors.ts';

const length = { unit: 'm', units: ['ft'], above: 0 } as const;

export const inputs = {
  beam: measure({ label: 'Beam', help: 'Greatest, at the waterline', ...length, max: 40 }),
  hull: fallback(
    choice({ label: 'Hulls', choices: { one: 'One hull', several: 'Two or more hulls' } }),
    'one',
  ),
  runs: rows({
    label: 'Runs timed',
    help: 'Whole rolls, from one side back to the same side, after what set her rolling has stopped; let the roll die out between runs',
    each: 'run',
    max: 20,
    columns: {
      rolls: count({ label: 'Whole rolls', min: 1, max: 100 }),
      time: measure({ label: 'Time', unit: 's', units: ['min'], above: 0, max: 3600 }),
    },
  }),
  timing: fallback(measure({ label: 'Uncertainty of the time of a run', unit: 's', min: 0, max: 5 }), 0.3),
  condition: choice({
    label: 'Condition or kind of vessel',
    choices: {
      ...wordsOf(rollFactors),
      computed: 'Factor worked from beam, draft and waterline length',
      own: 'Factor known for this boat',
    },
  }),
  table: fallback(
    choice({
      label: 'Table of factors',
      choices: { metric: 'IMO, for metres', feet: 'Transport Canada, for feet' },
    }),
    'metric',
  ),
  ownFactor: optional(
    plainNumber({
      label: 'Factor known for this boat',
      help: 'For the unit of the table chosen',
      above: 0,
      max: 2,
    }),
  ),
  draft: optional(measure({ label: 'Draft of the hull', ...length, max: 20 })),
  waterlineLength: optional(measure({ label: 'Waterline length', ...length, max: 400 })),
  leastGm: fallback(
    measure({
      label: 'Least metacentric height accepted',
      unit: 'm',
      units: ['ft', 'mm', 'in'],
      min: 0,
      max: 10,
    }),
    0.15,
  ),
};

/** What was given of a rolling test. */
export type RollGiven = Values<typeof inputs>;

function wordsOf<Key extends string>(factors: Record<Key, RollFactor>): Record<Key, string> {
  return Object.fromEntries(
    Object.entries<RollFactor>(factors).map(([key, { words }]) => [key, words]),
  ) as Record<Key, string>;
}

/** Factor by the hull’s dimensions, metres; undefined without them. */
export const byDimensions = (v: RollGiven): number | undefined =>
  v.draft &&
  v.waterlineLength &&
  computedFactor({
    beam: v.beam.in('m'),
    draft: v.draft.in('m'),
    waterline: v.waterlineLength.in('m'),
  });

/** The factor, in the unit of the table chosen; undefined where none is printed or given. */
export function factorOf(v: RollGiven): number | undefined {
  if (v.condition === 'own') return v.ownFactor;
  if (v.condition === 'computed') return byDimensions(v);
  const printed: RollFactor = rollFactors[v.condition];
  return printed[v.table];
}

/** What the factor needs and was not given. */
export function rollProblems(v: RollGiven): InputProblem[] {
  const problem = (field: string, message: string) => [{ field, message }];
  if (v.condition === 'own' && v.ownFactor === undefined)
    return problem('ownFactor', 'Give the factor known for this boat.');
  if (v.condition === 'computed') {
    if (v.table === 'feet')
      return problem('table', 'The factor worked from the dimensions is for metres: choose that table.');
    if (!v.draft) return problem('draft', 'Give the draft of the hull, for the factor.');
    if (!v.waterlineLength) return problem('waterlineLength', 'Give the waterline length, for the factor.');
  }
  if (factorOf(v) === undefined)
    return problem('table', 'No factor for feet is printed for this condition: choose the table for metres.');
  return v.runs.flatMap((run, at) =>
    run.time.in('s') <= v.timing.in('s')
      ? problem(`runs/${at}/time`, `Run ${at + 1} took no longer than the uncertainty of its time.`)
      : [],
  );
}
