import { choice, fallback, measure, optional } from '../core/fields.ts';
import { measured, said } from '../core/outputs.ts';
import { conclude, type Judgement } from '../core/verdict.ts';
import { formatNumber, line } from '../core/working.ts';
import { defineWorksheet, type Values } from '../core/worksheet.ts';
import { convertPotential, electrodes } from './electrodes.ts';
import { criteria, protectionAt } from './hull-criteria.ts';
import { type Found, judgePotential, judgeShift } from './hull-potential-judge.ts';
import { potentialScale } from './potential-scale.ts';

const potential = { unit: 'mV', units: ['V'], min: -3000, max: 2000 } as const;

const inputs = {
  hull: choice({
    label: 'Hull',
    choices: {
      'fibreglass-inboard': criteria['fibreglass-inboard'].words,
      'fibreglass-aluminium-drive': criteria['fibreglass-aluminium-drive'].words,
      aluminium: criteria.aluminium.words,
      steel: criteria.steel.words,
      wood: criteria.wood.words,
    },
  }),
  reading: measure({
    label: 'Reading with everything connected',
    help: 'With its sign. Electrode on the meter’s negative lead, in the water at half draught; positive lead on the bonding system or engine negative',
    ...potential,
  }),
  electrode: choice({
    label: 'Reference electrode',
    choices: {
      'silver-seawater': 'Silver chloride, open to the sea water',
      'silver-kcl': 'Silver chloride, filled with saturated potassium chloride',
      calomel: 'Saturated calomel',
      'copper-sulphate': 'Copper sulphate',
      zinc: 'Zinc',
    },
  }),
  water: choice({
    label: 'Water',
    choices: { sea: 'Sea water', brackish: 'Brackish', fresh: 'Fresh' },
  }),
  metal: optional(
    choice({
      label: 'Least noble metal to be protected',
      help: 'Under water and bonded, other than the hull and the anodes',
      choices: {
        bronze: 'Bronze',
        stainless: 'Stainless steel',
        steel: 'Steel or iron',
        aluminium: 'Aluminium',
      },
    }),
  ),
  restReading: optional(
    measure({
      label: 'Reading of the same metal at rest',
      help: 'Same electrode, anodes and bonding disconnected until it is steady: for the shift test',
      ...potential,
    }),
  ),
  resolution: fallback(
    measure({ label: 'Smallest change the meter shows', unit: 'mV', units: ['V'], above: 0, max: 100 }),
    1,
  ),
  neededShift: fallback(
    measure({ label: 'Shift that protects', unit: 'mV', units: ['V'], min: 50, max: 500 }),
    200,
  ),
  protectedFrom: optional(
    measure({
      label: 'Protected from',
      help: 'The firm’s own limit against sea-water silver chloride, if not the usual one of the hull',
      ...potential,
    }),
  ),
  protectedTo: optional(measure({ label: 'Too much beyond', help: 'As above', ...potential })),
};

type Asked = Values<typeof inputs>;

const mV = (value: number) => `${formatNumber(Math.round(value * 10) / 10, 5)} mV`;

/** All potentials in mV against sea-water silver chloride, but the shift, which needs no conversion. */
function work(v: Asked): Found {
  const own = criteria[v.hull];
  const silver = convertPotential(v.reading.in('mV'), v.electrode, 'silver-seawater');
  const rest = v.restReading?.in('mV');
  const range = {
    ...own,
    from: v.protectedFrom?.in('mV') ?? own.from,
    to: v.protectedTo?.in('mV') ?? own.to,
  };
  return {
    hull: v.hull,
    range: { ...range, harmFrom: own.harmFrom === null ? null : Math.min(own.harmFrom, range.to) },
    silver,
    state: protectionAt(silver, range),
    within: electrodes[v.electrode].within + v.resolution.in('mV'),
    resolution: v.resolution.in('mV'),
    neededShift: v.neededShift.in('mV'),
    ...(v.metal ? { metal: v.metal } : {}),
    ...(rest === undefined ? {} : { rest: convertPotential(rest, v.electrode, 'silver-seawater') }),
    ...(rest === undefined ? {} : { shift: rest - v.reading.in('mV') }),
  };
}

/** Why readings in this water can't be held against the criteria. */
function waterFault(v: Asked): string | undefined {
  if (v.water === 'fresh') {
    return 'The criteria are for salt water: in fresh water the same boat reads hundreds of millivolts less.';
  }
  return v.water === 'brackish' && v.electrode === 'silver-seawater'
    ? 'A silver chloride electrode open to the water shifts in brackish water. Use a filled one.'
    : undefined;
}

/** Without its potential a boat may still be judged by the shift; then one test of two is missing. */
const judgeWater = (fault: string, { shift }: Found): Judgement =>
  shift === undefined
    ? { verdict: 'indeterminate', reason: `${fault} Judge by the shift test.` }
    : { verdict: 'attention', reason: `${fault} Only the shift test is judged.` };

const stateWords = { under: 'under-protected', well: 'well protected', over: 'over-protected' } as const;

/** The potential of a hull or bonding system against a reference electrode. */
export const hullPotential = defineWorksheet({
  kind: 'hull-potential',
  version: 1,
  title: 'Hull potential',
  group: 'corrosion',
  system: 'corrosion-protection',
  purpose:
    'Judges from a reading with a reference electrode whether the metals under water are under-, well or over-protected, and whether the anodes shift them enough.',
  inputs,
  refuse: (v) => {
    const silver = convertPotential(v.reading.in('mV'), v.electrode, 'silver-seawater');
    const found = [];
    const { value, unit } = v.reading;
    if (unit === 'mV' && Math.abs(value) < 3 && !Number.isInteger(value)) {
      found.push({
        field: 'reading',
        message: `Reading with everything connected: ${v.reading.text(6)} looks like volts. Give ${formatNumber(value * 1000)} mV, or the unit V.`,
      });
    }
    if (silver > 300 || silver < -2000) {
      found.push({
        field: 'reading',
        message: `Reading with everything connected: no boat reads ${mV(silver)} against silver chloride. Check the electrode chosen, the sign, and that the meter’s leads are not swapped.`,
      });
    }
    const from = v.protectedFrom?.in('mV') ?? criteria[v.hull].from;
    const to = v.protectedTo?.in('mV') ?? criteria[v.hull].to;
    if (to >= from) {
      found.push({
        field: v.protectedTo ? 'protectedTo' : 'protectedFrom',
        message: `Too much must lie beyond where protection begins: ${mV(to)} is not more negative than ${mV(from)}.`,
      });
    }
    return found;
  },
  applicability:
    'Boats afloat in salt water, hours after they last moved, with everything connected as the boat lies. In fresh water only the shift test is judged.',
  compute: (v) => {
    const w = work(v);
    const fault = waterFault(v);
    const to = (electrode: keyof typeof electrodes) =>
      convertPotential(v.reading.in('mV'), v.electrode, electrode);
    const state = fault ? null : w.state;
    const { own } = electrodes[v.electrode];
    return {
      outputs: {
        silver: measured('Against silver chloride in sea water', w.silver, 'mV', { digits: 4 }),
        silverKcl: measured('Against silver chloride in saturated KCl', to('silver-kcl'), 'mV', {
          digits: 4,
        }),
        calomel: measured('Against calomel', to('calomel'), 'mV', { digits: 4 }),
        copperSulphate: measured('Against copper sulphate', to('copper-sulphate'), 'mV', { digits: 4 }),
        zinc: measured('Against zinc', to('zinc'), 'mV', { digits: 4 }),
        protectedFrom: measured('Protected from', w.range.from, 'mV', { digits: 4 }),
        protectedTo: measured('Too much beyond', w.range.to, 'mV', { digits: 4 }),
        state: said('The boat is', state, state ? stateWords[state] : 'not judged'),
        short: measured('Short of protection by', state === 'under' ? w.silver - w.range.from : null, 'mV'),
        beyond: measured('Beyond protection by', state === 'over' ? w.range.to - w.silver : null, 'mV'),
        shift: measured('Shift from rest', w.shift ?? null, 'mV'),
      },
      ...conclude([...(fault ? [judgeWater(fault, w)] : judgePotential(w)), ...judgeShift(w)]),
      working: [
        line('Reading', `${v.reading.text(6)} against ${electrodes[v.electrode].words}`),
        ...(v.electrode === 'silver-seawater'
          ? []
          : [
              line(
                'Against silver chloride in sea water',
                'E + own₁ − own₂',
                `${mV(v.reading.in('mV'))} + (${mV(own)}) − ${mV(electrodes['silver-seawater'].own)}`,
                `${mV(w.silver)}, give or take ${mV(w.within)}`,
              ),
            ]),
        line(`${criteria[v.hull].words}, protected`, `${mV(w.range.from)} to ${mV(w.range.to)}`),
        ...(w.shift === undefined || !v.restReading
          ? []
          : [
              line(
                'Shift',
                'at rest − connected',
                `${mV(v.restReading.in('mV'))} − (${mV(v.reading.in('mV'))})`,
                mV(w.shift),
              ),
            ]),
      ],
    };
  },
  draw: (v) => (waterFault(v) ? [] : [potentialScale(work(v), v.electrode)]),
  cautions: [
    'Never disconnect a bonding or earthing conductor with shore power connected: a fault could make the metal live. Measure from the dock or the boat, not from the water.',
    'A good average hides a fitting that has lost its bonding: read each fitting too.',
    'Readings far from what the metals can give may be stray current, which destroys fittings in days: a corrosion specialist should look before more anodes are fitted.',
  ],
  sources: [
    {
      citation: 'Ranges by hull and least values by metal, as the trade reprints ABYC E-2',
      standing: 'secondary',
      note: 'anodeoutlet.co.uk; steel −800 mV also DNV-RP-B401',
    },
    {
      citation:
        'Electrodes against hydrogen at 25 °C: calomel +241, copper sulphate +316, silver in saturated KCl +199 mV',
      standing: 'secondary',
      note: 'hindawi ijc 2010 756950, table 2; mcauleygroup.net',
    },
    {
      citation: 'Sea-water silver chloride 60 mV below copper sulphate; zinc 1 030 mV below that',
      standing: 'secondary',
      note: 'cathodicacademy.com; zinc derived from NACE equivalents, good to 30 mV. A widely copied chart says to add 100 mV for zinc: it contradicts its own zinc line',
    },
    {
      citation: 'Shift of 200 mV from rest protects',
      standing: 'secondary',
      note: 'Westlawn Masthead 16; anodeoutlet.co.uk',
    },
    {
      citation: 'Aluminium: not more than 300 mV below rest',
      standing: 'secondary',
      note: '“Aluminium and the Sea”, part 4; harm from −1 200 mV is common practice, no source',
    },
    { citation: 'Steel: harm beyond −1 100 mV', standing: 'secondary', note: 'edt.co.uk, in words' },
    {
      citation: 'Wood: alkali beyond −600 mV',
      standing: 'memory',
      note: 'the range was seen, the reason is from memory',
    },
    {
      citation: 'Fibreglass: too much protection wastes anodes',
      standing: 'practice',
      note: 'common practice, no source',
    },
  ],
});
