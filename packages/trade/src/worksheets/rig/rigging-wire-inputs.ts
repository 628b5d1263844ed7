import { checked, choice, count, fallback, measure, optional } from '../core/fields.ts';
import type { Values } from '../core/worksheet.ts';

const force = { unit: 'kN', units: ['N', 'daN', 'kgf', 'lbf'], above: 0, max: 1000 } as const;
const share = { unit: '%', above: 0, max: 100 } as const;

export const inputs = {
  diameter: measure({
    label: 'Diameter of the wire',
    help: 'Across the crowns of the strand, by calliper, clear of the fittings',
    unit: 'mm',
    units: ['in'],
    above: 0,
    max: 40,
  }),
  construction: choice({
    label: 'Construction',
    choices: { '1x19': '1x19 strand', other: 'Other: 7x7, 7x19, compacted strand, rod' },
  }),
  grade: choice({
    label: 'Grade of steel',
    choices: { '316': '316', '302-304': '302 or 304', unknown: 'Stainless, not known which' },
  }),
  breakingLoad: optional(
    measure({
      label: 'Breaking load by the maker',
      help: 'From the maker or a certificate; it replaces the table',
      ...force,
    }),
  ),
  fittingShare: fallback(
    measure({
      label: 'Strength held by the end fittings',
      help: 'Of the wire’s breaking load; a swage is commonly taken to hold 90 %',
      ...share,
    }),
    90,
  ),
  waters: choice({
    label: 'Waters sailed',
    choices: { inshore: 'Inshore', coastal: 'Coastal', offshore: 'Offshore' },
  }),
  load: optional(
    measure({
      label: 'Greatest load on the wire',
      help: 'Calculated, as on the 45° heel load',
      ...force,
    }),
  ),
  displacement: optional(
    measure({
      label: 'Loaded displacement',
      help: 'For a shroud: the rule of thumb by displacement',
      unit: 'kg',
      units: ['t', 'lb', 'lton', 'ston'],
      above: 0,
      max: 500_000,
    }),
  ),
  shroudsPerSide: fallback(count({ label: 'Shrouds on one side', min: 1, max: 8 }), 2),
  tension: optional(measure({ label: 'Tension set up, by gauge', ...force })),
  stretch: optional(
    measure({
      label: 'Stretch over 2 m when set up',
      help: 'For 1x19: by a rule taped to the slack wire',
      unit: 'mm',
      min: 0,
      max: 20,
    }),
  ),
  tensionLow: fallback(measure({ label: 'Least usual tension', ...share }), 10),
  tensionHigh: fallback(measure({ label: 'Greatest tension accepted', ...share }), 25),
  age: optional(measure({ label: 'Age of the wire', unit: 'year', units: ['month'], min: 0, max: 100 })),
  ageAttention: fallback(
    measure({ label: 'Age that calls for attention', unit: 'year', above: 0, max: 100 }),
    10,
  ),
  ageLimit: fallback(measure({ label: 'Age limit', unit: 'year', above: 0, max: 100 }), 15),
  brokenWires: checked({ label: 'Any wire of the strand broken or cracked' }),
  terminalFault: checked({ label: 'An end fitting cracked, bent or bleeding rust' }),
};

/** What a surveyor gave of one wire. */
export type WireGiven = Values<typeof inputs>;
