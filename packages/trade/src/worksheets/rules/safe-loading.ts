import { measured, number, said } from '../core/outputs.ts';
import { settle } from '../core/units.ts';
import { conclude, type Judgement } from '../core/verdict.ts';
import { formatNumber, line } from '../core/working.ts';
import { defineWorksheet } from '../core/worksheet.ts';
import { type Given, inputs } from './safe-loading-inputs.ts';
import {
  freshWater,
  personsByRuleOfThumb,
  personsFromWeight,
  sideTestLimit,
  testedPersonsWeight,
  untestedPersonsWeight,
  weightCapacity,
} from './safe-loading-rule.ts';

type Rated = 'outboard' | 'up-to-2hp' | 'manual';

/** Pounds: what the boat displaces when water is about to come in. */
function displacement(v: Given): number {
  if (v.maximumDisplacement) return v.maximumDisplacement.in('lb');
  return v.immersedVolume ? settle(v.immersedVolume.in('ft3') * freshWater) : 0;
}

function work(v: Given) {
  const boat = v.boat as Rated;
  const displaced = displacement(v);
  const capacity = weightCapacity(boat, displaced, v.boatWeight.in('lb'));
  const untested = untestedPersonsWeight(boat, capacity, v.equipmentWeight?.in('lb'));
  const needsTest = boat === 'outboard' && untested !== undefined && untested < sideTestLimit;
  const tested = needsTest && v.sideTest ? testedPersonsWeight(v.sideTest.in('lb')) : undefined;
  const personsWeight =
    untested === undefined ? undefined : Math.max(0, Math.min(untested, tested ?? untested));
  const persons = personsWeight === undefined ? undefined : personsFromWeight(personsWeight);
  return { boat, displaced, capacity, untested, needsTest, tested, personsWeight, persons };
}

const lb = (value: number) => `${formatNumber(value, 5)} lb`;

function judge(v: Given, w: ReturnType<typeof work>): Judgement[] {
  const judgements: Judgement[] = [];
  const untestedCase = w.needsTest && w.tested === undefined;
  const compare = (what: string, marked: number | undefined, limit: number | undefined, unit: string) => {
    if (marked === undefined || limit === undefined) return;
    const over = settle(marked) > settle(limit);
    judgements.push({
      verdict: over ? 'unsatisfactory' : 'satisfactory',
      reason: over
        ? `The label allows ${formatNumber(marked, 5)}${unit} ${what}; the rule allows no more than ${formatNumber(limit, 5)}${unit}.`
        : `The label’s ${formatNumber(marked, 5)}${unit} ${what} is within the ${formatNumber(limit, 5)}${unit} of the rule.`,
    });
  };
  compare('of persons, motor and gear', v.markedWeight?.in('lb'), w.capacity, ' lb');
  compare('of persons', v.markedPersonsWeight?.in('lb'), w.personsWeight, ' lb');
  compare('persons', v.markedPersons, w.persons, '');
  const personsMarked = v.markedPersonsWeight !== undefined || v.markedPersons !== undefined;
  if (personsMarked && w.personsWeight === undefined) {
    const reason =
      'The weight of motor, controls, battery and portable tank was not given: the persons on the label can’t be judged.';
    judgements.push({ verdict: 'indeterminate', reason });
  }
  if (untestedCase && (personsMarked || judgements.length === 0)) {
    const reason = `By weight alone the persons capacity is ${lb(Math.max(0, w.untested ?? 0))}, under ${sideTestLimit} lb: the side-loading test must be made, and can only lower it.`;
    judgements.push({ verdict: 'indeterminate', reason });
  }
  if (judgements.length === 0) {
    const reason = `Nothing from a capacity label was given to compare with the ${lb(w.capacity)} of the rule.`;
    judgements.push({ verdict: 'indeterminate', reason });
  }
  return judgements;
}

function workings(v: Given, w: ReturnType<typeof work>): string[] {
  const n = (value: number) => formatNumber(value, 5);
  const boatWeight = v.boatWeight.in('lb');
  const share = w.boat === 'outboard' ? '1/5' : '3/10';
  const untested = w.untested ?? 0;
  return [
    v.maximumDisplacement
      ? line('Maximum displacement', lb(w.displaced))
      : line(
          'Maximum displacement',
          'volume · 62.4 lb/ft³',
          `${n(v.immersedVolume?.in('ft3') ?? 0)} × 62.4`,
          lb(w.displaced),
        ),
    line(
      'Weight capacity',
      `${share} · (displacement − boat weight)`,
      `${share} × (${n(w.displaced)} − ${n(boatWeight)})`,
      lb(w.capacity),
    ),
    ...(w.untested === undefined
      ? []
      : w.boat === 'outboard'
        ? [
            line(
              'Persons, less motor and gear',
              `${n(w.capacity)} − ${n(v.equipmentWeight?.in('lb') ?? 0)}`,
              lb(untested),
            ),
          ]
        : [
            line(
              'Persons',
              w.boat === 'manual' ? '0.9 · capacity' : '0.9 · capacity − 25 lb',
              w.boat === 'manual' ? `0.9 × ${n(w.capacity)}` : `0.9 × ${n(w.capacity)} − 25`,
              lb(untested),
            ),
          ]),
    ...(w.tested === undefined
      ? []
      : [
          line(
            'Persons by the side-loading test',
            'A / 0.6',
            `${n(v.sideTest?.in('lb') ?? 0)} / 0.6`,
            lb(w.tested),
          ),
        ]),
    ...(w.personsWeight === undefined
      ? []
      : [
          line(
            'Number of persons, to the nearest, halves up',
            '(P + 32) / 141',
            `(${n(w.personsWeight)} + 32) / 141`,
            formatNumber((w.personsWeight + 32) / 141, 4),
            String(w.persons),
          ),
        ]),
  ];
}

/** Weight and persons capacity of a small monohull, 33 CFR 183 subpart C. */
export const safeLoading = defineWorksheet({
  kind: 'safe-loading',
  version: 1,
  title: 'Weight and persons capacity, United States',
  group: 'rules',
  system: 'hull',
  purpose:
    'What a small boat’s capacity label may say: total weight, weight of persons and number of persons, from the displacement at which water comes in.',
  inputs,
  refuse: (v) => {
    if (v.maximumDisplacement && v.immersedVolume)
      return [{ field: 'immersedVolume', message: 'Give the maximum displacement or the volume, not both.' }];
    if (!v.maximumDisplacement && !v.immersedVolume)
      return [
        {
          field: 'maximumDisplacement',
          message: 'Give the maximum displacement, or the volume up to where water comes in.',
        },
      ];
    return v.boatWeight.in('lb') >= displacement(v)
      ? [
          {
            field: 'boatWeight',
            message: `The boat weight must be less than the maximum displacement of ${lb(displacement(v))}.`,
          },
        ]
      : [];
  },
  applicability:
    'United States: monohull boats under 20 feet for outboards, oars or paddles; not sailing boats, canoes, kayaks, inflatables or multihulls. The rule binds makers; State law may bind the owner.',
  outside: (v) => {
    if (v.boat === 'multihull' || v.boat === 'excluded')
      return 'The rule does not cover sailing boats, canoes, kayaks, inflatables or multihulls.';
    if (v.length.in('ft') >= 20) return 'The rule covers boats under 20 feet; go by the maker’s figures.';
    if (v.boat === 'inboard')
      return 'The two formulas for inboards and stern drives, 33 CFR 183.33(a), stand only as a picture in every copy of the regulation we could read, so they are not worked here. Take them from the official text.';
    return undefined;
  },
  compute: (v) => {
    const w = work(v);
    const thumb = v.beam ? personsByRuleOfThumb(v.length.in('ft'), v.beam.in('ft')) : null;
    return {
      outputs: {
        weightCapacity: measured('Persons, motor and gear, at most', w.capacity, 'lb', {
          digits: 4,
          also: 'kg',
        }),
        personsWeight: measured('Weight of persons, at most', w.personsWeight ?? null, 'lb', {
          digits: 4,
          also: 'kg',
        }),
        testedPersonsWeight: measured('By the side-loading test', w.tested ?? null, 'lb', {
          digits: 4,
          also: 'kg',
        }),
        personsExact: number(
          'Number of persons before rounding',
          w.personsWeight === undefined ? null : (w.personsWeight + 32) / 141,
          4,
        ),
        persons: number('Number of persons, at most', w.persons ?? null),
        sideTest: said(
          'Side-loading test',
          w.boat !== 'outboard' || (w.untested !== undefined && !w.needsTest)
            ? 'not-needed'
            : w.tested === undefined
              ? 'missing'
              : 'taken',
          w.boat !== 'outboard' || (w.untested !== undefined && !w.needsTest)
            ? 'not needed'
            : w.tested === undefined
              ? w.untested === undefined
                ? 'not known whether needed'
                : 'needed, not made'
              : 'taken into account',
        ),
        ruleOfThumb: number('Rule of thumb, length × beam / 15 (not the federal rule)', thumb),
      },
      ...conclude(judge(v, w)),
      working: workings(v, w),
    };
  },
  cautions: [
    'The figures are for calm water and persons of 141 lb on average. Heavier people, rough water or gear stowed high ask for fewer.',
    'Loading a boat to the point where water comes in can sink her. Make such tests only in shallow, calm water with flotation ready, or work from the lines.',
    'Only the maker may change a capacity label.',
  ],
  sources: [
    {
      citation:
        'United States, 33 CFR 183.31, 183.35, 183.37, 183.43: boats covered, weight and persons capacity',
      standing: 'printed',
      note: '2015 edition',
    },
    {
      citation: '33 CFR 183.41: persons capacity of outboard boats, A/0.6 and (P + 32)/141',
      standing: 'printed',
    },
    {
      citation: '33 CFR 183.75: weights of outboards and their gear',
      standing: 'memory',
      note: 'the table was not seen; its weight is asked for (nothing from memory is used)',
    },
    {
      citation: 'Fresh water 62.4 lb/ft³',
      standing: 'secondary',
      note: 'newboatbuilders.com/pages/load.html',
    },
    {
      citation: 'Persons = length × beam / 15',
      standing: 'secondary',
      note: 'State boating course guide; a rule of thumb for boats without a label',
    },
  ],
});
