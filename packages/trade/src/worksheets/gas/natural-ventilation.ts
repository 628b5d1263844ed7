import { choice, measure, optional } from '../core/fields.ts';
import { rows } from '../core/list-fields.ts';
import { measured, yes } from '../core/outputs.ts';
import { Quantity, withUnit } from '../core/quantity.ts';
import { conclude, type Judgement } from '../core/verdict.ts';
import { formatNumber, line } from '../core/working.ts';
import { defineWorksheet, type InputProblem, type Values } from '../core/worksheet.ts';
import { judgePoints, toCheck } from './checked-points.ts';
import { limitText } from './limit-text.ts';
import { type Aperture, effectiveArea, leastEach, naturalArea, tally } from './natural-area.ts';
import { drawOpenings } from './natural-chart.ts';
import {
  netVolume,
  openArea,
  openLine,
  openSource,
  openToAtmosphere,
  petrolCautions,
  volumeLine,
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
  exhaustLow: toCheck({ label: 'Exhaust starts in the lower third of the compartment' }),
  aboveBilge: toCheck({ label: 'All openings and ducts above the normal bilge water' }),
  supplyOutside: toCheck({ label: 'Supply opens on the outside of the boat' }),
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

/** Areas are read in square inches, and in square centimetres too where any opening was measured in metric. */
function areaText(v: Given) {
  const metric = v.apertures.some(({ area, diameter }) => {
    const unit = (area ?? diameter)?.unit;
    return unit !== undefined && unit !== 'in' && unit !== 'in2';
  });
  return (value: number) => limitText(value, 'in2', metric ? new Quantity(0, 'cm2') : undefined);
}

function judgeSide(v: Given, use: Aperture['use'], needed: number): Judgement {
  const apertures = v.apertures.map(apertureOf).filter((aperture) => aperture.use === use);
  const name = use === 'supply' ? 'Supply' : 'Exhaust';
  const text = areaText(v);
  const { total, tooSmall } = tally(apertures);
  if (apertures.length === 0) return { verdict: 'unsatisfactory', reason: `There is no ${use} opening.` };
  if (tooSmall > 0) {
    const which =
      apertures.length === 1 ? 'the opening is' : `${tooSmall} of ${apertures.length} openings are`;
    const reason = `${name}: ${which} not more than the ${text(leastEach)} that each must exceed.`;
    return { verdict: 'unsatisfactory', reason };
  }
  return total < needed
    ? {
        verdict: 'unsatisfactory',
        reason: `${name}: ${text(total)} in all, less than the ${text(needed)} required.`,
      }
    : {
        verdict: 'satisfactory',
        reason: `${name}: ${text(total)} in all; at least ${text(needed)} is required.`,
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
    wallShare?.joined
      ? line('Net volume V', `${v.netVolume.text()} + ${v.adjoiningVolume?.text()}`, `${f(volume)} ft³`)
      : volumeLine(v.netVolume),
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
                reason: `The compartment is open to the atmosphere (${v.openArea?.text()}, at least ${limitText(air.needed, 'in2', v.openArea)} needed): no ventilation openings are required.`,
              },
            ]
          : [
              judgeSide(v, 'supply', needed),
              judgeSide(v, 'exhaust', needed),
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
    const total = (use: Aperture['use']) =>
      tally(v.apertures.map(apertureOf).filter((aperture) => aperture.use === use)).total;
    return [drawOpenings(countedVolume(v), { supply: total('supply'), exhaust: total('exhaust') })];
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
