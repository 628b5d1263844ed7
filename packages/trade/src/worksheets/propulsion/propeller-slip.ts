import { choice, fallback, measure, optional, plainNumber } from '../core/fields.ts';
import { measured } from '../core/outputs.ts';
import { settle } from '../core/units.ts';
import { conclude, type Judgement } from '../core/verdict.ts';
import { formatNumber, line } from '../core/working.ts';
import { defineWorksheet, type InputProblem, type Values } from '../core/worksheet.ts';

/** Apparent slip usual at full speed, per cent, by the way the boat runs. */
const usual = {
  planing: { words: 'Planing', least: 10, most: 25 },
  'semi-displacement': { words: 'Semi-displacement', least: 15, most: 40 },
  displacement: { words: 'Displacement', least: 20, most: 55 },
} as const;

const speed = { unit: 'kn', units: ['mph', 'km/h', 'm/s'] } as const;

const inputs = {
  pitch: measure({
    label: 'Pitch of the propeller',
    help: 'As stamped on the hub, or measured on the blades',
    unit: 'in',
    units: ['mm', 'cm', 'm', 'ft'],
    above: 0,
    max: 400,
  }),
  engineSpeed: measure({
    label: 'Engine speed',
    help: 'Steady, by a tachometer that was checked',
    unit: 'rpm',
    above: 0,
    max: 20_000,
  }),
  reduction: fallback(
    plainNumber({
      label: 'Reduction of the gear',
      help: 'Engine turns for one turn of the propeller: 1.5 for 1.5:1',
      min: 0.5,
      max: 20,
    }),
    1,
  ),
  speed: measure({ label: 'Speed of the boat', above: 0, max: 150, ...speed }),
  speedBy: choice({
    label: 'That speed is',
    choices: {
      'both-ways': 'Over the ground, the mean of runs both ways',
      water: 'Through the water, by a calibrated log',
      'one-way': 'Over the ground, one way only',
    },
  }),
  running: choice({
    label: 'The boat is then',
    choices: {
      planing: usual.planing.words,
      'semi-displacement': usual['semi-displacement'].words,
      displacement: usual.displacement.words,
    },
  }),
  usualLeast: optional(measure({ label: 'Usual slip, at least, instead', unit: '%', min: 0, max: 90 })),
  usualMost: optional(measure({ label: 'Usual slip, at most, instead', unit: '%', min: 0, max: 90 })),
  tachometerResolution: fallback(
    measure({ label: 'Smallest change the tachometer shows', unit: 'rpm', min: 0, max: 500 }),
    25,
  ),
  speedResolution: fallback(
    measure({ label: 'Smallest change the speed reading shows', min: 0, max: 5, ...speed }),
    0.1,
  ),
};

type SlipValues = Values<typeof inputs>;

/** Speed in knots of a screw that does not slip, pitch in metres, shaft in rpm: `p · N · 60 / 1852`. */
export const unslippedSpeed = (pitchM: number, shaftRpm: number): number => (pitchM * shaftRpm * 60) / 1852;

/** Apparent slip in per cent: `1 − V / V₀`. Negative when the boat outruns its screw. */
export const apparentSlip = (speedKn: number, unslippedKn: number): number =>
  100 * (1 - speedKn / unslippedKn);

function slipOf(v: SlipValues) {
  const pitch = v.pitch.in('m');
  const rpm = v.engineSpeed.in('rpm');
  const knots = v.speed.in('kn');
  const rpmStep = Math.min(v.tachometerResolution.in('rpm'), rpm / 2);
  const knotStep = v.speedResolution.in('kn');
  const unslipped = unslippedSpeed(pitch, rpm / v.reduction);
  const at = (kn: number, engineRpm: number) =>
    settle(apparentSlip(kn, unslippedSpeed(pitch, engineRpm / v.reduction)));
  return {
    knots,
    shaftRpm: rpm / v.reduction,
    unslipped,
    slip: at(knots, rpm),
    least: at(knots + knotStep, rpm - rpmStep),
    most: at(Math.max(0, knots - knotStep), rpm + rpmStep),
    advance: (knots * 1852) / 60 / (rpm / v.reduction),
    range: {
      least: v.usualLeast?.in('%') ?? usual[v.running].least,
      most: v.usualMost?.in('%') ?? usual[v.running].most,
    },
  };
}

type Slip = ReturnType<typeof slipOf>;

function refuse(v: SlipValues): InputProblem[] {
  const { least, most } = slipOf(v).range;
  return least <= most
    ? []
    : [
        {
          field: v.usualMost ? 'usualMost' : 'usualLeast',
          message: `The usual slip runs from ${formatNumber(least)}% to ${formatNumber(most)}%: give a least that is not above the most.`,
        },
      ];
}

const percent = (value: number) => `${formatNumber(value, 3)}%`;

function judge(v: SlipValues, s: Slip): Judgement[] {
  const has = `The apparent slip is ${percent(s.slip)}`;
  if (v.speedBy === 'one-way') {
    const reason = `${has}, but the speed was taken over the ground one way only: the current is in it. Run both ways and take the mean.`;
    return [{ verdict: 'indeterminate', reason }];
  }
  if (s.slip < 0) {
    const reason =
      s.most < 0
        ? `${has}: the boat goes farther than its propeller screws. The pitch, the gear ratio or a reading is wrong, the blades are cupped, or a current helps.`
        : `${has}: none that these instruments can show, they read to between ${percent(s.least)} and ${percent(s.most)}. Check pitch, gear ratio and readings.`;
    return [{ verdict: 'indeterminate', reason }];
  }
  const range = `the usual ${formatNumber(s.range.least)} to ${formatNumber(s.range.most)}%`;
  if (s.slip >= s.range.least && s.slip <= s.range.most) {
    return [{ verdict: 'satisfactory', reason: `${has}, within ${range} for a boat running so.` }];
  }
  const high = s.slip > s.range.most;
  const told = high ? s.least > s.range.most : s.most < s.range.least;
  const cause = high
    ? 'look for a fouled hull or propeller, damaged blades, overloading, ventilation, or a propeller too small'
    : 'look for a wrong pitch or gear ratio, a tachometer that reads low, or cupped blades';
  const reason = told
    ? `${has}, ${high ? 'above' : 'below'} ${range}: ${cause}.`
    : `${has}, ${high ? 'above' : 'below'} ${range}, by less than these instruments can tell (${percent(s.least)} to ${percent(s.most)}): repeat, and ${cause}.`;
  return [{ verdict: 'attention', reason }];
}

function workingOf(v: SlipValues, s: Slip): string[] {
  const f = (value: number) => formatNumber(value, 4);
  const rpm = f(s.shaftRpm);
  const metric = v.pitch.unit === 'mm' || v.pitch.unit === 'cm' || v.pitch.unit === 'm';
  const inMph = v.speed.unit === 'mph' && !metric;
  const unit = inMph ? 'mph' : 'kn';
  const factor = inMph ? 1852 / 1609.344 : 1;
  const inches = f(v.pitch.in('in'));
  const unslipped = metric
    ? line(
        'Speed without slip',
        'p · N · 60 / 1852',
        `${f(v.pitch.in('m'))} × ${rpm} × 60 / 1852`,
        `${f(s.unslipped)} kn`,
      )
    : inMph
      ? line(
          'Speed without slip',
          'p · N / 1056',
          `${inches} × ${rpm} / 1056`,
          `${f(s.unslipped * factor)} mph`,
        )
      : line('Speed without slip', 'p · N / 1215.2', `${inches} × ${rpm} / 1215.2`, `${f(s.unslipped)} kn`);
  return [
    line(
      'Propeller speed',
      'engine / reduction',
      `${f(v.engineSpeed.in('rpm'))} / ${f(v.reduction)}`,
      `${rpm} rpm`,
    ),
    unslipped,
    line(
      'Apparent slip',
      '1 − V / V₀',
      `1 − ${f(s.knots * factor)} / ${f(s.unslipped * factor)} (${unit})`,
      percent(s.slip),
    ),
    line('As far as the instruments tell', `${percent(s.least)} to ${percent(s.most)}`),
  ];
}

/** How far short of its pitch a propeller carries the boat. */
export const propellerSlip = defineWorksheet({
  kind: 'propeller-slip',
  version: 1,
  title: 'Propeller slip',
  group: 'propulsion',
  system: 'shaft-propeller',
  purpose:
    'Tells how far short of its pitch the propeller carries the boat at a steady speed, and whether that is usual for a boat running so.',
  inputs,
  refuse,
  applicability:
    'A fixed pitch and a steady speed in deep water. Apparent slip compares boats and states of one boat; it is not an efficiency.',
  compute: (v) => {
    const s = slipOf(v);
    return {
      outputs: {
        propellerSpeed: measured('Propeller speed', s.shaftRpm, 'rpm', { digits: 4 }),
        unslippedSpeed: measured('Speed without slip', s.unslipped, 'kn', { digits: 4, also: 'mph' }),
        slip: measured('Apparent slip', s.slip, '%'),
        slipLeast: measured('Slip, at least, as far as the instruments tell', s.least, '%'),
        slipMost: measured('Slip, at most, as far as the instruments tell', s.most, '%'),
        advance: measured('Advance for one turn of the propeller', s.advance, 'm', { also: 'in' }),
      },
      ...conclude(judge(v, s)),
      working: workingOf(v, s),
    };
  },
  cautions: [
    'Run only where there is room and depth, keep the lookout and the speed limit, and warn everyone aboard before accelerating.',
    'Pitch as stamped is nominal: cupping, repair and repitching change it. The propeller’s maker or a workshop measures it.',
  ],
  sources: [
    {
      citation: 'Slip = 1 − V / (pitch · rpm); 1056 in·rpm/mph = 63,360 / 60',
      standing: 'secondary',
      note: 'funnel2tunnel.com; iboats thread 497024; 1215.2 for knots follows from 1852 m',
    },
    {
      citation: 'Usual slip of planing boats, 10 to 20%, look closer above 25%',
      standing: 'secondary',
      note: 'unitconv.org, boat propeller page',
    },
    {
      citation: 'Usual slip of semi-displacement and displacement boats',
      standing: 'practice',
      note: 'common practice, no source; the firm may set its own',
    },
  ],
});
