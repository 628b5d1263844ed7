import { choice, fallback, measure, optional } from '../core/fields.ts';
import { rows } from '../core/list-fields.ts';
import type { InputProblem, Values } from '../core/worksheet.ts';

const speed = { unit: 'kn', units: ['mph', 'km/h', 'm/s'] } as const;

export const speedRunsInputs = {
  runs: rows({
    label: 'Runs',
    help: 'In the order they were made, out and back by turns on one course, engine untouched between',
    each: 'run',
    min: 2,
    max: 12,
    columns: {
      along: choice({ label: 'Direction', choices: { out: 'Out', back: 'Back' } }),
      speed: optional(measure({ label: 'Speed over the ground', above: 0, max: 150, ...speed })),
      time: optional(
        measure({ label: 'Time over the distance', unit: 's', units: ['min', 'h'], above: 0, max: 86_400 }),
      ),
      startedAt: optional(
        measure({
          label: 'Made at',
          help: 'Minutes since the first run; leave out when the runs were evenly spaced',
          unit: 'min',
          units: ['s', 'h'],
          min: 0,
          max: 1440,
        }),
      ),
    },
  }),
  distance: optional(
    measure({
      label: 'Distance of a run',
      help: 'Needed when runs are given by their time',
      unit: 'nmi',
      units: ['m', 'km', 'ft'],
      above: 0,
      max: 100,
    }),
  ),
  speedResolution: fallback(
    measure({ label: 'Smallest change the speed reading shows', min: 0, max: 5, ...speed }),
    0.1,
  ),
  timeResolution: fallback(measure({ label: 'Smallest change of the watch', unit: 's', min: 0, max: 60 }), 1),
  claimedSpeed: optional(
    measure({
      label: 'Speed claimed or expected',
      help: 'At this load and engine speed; without it only the runs themselves are judged',
      above: 0,
      max: 150,
      ...speed,
    }),
  ),
  shortfallAllowed: fallback(measure({ label: 'Shortfall allowed', unit: '%', min: 0, max: 50 }), 3),
};

export type SpeedRunsValues = Values<typeof speedRunsInputs>;

/** Each run needs a speed or a time, times need a distance, and moments must be given for all or none, rising. */
export function refuseSpeedRuns(v: SpeedRunsValues): InputProblem[] {
  const problems: InputProblem[] = [];
  for (const [i, run] of v.runs.entries()) {
    if ((run.speed === undefined) === (run.time === undefined)) {
      problems.push({
        field: `runs/${i}/speed`,
        message: `Run ${i + 1}: give either its speed or its time over the distance.`,
      });
    }
  }
  if (!v.distance && v.runs.some((run) => run.time)) {
    problems.push({ field: 'distance', message: 'Give the distance that the times were taken over.' });
  }
  const moments = v.runs.map((run) => run.startedAt?.in('min'));
  if (moments.some((at) => at !== undefined)) {
    const missing = moments.indexOf(undefined);
    if (missing >= 0) {
      problems.push({
        field: `runs/${missing}/startedAt`,
        message: `Run ${missing + 1}: say when it was made, as for the others, or leave all of them out.`,
      });
    }
    for (let i = 1; i < moments.length; i++) {
      const [before, at] = [moments[i - 1], moments[i]];
      if (before !== undefined && at !== undefined && at <= before) {
        problems.push({
          field: `runs/${i}/startedAt`,
          message: `Run ${i + 1} must be later than run ${i}: list the runs in the order they were made.`,
        });
      }
    }
  }
  return problems;
}
