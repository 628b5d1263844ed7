import { planMap } from '../../drawing/plan-map.ts';
import { choice, fallback, measure, optional } from '../core/fields.ts';
import { grid, rows } from '../core/list-fields.ts';
import { measured, number } from '../core/outputs.ts';
import { settle } from '../core/units.ts';
import { conclude, type Judgement } from '../core/verdict.ts';
import { formatNumber, line } from '../core/working.ts';
import { type Computed, defineWorksheet, type Values } from '../core/worksheet.ts';
import type { Cell } from './cells.ts';
import { cellsOf, layoutFields, layoutProblems, outlineOf, placeColumns, takenOf } from './map-fields.ts';
import { mostReadings } from './moisture-regions.ts';
import { areaWords, extentWords, placeWords, readingsWords, regionName } from './region-words.ts';
import { labelPlace, type Region, regionsOf } from './regions.ts';
import { shareInterval } from './robust.ts';

/** What a tap answers, by the figure it is written as on a grid. */
const answers = ['sound', 'dull', 'void'] as const;
const mostListed = 40;

const inputs = {
  readings: optional(
    grid({
      label: 'Answers on a grid',
      help: '0 sound, 1 dull, 2 void (hollow, loose or rattling); row by row from port to starboard, each row from aft forward; leave gaps where not sounded',
      min: 0,
      max: 2,
      largest: mostReadings,
    }),
  ),
  ...layoutFields,
  points: optional(
    rows({
      label: 'Answers at points',
      help: 'Instead of a grid',
      each: 'answer',
      max: mostReadings,
      columns: {
        ...placeColumns,
        answer: choice({
          label: 'Answer',
          choices: {
            sound: 'Sound: a clear, sharp ring',
            dull: 'Dull: a flat, dead note',
            void: 'Void: hollow',
          },
        }),
      },
    }),
  ),
  largestVoid: fallback(
    measure({
      label: 'Largest void that may be left as it is',
      help: 'Of one void by itself',
      unit: 'm2',
      units: ['cm2', 'in2', 'ft2'],
      min: 0,
      max: 10,
    }),
    0.05,
  ),
};

/** Cells that answer dull or void and hang together, and the voids among them. */
interface Suspect extends Region {
  voidArea: number;
  largestVoid: number;
}

interface Found extends Computed {
  cells: Cell[];
  regions: Suspect[];
  values: number[];
}

const valuesOf = (v: Values<typeof inputs>): number[] =>
  v.points ? v.points.map((point) => answers.indexOf(point.answer)) : takenOf(v.readings ?? []);

function suspectsOf(cells: readonly Cell[], values: readonly number[]): Suspect[] {
  const voids = regionsOf(cells, (cell) => values[cell] === 2);
  const voidAt = new Map(voids.flatMap((found) => found.cells.map((cell) => [cell, found] as const)));
  return regionsOf(cells, (cell) => (values[cell] ?? 0) > 0).map((region): Suspect => {
    const within = [...new Set(region.cells.flatMap((cell) => voidAt.get(cell) ?? []))];
    return {
      ...region,
      voidArea: within.reduce((sum, found) => sum + found.area, 0),
      largestVoid: within.reduce((most, found) => Math.max(most, found.area), 0),
    };
  });
}

function judge(
  v: Values<typeof inputs>,
  found: { regions: Suspect[]; counts: number[]; high: number },
): Judgement[] {
  const { regions, counts, high } = found;
  const all = counts.reduce((sum, count) => sum + count, 0);
  const [, dull = 0, voids = 0] = counts;
  if (dull + voids === 0) {
    const reason = `All ${readingsWords(all)} answer sound; with so many taken, no more than ${formatNumber(100 * high, 3)}% of the surface is likely to answer otherwise.`;
    return [{ verdict: 'satisfactory', reason }];
  }
  const limit = v.largestVoid.in('m2');
  const judgements: Judgement[] = [];
  const large = regions.flatMap((region, rank) =>
    settle(region.largestVoid) > limit ? [regionName(rank)] : [],
  );
  if (large.length > 0) {
    const greatest = regions.reduce((most, region) => Math.max(most, region.largestVoid), 0);
    const reason = `${large.length === 1 ? 'Region' : 'Regions'} ${large.slice(0, 10).join(', ')}${large.length > 10 ? ' and more' : ''} ${large.length === 1 ? 'has' : 'have'} a void larger than the ${v.largestVoid.text(3)} that may be left; the largest is ${areaWords(greatest)}.`;
    judgements.push({ verdict: 'unsatisfactory', reason });
  }
  const area = areaWords(regions.reduce((sum, region) => sum + region.area, 0));
  const reason = `Of ${readingsWords(all)}, ${formatNumber(voids)} answer void and ${formatNumber(dull)} dull, in ${regions.length} region${regions.length === 1 ? '' : 's'} of ${area} together.`;
  return [...judgements, { verdict: 'attention', reason }];
}

function compute(v: Values<typeof inputs>): Found {
  const values = valuesOf(v);
  const cells = cellsOf(v);
  const regions = suspectsOf(cells, values);
  const counts = answers.map(() => 0);
  const areas = answers.map(() => 0);
  for (const [cell, value] of values.entries()) {
    counts[value] = (counts[value] ?? 0) + 1;
    areas[value] = (areas[value] ?? 0) + (cells[cell]?.area ?? 0);
  }
  const [soundArea = 0, dullArea = 0, voidArea = 0] = areas.map(settle);
  const mapped = settle(soundArea + dullArea + voidArea);
  const share = (area: number) => (mapped > 0 ? settle((100 * area) / mapped) : 0);
  const suspects = values.length - (counts[0] ?? 0);
  const [low, high] = shareInterval(suspects, values.length);
  const places = v.readings ? v.readings.length * (v.readings[0]?.length ?? 0) : values.length;
  const largestVoid = regions.reduce((most, region) => Math.max(most, region.largestVoid), 0);
  return {
    cells,
    regions,
    values,
    outputs: {
      readings: number('Places sounded', values.length),
      notSounded: number('Places of the grid not sounded', places - values.length),
      mappedArea: measured('Surface sounded', mapped, 'm2', { also: 'ft2' }),
      dullArea: measured('Dull surface', dullArea, 'm2', { also: 'ft2' }),
      voidArea: measured('Void surface', voidArea, 'm2', { also: 'ft2' }),
      dullShare: measured('Dull share', share(dullArea), '%'),
      voidShare: measured('Void share', share(voidArea), '%'),
      regions: number('Regions not sound', regions.length),
      largestVoid: measured('Largest void', largestVoid, 'm2', { also: 'ft2' }),
      shareLow: measured('Share of places not sound, at least', 100 * low, '%'),
      shareHigh: measured('Share of places not sound, at most', 100 * high, '%'),
    },
    ...conclude(judge(v, { regions, counts, high })),
    working: [
      line(
        'Void share',
        'void surface / surface sounded',
        `${formatNumber(voidArea, 4)} / ${formatNumber(mapped, 4)}`,
        `${formatNumber(share(voidArea), 3)}%`,
      ),
      line(
        'Dull share',
        'dull surface / surface sounded',
        `${formatNumber(dullArea, 4)} / ${formatNumber(mapped, 4)}`,
        `${formatNumber(share(dullArea), 3)}%`,
      ),
      line(
        'Share of places not sound, 95 %',
        `Wilson interval of ${suspects} in ${values.length}`,
        `${formatNumber(100 * low, 3)}% to ${formatNumber(100 * high, 3)}%`,
      ),
      line(
        'Largest void against the limit',
        `${formatNumber(largestVoid, 4)} m² against ${formatNumber(v.largestVoid.in('m2'), 4)} m²`,
      ),
    ],
    tables:
      regions.length > 0
        ? [
            {
              title: `Regions not sound${regions.length > mostListed ? `, the largest ${mostListed} of ${regions.length}` : ''}; positions from ${v.datum}`,
              columns: ['Region', 'Area', 'Of it void', 'Places', 'Centre', 'Along × across'],
              rows: regions
                .slice(0, mostListed)
                .map((region, rank) => [
                  regionName(rank),
                  areaWords(region.area),
                  region.voidArea > 0 ? areaWords(region.voidArea) : 'none',
                  formatNumber(region.cells.length),
                  placeWords(region.centre),
                  extentWords(region),
                ]),
            },
          ]
        : [],
  };
}

/** Percussion sounding of a cored or laminated structure: what answers dull or hollow, where and how large. */
export const soundingMap = defineWorksheet({
  kind: 'sounding-map',
  version: 1,
  title: 'Sounding map',
  group: 'structure',
  system: 'cored-structure',
  purpose:
    'Maps the answers of a tapping hammer over a deck or hull: regions that answer dull or hollow, with their areas.',
  inputs,
  refuse: (v) => {
    const odd = v.readings?.flat().find((answer) => answer !== null && !Number.isInteger(answer));
    const message = `Answers on a grid: ${odd} is none of 0 (sound), 1 (dull) and 2 (void).`;
    return [...layoutProblems(v), ...(odd === undefined ? [] : [{ field: 'readings', message }])];
  },
  outside: (v) => (valuesOf(v).length === 0 ? 'No place was sounded.' : undefined),
  applicability:
    'One construction sounded with one hammer by one ear. Changes of core, solid laminate in way of fittings, stiffeners and tanks change the note without being a defect.',
  compute,
  draw: (v, { cells, regions, values }) => {
    const regionAt = new Int32Array(cells.length).fill(-1);
    for (const [rank, region] of regions.entries()) for (const cell of region.cells) regionAt[cell] = rank;
    const limit = v.largestVoid.in('m2');
    const outline = outlineOf(v);
    return [
      planMap({
        key: 'map',
        title: 'Sounding map',
        description:
          regions.length === 0
            ? 'Every place answers sound.'
            : `${regions.length} region${regions.length === 1 ? '' : 's'} not sound, numbered from the largest.`,
        patches: cells,
        classes: [
          { words: 'sound', hatch: 'plain' },
          { words: 'dull', hatch: 'lines' },
          { words: 'void', hatch: 'crossed' },
        ],
        classOf: (cell) => values[cell] ?? 0,
        regions: regions.map((region, rank) => ({
          name: regionName(rank),
          at: labelPlace(cells, region),
          grave: settle(region.largestVoid) > limit,
        })),
        regionOf: (cell) => regionAt[cell] ?? -1,
        marks: v.points !== undefined,
        ...(outline ? { outline } : {}),
      }),
    ];
  },
  cautions: [
    'A note depends on thickness, core, support behind and the hammer: compare with like structure on the same boat, and with moisture readings.',
    'Tap with a light, smooth hammer; on gelcoat, thin skins and brittle paint stop at the least sign of marking. Never on glass or near an inflated or pressurised part.',
    'A void under a chain plate, mast step, keel or rudder attachment is for a structural repairer to open up before the boat sails again.',
  ],
  sources: [
    {
      citation: 'Dull or hollow answer to a tapping hammer as a sign of delamination, a void or wet core',
      standing: 'practice',
      note: 'common practice, no source',
    },
    {
      citation: 'Largest void that may be left, 0.05 m²; reach of a free point',
      standing: 'practice',
      note: 'common practice, no source; a firm’s choice',
    },
    {
      citation: 'Wilson score interval, z = 1.96',
      standing: 'secondary',
      note: 'takes the places to be chosen at random',
    },
  ],
});
