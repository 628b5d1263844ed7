import { chart } from '../../drawing/chart.ts';
import { fallback, measure, optional, yesNo } from '../core/fields.ts';
import { rows } from '../core/list-fields.ts';
import { measured, said } from '../core/outputs.ts';
import { conclude, type Judgement } from '../core/verdict.ts';
import { formatNumber, line } from '../core/working.ts';
import { defineWorksheet, type Values } from '../core/worksheet.ts';

const pressure = { unit: 'mbar', units: ['psi', 'kPa', 'bar', 'inH2O', 'mmH2O'], max: 20_000 } as const;
const temperature = { unit: 'degC', units: ['degF', 'K'], min: -40, max: 70 } as const;

const inputs = {
  startPressure: measure({
    label: 'Pressure at the start',
    help: 'By the gauge, with the appliance and cylinder valves shut and the system settled',
    above: 0,
    ...pressure,
  }),
  endPressure: measure({ label: 'Pressure at the end', help: 'By the same gauge', min: 0, ...pressure }),
  holdTime: measure({ label: 'Time held', unit: 'min', units: ['s', 'h'], above: 0, max: 1440 }),
  gaugeResolution: measure({
    label: 'Smallest change the gauge shows',
    help: 'One division, or the last digit',
    above: 0,
    ...pressure,
  }),
  startTemperature: optional(
    measure({ label: 'Temperature at the start', help: 'Of the piping, in the shade', ...temperature }),
  ),
  endTemperature: optional(measure({ label: 'Temperature at the end', ...temperature })),
  thermometerResolution: fallback(
    measure({
      label: 'Smallest change the thermometer shows',
      unit: 'K',
      above: 0,
      max: 5,
    }),
    0.5,
  ),
  volume: optional(
    measure({
      label: 'Volume under test',
      help: 'Of the piping between the shut valves; needed for a leak rate',
      unit: 'L',
      units: ['mL', 'in3', 'ft3', 'm3'],
      above: 0,
      max: 1000,
    }),
  ),
  barometer: fallback(
    measure({
      label: 'Air pressure',
      unit: 'mbar',
      units: ['hPa', 'kPa', 'inHg', 'mmHg', 'psi'],
      min: 800,
      max: 1100,
    }),
    1013.25,
  ),
  noLiquid: yesNo({
    label: 'Only vapour between the shut valves',
    help: 'False if liquid gas can lie in the part under test, as in a hose from an overfilled or tipped cylinder',
  }),
  minimumHold: fallback(measure({ label: 'Shortest test accepted', unit: 'min', min: 3, max: 60 }), 3),
  readings: optional(
    rows({
      label: 'Readings in between',
      help: 'For the chart; time from the start',
      each: 'reading',
      min: 0,
      max: 200,
      columns: {
        time: measure({ label: 'Time', unit: 'min', units: ['s'], min: 0, max: 1440 }),
        pressure: measure({ label: 'Pressure', min: 0, ...pressure }),
      },
    }),
  ),
};

interface Held {
  /** Gauge pressures in mbar. */
  start: number;
  end: number;
  air: number;
  resolution: number;
  /** Temperatures in kelvin, if both were taken. */
  warmth?: { start: number; end: number; resolution: number };
}

/** What the gauge would show with no leak (mbar), what is missing from it, and the least fall that can be told. */
function explain({ start, end, air, resolution, warmth }: Held) {
  const absolute = start + air;
  const expected = warmth ? (absolute * warmth.end) / warmth.start - air : start;
  const perKelvin = absolute / (warmth?.start ?? 288.15);
  const least = resolution + (warmth ? perKelvin * warmth.resolution : 0);
  return { absolute, expected, fall: expected - end, perKelvin, least };
}

const mbar = (value: number) => `${formatNumber(value, 4)} mbar`;

function judge(held: Held, hold: { minutes: number; minimum: number }): Judgement[] {
  const { fall, least, perKelvin } = explain(held);
  if (hold.minutes < hold.minimum) {
    const reason = `Held for ${formatNumber(hold.minutes)} min; at least ${formatNumber(hold.minimum)} min are needed to judge.`;
    return [{ verdict: 'indeterminate', reason }];
  }
  if (fall > least) {
    const by = held.warmth ? 'that temperature does not explain' : '';
    const reason = `Pressure fell by ${mbar(fall)} ${by}: the system leaks.`.replace(' :', ':');
    return [{ verdict: 'unsatisfactory', reason }];
  }
  if (fall < -least) {
    const reason = `Pressure rose by ${mbar(-fall)}: a cylinder valve may be passing, or the piping warmed. Repeat the test.`;
    return [{ verdict: 'indeterminate', reason }];
  }
  const judgements: Judgement[] = [
    {
      verdict: 'satisfactory',
      reason: `No fall that this gauge can show: it would take more than ${mbar(least)} to be told from none.`,
    },
  ];
  if (fall > held.resolution) {
    const reason = `A fall of ${mbar(fall)} shows on the gauge; only the thermometer’s resolution explains it. Repeat with a finer thermometer or for longer.`;
    judgements.push({ verdict: 'attention', reason });
  }
  if (!held.warmth && perKelvin > held.resolution) {
    const reason = `Temperature was not taken: warming by 1 K would hide a fall of ${mbar(perKelvin)}.`;
    judgements.push({ verdict: 'attention', reason });
  }
  return judgements;
}

function held(v: Values<typeof inputs>): Held {
  const taken = v.startTemperature && v.endTemperature;
  return {
    start: v.startPressure.in('mbar'),
    end: v.endPressure.in('mbar'),
    air: v.barometer.in('mbar'),
    resolution: v.gaugeResolution.in('mbar'),
    ...(taken && v.startTemperature && v.endTemperature
      ? {
          warmth: {
            start: v.startTemperature.in('K'),
            end: v.endTemperature.in('K'),
            resolution: v.thermometerResolution.in('K'),
          },
        }
      : {}),
  };
}

/** Volume of gas lost per minute, mL at the start temperature and air pressure: `V (p₁ − p₂ T₁/T₂) / (t pₐ)`. */
function leakRate(v: Values<typeof inputs>, h: Held): number | null {
  if (!v.volume) return null;
  const ratio = h.warmth ? h.warmth.start / h.warmth.end : 1;
  const lost = h.start + h.air - (h.end + h.air) * ratio;
  return (v.volume.in('mL') * lost) / (v.holdTime.in('min') * h.air);
}

/** Pressure hold of a closed LPG system, corrected for temperature by the gas law. */
export const gasLeakDown = defineWorksheet({
  kind: 'gas-leak-down',
  version: 1,
  title: 'Gas leak-down test',
  group: 'gas',
  system: 'gas',
  purpose:
    'Tells from the pressure held between shut valves whether a gas system leaks, allowing for temperature and for what the gauge can show.',
  inputs,
  refuse: (v) =>
    (v.startTemperature === undefined) === (v.endTemperature === undefined)
      ? []
      : [
          {
            field: v.startTemperature ? 'endTemperature' : 'startTemperature',
            message: 'Take the temperature at the start and at the end, or leave both out.',
          },
        ],
  applicability:
    'Vapour shut in between closed valves. Where liquid gas is present the pressure follows its vapour pressure and tells nothing of leaks.',
  outside: (v) =>
    v.noLiquid
      ? undefined
      : 'Liquid gas may lie in the part under test: it boils off and holds the pressure up whatever leaks.',
  compute: (v) => {
    const h = held(v);
    const { absolute, expected, fall, least } = explain(h);
    const rate = leakRate(v, h);
    const minutes = v.holdTime.in('min');
    const f = (value: number) => formatNumber(value, 5);
    return {
      outputs: {
        expectedPressure: measured('Pressure expected with no leak', expected, 'mbar', {
          digits: 4,
          also: 'psi',
        }),
        fall: measured('Fall not explained by temperature', fall, 'mbar', { digits: 3, also: 'psi' }),
        leastFall: measured('Least fall that can be told', least, 'mbar', { digits: 3, also: 'psi' }),
        leakRate: measured('Leak rate', rate === null ? null : Math.max(0, rate), 'mL/min'),
        shown: said(
          'What the gauge shows',
          fall > least ? 'fall' : fall < -least ? 'rise' : 'none',
          fall > least ? 'a fall' : fall < -least ? 'a rise' : 'no fall that this gauge can show',
        ),
      },
      ...conclude(judge(h, { minutes, minimum: v.minimumHold.in('min') })),
      working: [
        line('Absolute pressure at the start', 'p₁ + pₐ', `${f(h.start)} + ${f(h.air)}`, mbar(absolute)),
        h.warmth
          ? line(
              'Expected with no leak',
              '(p₁ + pₐ) · T₂/T₁ − pₐ',
              `${f(absolute)} × ${f(h.warmth.end)} / ${f(h.warmth.start)} − ${f(h.air)}`,
              mbar(expected),
            )
          : line('Expected with no leak', 'p₁ (temperature not taken)', mbar(expected)),
        line('Fall', 'expected − p₂', `${f(expected)} − ${f(h.end)}`, mbar(fall)),
        line('Least fall that can be told', 'gauge + thermometer', mbar(least)),
        ...(rate === null
          ? []
          : [
              line(
                'Leak rate',
                'V · (p₁ − p₂ · T₁/T₂) / (t · pₐ), absolute',
                `${formatNumber(rate, 3)} mL/min`,
              ),
            ]),
      ],
    };
  },
  draw: (v, result) => {
    const h = held(v);
    const { expected } = explain(h);
    const end = v.holdTime.in('min');
    const between = (v.readings ?? []).map((r): [number, number] => [
      r.time.in('min'),
      r.pressure.in('mbar'),
    ]);
    const points = [[0, h.start] as [number, number], ...between, [end, h.end] as [number, number]];
    return [
      chart({
        key: 'pressure',
        title: 'Gas pressure against time',
        description: `From ${mbar(h.start)} to ${mbar(h.end)} in ${formatNumber(end)} min; ${mbar(expected)} expected with no leak.`,
        x: { label: 'Time, min', fromZero: true },
        y: { label: 'Gauge pressure, mbar' },
        height: 260,
        series: [
          {
            kind: 'dashed',
            points: [
              [0, h.start],
              [end, expected],
            ],
            words: 'no leak',
          },
          { kind: 'line', points, strong: result.verdict === 'unsatisfactory' },
          { kind: 'points', points, words: 'measured', strong: result.verdict === 'unsatisfactory' },
        ],
      }),
    ];
  },
  cautions: [
    'Never look for a leak with a flame, and put no ammonia-based solution on brass. Use a leak-detection fluid and rinse it off.',
    'Propane and butane are heavier than air and gather in the bilge. If gas is smelt, shut the cylinder, keep switches as they are, open up and leave.',
    'This is an indication by a surveyor. Gas work and its certificate are for a licensed gas fitter, by the local code.',
  ],
  sources: [
    {
      citation: 'ABYC A-1, leak test: at least 3 minutes without a fall',
      standing: 'memory',
      note: 'value from memory; US-inspected vessels hold for 10 minutes (46 CFR 58.16-30(j))',
    },
    { citation: 'NFPA 54, annex C: no change for at least 3 minutes', standing: 'secondary' },
    {
      citation: 'Pressure-decay leak rate V·Δp/(t·pₐ) and gas-law correction in absolute units',
      standing: 'secondary',
      note: 'leak-test bulletin 143, and 40 CFR 1065.644 for the molar form',
    },
  ],
});
