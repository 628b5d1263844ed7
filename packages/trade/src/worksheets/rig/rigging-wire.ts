import { chart } from '../../drawing/chart.ts';
import { measured, number, said } from '../core/outputs.ts';
import { convert, settle } from '../core/units.ts';
import { conclude } from '../core/verdict.ts';
import { formatNumber, line } from '../core/working.ts';
import { defineWorksheet } from '../core/worksheet.ts';
import { inputs, type WireGiven } from './rigging-wire-inputs.ts';
import { judgeWire, strengthOverLoad } from './rigging-wire-judge.ts';
import { usualBreakingLoad } from './rigging-wire-table.ts';

/** Strength asked for over the greatest load, and the share of displacement that one side's shrouds should break at. */
const watersAsk = {
  inshore: { factor: 2, ofDisplacement: 1 },
  coastal: { factor: 3, ofDisplacement: 1.1 },
  offshore: { factor: 4, ofDisplacement: 1.2 },
};

/** Tension as a share of the breaking load from the stretch of 1x19 wire over 2 m: 5 % a millimetre. */
export const shareFromStretch = (stretch: number): number => 5 * stretch;

const refused = (field: string, message: string) => ({ field, message });

function work(v: WireGiven) {
  const usual = v.construction === '1x19' ? usualBreakingLoad(v.diameter.in('mm'), v.grade) : undefined;
  const strength = v.breakingLoad ?? usual?.strength;
  const breaking = strength?.in('kN') ?? Number.NaN;
  const fittedStrength = (breaking * v.fittingShare.in('%')) / 100;
  const ask = watersAsk[v.waters];
  const sideLoad = v.displacement && convert(v.displacement.in('kg') * ask.ofDisplacement, 'kgf', 'kN');
  const perShroud = sideLoad === undefined ? undefined : sideLoad / v.shroudsPerSide;
  const ruleNeeds = perShroud === undefined ? undefined : settle((perShroud * 100) / v.fittingShare.in('%'));
  const tensionShare = v.tension
    ? settle((100 * v.tension.in('kN')) / breaking)
    : v.stretch && shareFromStretch(v.stretch.in('mm'));
  const load = v.load?.in('kN');
  return { usual, strength, breaking, fittedStrength, ask, perShroud, ruleNeeds, tensionShare, load };
}

const doubtOf = (v: WireGiven, { usual }: ReturnType<typeof work>): string | undefined =>
  v.breakingLoad || !usual || usual.standing === 'seen'
    ? undefined
    : `The breaking load is the usual figure for ${usual.size} wire and is not confirmed (${usual.note}): ask the maker.`;

/** Strength, load, tension, age and condition of one standing wire. */
export const riggingWire = defineWorksheet({
  kind: 'rigging-wire',
  version: 1,
  title: 'Standing rigging wire',
  group: 'rig',
  system: 'rig-sails',
  purpose:
    'Tells whether a shroud or stay is strong enough for its load as fitted, how hard it is set up, and whether age or damage calls for replacement.',
  inputs,
  refuse: (v) => [
    ...(v.tension && v.stretch
      ? [refused('stretch', 'Give the tension by gauge or the stretch over 2 m, not both.')]
      : []),
    ...(v.stretch && v.construction !== '1x19'
      ? [refused('stretch', 'Stretch over 2 m tells the tension of 1x19 wire only.')]
      : []),
    ...(v.tensionLow.in('%') >= v.tensionHigh.in('%')
      ? [refused('tensionLow', 'The least usual tension must be below the greatest accepted.')]
      : []),
    ...(v.ageAttention.in('year') > v.ageLimit.in('year')
      ? [refused('ageAttention', 'The age that calls for attention can’t be above the age limit.')]
      : []),
  ],
  applicability:
    'New-strength figures for 1x19 stainless strand in the sizes of the table; any wire or rod whose breaking load the maker states. Sizes are not interpolated.',
  outside: (v) =>
    work(v).strength
      ? undefined
      : `The table has no breaking load for ${v.construction === '1x19' ? `${v.diameter.text()} 1x19 wire of this grade` : 'this construction'}: enter the maker’s.`,
  compute: (v) => {
    const w = work(v);
    const doubt = doubtOf(v, w);
    const safetyFactor = w.load === undefined ? null : strengthOverLoad(w.fittedStrength, w.load);
    const kN = (value: number) => `${formatNumber(value, 4)} kN`;
    return {
      outputs: {
        breakingLoad: measured('Breaking load of the wire', w.breaking, 'kN', { digits: 4, also: 'lbf' }),
        fittedStrength: measured('Strength as fitted', w.fittedStrength, 'kN', { digits: 4, also: 'lbf' }),
        safetyFactor: number('Strength over load', safetyFactor),
        factorNeeded: number('Strength over load asked for', w.ask.factor),
        perShroud: measured('Load on each shroud by displacement', w.perShroud ?? null, 'kN', {
          digits: 4,
          also: 'lbf',
        }),
        ruleBreakingLoad: measured('Breaking load the rule asks for', w.ruleNeeds ?? null, 'kN', {
          digits: 4,
          also: 'lbf',
        }),
        tensionShare: measured('Tension set up, of the breaking load', w.tensionShare ?? null, '%'),
        breakingLoadFrom: said('Breaking load from', v.breakingLoad ? 'the maker' : (w.usual?.note ?? null)),
      },
      ...conclude(
        judgeWire({
          fittedStrength: w.fittedStrength,
          breaking: w.breaking,
          factorNeeded: w.ask.factor,
          tensionLow: v.tensionLow.in('%'),
          tensionHigh: v.tensionHigh.in('%'),
          ageAttention: v.ageAttention.in('year'),
          ageLimit: v.ageLimit.in('year'),
          brokenWires: v.brokenWires,
          terminalFault: v.terminalFault,
          ...(w.load === undefined ? {} : { load: w.load }),
          ...(w.ruleNeeds === undefined ? {} : { ruleNeeds: w.ruleNeeds }),
          ...(w.tensionShare === undefined ? {} : { tensionShare: w.tensionShare }),
          ...(v.age === undefined ? {} : { age: v.age.in('year') }),
          ...(doubt === undefined ? {} : { doubt }),
        }),
      ),
      working: [
        line(
          'Breaking load',
          v.breakingLoad ? 'by the maker' : `${w.usual?.size}, ${v.grade}`,
          w.strength?.text() ?? '',
          kN(w.breaking),
        ),
        line(
          'Strength as fitted',
          'breaking load × share held by the fittings',
          `${kN(w.breaking)} × ${v.fittingShare.text()}`,
          kN(w.fittedStrength),
        ),
        ...(w.load === undefined || safetyFactor === null
          ? []
          : [
              line(
                'Strength over load',
                `${kN(w.fittedStrength)} / ${kN(w.load)}`,
                formatNumber(safetyFactor, 3),
              ),
            ]),
        ...(w.perShroud === undefined || w.ruleNeeds === undefined
          ? []
          : [
              line(
                'Load on each shroud',
                'displacement × factor / shrouds on one side',
                `${v.displacement?.text()} × ${w.ask.ofDisplacement} / ${v.shroudsPerSide}`,
                kN(w.perShroud),
              ),
              line(
                'Breaking load the rule asks for',
                'load on each shroud / share held by the fittings',
                kN(w.ruleNeeds),
              ),
            ]),
        ...(w.tensionShare === undefined
          ? []
          : [
              line(
                'Tension set up',
                v.tension
                  ? `${v.tension.text()} / ${kN(w.breaking)}`
                  : `5 % a millimetre over 2 m × ${v.stretch?.text()}`,
                `${formatNumber(w.tensionShare, 3)} % of the breaking load`,
              ),
            ]),
      ],
    };
  },
  draw: (v, result) => {
    const w = work(v);
    const tension = w.tensionShare === undefined ? undefined : (w.tensionShare * w.breaking) / 100;
    const bars: Array<[string, number | undefined]> = [
      ['Set up', tension],
      ['Greatest load', w.load ?? w.perShroud],
      ['As fitted', w.fittedStrength],
      ['Breaking', w.breaking],
    ];
    const shown = bars.filter((bar): bar is [string, number] => bar[1] !== undefined);
    return [
      chart({
        key: 'loads',
        title: 'Loads and strength of the wire',
        description: shown.map(([words, value]) => `${words} ${formatNumber(value, 3)} kN`).join('; '),
        x: {
          label: 'One wire',
          domain: [-0.6, shown.length - 0.4],
          ticks: shown.map(([words], at) => ({ at, words })),
        },
        y: { label: 'Force, kN', fromZero: true },
        height: 250,
        series: [
          {
            kind: 'bars',
            points: shown.map(([, value], at): [number, number] => [at, value]),
            strong: result.verdict === 'unsatisfactory',
          },
        ],
      }),
    ];
  },
  cautions: [
    'Wire fails by fatigue and crevice corrosion inside fittings, where nothing shows: figures alone never pass a rig.',
    'Never stand on deck under a rig being loaded or slackened, and go aloft only on two independent ropes with a trained hand below.',
    'This is an indication by a surveyor. Replacement, tuning and work aloft are for a professional rigger, and the insurer’s terms govern age.',
  ],
  sources: [
    {
      citation: 'Breaking loads of 1x19 stainless strand: 1/16 and 1/4 in; 3, 4, 5 and 7 mm',
      standing: 'secondary',
      note: 'seen in suppliers’ and sailing-forum pages only; 3/16 in of 302/304 is disputed (4,700 or 3,960 lb)',
    },
    {
      citation: 'Breaking loads of the other inch sizes',
      standing: 'memory',
      note: 'value from memory; MIL-DTL-87161 covers such strand, its table I was not readable. Enter the maker’s breaking load instead',
    },
    {
      citation: 'Strength over load of 4 offshore, 3 coastal, 2 inshore on the 45° heel load',
      standing: 'practice',
      note: 'common practice; opinion in a boatbuilding forum (boatbanter 590059), others ask for more',
    },
    {
      citation:
        'Shrouds of one side to break at no less than displacement × 1.0 inshore, 1.1 coastal, 1.2 offshore',
      standing: 'practice',
      note: 'common practice (sailboatowners 1249934718), a crude rule; a swage taken to hold 90 % of the wire',
    },
    {
      citation: 'Stretch of 1x19 over 2 m: 1 mm for each 5 % of the breaking load; 25 % as the ceiling',
      standing: 'secondary',
      note: 'zeilersforum.nl 23222; 10 to 15 % for cruising is common practice',
    },
    {
      citation: 'Ages of 10 and 15 years',
      standing: 'practice',
      note: 'common practice of insurers and riggers, without a statistical basis; use changes it more than years do',
    },
    {
      citation: '29 CFR 1917.42(b)(2): broken wires at an end fitting, cracked attachments',
      standing: 'printed',
      note: 'United States law for cargo gear ashore, taken as the measure of damage; it does not govern yacht rigging',
    },
  ],
});
