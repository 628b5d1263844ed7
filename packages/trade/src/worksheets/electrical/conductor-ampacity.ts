import { checked, choice, count, fallback, measure, optional, yesNo } from '../core/fields.ts';
import { measured, number, said } from '../core/outputs.ts';
import { conclude, type Judgement } from '../core/verdict.ts';
import { formatNumber, line } from '../core/working.ts';
import { defineWorksheet, type Values } from '../core/worksheet.ts';
import { insulationChoices, tableChoices } from './conductor-choices.ts';
import { bundleFactor, engineSpaceFactor, tableAmperes } from './conductor-table.ts';
import { type Guard, judgeGuard, largestGuard } from './overcurrent.ts';

const distance = { unit: 'in', units: ['mm', 'cm', 'm', 'ft'], min: 0, max: 4000 } as const;

const inputs = {
  size: choice({ label: 'Conductor size', help: 'As printed on the cable', choices: tableChoices }),
  insulation: choice({
    label: 'Temperature rating of the insulation',
    help: 'Printed on the cable; 60 °C when it can’t be read',
    choices: insulationChoices,
  }),
  voltage: measure({ label: 'Nominal voltage of the circuit', unit: 'V', above: 0, max: 1000 }),
  engineSpace: yesNo({ label: 'Any of it runs through an engine space' }),
  run: choice({
    label: 'How it is run',
    choices: { single: 'Separate conductor', sheath: 'In a sheath with other conductors' },
  }),
  outOfSheath: optional(
    measure({ label: 'Longest part out of the sheath', help: 'Matters for 18 AWG', ...distance }),
  ),
  bundled: fallback(
    count({
      label: 'Current-carrying conductors run together',
      help: 'In the same sheath, bundle or conduit, counting those of 50 V or more',
      min: 1,
      max: 200,
    }),
    1,
  ),
  current: optional(
    measure({
      label: 'Current it carries',
      help: 'Without brief surges',
      unit: 'A',
      units: ['mA'],
      min: 0,
      max: 5000,
    }),
  ),
  protected: checked({ label: 'Fuse or manually reset, trip-free breaker in the ungrounded conductor' }),
  rating: optional(
    measure({ label: 'Rating of the fuse or breaker', unit: 'A', units: ['mA'], above: 0, max: 5000 }),
  ),
  voltageRating: optional(
    measure({ label: 'Voltage rating of the fuse or breaker', unit: 'V', above: 0, max: 2000 }),
  ),
  distance: optional(
    measure({
      label: 'Distance from the source of power to the fuse or breaker',
      help: 'Measured along the conductor; 0 if at the source',
      ...distance,
    }),
  ),
  enclosed: fallback(
    checked({ label: 'In a sheath or enclosure all the way from the source to the fuse or breaker' }),
    'not-examined',
  ),
  ratingBase: fallback(
    choice({
      label: 'The fuse or breaker is judged by',
      help: '33 CFR 183.455(c) names Table 5; the stricter reading takes the corrected amperes',
      choices: { corrected: 'Amperes corrected for place (stricter)', table: 'Amperes of Table 5' },
    }),
    'corrected',
  ),
};

type Asked = Values<typeof inputs>;

const f = (value: number) => formatNumber(value, 5);

/** Amperes of Table 5, the factors that apply and what is left. A. */
function allowed(v: Asked) {
  const table = tableAmperes(v.size, v.insulation);
  const space = v.engineSpace ? engineSpaceFactor(v.insulation) : 1;
  // 183.435(b) calls for note 2 at 50 V or more only.
  const bundle = v.voltage.in('V') >= 50 ? bundleFactor(v.bundled) : 1;
  return { table, space, bundle, corrected: table * space * bundle };
}

const guardOf = (v: Asked): Guard => ({
  fitted: v.protected,
  enclosed: v.enclosed,
  volts: v.voltage.in('V'),
  ...(v.rating ? { rating: v.rating.in('A') } : {}),
  ...(v.voltageRating ? { voltageRating: v.voltageRating.in('V') } : {}),
  ...(v.distance ? { distance: v.distance.in('in') } : {}),
});

function judgeConductor(v: Asked, corrected: number): Judgement[] {
  const judgements: Judgement[] = [];
  if (v.current) {
    const amperes = v.current.in('A');
    // Products such as 60 × 0.85 carry binary noise.
    const within = amperes <= corrected * (1 + 1e-12);
    judgements.push({
      verdict: within ? 'satisfactory' : 'unsatisfactory',
      reason: within
        ? `It carries ${f(amperes)} A and may carry ${f(corrected)} A here.`
        : `It carries ${f(amperes)} A but may carry ${f(corrected)} A here: it can overheat.`,
    });
  } else {
    const reason = `It may carry ${f(corrected)} A here; what it carries was not given.`;
    judgements.push({ verdict: 'attention', reason });
  }
  if (v.size !== '18 AWG') return judgements;
  if (v.run === 'single') {
    const reason = '18 AWG may not be run separately: the least is 16 AWG (33 CFR 183.425(e)).';
    judgements.push({ verdict: 'unsatisfactory', reason });
  } else if (!v.outOfSheath) {
    const reason = 'How far 18 AWG extends out of its sheath was not given; 30 in is the most.';
    judgements.push({ verdict: 'attention', reason });
  } else if (v.outOfSheath.in('in') > 30) {
    const reason = `18 AWG extends ${v.outOfSheath.text()} out of its sheath; 30 in is the most (33 CFR 183.425(f)).`;
    judgements.push({ verdict: 'unsatisfactory', reason });
  }
  return judgements;
}

/** What a boat conductor may carry and how it must be protected, by the United States rule. */
export const conductorAmpacity = defineWorksheet({
  kind: 'conductor-ampacity',
  version: 1,
  title: 'Conductor and its overcurrent protection',
  group: 'electrical',
  system: 'dc-electrical',
  purpose:
    'Tells what current a conductor may carry where it runs, and whether its fuse or breaker is of the right rating and in the right place.',
  inputs,
  refuse: (v) =>
    v.protected === 'no' && (v.rating || v.voltageRating || v.distance)
      ? [
          {
            field: 'protected',
            message:
              'A fuse or breaker is described, but the answer is that there is none: correct one of them.',
          },
        ]
      : [],
  applicability:
    'Insulated stranded copper. The rule binds boats in the United States with petrol engines other than outboards, and not: communications and navigation electronics, electronic circuits under 1 A, wiring inside equipment, ignition secondaries, pigtails under 7 in, cranking motor conductors. Elsewhere it is a yardstick and local rules govern.',
  compute: (v) => {
    const { table, space, bundle, corrected } = allowed(v);
    const low = v.voltage.in('V') < 50;
    const byTable = largestGuard(table, low);
    const byPlace = largestGuard(corrected, low);
    const most = v.ratingBase === 'table' ? byTable : byPlace;
    const ignored = low && v.bundled >= 3;
    const cap = (base: number, largest: number) =>
      low ? `150% × ${f(base)}` : largest > base ? `next standard size above ${f(base)}` : `${f(base)}`;
    return {
      outputs: {
        tableAmperes: measured('Amperes of Table 5', table, 'A'),
        engineSpaceFactor: number('Engine-space factor', space),
        bundleFactor: number('Bundle factor', bundle),
        mayCarry: measured('May carry here', corrected, 'A', { digits: 4 }),
        largestRating: measured('Largest fuse or breaker, by corrected amperes', byPlace, 'A', { digits: 4 }),
        largestRatingByTable: measured('Largest fuse or breaker, by Table 5', byTable, 'A', { digits: 4 }),
        largestJudged: measured('Largest fuse or breaker, as judged', most, 'A', { digits: 4 }),
        loadShare: measured(
          'Load, share of what it may carry',
          v.current ? (100 * v.current.in('A')) / corrected : null,
          '%',
        ),
        place: said('Place of the fuse or breaker', v.distance ? v.distance.text() : null),
      },
      ...conclude([...judgeConductor(v, corrected), ...judgeGuard(guardOf(v), most)]),
      working: [
        line('Table 5', `${v.size}, ${v.insulation} °C`, `${table} A`),
        line('In an engine space', v.engineSpace ? `× ${space} (note 1)` : 'no: × 1'),
        line(
          'Run together',
          low
            ? `under 50 V: × 1${ignored ? ' (note 2 is for 50 V or more)' : ''}`
            : `${v.bundled} conductors: × ${bundle} (note 2)`,
        ),
        line('May carry', 'table × factors', `${table} × ${space} × ${bundle}`, `${f(corrected)} A`),
        line('Largest fuse or breaker, corrected amperes', cap(corrected, byPlace), `${f(byPlace)} A`),
        line('Largest fuse or breaker, Table 5', cap(table, byTable), `${f(byTable)} A`),
      ],
    };
  },
  cautions: [
    'A conductor behind too large a fuse becomes the fuse, and can start a fire.',
    'Isolate the battery before touching its cables, and shore power before opening AC equipment; AC circuits kill.',
    'Changes to wiring are for a competent marine electrician, by the local code.',
  ],
  sources: [
    {
      citation: '33 CFR 183.425, Table 5 with notes 1 and 2 (2015 edition)',
      standing: 'printed',
      note: 'United States rule for boats with petrol engines other than outboards; local rules govern elsewhere',
    },
    { citation: '33 CFR 183.435(b): note 2 applies at 50 V or more', standing: 'secondary' },
    {
      citation: '33 CFR 183.455: place and rating of fuses and breakers (2015 edition)',
      standing: 'printed',
      note: 'it has no 72 in allowance; where Table 5 and the engine-space value differ, the stricter is the default',
    },
    { citation: 'NEC 240.6(A): standard ratings of fuses and breakers', standing: 'secondary' },
    {
      citation: 'Subpart I applies to petrol boats except outboards (33 CFR 183.401)',
      standing: 'memory',
      note: 'value from memory',
    },
  ],
});
