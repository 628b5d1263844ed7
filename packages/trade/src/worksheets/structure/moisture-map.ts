import { planMap } from '../../drawing/plan-map.ts';
import { fallback, measure, optional, plainNumber } from '../core/fields.ts';
import { grid, rows } from '../core/list-fields.ts';
import { measured, number, said } from '../core/outputs.ts';
import { settle } from '../core/units.ts';
import { conclude, type Judgement } from '../core/verdict.ts';
import { formatNumber, line } from '../core/working.ts';
import { type Computed, defineWorksheet, type Values } from '../core/worksheet.ts';
import type { Cell } from './cells.ts';
import { cellsOf, layoutFields, layoutProblems, outlineOf, placeColumns, takenOf } from './map-fields.ts';
import { mostReadings, regionsTable, type WetRegion } from './moisture-regions.ts';
import { areaWords, readingsWords, regionName } from './region-words.ts';
import { labelPlace, regionsOf } from './regions.ts';
import { type Baseline, baselineOf, scoreOf, shareInterval } from './robust.ts';

const fewest = 7;
const reading = plainNumber({ label: 'Reading', min: 0, max: 100_000 });

const inputs = {
  readings: optional(
    grid({
      label: 'Readings on a grid',
      help: 'Row by row from port to starboard, each row from aft forward; leave gaps where none was taken',
      min: 0,
      max: 100_000,
      largest: mostReadings,
    }),
  ),
  ...layoutFields,
  points: optional(
    rows({
      label: 'Readings at points',
      help: 'Instead of a grid',
      each: 'reading',
      max: mostReadings,
      columns: { ...placeColumns, reading },
    }),
  ),
  dryReadings: optional(
    rows({
      label: 'Readings on the same structure where it is known to be dry',
      help: 'With the same meter on the same day; without them the map is compared with its own middle reading',
      each: 'reading',
      min: fewest,
      max: 500,
      columns: { reading },
    }),
  ),
  meterStep: fallback(
    plainNumber({ label: 'Smallest change the meter shows', help: 'In its own units', above: 0, max: 1000 }),
    1,
  ),
  wetScore: fallback(
    plainNumber({ label: 'Score above which a reading counts as wet', min: 1, max: 20 }),
    3.5,
  ),
  extensiveShare: fallback(
    measure({
      label: 'Wet share of the surface called extensive',
      unit: '%',
      units: ['one'],
      above: 0,
      max: 100,
    }),
    20,
  ),
};

interface Found extends Computed {
  cells: Cell[];
  regions: WetRegion[];
  scores: number[];
  wet: (cell: number) => boolean;
}

const valuesOf = (v: Values<typeof inputs>): number[] =>
  v.points ? v.points.map((point) => point.reading) : takenOf(v.readings ?? []);

function judge(
  v: Values<typeof inputs>,
  found: { count: number; share: number; wet: number; regions: WetRegion[]; top: number },
) {
  const { count, share, wet, regions, top } = found;
  const limit = formatNumber(v.wetScore, 3);
  if (wet === 0) {
    const reason = `No reading stands out as wet: the highest scores ${formatNumber(top, 3)}, and more than ${limit} would be needed.`;
    return [{ verdict: 'satisfactory', reason } satisfies Judgement];
  }
  const where = `${regions.length} region${regions.length === 1 ? '' : 's'}`;
  const area = regions.reduce((sum, region) => sum + region.area, 0);
  const reads = `${readingsWords(wet)} of ${formatNumber(count)} stand${wet === 1 ? 's' : ''} out as wet (score above ${limit}), in ${where} of ${areaWords(area)} together, ${formatNumber(share, 3)}% of the surface mapped`;
  const extensive = share > v.extensiveShare.in('%');
  const judgements: Judgement[] = [
    {
      verdict: extensive ? 'unsatisfactory' : 'attention',
      reason: extensive ? `${reads}: extensive by the limit of ${v.extensiveShare.text(3)}.` : `${reads}.`,
    },
  ];
  const alone = regions.filter((region) => region.cells.length === 1).length;
  if (alone > 0) {
    const reason = `${alone === 1 ? 'One region rests' : `${alone} regions rest`} on a single reading: repeat it before relying on it.`;
    judgements.push({ verdict: 'attention', reason });
  }
  if (!v.dryReadings && wet > count / 4) {
    const reason =
      'More than a quarter of the readings are wet, so the baseline taken from them may itself be raised: take readings where the structure is known to be dry.';
    judgements.push({ verdict: 'attention', reason });
  }
  return judgements;
}

const baselineNames: Record<Baseline['from'], string> = {
  mad: 'median absolute deviation',
  'mean-deviation': 'mean deviation, since more than half the readings are equal',
  step: 'the meter’s step, since all readings are equal',
};

function workingOf(v: Values<typeof inputs>, base: Baseline, threshold: number): string[] {
  const f = (value: number) => formatNumber(value, 5);
  const from = v.dryReadings ? 'readings on dry structure' : 'all readings';
  return [
    line(`Median of ${from}`, 'x̃', f(base.median)),
    line('Median absolute deviation', 'MAD', 'median |x − x̃|', f(base.mad)),
    base.from === 'mad'
      ? line('Spread', 'MAD / 0.6745', `${f(base.mad)} / 0.6745`, f(base.spread))
      : base.from === 'mean-deviation'
        ? line('Spread, MAD being nil', '1.253314 × mean |x − x̃|', f(base.spread))
        : line('Spread, all readings being equal', 'one step of the meter', f(base.spread)),
    line('Score', 'M = (x − x̃) / spread'),
    line(
      'Reading above which it counts as wet',
      'the greater of x̃ + M · spread and x̃ + step',
      `${f(base.median)} + ${f(v.wetScore)} × ${f(base.spread)}`,
      f(threshold),
    ),
  ];
}

function compute(v: Values<typeof inputs>): Found {
  const values = valuesOf(v);
  const cells = cellsOf(v);
  const base = baselineOf(v.dryReadings?.map((row) => row.reading) ?? values, v.meterStep);
  const scores = values.map((value) => scoreOf(value, base));
  const isWet = values.map(
    (value, i) => (scores[i] ?? 0) > v.wetScore && settle(value - base.median) > v.meterStep,
  );
  const wet = (cell: number) => isWet[cell] ?? false;
  const regions = regionsOf(cells, wet).map((region): WetRegion => {
    const highest = region.cells.reduce((most, cell) => Math.max(most, values[cell] ?? 0), 0);
    return { ...region, highest, score: scoreOf(highest, base) };
  });
  const mapped = cells.reduce((sum, cell) => sum + cell.area, 0);
  const wetArea = regions.reduce((sum, region) => sum + region.area, 0);
  const wetCount = isWet.filter(Boolean).length;
  const share = mapped > 0 ? settle((100 * wetArea) / mapped) : 0;
  const [low, high] = shareInterval(wetCount, values.length);
  const threshold = base.median + Math.max(v.wetScore * base.spread, v.meterStep);
  const top = scores.reduce((most, score) => Math.max(most, score), Number.NEGATIVE_INFINITY);
  return {
    cells,
    regions,
    scores,
    wet,
    outputs: {
      readings: number('Readings', values.length),
      median: number('Median, the baseline', base.median, 4),
      mad: number('Median absolute deviation', base.mad, 4),
      spread: number('Spread that scores are counted in', base.spread, 4),
      baseline: said('Spread taken from', base.from, baselineNames[base.from]),
      wetAbove: number('Reading above which it counts as wet', threshold, 4),
      highestScore: number('Highest score', top, 4),
      wetReadings: number('Wet readings', wetCount),
      regions: number('Wet regions', regions.length),
      mappedArea: measured('Surface mapped', mapped, 'm2', { also: 'ft2' }),
      wetArea: measured('Wet surface', wetArea, 'm2', { also: 'ft2' }),
      wetShare: measured('Wet share of the surface', share, '%'),
      shareLow: measured('Share of wet readings, at least', 100 * low, '%'),
      shareHigh: measured('Share of wet readings, at most', 100 * high, '%'),
      largestRegion: measured('Largest region', regions[0]?.area ?? 0, 'm2', { also: 'ft2' }),
    },
    ...conclude(judge(v, { count: values.length, share, wet: wetCount, regions, top })),
    working: [
      ...workingOf(v, base, threshold),
      line('Wet share', 'wet surface / surface mapped', `${formatNumber(share, 3)}%`),
      line(
        'Share of wet readings, 95 %',
        `Wilson interval of ${wetCount} in ${values.length}`,
        `${formatNumber(100 * low, 3)}% to ${formatNumber(100 * high, 3)}%`,
      ),
    ],
    tables: regions.length > 0 ? [regionsTable(regions, mapped, v.datum)] : [],
  };
}

/** Background, raised, wet, far above. */
function classOf(score: number, wet: boolean, limit: number): number {
  if (wet) return score > 2 * limit ? 3 : 2;
  return score > limit / 2 ? 1 : 0;
}

/** Relative moisture readings on a deck or hull: what stands out, where and how large. */
export const moistureMap = defineWorksheet({
  kind: 'moisture-map',
  version: 1,
  title: 'Moisture map',
  group: 'structure',
  system: 'cored-structure',
  purpose:
    'Tells from relative moisture readings which parts of a deck or hull stand out from the rest, and maps them as regions with their areas.',
  inputs,
  refuse: layoutProblems,
  applicability:
    'Readings by one meter, in one mode, on one construction of one boat on one day. Readings are compared with each other, never with a percentage: a laminate wet all over shows nothing unless dry readings are given for comparison.',
  outside: (v) => {
    const count = v.dryReadings?.length ?? valuesOf(v).length;
    return count < fewest
      ? `${readingsWords(count)}: at least ${fewest} are needed to tell what is usual for this boat.`
      : undefined;
  },
  compute,
  draw: (v, { cells, regions, scores, wet }) => {
    const regionAt = new Int32Array(cells.length).fill(-1);
    for (const [rank, region] of regions.entries()) for (const cell of region.cells) regionAt[cell] = rank;
    const limit = formatNumber(v.wetScore, 3);
    const outline = outlineOf(v);
    return [
      planMap({
        key: 'map',
        title: 'Moisture map',
        description:
          regions.length === 0
            ? 'No reading stands out as wet.'
            : `${regions.length} wet region${regions.length === 1 ? '' : 's'}, numbered from the largest.`,
        patches: cells,
        classes: [
          { words: `usual: score up to ${formatNumber(v.wetScore / 2, 3)}`, hatch: 'plain' },
          { words: `raised: up to ${limit}`, hatch: 'dots' },
          { words: `wet: above ${limit}`, hatch: 'lines' },
          { words: `wet: above ${formatNumber(2 * v.wetScore, 3)}`, hatch: 'crossed' },
        ],
        classOf: (cell) => classOf(scores[cell] ?? 0, wet(cell), v.wetScore),
        regions: regions.map((region, rank) => ({ name: regionName(rank), at: labelPlace(cells, region) })),
        regionOf: (cell) => regionAt[cell] ?? -1,
        marks: v.points !== undefined,
        ...(outline ? { outline } : {}),
      }),
    ];
  },
  cautions: [
    'A moisture meter doesn’t tell water from metal, carbon, salt, a wet or copper-bearing coating, condensation or bilge water behind the skin. Check what lies behind before calling it wet.',
    'Confirm by sounding, and before any repair is planned by a core sample or an opening, made and made good with the owner’s written consent.',
    'Areas follow the spacing of the readings: the true edge of a region lies anywhere up to the next reading.',
  ],
  sources: [
    {
      citation:
        'Modified z-score 0.6745 (x − median) / MAD, potential outlier above 3.5 (Iglewicz and Hoaglin 1993)',
      standing: 'secondary',
      note: 'as cited by the NIST handbook and statistical packages; used one-sided, for high readings only',
    },
    {
      citation: 'Spread 1.253314 × mean absolute deviation from the median where MAD is nil',
      standing: 'secondary',
      note: 'practice of a statistics package, seen quoted',
    },
    { citation: 'Wilson score interval, z = 1.96', standing: 'secondary' },
    {
      citation:
        'At least 7 readings; one meter step as spread where all are equal; 20 % called extensive; reach of a free point',
      standing: 'practice',
      note: 'common practice, no source',
    },
    {
      citation: 'Readings are relative to one boat, meter and day; confirm by hammer or core',
      standing: 'secondary',
      note: 'articles by marine surveyors',
    },
  ],
});
