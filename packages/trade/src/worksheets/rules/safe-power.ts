import { choice, fallback, measure, optional, yesNo } from '../core/fields.ts';
import { measured, number, yes } from '../core/outputs.ts';
import { settle } from '../core/units.ts';
import { conclude, type Judgement } from '../core/verdict.ts';
import { formatNumber, line } from '../core/working.ts';
import { defineWorksheet, type Values } from '../core/worksheet.ts';

const across = { unit: 'ft', units: ['in', 'm', 'cm', 'mm'], above: 0 } as const;
const power = { unit: 'hp', units: ['kW', 'PS'] } as const;

const inputs = {
  boat: choice({
    label: 'Boat',
    choices: {
      outboard: 'Monohull made for outboard motors',
      inboard: 'Inboard or stern drive',
      multihull: 'Catamaran, pontoon boat or other multihull',
      excluded: 'Sailing boat, canoe, kayak or inflatable',
    },
  }),
  length: measure({
    label: 'Length',
    help: 'Over the deck, end to end, without motor brackets and other fittings',
    max: 100,
    ...across,
  }),
  beam: measure({ label: 'Greatest beam', help: 'Without handles and rub rails', max: 40, ...across }),
  transomWidth: measure({
    label: 'Greatest width of the transom',
    help: 'Without handles and similar fittings',
    max: 40,
    ...across,
  }),
  aftBeam: optional(
    measure({
      label: 'Broadest beam in the aftermost quarter',
      help: 'Only where the transom is no wider than half the beam, or there is none',
      max: 40,
      ...across,
    }),
  ),
  flatBottom: yesNo({
    label: 'Flat bottom with hard chines',
    help: 'True for a flat-bottomed boat with an edge between bottom and side',
  }),
  remoteSteering: yesNo({
    label: 'Remote steering fitted',
    help: 'A wheel or other gear fixed to the boat; not a tiller on the motor',
  }),
  transomHeight: measure({
    label: 'Transom height',
    help: 'Upright from the bottom on the centreline, keel left out, to the lowest point where water could come in over the transom',
    unit: 'in',
    units: ['ft', 'cm', 'mm', 'm'],
    above: 0,
    max: 100,
  }),
  fitted: optional(
    measure({ label: 'Power fitted', help: 'All outboards together', min: 0, max: 5000, ...power }),
  ),
  marked: optional(measure({ label: 'Power on the capacity label', above: 0, max: 5000, ...power })),
  raiseToFive: fallback(
    yesNo({ label: 'Raise to the next multiple of five', help: 'The rule allows it above a factor of 52.5' }),
    true,
  ),
};

type Given = Values<typeof inputs>;

/** Greatest factor, to the nearest whole number, and horsepower of each step of the table of 33 CFR 183.53. */
export const powerSteps = [
  { upTo: 35, hp: 3 },
  { upTo: 39, hp: 5 },
  { upTo: 42, hp: 7.5 },
  { upTo: 45, hp: 10 },
  { upTo: 52, hp: 15 },
] as const;

interface Form {
  flatBottom: boolean;
  /** Remote steering and a transom of at least 20 in. */
  remoteAndHigh: boolean;
}

/**
 * Horsepower by 33 CFR 183.53(a), not yet raised to a multiple of five.
 * @param factor length × transom width, ft². Exactly 52.5 is not “over 52.5”: the last step of the table is taken,
 *   which is the lower of the two readings.
 */
export function powerLimit(factor: number, form: Form): number {
  if (factor > 52.5) {
    if (form.remoteAndHigh) return 2 * factor - 90;
    return form.flatBottom ? 0.5 * factor - 15 : 0.8 * factor - 25;
  }
  const rounded = Math.floor(settle(factor + 0.5));
  const found = powerSteps.findIndex((step) => rounded <= step.upTo);
  const step = found === -1 ? powerSteps.length - 1 : found;
  const taken = form.flatBottom ? Math.max(0, step - 1) : step;
  return powerSteps[taken]?.hp ?? 3;
}

/** The next multiple of five, unchanged where it is one. */
export const raisedToFive = (hp: number): number => Math.ceil(settle(hp / 5)) * 5;

function work(v: Given) {
  const full = v.transomWidth.in('ft') > v.beam.in('ft') / 2;
  const wide = full ? v.transomWidth : (v.aftBeam ?? v.transomWidth);
  const factor = settle(v.length.in('ft') * wide.in('ft'));
  const form = {
    flatBottom: v.flatBottom,
    remoteAndHigh: v.remoteSteering && v.transomHeight.in('in') >= 20,
  };
  const exact = settle(powerLimit(factor, form));
  const limit = factor > 52.5 && v.raiseToFive ? raisedToFive(exact) : exact;
  // The persons capacity and the height of a motor well also decide; neither is asked for here.
  const testOpen = v.length.in('ft') <= 13 && v.remoteSteering && v.transomHeight.in('in') >= 15;
  return { full, wide, factor, form, exact, limit, testOpen };
}

const hp = (value: number) => `${formatNumber(value, 4)} hp`;

function judge(v: Given, { limit, testOpen }: ReturnType<typeof work>): Judgement[] {
  const judgements: Judgement[] = [];
  const byTest = testOpen
    ? ' A boat this short may have been rated by the performance test, up to 40 hp: ask the maker.'
    : '';
  const over = (value: number) => settle(value) > limit;
  const beyond = (value: number): Judgement['verdict'] =>
    testOpen && settle(value) <= 40 ? 'attention' : 'unsatisfactory';
  const marked = v.marked?.in('hp');
  const fitted = v.fitted?.in('hp');
  if (marked !== undefined) {
    judgements.push(
      over(marked)
        ? {
            verdict: beyond(marked),
            reason: `The label allows ${hp(marked)}; by length and transom no more than ${hp(limit)} may be marked.${byTest}`,
          }
        : {
            verdict: 'satisfactory',
            reason: `The label’s ${hp(marked)} is within the ${hp(limit)} that may be marked.`,
          },
    );
  }
  if (fitted === undefined) {
    if (marked === undefined) {
      const reason = `The power fitted and the power on the label were not given: there is nothing to compare with the limit of ${hp(limit)}.`;
      judgements.push({ verdict: 'indeterminate', reason });
    }
    return judgements;
  }
  if (marked !== undefined && settle(fitted) > settle(marked)) {
    const reason = `${hp(fitted)} is fitted, more than the ${hp(marked)} on the label.`;
    judgements.push({ verdict: 'unsatisfactory', reason });
  }
  judgements.push(
    over(fitted)
      ? {
          verdict: beyond(fitted),
          reason: `${hp(fitted)} is fitted, more than the limit of ${hp(limit)} by length and transom.${byTest}`,
        }
      : {
          verdict: 'satisfactory',
          reason: `${hp(fitted)} is fitted, within the limit of ${hp(limit)}.`,
        },
  );
  return judgements;
}

/** The formula above 52.5, with a letter or a number for the factor. */
const formula = ({ remoteAndHigh, flatBottom }: Form, factor: string) =>
  remoteAndHigh ? `2 × ${factor} − 90` : flatBottom ? `0.5 × ${factor} − 15` : `0.8 × ${factor} − 25`;

/** Greatest outboard power of a small monohull, 33 CFR 183 subpart D. */
export const safePower = defineWorksheet({
  kind: 'safe-power',
  version: 1,
  title: 'Outboard power limit, United States',
  group: 'rules',
  system: 'stern-drive-outboard',
  purpose:
    'The greatest outboard power that may be marked on a small boat, from its length and transom, against the power fitted and the capacity label.',
  inputs,
  refuse: (v) => [
    ...(v.transomWidth.in('ft') > v.beam.in('ft')
      ? [{ field: 'transomWidth', message: 'The transom can’t be wider than the greatest beam.' }]
      : []),
    ...(v.aftBeam && v.aftBeam.in('ft') > v.beam.in('ft')
      ? [{ field: 'aftBeam', message: 'The beam of the after quarter can’t be more than the greatest beam.' }]
      : []),
    ...(!v.aftBeam && v.transomWidth.in('ft') <= v.beam.in('ft') / 2
      ? [
          {
            field: 'aftBeam',
            message:
              'The transom is no wider than half the beam: give the broadest beam in the aftermost quarter.',
          },
        ]
      : []),
    ...(v.beam.in('ft') > v.length.in('ft')
      ? [{ field: 'beam', message: 'The beam can’t be more than the length.' }]
      : []),
  ],
  applicability:
    'United States: monohull boats under 20 feet made for outboard motors; not sailing boats, canoes, kayaks, inflatables or multihulls. The rule binds makers; State law may bind the owner.',
  outside: (v) => {
    if (v.boat === 'inboard')
      return 'The rule limits outboard power only; it says nothing of inboards and stern drives.';
    if (v.boat !== 'outboard')
      return 'The rule does not cover sailing boats, canoes, kayaks, inflatables or multihulls.';
    if (v.length.in('ft') >= 20) return 'The rule covers boats under 20 feet; go by the maker’s rating.';
    return undefined;
  },
  compute: (v) => {
    const worked = work(v);
    const { full, wide, factor, form, exact, limit, testOpen } = worked;
    const small = factor <= 52.5;
    return {
      outputs: {
        factor: number('Factor, length × transom width in feet', factor, 4),
        limit: measured('Greatest power', limit, 'hp', { digits: 3, also: 'kW' }),
        beforeRaising: measured('Before raising to a multiple of five', exact, 'hp', {
          digits: 4,
          also: 'kW',
        }),
        fullTransom: yes('Full transom', full),
        performanceTest: yes('May have been rated by the performance test', testOpen),
      },
      ...conclude(judge(v, worked)),
      working: [
        line(
          'Transom width',
          full
            ? `${wide.text()}, wider than half the beam of ${v.beam.text()}: a full transom`
            : `no full transom; the broadest beam in the aftermost quarter, ${wide.text()}`,
        ),
        line(
          'Factor',
          'F = length · width in feet',
          `${formatNumber(v.length.in('ft'), 5)} × ${formatNumber(wide.in('ft'), 5)}`,
          formatNumber(factor, 5),
        ),
        small
          ? line(
              `Table, factor ${formatNumber(Math.floor(settle(factor + 0.5)), 3)} to the nearest whole number${form.flatBottom ? ', one step lower for a flat bottom' : ''}`,
              hp(exact),
            )
          : line('Power', formula(form, 'F'), formula(form, formatNumber(factor, 5)), hp(exact)),
        ...(factor === 52.5
          ? ['Exactly 52.5 stands in neither part of the printed table; the lower limit of the two is taken.']
          : []),
        ...(limit === exact ? [] : [line('Raised to the next multiple of five', hp(limit))]),
      ],
    };
  },
  cautions: [
    'A boat with more power than she is rated for can go over or out of control in a turn. Insurance and State law often refer to the label.',
    'A low transom, soft core at the motor’s bolts or a heavier modern motor can make even the marked power too much: see the transom’s own findings.',
  ],
  sources: [
    {
      citation: 'United States, 33 CFR 183.53(a) and its table: horsepower capacity; 183.51: boats covered',
      standing: 'printed',
      note: '2015 edition',
    },
    { citation: '33 CFR 183.3: full transom, transom height, remote steering', standing: 'printed' },
    {
      citation:
        '33 CFR 183.53(b): performance test for boats up to 13 ft with remote wheel steering, at most 40 hp',
      standing: 'printed',
      note: 'not worked here; persons capacity and motor well also decide',
    },
    {
      citation: 'Factor of exactly 52.5, and a flat bottom on the lowest step',
      standing: 'practice',
      note: 'no source; our reading: the last step of the table; the lowest step stays at 3 hp',
    },
  ],
});
