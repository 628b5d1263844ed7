import { chart } from '../../drawing/chart.ts';
import type { Drawing } from '../../drawing/svg.ts';
import { measured, type ResultTable } from '../core/outputs.ts';
import { Quantity } from '../core/quantity.ts';
import { settle, symbolOf } from '../core/units.ts';
import { conclude, type Judgement } from '../core/verdict.ts';
import { formatNumber, line } from '../core/working.ts';
import { defineWorksheet } from '../core/worksheet.ts';
import { binomialWeights, successiveMeans, weighted, weightsAt } from './mean-of-means.ts';
import { refuseSpeedRuns, type SpeedRunsValues, speedRunsInputs } from './speed-runs-inputs.ts';

/** Intervals are even when none differs from their mean by more than this share. */
const evenWithin = 0.1;

function evenlySpaced(times: readonly number[]): boolean {
  const steps = times.slice(1).map((t, i) => t - (times[i] as number));
  const mean = steps.reduce((sum, step) => sum + step, 0) / steps.length;
  return steps.every((step) => Math.abs(step - mean) <= evenWithin * mean);
}

/** Everything computed from the runs; knots, minutes. */
function runsOf(v: SpeedRunsValues) {
  const speeds = v.runs.map((run) =>
    run.speed
      ? run.speed.in('kn')
      : settle((v.distance?.in('nmi') ?? Number.NaN) / (run.time?.in('h') ?? Number.NaN)),
  );
  const doubts = v.runs.map((run, i) =>
    run.time
      ? ((speeds[i] as number) * v.timeResolution.in('s')) / run.time.in('s')
      : v.speedResolution.in('kn'),
  );
  const given = v.runs.flatMap((run) => run.startedAt?.in('min') ?? []);
  const timed = given.length === v.runs.length;
  const even = !timed || evenlySpaced(given);
  const weights = even ? binomialWeights(speeds.length) : weightsAt(given);
  const speed = settle(weighted(speeds, weights));
  const currents = speeds.map((run, i) => settle((run - speed) * (v.runs[i]?.along === 'out' ? 1 : -1)));
  return {
    speeds,
    weights,
    even,
    timed,
    times: timed ? given : speeds.map((_, i) => i),
    speed,
    plainMean: speeds.reduce((sum, value) => sum + value, 0) / speeds.length,
    doubt: settle(weighted(doubts, weights)),
    currents,
    greatestCurrent: Math.max(...currents.map(Math.abs)),
  };
}

type Runs = ReturnType<typeof runsOf>;

/** In the unit the surveyor's speeds are in. */
const unitOf = (v: SpeedRunsValues) => v.runs[0]?.speed?.unit ?? v.claimedSpeed?.unit ?? 'kn';
const speedText = (v: SpeedRunsValues, knots: number, digits = 3) =>
  new Quantity(knots, 'kn').to(unitOf(v)).text(digits);

function judge(v: SpeedRunsValues, r: Runs): Judgement[] {
  const judgements: Judgement[] = [];
  const has = `The speed through the water is ${speedText(v, r.speed, 4)}, to within ${speedText(v, r.doubt, 2)} by what the instruments show`;
  const count = v.runs.length;
  if (count < 4) {
    const takesOut =
      count === 2 ? 'only a current that stays the same' : 'only a current that changes evenly';
    const reason = `${count} runs take out ${takesOut}; four runs or more are usual for a trial.`;
    judgements.push({ verdict: 'attention', reason });
  }
  if (r.greatestCurrent > r.speed / 2) {
    const reason = `The current found reaches ${speedText(v, r.greatestCurrent)}, more than half the boat’s own speed: check directions and readings, or repeat the runs at slack water.`;
    judgements.push({ verdict: 'indeterminate', reason });
    // Readings that can hardly be right condemn no boat.
    return judgements;
  }
  if (!v.claimedSpeed) {
    judgements.push({
      verdict: 'satisfactory',
      reason: `${has}. No claimed speed was given to judge it by.`,
    });
    return judgements;
  }
  const claimed = v.claimedSpeed.in('kn');
  const allowed = settle(claimed * (1 - v.shortfallAllowed.in('%') / 100));
  const claim = `${speedText(v, claimed, 4)} is claimed, and ${v.shortfallAllowed.text(3)} less is allowed (${speedText(v, allowed, 4)})`;
  if (r.speed >= allowed) {
    judgements.push({ verdict: 'satisfactory', reason: `${has}; ${claim}.` });
  } else if (r.speed + r.doubt >= allowed) {
    const reason = `${has}; ${claim}. The shortfall is less than these instruments can tell: repeat with finer readings or longer runs.`;
    judgements.push({ verdict: 'attention', reason });
  } else {
    const reason = `${has}: slower than claimed. ${claim}.`;
    judgements.push({ verdict: 'unsatisfactory', reason });
  }
  return judgements;
}

function workingOf(v: SpeedRunsValues, r: Runs): string[] {
  const unit = unitOf(v);
  const to = (knots: number) => formatNumber(new Quantity(knots, 'kn').in(unit), 4);
  const lines = v.runs.flatMap((run, i) =>
    run.time && v.distance
      ? [
          line(
            `Run ${i + 1}`,
            'distance / time',
            `${v.distance.text()} / ${run.time.text()}`,
            speedText(v, r.speeds[i] as number, 4),
          ),
        ]
      : [],
  );
  const result = speedText(v, r.speed, 4);
  const speeds = r.speeds.map(to);
  if (r.even) {
    const rows = successiveMeans(r.speeds);
    lines.push(
      ...rows
        .slice(0, -1)
        .map((row, i) =>
          line(i === 0 ? 'Means of neighbouring runs' : 'Means of those', row.map(to).join('; ')),
        ),
    );
    const over = 2 ** (r.speeds.length - 1);
    const factors = r.weights.map((weight) => Math.round(weight * over));
    const sum = factors
      .map((factor, i) => (factor === 1 ? speeds[i] : `${factor} × ${speeds[i]}`))
      .join(' + ');
    const letters = factors.map((factor, i) => `${factor === 1 ? '' : factor}V${i + 1}`).join(' + ');
    lines.push(line('Mean of means', `(${letters}) / ${over}`, `(${sum}) / ${over}`, result));
  } else {
    const sum = r.weights.map((weight, i) => `${formatNumber(weight, 4)} × ${speeds[i]}`).join(' + ');
    lines.push(
      line(
        'Weights for runs at uneven times',
        '1 / Π|tᵢ − tⱼ|, their sum 1',
        r.weights.map((weight) => formatNumber(weight, 4)).join('; '),
      ),
      line('Speed through the water', 'Σ w · V', sum, result),
    );
  }
  lines.push(
    line('Plain mean, for comparison', speedText(v, r.plainMean, 4)),
    line('Current along the course', '± (run − speed), out positive', r.currents.map(to).join('; ')),
  );
  return lines;
}

function table(v: SpeedRunsValues, r: Runs): ResultTable {
  return {
    title: 'Runs, weights and current found',
    columns: ['Run', 'Direction', 'Over the ground', 'Weight', 'Current, out positive'],
    rows: v.runs.map((run, i) => [
      String(i + 1),
      run.along === 'out' ? 'Out' : 'Back',
      speedText(v, r.speeds[i] as number, 4),
      formatNumber(r.weights[i] as number, 4),
      speedText(v, r.currents[i] as number),
    ]),
  };
}

/** The runs in order or time, and the speed found. */
function drawRuns(v: SpeedRunsValues, r: Runs, strong: boolean): Drawing {
  const unit = unitOf(v);
  const to = (knots: number) => new Quantity(knots, 'kn').in(unit);
  const points = (along: string) =>
    v.runs.flatMap((run, i): [number, number][] =>
      run.along === along ? [[r.times[i] as number, to(r.speeds[i] as number)]] : [],
    );
  const first = r.times[0] as number;
  const last = r.times.at(-1) as number;
  const air = r.timed ? (last - first) * 0.1 : 0.5;
  const across = (knots: number): [number, number][] => [
    [first - air, to(knots)],
    [last + air, to(knots)],
  ];
  const claimed = v.claimedSpeed?.in('kn');
  return chart({
    key: 'runs',
    title: 'Speed runs',
    description: `Speeds over the ground of ${v.runs.length} runs; ${speedText(v, r.speed, 4)} through the water.`,
    x: {
      label: r.timed
        ? 'Minutes since the first run (out: filled; back: open)'
        : 'Run (out: filled; back: open)',
      domain: [first - air, last + air],
      ticks: r.times.map((at, i) => ({
        at,
        words: `${formatNumber(r.timed ? at : at + 1, 3)} ${v.runs[i]?.along}`,
      })),
    },
    y: { label: `Speed over the ground, ${symbolOf(unit)}` },
    height: 260,
    series: [
      { kind: 'line', points: across(r.speed), words: strong ? 'too slow' : 'through water', strong },
      ...(claimed === undefined ? [] : [{ kind: 'dashed' as const, points: across(claimed) }]),
      { kind: 'points', points: points('out') },
      { kind: 'hollow-points', points: points('back') },
    ],
    ...(claimed === undefined
      ? {}
      : { notes: [{ at: [first - air, to(claimed)] as [number, number], words: 'claimed' }] }),
  });
}

/** Speed through the water from double runs, by the mean of means. */
export const speedRuns = defineWorksheet({
  kind: 'speed-runs',
  version: 1,
  title: 'Speed runs',
  group: 'propulsion',
  system: 'engine',
  purpose:
    'Finds the boat’s speed through the water from runs out and back on one course, takes the current out by the mean of means, and shows the current found.',
  inputs: speedRunsInputs,
  refuse: refuseSpeedRuns,
  applicability:
    'Runs out and back by turns on one course, each steady, in water deep enough not to slow the boat, engine and trim untouched. Wind and sea are not taken out.',
  outside: (v) => {
    const same = v.runs.findIndex((run, i) => i > 0 && run.along === v.runs[i - 1]?.along);
    return same < 0
      ? undefined
      : `Runs ${same} and ${same + 1} went the same way: the weights hold only for runs out and back by turns.`;
  },
  compute: (v) => {
    const r = runsOf(v);
    const also = { digits: 4, also: 'mph' } as const;
    return {
      outputs: {
        speed: measured('Speed through the water', r.speed, 'kn', also),
        plainMean: measured('Plain mean of the runs', r.plainMean, 'kn', also),
        doubt: measured('To within, by what the instruments show', r.doubt, 'kn', { digits: 2 }),
        currentFirst: measured('Current at the first run, out positive', r.currents[0] ?? null, 'kn'),
        currentLast: measured('Current at the last run, out positive', r.currents.at(-1) ?? null, 'kn'),
        greatestCurrent: measured('Greatest current found', r.greatestCurrent, 'kn'),
      },
      tables: [table(v, r)],
      ...conclude(judge(v, r)),
      working: workingOf(v, r),
    };
  },
  draw: (v, result) => [drawRuns(v, runsOf(v), result.verdict === 'unsatisfactory')],
  cautions: [
    'Full-speed runs need room, depth, a lookout and everyone seated; keep local speed limits and stay clear of others.',
    'Stop if the engine overheats, smokes or alarms. The engine’s maker says how long full throttle may be held.',
  ],
  sources: [
    {
      citation:
        'Tupper, Introduction to Naval Architecture, p. 244: current along the course as a₀ + a₁t + a₂t²',
      standing: 'printed',
      note: 'V = (V₁ + 3V₂ + 3V₃ + V₄)/8 and the weights for other numbers of runs or uneven times follow by elimination',
    },
    {
      citation: 'Average speeds, not times',
      standing: 'secondary',
      note: 'Seamanship Secrets, p. 53: add the two speeds and divide by two',
    },
    {
      citation: 'Shortfall of 3% allowed; four runs or more',
      standing: 'practice',
      note: 'common practice, no source; the firm may set its own',
    },
  ],
});
