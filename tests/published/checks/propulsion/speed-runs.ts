import { type CheckedWorksheet, near, printed } from '../../support/check.ts';

const directions = (i: number) => (i % 2 === 0 ? 'out' : 'back');
const bySpeed = (...speeds: number[]) => ({
  runs: speeds.map((speed, i) => ({ along: directions(i), speed })),
});
const inMph = (...speeds: number[]) => ({
  runs: speeds.map((value, i) => ({ along: directions(i), speed: { value, unit: 'mph' } })),
});

/** A mile is 1 609.344 m: upstream first, both times in hours. */
const river = (miles: number, upstream: number, downstream: number) => ({
  distance: { value: miles * 1609.344, unit: 'm' },
  runs: [
    { along: 'back', time: { value: upstream, unit: 'h' } },
    { along: 'out', time: { value: downstream, unit: 'h' } },
  ],
});

/** Runs of a boat at 9 kn in a current of a₀ + a₁t + a₂t² kn, at these minutes. */
function quadratic(times: number[], a0: number, a1: number, a2: number) {
  return {
    runs: times.map((t, i) => ({
      along: directions(i),
      speed: 9 + (i % 2 === 0 ? 1 : -1) * (a0 + a1 * t + a2 * t * t),
      startedAt: t,
    })),
  };
}

export const speedRunsChecks: CheckedWorksheet = {
  kind: 'speed-runs',
  checks: [
    {
      name: 'one mile in 12 minutes out and 10 back: 5 and 6 knots, 5.5 through the water',
      source: 'Seamanship Secrets, p. 53',
      basis: 'printed',
      inputs: {
        distance: 1,
        runs: [
          { along: 'out', time: { value: 12, unit: 'min' } },
          { along: 'back', time: { value: 10, unit: 'min' } },
        ],
      },
      outputs: { speed: printed('5.5'), greatestCurrent: printed('0.5') },
    },
    {
      name: '1.2 miles in 12 minutes is 6 knots',
      source: 'Seamanship Secrets, p. 53',
      basis: 'printed',
      inputs: {
        distance: 1.2,
        runs: [
          { along: 'out', time: { value: 0.2, unit: 'h' } },
          { along: 'back', time: { value: 12, unit: 'min' } },
        ],
      },
      outputs: { speed: printed('6'), currentFirst: 0 },
    },
    {
      name: '10 knots against and 30 with a stream: 20 through the water, a current of 10',
      source: 'iboats thread 413867',
      basis: 'printed',
      inputs: bySpeed(10, 30),
      outputs: { speed: 20, currentFirst: -10, currentLast: -10 },
    },
    {
      name: '12 miles in 3 hours up and 2 down: 5 mph, current 1 mph',
      source: 'algebra.com, solution 398815',
      basis: 'printed',
      inputs: river(12, 3, 2),
      outputs: { speed: near(5, 1e-9, 'mph'), currentFirst: near(1, 1e-9, 'mph') },
    },
    {
      name: '45 miles in 5 hours up and 3 down: 12 mph, current 3 mph',
      source: 'answer.ya.guru, question 1464503',
      basis: 'printed',
      inputs: river(45, 5, 3),
      outputs: { speed: near(12, 1e-9, 'mph'), currentLast: near(3, 1e-9, 'mph') },
    },
    {
      name: '9 miles in 3 hours up and 2 down: 3.75 mph, current 0.75 mph',
      source: 'jiskha.com, 1328372669',
      basis: 'printed',
      inputs: river(9, 3, 2),
      outputs: { speed: printed('3.75', 'mph'), currentFirst: printed('0.75', 'mph') },
    },
    {
      name: '55 miles in 3⅔ hours up and 1⅚ down: 22.5 mph, current 7.5 mph',
      source: 'algebra.com, solution 296880',
      basis: 'printed',
      inputs: river(55, 11 / 3, 11 / 6),
      outputs: { speed: printed('22.5', 'mph'), currentFirst: printed('7.5', 'mph') },
    },
    {
      name: 'four runs: 10.2, 8.1, 10.6, 7.9 give 9.275, the plain mean 9.200',
      source: '(10.2 + 3 × 8.1 + 3 × 10.6 + 7.9) / 8 by hand, from Tupper’s equations p. 244',
      basis: 'computed',
      inputs: bySpeed(10.2, 8.1, 10.6, 7.9),
      outputs: { speed: 9.275, plainMean: printed('9.200') },
      verdict: 'satisfactory',
    },
    {
      name: 'a current that turns is taken out whole: 9 kn from 10.20, 8.15, 9.40, 9.15',
      source: 'Tupper p. 244 with V 9, a₀ 1.2, a₁t −0.3, a₂t² −0.05, by hand',
      basis: 'computed',
      inputs: bySpeed(10.2, 8.15, 9.4, 9.15),
      outputs: { speed: 9, plainMean: printed('9.225'), currentFirst: 1.2, currentLast: -0.15 },
    },
    {
      name: 'three runs 1-2-1',
      source: '(12 + 2 × 8 + 11) / 4 by hand',
      basis: 'computed',
      inputs: bySpeed(12, 8, 11),
      outputs: { speed: 9.75 },
    },
    {
      name: 'five runs 1-4-6-4-1',
      source: '(12 + 4 × 8 + 6 × 11 + 4 × 9 + 10) / 16 by hand',
      basis: 'computed',
      inputs: bySpeed(12, 8, 11, 9, 10),
      outputs: { speed: 9.75 },
    },
    {
      name: 'six runs 1-5-10-10-5-1',
      source: '(12 + 5 × 8 + 10 × 11 + 10 × 9 + 5 × 10 + 9) / 32 by hand',
      basis: 'computed',
      inputs: bySpeed(12, 8, 11, 9, 10, 9),
      outputs: { speed: 9.71875 },
    },
    {
      name: 'runs at uneven times take the same current out',
      source: 'Tupper p. 244 with times 0, 10, 35, 50 min put in',
      basis: 'computed',
      inputs: quadratic([0, 10, 35, 50], 1.2, -0.03, 0.0004),
      outputs: { speed: near(9, 1e-9), currentFirst: near(1.2, 1e-9), currentLast: near(0.7, 1e-9) },
      verdict: 'satisfactory',
    },
    {
      name: 'two runs leave a changing current in: attention',
      source: 'Tupper p. 244: a number of runs in each direction',
      basis: 'edge',
      inputs: inMph(20, 22),
      verdict: 'attention',
    },
    {
      name: 'exactly the shortfall allowed',
      source: 'own limit of 3%: 9.7 for 10 kn',
      basis: 'edge',
      inputs: { ...bySpeed(9.7, 9.7, 9.7, 9.7), claimedSpeed: 10, speedResolution: 0 },
      outputs: { speed: 9.7 },
      verdict: 'satisfactory',
    },
    {
      name: 'a hair below it',
      source: 'own limit of 3%: 9.7 for 10 kn',
      basis: 'edge',
      inputs: { ...bySpeed(9.699, 9.699, 9.699, 9.699), claimedSpeed: 10, speedResolution: 0 },
      verdict: 'unsatisfactory',
    },
    {
      name: 'below it by less than the readings can show',
      source: 'own limit of 3%: 9.7 for 10 kn; readings to 0.1 kn',
      basis: 'edge',
      inputs: { ...bySpeed(9.6, 9.6, 9.6, 9.6), claimedSpeed: 10 },
      verdict: 'attention',
    },
    {
      name: 'two runs the same way are not judged',
      source: 'the weights hold for runs out and back by turns',
      basis: 'edge',
      inputs: {
        runs: [
          { along: 'out', speed: 10 },
          { along: 'out', speed: 9 },
        ],
      },
      verdict: 'indeterminate',
    },
    {
      name: 'a current of half the boat’s speed is believed',
      source: 'own limit: half the speed found',
      basis: 'edge',
      inputs: { ...bySpeed(15, 5), claimedSpeed: 10 },
      outputs: { speed: 10, greatestCurrent: 5 },
      verdict: 'attention',
    },
    {
      name: 'a larger one is not, and the claim is not judged by it',
      source: 'own limit: half the speed found',
      basis: 'edge',
      inputs: { ...bySpeed(15.1, 4.9), claimedSpeed: 20 },
      verdict: 'indeterminate',
    },
    {
      name: 'one run, a run without speed or time, times without a distance',
      source: 'needed together',
      basis: 'edge',
      inputs: { runs: [{ along: 'out' }, { along: 'back', time: 600 }] },
      refused: ['distance', 'runs/0/speed'],
    },
    {
      name: 'runs out of order',
      source: 'impossible by definition',
      basis: 'edge',
      inputs: {
        runs: [
          { along: 'out', speed: 10, startedAt: 10 },
          { along: 'back', speed: 9, startedAt: 5 },
        ],
      },
      refused: ['runs/1/startedAt'],
    },
    {
      name: 'a single run',
      source: 'a double run is the least',
      basis: 'edge',
      inputs: bySpeed(10),
      refused: ['runs'],
    },
  ],
  unverified: [
    'No published numeric example of four or more runs was found; those checks are worked by hand from Tupper’s equations.',
  ],
};
