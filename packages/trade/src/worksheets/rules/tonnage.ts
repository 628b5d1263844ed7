import { choice, count, measure, optional, yesNo } from '../core/fields.ts';
import { rows } from '../core/list-fields.ts';
import { measured, number, yes } from '../core/outputs.ts';
import { settle } from '../core/units.ts';
import { conclude, type Judgement } from '../core/verdict.ts';
import { formatNumber, line } from '../core/working.ts';
import { defineWorksheet, type Values } from '../core/worksheet.ts';
import { hullCoefficient, netShare, tenthOfFoot } from './tonnage-rule.ts';

const size = { unit: 'ft', units: ['m', 'in', 'cm', 'mm'], above: 0 } as const;

const inputs = {
  designedForSailing: yesNo({
    label: 'Designed for sailing',
    help: 'True for the fine lines of a sailing craft that can be driven by sail, with or without an engine; a steadying or decorative sail does not make one',
  }),
  propulsion: choice({
    label: 'Propelling machinery',
    choices: {
      'in-hull': 'In the hull: inboard or stern drive',
      outside: 'Outside the hull: outboard motors only',
      none: 'None',
    },
  }),
  use: choice({
    label: 'Use of the vessel',
    choices: { pleasure: 'Only for pleasure', other: 'Any other use' },
  }),
  hulls: rows({
    label: 'Hulls',
    help: 'One row a hull; each hull of a catamaran or trimaran by itself, with its own breadth',
    each: 'hull',
    min: 1,
    max: 5,
    columns: {
      shape: choice({
        label: 'Shape',
        choices: {
          faired: 'Ship-shape, yacht or cylinder',
          barge: 'Near a rectangular box, as a barge',
        },
      }),
      length: measure({
        label: 'Overall length',
        help: 'Outside of stem to outside of stern, without rudders, outboard brackets and the like',
        max: 1000,
        ...size,
      }),
      breadth: measure({
        label: 'Overall breadth',
        help: 'Outside of the skin, at the widest part, without rub rails',
        max: 200,
        ...size,
      }),
      depth: measure({
        label: 'Overall depth',
        help: 'Amidships, from the top edge of the skin at the side to the outside of the bottom skin',
        max: 100,
        ...size,
      }),
      keelInDepth: optional(
        yesNo({
          label: 'Keel included in the depth',
          help: 'Only for a sailing hull faired into its keel, where the bottom cannot be found',
        }),
      ),
    },
  }),
  deckLength: optional(
    measure({
      label: 'Principal deck structure, average length',
      help: 'Only where the house may be as large as the hull, as on a houseboat',
      max: 1000,
      ...size,
    }),
  ),
  deckBreadth: optional(measure({ label: 'Principal deck structure, average breadth', max: 200, ...size })),
  deckHeight: optional(measure({ label: 'Principal deck structure, average height', max: 100, ...size })),
  statedGross: optional(
    count({ label: 'Gross tonnage on the papers', help: 'Whole tons, as documented', min: 0, max: 100_000 }),
  ),
  statedNet: optional(count({ label: 'Net tonnage on the papers', min: 0, max: 100_000 })),
};

type Given = Values<typeof inputs>;

function measureHulls(v: Given) {
  return v.hulls.map((hull) => {
    const [length, breadth, depth] = [hull.length, hull.breadth, hull.depth].map((d) =>
      tenthOfFoot(d.in('ft')),
    ) as [number, number, number];
    const coefficient = hullCoefficient({
      sailing: v.designedForSailing,
      barge: hull.shape === 'barge',
      keelInDepth: hull.keelInDepth === true,
    });
    return { length, breadth, depth, coefficient, tons: (coefficient * length * breadth * depth) / 100 };
  });
}

/** Tons of 100 ft³ of the principal deck structure, from average dimensions; nothing when it wasn't measured. */
function deckTons(v: Given): number | undefined {
  if (!v.deckLength || !v.deckBreadth || !v.deckHeight) return undefined;
  const [length, breadth, height] = [v.deckLength, v.deckBreadth, v.deckHeight].map((d) =>
    tenthOfFoot(d.in('ft')),
  ) as [number, number, number];
  return (length * breadth * height) / 100;
}

/** Documentation asks for this many net tons, 46 CFR 67.5. */
const documentationLimit = 5;
const tons = (value: number) => formatNumber(value, value >= 100 ? 5 : 4);
const whole = (value: number) => Math.floor(settle(value));

function judge(v: Given, gross: number, net: number): Judgement[] {
  const compared = [
    { stated: v.statedGross, found: gross, what: 'gross' },
    { stated: v.statedNet, found: net, what: 'net' },
  ].flatMap(({ stated, found, what }): Judgement[] => {
    if (stated === undefined) return [];
    if (stated === whole(found))
      return [
        {
          verdict: 'satisfactory',
          reason: `The papers state ${stated} ${what} tons and the dimensions give ${tons(found)}: they agree.`,
        },
      ];
    return [
      {
        verdict: 'attention',
        reason: `The papers state ${stated} ${what} tons and the dimensions give ${tons(found)}. She may have been measured under another system or altered; ask the documentation centre.`,
      },
    ];
  });
  const eligible = settle(net) >= documentationLimit;
  return [
    ...compared,
    {
      verdict: eligible || v.statedNet === undefined ? 'satisfactory' : 'attention',
      reason: eligible
        ? `${tons(net)} net tons: large enough for federal documentation, which asks for at least five.`
        : `${tons(net)} net tons: too small for federal documentation, which asks for at least five; she is numbered by her State.`,
    },
  ];
}

/** United States simplified measurement: gross and net register tonnage from length, breadth and depth. */
export const tonnage = defineWorksheet({
  kind: 'tonnage',
  version: 1,
  title: 'Tonnage, United States simplified',
  group: 'rules',
  system: 'hull',
  purpose:
    'Gross and net register tonnage from the dimensions of the hull, and whether they agree with the papers and reach the five net tons that documentation asks for.',
  inputs,
  refuse: (v) => {
    const deck = { deckLength: v.deckLength, deckBreadth: v.deckBreadth, deckHeight: v.deckHeight };
    const missing = Object.entries(deck).filter(([, value]) => value === undefined);
    return [
      ...v.hulls.flatMap((hull, row) => [
        ...(hull.keelInDepth && !v.designedForSailing
          ? [
              {
                field: `hulls/${row}/keelInDepth`,
                message: 'Only the depth of a vessel designed for sailing may include the keel.',
              },
            ]
          : []),
        ...(hull.shape === 'barge' && v.designedForSailing
          ? [
              {
                field: `hulls/${row}/shape`,
                message: 'A vessel designed for sailing has fine lines: a box-shaped hull is not one.',
              },
            ]
          : []),
        ...(hull.length.in('ft') < hull.breadth.in('ft')
          ? [
              {
                field: `hulls/${row}/breadth`,
                message: 'The breadth of a hull can’t be more than its length.',
              },
            ]
          : []),
      ]),
      ...(missing.length === 0 || missing.length === 3
        ? []
        : missing.map(([field]) => ({
            field,
            message: 'Give length, breadth and height of the deck structure, or none of them.',
          }))),
    ];
  },
  applicability:
    'United States vessels under 79 feet overall, vessels that are not self-propelled, and vessels used only for pleasure. Other countries measure otherwise.',
  outside: (v) =>
    v.use === 'other' && v.propulsion !== 'none' && v.hulls.some((hull) => hull.length.in('ft') >= 79)
      ? 'At 79 feet or more, self-propelled and not only for pleasure, she needs formal measurement; the simplified formulas do not apply.'
      : undefined,
  compute: (v) => {
    const hulls = measureHulls(v);
    const hullTons = hulls.reduce((sum, hull) => sum + hull.tons, 0);
    const deck = deckTons(v);
    const deckCounts = deck !== undefined && settle(deck) >= settle(hullTons);
    const gross = hullTons + (deckCounts ? deck : 0);
    const share = netShare({ sailing: v.designedForSailing, machineryInHull: v.propulsion === 'in-hull' });
    const net = gross * share;
    return {
      outputs: {
        gross: number('Gross register tonnage', gross, 4),
        net: number('Net register tonnage', net, 4),
        grossWhole: number('Gross, whole tons', whole(gross), 6),
        netWhole: number('Net, whole tons', whole(net), 6),
        hullVolume: measured('Hull, as measured', hullTons * 100, 'ft3', { digits: 4, also: 'm3' }),
        deckStructureCounts: yes('Deck structure added', deckCounts),
        documentable: yes('Five net tons reached', settle(net) >= documentationLimit),
      },
      tables: [
        {
          title: 'Hulls',
          columns: ['Hull', 'Length, ft', 'Breadth, ft', 'Depth, ft', 'Coefficient', 'Gross tons'],
          rows: hulls.map((hull, row) => [
            String(row + 1),
            ...[hull.length, hull.breadth, hull.depth].map((d) => formatNumber(d, 6)),
            formatNumber(hull.coefficient, 3),
            tons(hull.tons),
          ]),
        },
      ],
      ...conclude(judge(v, gross, net)),
      working: [
        ...hulls.map((hull, row) =>
          line(
            hulls.length > 1 ? `Gross tonnage of hull ${row + 1}` : 'Gross tonnage of the hull',
            'c · L · B · D / 100',
            `${hull.coefficient} × ${hull.length} × ${hull.breadth} × ${hull.depth} / 100`,
            tons(hull.tons),
          ),
        ),
        ...(deck === undefined
          ? []
          : [
              line(
                'Deck structure',
                'average L · B · H / 100',
                `${tons(deck)}, ${deckCounts ? 'as large as the hull or larger: added' : 'smaller than the hull: left out'}`,
              ),
            ]),
        line('Net tonnage', 'share · gross', `${share} × ${tons(gross)}`, tons(net)),
        line('Whole tons, fractions dropped', `${whole(gross)} gross, ${whole(net)} net`),
      ],
    };
  },
  cautions: [
    'Tonnage is a volume, not a weight: it says nothing of lifting, towing or stability.',
    'The tonnage that counts is the one on the certificate. Only the flag’s documentation office assigns or changes it.',
  ],
  sources: [
    {
      citation: 'United States, 46 CFR 69.209: gross and net tonnage; 69.203: dimensions',
      standing: 'printed',
      note: '2015 edition; the numbers are unchanged by the revision of 2016, section numbers may differ',
    },
    {
      citation: 'U.S. Coast Guard Marine Safety Center, simplified measurement formulas',
      standing: 'printed',
      note: 'dimensions to the nearest tenth of a foot; 0.375 where the keel is in the depth',
    },
    { citation: '46 U.S.C. 14511: which vessels need formal measurement', standing: 'printed' },
    { citation: '46 CFR 67.5: at least five net tons for documentation', standing: 'printed' },
    {
      citation: 'Whole tons on the certificate, fractions dropped',
      standing: 'memory',
      note: 'value from memory',
    },
    {
      citation: 'Deck structure compared with the hull as measured by its own formula',
      standing: 'practice',
      note: 'no source; our reading of 69.209(a)(4), which doesn’t say how the hull’s volume is found',
    },
  ],
});
