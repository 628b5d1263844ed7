import { chart } from '../../drawing/chart.ts';
import { measured, number } from '../core/outputs.ts';
import { settle } from '../core/units.ts';
import { conclude, type Judgement } from '../core/verdict.ts';
import { formatNumber, line } from '../core/working.ts';
import { defineWorksheet } from '../core/worksheet.ts';
import { fitHeel, type HeelLine } from './inclining-fit.ts';
import {
  type IncliningGiven,
  incliningProblems,
  inputs,
  readingsOf,
  type TestReading,
} from './inclining-inputs.ts';

/** Heel that a test should reach, degrees; beyond the last the metacentre can't be taken as fixed. */
const usualHeel = { least: 1, most: 4, beyond: 10 };
const fewestShifts = 4;
/** A gram moved a metre, t·m: less heels nothing that floats. */
const leastMoment = 1e-6;

const f = (value: number) => formatNumber(value, 4);
const degrees = (tangent: number) => (Math.atan(tangent) * 180) / Math.PI;

type Line = HeelLine<TestReading>;

const fitOf = (v: IncliningGiven): Line | undefined => fitHeel(readingsOf(v), v.countedFrom === 'start');

/** Greatest heel away from upright, degrees. */
const greatestHeel = (fit: Line): number =>
  settle(Math.max(...fit.readings.map((r) => Math.abs(degrees(r.tangent)))));

function judgeHeight(v: IncliningGiven, gm: number): Judgement {
  const least = v.leastGm.in('m');
  if (gm <= 0) {
    return {
      verdict: 'indeterminate',
      reason:
        'She heeled away from the weights: a sign is wrong, or she has no stability upright. Check the readings at once.',
    };
  }
  const height = `The metacentric height as inclined is ${formatNumber(gm, 3)} m`;
  return gm < least
    ? { verdict: 'unsatisfactory', reason: `${height}; at least ${f(least)} m is asked for.` }
    : { verdict: 'satisfactory', reason: `${height}; the least asked for is ${f(least)} m.` };
}

function judgeTest(v: IncliningGiven, fit: Line): Judgement[] {
  const judged: Judgement[] = [];
  const attention = (reason: string) => judged.push({ verdict: 'attention', reason });
  const heel = greatestHeel(fit);
  const limit = v.departureLimit.in('%');
  const shifts = v.shifts.filter((shift) => shift.weight.in('t') * shift.distance.in('m') !== 0).length;
  if (fit.departure > limit)
    attention(
      `A reading lies ${formatNumber(fit.departure, 3)} % of the greatest moment off the line; more than ${f(limit)} % means that something shifted, touched or was misread.`,
    );
  if (shifts < fewestShifts)
    attention(
      `Only ${shifts} ${shifts === 1 ? 'shift' : 'shifts'}: with fewer than ${fewestShifts} the readings hardly prove each other.`,
    );
  if (heel < usualHeel.least || heel > usualHeel.most)
    attention(
      `The greatest heel was ${formatNumber(heel, 3)}°; between ${usualHeel.least}° and ${usualHeel.most}° is usual.`,
    );
  const swings = fit.readings.flatMap((r) => (r.pendulum === null ? [] : Math.abs(r.tangent) * r.pendulum));
  const coarse = swings.length > 0 ? (100 * v.division.in('mm')) / Math.max(...swings, 1e-9) : 0;
  if (coarse > limit)
    attention(
      `One division of the batten is ${formatNumber(coarse, 3)} % of the greatest deflection: use longer pendulums or more weight.`,
    );
  if (v.tanks !== 'yes')
    attention(
      v.tanks === 'no'
        ? 'Liquid or gear was free to move: the height found is lower than with tanks empty or full, and by how much is not known.'
        : 'Tanks, bilges and loose gear were not examined.',
    );
  if (v.free !== 'yes')
    attention(
      v.free === 'no'
        ? 'Moorings, the bottom, wind or current may have held her: repeat in shelter and afloat.'
        : 'Moorings, depth, wind and current were not noted.',
    );
  return judged;
}

/** Metacentric height from weights shifted across the boat. */
export const inclining = defineWorksheet({
  kind: 'inclining',
  version: 1,
  title: 'Inclining test',
  group: 'stability',
  system: 'hull',
  purpose:
    'Finds the metacentric height, and the height of the centre of gravity if that of the metacentre is known, from weights shifted across the boat and the heel they gave.',
  inputs,
  refuse: incliningProblems,
  applicability:
    'Small heel, so that the metacentre can be taken as fixed; displacement known. It tells stability upright and as inclined, nothing of large angles or other loading.',
  outside: (v) => {
    const fit = fitOf(v);
    if (!fit || readingsOf(v).every((r) => Math.abs(r.moment) < leastMoment))
      return 'No shift gave a heel that differs from another: no line can be drawn through the readings.';
    const heel = greatestHeel(fit);
    return heel > usualHeel.beyond
      ? `She heeled ${formatNumber(heel, 3)}°: beyond ${usualHeel.beyond}° the metacentre moves and the formula does not hold.`
      : undefined;
  },
  compute: (v) => {
    const fit = fitOf(v);
    if (!fit) throw new Error('an inclining test without a line is outside');
    const { readings } = fit;
    const displacement = v.displacement.in('t');
    const gm = settle(fit.slope / displacement);
    const error = fit.slopeError === null ? null : fit.slopeError / displacement;
    const km = v.heightOfMetacentre?.in('m');
    const first = readings[0];
    return {
      outputs: {
        gm: measured('Metacentric height as inclined, GM', gm, 'm', { digits: 4, also: 'ft' }),
        gmError: measured('Its standard error', error, 'm', { digits: 2, also: 'ft' }),
        kg: measured('Height of the centre of gravity, KG', km === undefined ? null : km - gm, 'm', {
          digits: 4,
          also: 'ft',
        }),
        momentPerTangent: number('Moment over tangent of heel, t·m', fit.slope, 5),
        greatestHeel: measured('Greatest heel', greatestHeel(fit), 'deg'),
        departure: measured('Greatest departure from the line, of the greatest moment', fit.departure, '%'),
        readings: number('Readings', readings.length),
      },
      ...conclude([judgeHeight(v, gm), ...judgeTest(v, fit)]),
      working: [
        ...(first
          ? [
              line(
                'First reading',
                'moment w·d, tan θ',
                `${v.shifts[0]?.weight.text()} × ${v.shifts[0]?.distance.text()}`,
                `${f(first.moment)} t·m, tan θ ${formatNumber(first.tangent, 4)}`,
              ),
            ]
          : []),
        line(
          `Line through ${readings.length} ${readings.length === 1 ? 'reading' : 'readings'}`,
          v.countedFrom === 'start'
            ? 'Σ(w·d·tan θ) / Σ(tan² θ)'
            : 'least squares, a zero for each instrument',
          `${formatNumber(fit.slope, 5)} t·m`,
        ),
        line(
          'GM',
          'slope / displacement',
          `${formatNumber(fit.slope, 5)} / ${f(displacement)}`,
          `${formatNumber(gm, 4)} m${error === null ? '' : ` ± ${formatNumber(error, 2)} m`}`,
        ),
        ...(km === undefined ? [] : [line('KG', 'KM − GM', `${f(km)} − ${f(gm)}`, `${f(km - gm)} m`)]),
      ],
      tables: [
        {
          title: 'Readings',
          columns: ['Instrument', 'Moment', 'tan θ from upright', 'Heel', 'GM by this reading'],
          rows: readings.map((r) => [
            r.pendulum === null ? r.instrument : `${r.instrument} pendulum`,
            `${f(r.moment)} t·m`,
            formatNumber(r.tangent, 4),
            `${formatNumber(degrees(r.tangent), 3)}°`,
            Math.abs(r.tangent) < 1e-6 || r.moment === 0
              ? '–'
              : `${formatNumber(r.moment / r.tangent / displacement, 3)} m`,
          ]),
        },
      ],
    };
  },
  draw: (v) => {
    const fit = fitOf(v);
    if (!fit) return [];
    const { readings } = fit;
    const tangents = [...readings.map((r) => r.tangent), 0];
    const ends = [Math.min(...tangents), Math.max(...tangents)];
    const off = (r: { moment: number; tangent: number }) =>
      Math.abs(r.moment - fit.slope * r.tangent) * 100 >
      v.departureLimit.in('%') * Math.max(...readings.map((x) => Math.abs(x.moment)));
    const points = (which: boolean) =>
      readings.filter((r) => off(r) === which).map((r): [number, number] => [r.tangent, r.moment]);
    return [
      chart({
        key: 'line',
        title: 'Moment against tangent of heel',
        description: `${readings.length} readings; the line rises ${formatNumber(fit.slope, 4)} t·m for a tangent of one, with a greatest departure of ${formatNumber(fit.departure, 3)} % of the greatest moment.`,
        x: { label: 'Tangent of the heel from upright, to starboard positive' },
        y: { label: 'Moment shifted, t·m' },
        notes: readings.filter(off).map((r) => ({
          at: [r.tangent, r.moment],
          words: 'off the line',
          // Above the line to the left, below it to the right: clear of the line either way.
          side: r.moment > fit.slope * r.tangent ? 'left' : 'right',
        })),
        series: [
          {
            kind: 'line',
            points: ends.map((t): [number, number] => [t, fit.slope * t]),
            words: 'least squares',
          },
          { kind: 'hollow-points', points: points(false) },
          { kind: 'points', points: points(true), strong: true },
        ],
      }),
    ];
  },
  cautions: [
    'Weights that slide, and people between them and the rail, are the danger of this test: lash what has been moved and keep clear when she heels.',
    'A boat that heels further than expected has little stability left: stop, and put the weights back on the centreline.',
    'This is an indication by a surveyor. An inclining test for approval is witnessed and worked by the authority’s procedure, by a naval architect.',
  ],
  sources: [
    {
      citation: 'GM = w·d / (Δ tan θ), tan θ = deflection / length of pendulum',
      standing: 'secondary',
      note: 'Nicholls, Seamanship and Nautical Knowledge, pp. 507 and 532 (archive.org); an article on inclining tests',
    },
    {
      citation: 'Least squares of moment upon tangent, Σ(t·m)/Σt²',
      standing: 'secondary',
      note: 'a textbook’s companion file with the readings of Hansen, Naval Engineers Journal 97(4), 1985',
    },
    {
      citation:
        '46 CFR 170.185: complete, tanks empty or as agreed, loose gear off, moorings clear, depth enough',
      standing: 'printed',
      note: 'United States law for inspected vessels, edition of 2015; local rules govern',
    },
    {
      citation: '46 CFR 170.173(b): GM of at least 0.15 m (0.49 ft)',
      standing: 'secondary',
      note: 'United States law for certain inspected vessels, taken as the usual least; many small craft need more',
    },
    {
      citation: 'Heel of 1° to 4°',
      standing: 'secondary',
      note: 'article on inclining tests (wiki.stringtranslate.com)',
    },
    {
      citation: 'Departure from the line within 5 %, at least four shifts, no use beyond 10°',
      standing: 'practice',
      note: 'common practice, no source',
    },
  ],
});
