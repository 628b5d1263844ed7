import { chart } from '../../drawing/chart.ts';
import { checked, choice, measure, optional } from '../core/fields.ts';
import { rows } from '../core/list-fields.ts';
import { measured, yes } from '../core/outputs.ts';
import { withUnit } from '../core/quantity.ts';
import { conclude, type Judgement } from '../core/verdict.ts';
import { formatNumber, line } from '../core/working.ts';
import { defineWorksheet, type InputProblem, type Values } from '../core/worksheet.ts';
import { judgePoints } from './checked-points.ts';
import { type Aperture, effectiveArea, leastEach, naturalArea, tally } from './natural-area.ts';
import {
  netVolume,
  openArea,
  openLine,
  openSource,
  openToAtmosphere,
  petrolCautions,
} from './petrol-compartment.ts';

const area = { unit: 'in2', units: ['cm2', 'mm2'], above: 0, max: 10_000 } as const;
const wall = { unit: 'ft2', units: ['in2', 'm2', 'cm2'], max: 10_000 } as const;

const inputs = {
  why: choice({
    label: 'Why the compartment needs ventilation',
    choices: {
      engine: 'It holds a permanently installed petrol engine',
      tank: 'It holds a permanently installed tank and electrics that are not ignition protected',
      vent: 'A tank vents into it',
      permeable: 'It holds a non-metallic tank that lets too much vapour through',
      shared: 'More than 2 % of a bulkhead to such a compartment is open',
      none: 'None of these',
    },
  }),
  netVolume,
  openArea,
  adjoiningVolume: optional(
    measure({
      label: 'Net volume of the adjoining compartment',
      help: 'Counts in when more than 2 % of the bulkhead between is open',
      unit: 'ft3',
      units: ['m3', 'L'],
      above: 0,
      max: 10_000,
    }),
  ),
  bulkheadArea: optional(measure({ label: 'Area of the bulkhead between', above: 0, ...wall })),
  bulkheadOpenings: optional(measure({ label: 'Openings in that bulkhead, together', min: 0, ...wall })),
  apertures: rows({
    label: 'Openings and ducts',
    help: 'Each supply and each exhaust; inside measure at the narrowest',
    each: 'opening',
    min: 0,
    max: 20,
    columns: {
      use: choice({ label: 'Use', choices: { supply: 'Supply', exhaust: 'Exhaust' } }),
      diameter: optional(
        measure({ label: 'Inside diameter', unit: 'in', units: ['mm', 'cm'], above: 0, max: 40 }),
      ),
      area: optional(measure({ label: 'Area, if not round', ...area })),
      fitting: optional(
        measure({
          label: 'Area of its end fitting',
          help: 'Of a flexible duct’s cowl, grille or louvre',
          ...area,
        }),
      ),
    },
  }),
  exhaustLow: checked({ label: 'Exhaust starts in the lower third of the compartment' }),
  aboveBilge: checked({ label: 'All openings and ducts above the normal bilge water' }),
  supplyOutside: checked({ label: 'Supply opens on the outside of the boat' }),
};

type Given = Values<typeof inputs>;

/** More of a bulkhead than this open joins the two compartments: 33 CFR 183.620(a)(2), 183.630(d). */
const joinedAbove = 2;

function shared(v: Given) {
  if (!v.adjoiningVolume || !v.bulkheadArea || !v.bulkheadOpenings) return undefined;
  const percent = (v.bulkheadOpenings.in(v.bulkheadArea.unit) / v.bulkheadArea.value) * 100;
  return { percent, joined: percent > joinedAbove };
}

/** The volume that the formula takes, ft³: with the adjoining compartment's where the bulkhead is open enough. */
const countedVolume = (v: Given): number =>
  v.netVolume.in('ft3') + (shared(v)?.joined ? (v.adjoiningVolume?.in('ft3') ?? 0) : 0);

const apertureOf = (row: Given['apertures'][number]): Aperture => ({
  use: row.use,
  area: row.area?.in('in2') ?? (Math.PI / 4) * (row.diameter?.in('in') ?? 0) ** 2,
  ...(row.fitting ? { fitting: row.fitting.in('in2') } : {}),
});

function refuse(v: Given): InputProblem[] {
  const problems: InputProblem[] = [];
  const wallFields = ['adjoiningVolume', 'bulkheadArea', 'bulkheadOpenings'] as const;
  const given = wallFields.filter((field) => v[field] !== undefined);
  if (given.length > 0 && given.length < wallFields.length) {
    const message =
      'Give the adjoining volume, the area of the bulkhead and its openings together, or leave all three out.';
    for (const field of wallFields) if (!given.includes(field)) problems.push({ field, message });
  }
  if (
    v.bulkheadArea &&
    v.bulkheadOpenings &&
    v.bulkheadOpenings.in(v.bulkheadArea.unit) > v.bulkheadArea.value
  ) {
    const message = `Openings of ${v.bulkheadOpenings.text()} can’t be in a bulkhead of ${v.bulkheadArea.text()}.`;
    problems.push({ field: 'bulkheadOpenings', message });
  }
  for (const [index, row] of v.apertures.entries()) {
    if ((row.area === undefined) !== (row.diameter === undefined)) continue;
    const message = `Openings and ducts, row ${index + 1}: give the diameter of a round one or the area of any other.`;
    problems.push({ field: `apertures/${index}/${row.area ? 'area' : 'diameter'}`, message });
  }
  return problems;
}

const in2 = (value: number) => withUnit(formatNumber(value), 'in2');

function judgeSide(name: 'Supply' | 'Exhaust', apertures: Aperture[], needed: number): Judgement {
  const { total, tooSmall } = tally(apertures);
  if (apertures.length === 0)
    return { verdict: 'unsatisfactory', reason: `There is no ${name.toLowerCase()} opening.` };
  if (tooSmall > 0) {
    const reason = `${name}: ${tooSmall} of ${apertures.length} ${apertures.length === 1 ? 'opening' : 'openings'} not more than the ${in2(leastEach)} that each must exceed.`;
    return { verdict: 'unsatisfactory', reason };
  }
  return total < needed
    ? {
        verdict: 'unsatisfactory',
        reason: `${name}: ${in2(total)} in all, less than the ${in2(needed)} required.`,
      }
    : {
        verdict: 'satisfactory',
        reason: `${name}: ${in2(total)} in all; at least ${in2(needed)} is required.`,
      };
}

function working(v: Given, needed: number): string[] {
  const volume = countedVolume(v);
  const wallShare = shared(v);
  const f = (value: number) => formatNumber(value);
  return [
    ...(wallShare && v.bulkheadArea && v.bulkheadOpenings
      ? [
          line(
            'Bulkhead open',
            `${v.bulkheadOpenings.text()} / ${v.bulkheadArea.text()}`,
            `${f(wallShare.percent)}%, ${wallShare.joined ? 'more than 2%: the volumes count together' : 'not more than 2%: the volume counts alone'}`,
          ),
        ]
      : []),
    line(
      'Net volume V',
      wallShare?.joined ? `${v.netVolume.text()} + ${v.adjoiningVolume?.text()}` : v.netVolume.text(),
      `${f(volume)} ft³`,
    ),
    openLine(v.netVolume, v.openArea),
    line(
      'Area required of each of supply and exhaust',
      '5 ln(V/5)',
      `5 × ln(${f(volume)}/5)`,
      needed > 0 ? in2(needed) : '0 in², so each only more than 3 in²',
    ),
    ...v.apertures.map((row, index) => {
      const aperture = apertureOf(row);
      const size = row.diameter
        ? `π/4 × (${row.diameter.text()})² = ${in2(aperture.area)}`
        : in2(aperture.area);
      const fitted =
        aperture.fitting === undefined
          ? ''
          : `; end fitting ${in2(aperture.fitting)} / 0.8 = ${in2(aperture.fitting / 0.8)}; counts ${in2(effectiveArea(aperture))}`;
      return `Opening ${index + 1}, ${aperture.use}: ${size}${fitted}`;
    }),
  ];
}

/** 33 CFR 183.620 and 183.630, natural ventilation of petrol compartments. */
export const naturalVentilation = defineWorksheet({
  kind: 'natural-ventilation',
  version: 1,
  title: 'Petrol compartment, natural ventilation',
  group: 'gas',
  system: 'fuel',
  purpose:
    'Compares the supply and exhaust openings of a petrol engine or tank compartment with what United States rules require for its volume.',
  inputs,
  refuse,
  applicability:
    'Petrol engine and tank compartments of recreational boats under United States rules (33 CFR 183 subpart K, boats built since August 1980). An accommodation space above, separated by a deck, is excepted from the rule on shared openings.',
  outside: (v) =>
    v.why === 'none' ? 'The rule asks for natural ventilation only in the cases listed.' : undefined,
  compute: (v) => {
    const volume = countedVolume(v);
    const needed = naturalArea(volume);
    const air = openToAtmosphere(v.netVolume, v.openArea);
    const apertures = v.apertures.map(apertureOf);
    const side = (use: Aperture['use']) => apertures.filter((aperture) => aperture.use === use);
    return {
      outputs: {
        requiredArea: measured('Area required of supply and of exhaust, each', needed, 'in2', {
          also: 'cm2',
        }),
        supplyArea: measured('Supply area', tally(side('supply')).total, 'in2', { also: 'cm2' }),
        exhaustArea: measured('Exhaust area', tally(side('exhaust')).total, 'in2', { also: 'cm2' }),
        countedVolume: measured('Volume counted', volume, 'ft3', { also: 'm3' }),
        bulkheadOpen: measured('Share of the bulkhead open', shared(v)?.percent ?? null, '%'),
        openToAtmosphere: yes('Open to the atmosphere', air.open),
      },
      ...conclude(
        air.open
          ? [
              {
                verdict: 'satisfactory',
                reason: `The compartment is open to the atmosphere (${v.openArea?.text()}, at least ${in2(air.needed)} needed): no ventilation openings are required.`,
              },
            ]
          : [
              judgeSide('Supply', side('supply'), needed),
              judgeSide('Exhaust', side('exhaust'), needed),
              ...judgePoints([
                {
                  answer: v.exhaustLow,
                  what: 'where the exhaust starts',
                  bad: 'The exhaust starts above the lower third of the compartment, where the vapour does not lie.',
                },
                {
                  answer: v.aboveBilge,
                  what: 'whether openings are clear of bilge water',
                  bad: 'An opening or duct is below the normal bilge water, which shuts it.',
                },
                {
                  answer: v.supplyOutside,
                  what: 'where the supply opens',
                  bad: 'The supply does not open on the outside of the boat.',
                },
              ]),
            ],
      ),
      working: working(v, needed),
    };
  },
  draw: (v) => {
    const volume = countedVolume(v);
    const needed = naturalArea(volume);
    const apertures = v.apertures.map(apertureOf);
    const far = Math.max(60, volume * 1.3);
    const curve = Array.from({ length: 61 }, (_, i): [number, number] => {
      const x = 5 + ((far - 5) * i) / 60;
      return [x, naturalArea(x)];
    });
    const total = (use: Aperture['use']) => tally(apertures.filter((a) => a.use === use)).total;
    const [supply, exhaust] = [total('supply'), total('exhaust')];
    return [
      chart({
        key: 'openings',
        title: 'Area of openings against volume',
        description: `At ${formatNumber(volume)} ft³ ${in2(needed)} is required; supply ${in2(supply)}, exhaust ${in2(exhaust)}.`,
        x: { label: 'Net volume, ft³', domain: [0, far] },
        y: { label: 'Area, in²', fromZero: true },
        height: 260,
        series: [
          { kind: 'line', points: curve, words: 'least, each' },
          { kind: 'points', points: [[volume, supply]], words: 'supply', strong: supply < needed },
          { kind: 'hollow-points', points: [[volume, exhaust]], words: 'exhaust', strong: exhaust < needed },
        ],
      }),
    ];
  },
  cautions: petrolCautions,
  sources: [
    {
      citation: '33 CFR 183.620 (where required) and 183.630 (a) to (f): A = 5 ln(V/5)',
      standing: 'printed',
      note: '2015 annual edition and a later copy; an end fitting of 80 % of its duct counts as the whole duct',
    },
    openSource,
  ],
});
