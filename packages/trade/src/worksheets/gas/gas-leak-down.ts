import { chart } from '../../drawing/chart.ts';
import { fallback, measure, optional, yesNo } from '../core/fields.ts';
import { rows } from '../core/list-fields.ts';
import { measured, said } from '../core/outputs.ts';
import { withUnit } from '../core/quantity.ts';
import { convert, symbolOf } from '../core/units.ts';
import { conclude } from '../core/verdict.ts';
import { formatNumber, line } from '../core/working.ts';
import { defineWorksheet, type InputProblem, type Values } from '../core/worksheet.ts';
import { judgeHold } from './judge-hold.ts';
import { explainHold, type Held, leakRate } from './pressure-hold.ts';

const pressure = { unit: 'mbar', units: ['psi', 'kPa', 'bar', 'inH2O', 'mmH2O'], max: 20_000 } as const;
const temperature = { unit: 'degC', units: ['degF', 'K'], min: -40, max: 70 } as const;
const airPressure = {
  unit: 'mbar',
  units: ['hPa', 'kPa', 'inHg', 'mmHg', 'psi'],
  min: 800,
  max: 1100,
} as const;

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
    measure({ label: 'Smallest change the thermometer shows', unit: 'K', above: 0, max: 5 }),
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
  barometer: fallback(measure({ label: 'Air pressure', ...airPressure }), 1013.25),
  endBarometer: optional(
    measure({
      label: 'Air pressure at the end',
      help: 'For a test of an hour or more; the same as at the start when left out',
      ...airPressure,
    }),
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

type Given = Values<typeof inputs>;

function heldOf(v: Given): Held {
  const { startTemperature: start, endTemperature: end } = v;
  return {
    start: v.startPressure.in('mbar'),
    end: v.endPressure.in('mbar'),
    air: { start: v.barometer.in('mbar'), end: (v.endBarometer ?? v.barometer).in('mbar') },
    resolution: v.gaugeResolution.in('mbar'),
    ...(start && end
      ? { warmth: { start: start.in('K'), end: end.in('K'), resolution: v.thermometerResolution.in('K') } }
      : {}),
  };
}

/** Prints a pressure given in mbar in the unit that the surveyor read the gauge in. */
const asRead =
  (v: Given, digits = 4) =>
  (mbar: number) =>
    formatNumber(convert(mbar, 'mbar', v.startPressure.unit), digits);
const withItsUnit = (v: Given) => (mbar: number) => withUnit(asRead(v)(mbar), v.startPressure.unit);

function refuse(v: Given): InputProblem[] {
  const problems: InputProblem[] = [];
  if ((v.startTemperature === undefined) !== (v.endTemperature === undefined)) {
    problems.push({
      field: v.startTemperature ? 'endTemperature' : 'startTemperature',
      message: 'Take the temperature at the start and at the end, or leave both out.',
    });
  }
  for (const [index, { time }] of (v.readings ?? []).entries()) {
    if (time.in('min') <= v.holdTime.in('min')) continue;
    const message = `Readings in between, row ${index + 1}: ${time.text()} is after the end of the test, ${v.holdTime.text()}.`;
    problems.push({ field: `readings/${index}/time`, message });
  }
  return problems;
}

function outside(v: Given): string | undefined {
  if (!v.noLiquid)
    return 'Liquid gas may lie in the part under test: it boils off and holds the pressure up whatever leaks.';
  if (v.gaugeResolution.in('mbar') >= v.startPressure.in('mbar'))
    return `The gauge’s smallest change, ${v.gaugeResolution.text()}, is no less than the pressure at the start, ${v.startPressure.text()}: it can tell nothing.`;
  return undefined;
}

function working(v: Given, held: Held, rate: number | null): string[] {
  const { absolute, expected, fall, least, perKelvin } = explainHold(held);
  const n = asRead(v, 5);
  const p = withItsUnit(v);
  const { start, end, air, warmth, resolution } = held;
  const k = (kelvin: number) => formatNumber(kelvin, 5);
  return [
    line('Absolute pressure at the start', 'p₁ + pₐ', `${n(start)} + ${n(air.start)}`, p(absolute)),
    warmth
      ? line(
          'Expected with no leak',
          '(p₁ + pₐ) · T₂/T₁ − pₐ',
          `${n(absolute)} × ${k(warmth.end)} / ${k(warmth.start)} − ${n(air.end)}`,
          p(expected),
        )
      : line(
          'Expected with no leak',
          'p₁ + pₐ − pₐ at the end (temperature not taken)',
          `${n(absolute)} − ${n(air.end)}`,
          p(expected),
        ),
    line('Fall', 'expected − p₂', `${n(expected)} − ${n(end)}`, p(fall)),
    warmth
      ? line(
          'Least fall that can be told',
          'gauge + thermometer · (p₁ + pₐ)/T₁',
          `${n(resolution)} + ${formatNumber(warmth.resolution)} × ${n(perKelvin)}`,
          p(least),
        )
      : line('Least fall that can be told', 'one step of the gauge', p(least)),
    ...(rate === null || !v.volume
      ? []
      : [
          line(
            'Leak rate',
            warmth ? 'V · (p₁ + pₐ − (p₂ + pₐ) · T₁/T₂) / (t · pₐ)' : 'V · (p₁ + pₐ − (p₂ + pₐ)) / (t · pₐ)',
            `${formatNumber(v.volume.in('mL'))} mL × (${n(absolute)} − ${n(end + air.end)}${
              warmth ? ` × ${k(warmth.start)} / ${k(warmth.end)}` : ''
            }) / (${formatNumber(v.holdTime.in('min'))} min × ${n(air.start)})`,
            `${formatNumber(rate, 3)} mL/min`,
          ),
        ]),
  ];
}

function drawPressure(v: Given, strong: boolean) {
  const held = heldOf(v);
  const { expected } = explainHold(held);
  const end = v.holdTime.in('min');
  const shown = (mbar: number) => convert(mbar, 'mbar', v.startPressure.unit);
  const p = withItsUnit(v);
  const between = (v.readings ?? [])
    .map((r): [number, number] => [r.time.in('min'), shown(r.pressure.in('mbar'))])
    .sort(([a], [b]) => a - b);
  const points = [
    [0, shown(held.start)] as [number, number],
    ...between,
    [end, shown(held.end)] as [number, number],
  ];
  const noLeak: Array<[number, number]> = [
    [0, shown(held.start)],
    [end, shown(expected)],
  ];
  return chart({
    key: 'pressure',
    title: 'Gas pressure against time',
    description: `From ${p(held.start)} to ${p(held.end)} in ${formatNumber(end)} min; ${p(expected)} expected with no leak.`,
    x: { label: 'Time, min', fromZero: true },
    y: { label: `Gauge pressure, ${symbolOf(v.startPressure.unit)}` },
    height: 260,
    series: [
      { kind: 'dashed', points: noLeak, words: 'no leak' },
      { kind: 'line', points, strong },
      { kind: 'points', points, words: 'measured', strong },
    ],
  });
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
  refuse,
  applicability:
    'Vapour shut in between closed valves. Where liquid gas is present the pressure follows its vapour pressure and tells nothing of leaks. Above a regulator that has locked up, a leak below it shows late or not at all: test each side.',
  outside,
  compute: (v) => {
    const held = heldOf(v);
    const { expected, fall, least } = explainHold(held);
    const minutes = v.holdTime.in('min');
    const rate = v.volume ? leakRate(held, v.volume.in('mL'), minutes) : null;
    const leastRate = v.volume ? (v.volume.in('mL') * least) / (minutes * held.air.start) : null;
    const shown = fall >= least ? 'fall' : fall <= -least ? 'rise' : 'none';
    const words = { fall: 'a fall', rise: 'a rise', none: 'no fall that this gauge can show' };
    return {
      outputs: {
        expectedPressure: measured('Pressure expected with no leak', expected, 'mbar', {
          digits: 4,
          also: 'psi',
        }),
        fall: measured('Fall not explained by temperature', fall, 'mbar', { digits: 3, also: 'psi' }),
        leastFall: measured('Least fall that can be told', least, 'mbar', { digits: 3, also: 'psi' }),
        leakRate: measured('Leak rate', rate === null ? null : Math.max(0, rate), 'mL/min'),
        leastLeakRate: measured('Least leak rate that would show', leastRate, 'mL/min'),
        shown: said('What the gauge shows', shown, words[shown]),
      },
      ...conclude(
        judgeHold(held, {
          minutes,
          minimum: v.minimumHold.in('min'),
          airFollowed: v.endBarometer !== undefined,
          p: withItsUnit(v),
        }),
      ),
      working: working(v, held, rate),
    };
  },
  draw: (v, result) => [drawPressure(v, result.verdict === 'unsatisfactory')],
  cautions: [
    'Never look for a leak with a flame, and put no ammonia-based solution on brass. Use a leak-detection fluid and rinse it off.',
    'Propane and butane are heavier than air and gather in the bilge. If gas is smelt, shut the cylinder, keep switches as they are, open up and leave.',
    'This is an indication by a surveyor. Gas work and its certificate are for a licensed gas fitter, by the local code.',
  ],
  sources: [
    {
      citation: '46 CFR 58.16-30(j): the pressure should remain constant for at least 10 minutes',
      standing: 'printed',
      note: 'for United States inspected vessels; set the shortest test accepted to 10 min to follow it',
    },
    {
      citation: 'ABYC A-1, leak test: at least 3 minutes without a fall',
      standing: 'memory',
      note: 'value from memory',
    },
    { citation: 'NFPA 54, annex C: no change for at least 3 minutes', standing: 'secondary' },
    {
      citation: '40 CFR 1065.644, leak rate from pressure, temperature and time at constant volume',
      standing: 'printed',
      note: 'its relation in absolute units; here the rate is given as a volume at the start’s temperature and air pressure',
    },
    {
      citation: 'Pressure-decay leak rate V·Δp/(t·pₐ)',
      standing: 'secondary',
      note: 'leak-test bulletin 143',
    },
  ],
});
