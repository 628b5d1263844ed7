import { chart } from '../../drawing/chart.ts';
import { measured, number } from '../core/outputs.ts';
import { convert, settle } from '../core/units.ts';
import { conclude, type Judgement } from '../core/verdict.ts';
import { formatNumber, line } from '../core/working.ts';
import { defineWorksheet } from '../core/worksheet.ts';
import { factorSpread, gmOfPeriod, metricToFeet, periodOfGm } from './roll-period-factors.ts';
import { byDimensions, factorOf, inputs, type RollGiven, rollProblems } from './roll-period-inputs.ts';

const fewestRolls = 5;
const fewestRuns = 3;
/** Longest ship the resolution covers, m. */
const longest = 70;

/** Heights in the unit of the table; period in s. */
function work(v: RollGiven) {
  const unit = v.table === 'feet' ? 'ft' : 'm';
  const factor = factorOf(v) ?? Number.NaN;
  const spread = factorSpread * (unit === 'ft' ? metricToFeet : 1);
  const beam = v.beam.in(unit);
  const rolls = v.runs.reduce((sum, run) => sum + run.rolls, 0);
  const time = v.runs.reduce((sum, run) => sum + run.time.in('s'), 0);
  const period = settle(time / rolls);
  const doubt = (v.timing.in('s') * v.runs.length) / rolls;
  const periods = v.runs.map((run) => run.time.in('s') / run.rolls);
  const metres = (value: number) => convert(value, unit, 'm');
  return {
    unit,
    factor,
    beam,
    rolls,
    time,
    period,
    scatter: settle((100 * (Math.max(...periods) - Math.min(...periods))) / period),
    gm: metres(gmOfPeriod(factor, beam, period)),
    low: metres(gmOfPeriod(Math.max(0, factor - spread), beam, period + doubt)),
    high: metres(gmOfPeriod(factor + spread, beam, period - doubt)),
    metric: unit === 'ft' ? factor / metricToFeet : factor,
  } as const;
}

const f = (value: number) => formatNumber(value, 3);

function judge(v: RollGiven, w: ReturnType<typeof work>): Judgement[] {
  const least = v.leastGm.in('m');
  const found = `The roll points to a metacentric height of ${f(w.gm)} m, between ${f(w.low)} and ${f(w.high)} m`;
  const judged: Judgement[] = [];
  if (w.gm < least)
    judged.push({
      verdict: 'unsatisfactory',
      reason: `${found}; at least ${f(least)} m is asked for. Have her inclined before use.`,
    });
  else if (w.low < least)
    judged.push({
      verdict: 'attention',
      reason: `${found}; that may be below the least of ${f(least)} m, and a roll test can’t settle it: have her inclined.`,
    });
  else
    judged.push({
      verdict: 'satisfactory',
      reason: `${found}, above the least of ${f(least)} m. It is only an indication.`,
    });
  const short = v.runs.filter((run) => run.rolls < fewestRolls).length;
  if (short > 0)
    judged.push({
      verdict: 'attention',
      reason: `${short} of the runs had fewer than about ${fewestRolls} whole rolls.`,
    });
  if (v.runs.length < fewestRuns)
    judged.push({
      verdict: 'attention',
      reason: `Timed ${v.runs.length === 1 ? 'once' : 'twice'}; the test is to be repeated at least twice more.`,
    });
  if (w.scatter > 5)
    judged.push({
      verdict: 'attention',
      reason: `The runs differ by ${f(w.scatter)} % of the period: they should repeat within about 5 %.`,
    });
  return judged;
}

/** Metacentric height as the period of roll in still water points to it. */
export const rollPeriod = defineWorksheet({
  kind: 'roll-period',
  version: 1,
  title: 'Rolling period test',
  group: 'stability',
  system: 'hull',
  purpose:
    'Gives an indication of the metacentric height from the time a boat takes to roll in still water, with the range that the factor and the watch leave open.',
  inputs,
  refuse: rollProblems,
  applicability: `Single hulls up to ${longest} m rolling freely in smooth water without wind or tide. An indication only: the factors spread by 0.05 either way, and a boat near the limit has to be inclined.`,
  outside: (v) => {
    if (v.hull === 'several')
      return 'The factors are for single hulls: the roll of two or more hulls tells nothing by them.';
    const waterline = v.waterlineLength?.in('m');
    return waterline !== undefined && waterline > longest
      ? `The resolution covers ships up to ${longest} m; this one is ${f(waterline)} m.`
      : undefined;
  },
  compute: (v) => {
    const w = work(v);
    const second = byDimensions(v);
    const height = (label: string, value: number | null) =>
      measured(label, value, 'm', { digits: 3, also: 'ft' });
    return {
      outputs: {
        period: measured('Period of one whole roll', w.period, 's'),
        factor: number('Factor', w.factor, 4),
        gm: height('Metacentric height indicated', w.gm),
        gmLow: height('At least', w.low),
        gmHigh: height('At most', w.high),
        scatter: measured('Spread of the runs, of the period', w.scatter, '%'),
        computedC: number('C of the weather criterion', second === undefined ? null : second / 2, 4),
        gmComputed: height(
          'Metacentric height by that C',
          second === undefined ? null : gmOfPeriod(second, v.beam.in('m'), w.period),
        ),
      },
      ...conclude(judge(v, w)),
      working: [
        line('Period', 'time / whole rolls', `${formatNumber(w.time, 4)} / ${w.rolls}`, `${f(w.period)} s`),
        ...(v.condition === 'computed' && v.draft && v.waterlineLength
          ? [
              line(
                'Factor',
                '2 (0.373 + 0.023 B/d − 0.043 L/100), metres',
                `2 × (0.373 + 0.023 × ${f(w.beam)} / ${f(v.draft.in('m'))} − 0.043 × ${f(v.waterlineLength.in('m'))} / 100)`,
                formatNumber(w.factor, 4),
              ),
            ]
          : [
              line(
                'Factor',
                `by the table for ${w.unit === 'ft' ? 'feet' : 'metres'}`,
                formatNumber(w.factor, 4),
              ),
            ]),
        line(
          'GM',
          '(f B / T)²',
          `(${formatNumber(w.factor, 4)} × ${f(w.beam)} / ${f(w.period)})²`,
          w.unit === 'ft' ? `${f(convert(w.gm, 'm', 'ft'))} ft` : '',
          `${f(w.gm)} m`,
        ),
        line('Range', 'factor ± 0.05 (for metres), time ± its uncertainty', `${f(w.low)} to ${f(w.high)} m`),
      ],
    };
  },
  draw: (v, result) => {
    const w = work(v);
    const beam = v.beam.in('m');
    const from = w.period * 0.6;
    const curve = (factor: number) =>
      Array.from({ length: 41 }, (_, i): [number, number] => {
        const period = from + ((w.period * 1.7 - from) * i) / 40;
        return [period, gmOfPeriod(factor, beam, period)];
      });
    const least = v.leastGm.in('m');
    return [
      chart({
        key: 'roll',
        title: 'Metacentric height against period of roll',
        description: `A period of ${f(w.period)} s points to ${f(w.gm)} m, between ${f(w.low)} and ${f(w.high)} m; the least accepted is ${f(least)} m${least > 0 ? `, a period of ${f(periodOfGm(w.metric, beam, least))} s` : ''}.`,
        x: { label: 'Period of one whole roll, s' },
        y: { label: 'Metacentric height, m', fromZero: true },
        height: 280,
        limits: [{ axis: 'y', at: least, words: 'least' }],
        series: [
          { kind: 'dashed', points: curve(w.metric + factorSpread) },
          { kind: 'line', points: curve(w.metric) },
          { kind: 'dashed', points: curve(Math.max(0, w.metric - factorSpread)) },
          { kind: 'points', points: [[w.period, w.gm]], strong: result.verdict === 'unsatisfactory' },
        ],
        notes: [{ at: [w.period, w.gm], words: 'measured' }],
      }),
    ];
  },
  cautions: [
    'Only an indication: a long, slow roll warns, but a quick one does not prove stability at large angles, with water on deck or otherwise laden.',
    'Stop forcing the roll before timing. Keep people off the rail and clear of gear that swings.',
    'This is an indication by a surveyor and replaces no inclining test or stability booklet that the authority asks for; local rules govern.',
  ],
  sources: [
    {
      citation:
        'IMO resolution A.749(18), annex 3: GM = (f B / Tr)², factors, five rolls, repeated at least twice more',
      standing: 'secondary',
      note: 'factors as printed at imorules.com; the formula as printed in the load line rules of Fiji; ships up to 70 m, factors within about 0.05',
    },
    {
      citation: 'Transport Canada TP 2072, appendix III: factors for feet 0.49, 0.435, 0.415, 0.405',
      standing: 'secondary',
      note: 'they differ by up to 1 % from the metric ones turned into feet',
    },
    {
      citation: 'T = 0.44 B / √GM in feet, 0.797 B / √GM in metres, for ordinary form',
      standing: 'secondary',
      note: 'a mates’ reviewer (oic-nwreviewer.blogspot.com)',
    },
    {
      citation: '2008 IS Code, weather criterion: C = 0.373 + 0.023 B/d − 0.043 Lwl/100, T = 2CB/√GM',
      standing: 'secondary',
      note: 'seen in several public programs, not in the Code itself; made for ships of 24 m and more',
    },
    {
      citation: '46 CFR 170.173(b): GM of at least 0.15 m (0.49 ft)',
      standing: 'secondary',
      note: 'United States law for certain inspected vessels, taken as the usual least',
    },
    { citation: 'Runs within 5 % of each other', standing: 'practice', note: 'common practice, no source' },
  ],
});
