import { checked, choice, count, fallback, measure, optional, plainNumber } from '../core/fields.ts';
import { measured, number } from '../core/outputs.ts';
import type { Quantity } from '../core/quantity.ts';
import { conclude, type Judgement } from '../core/verdict.ts';
import { formatNumber, line } from '../core/working.ts';
import { defineWorksheet, type InputProblem, type Values } from '../core/worksheet.ts';
import { airNeeded, gasCurrents, hydrogenPerAh, openingNeeded } from './battery-gas-table.ts';
import { judgePoints, toCheck } from './checked-points.ts';
import { limitText } from './limit-text.ts';

const opening = { unit: 'cm2', units: ['mm2', 'in2', 'm2'], min: 0, max: 100_000 } as const;

const inputs = {
  battery: choice({
    label: 'Kind of battery',
    choices: {
      'vented-lead': 'Lead-acid, vented (wet)',
      'valve-regulated-lead': 'Lead-acid, valve-regulated (gel, AGM)',
      'vented-nickel-cadmium': 'Nickel-cadmium, vented',
      lithium: 'Lithium',
    },
  }),
  charge: choice({
    label: 'Strongest charge used on board',
    help: 'Boost where any charger, alternator or solar regulator goes above the float voltage',
    choices: { boost: 'Boost or absorption', float: 'Float only' },
  }),
  cells: count({
    label: 'Cells in series',
    help: '6 for 12 V of lead-acid, 12 for 24 V; parallel strings are not added here',
    min: 1,
    max: 300,
  }),
  capacity: measure({
    label: 'Capacity',
    help: 'Of all strings in parallel together, at the ten-hour rate (nickel-cadmium: five-hour)',
    unit: 'Ah',
    above: 0,
    max: 100_000,
  }),
  recombining: fallback(
    checked({
      label: 'Recombination caps on every cell',
      help: 'Catalyst caps on vented cells; answer no for other batteries',
    }),
    'no',
  ),
  makersGasCurrent: optional(
    plainNumber({
      label: 'Gas current by the maker, mA for each A·h',
      help: 'With the safety factor included; replaces the usual value',
      above: 0,
      max: 1000,
    }),
  ),
  temperature: optional(
    measure({
      label: 'Highest temperature of the battery',
      help: 'In an engine space, after a run',
      unit: 'degC',
      units: ['degF', 'K'],
      min: -30,
      max: 100,
    }),
  ),
  inlet: optional(measure({ label: 'Free area of the inlet', help: 'Low down', ...opening })),
  outlet: optional(measure({ label: 'Free area of the outlet', help: 'At the top', ...opening })),
  fan: optional(
    measure({
      label: 'Air moved by a fan',
      help: 'Measured, or rated where it blows freely; it must run whenever the battery is charged',
      unit: 'm3/h',
      units: ['cfm', 'L/min', 'L/s'],
      min: 0,
      max: 10_000,
    }),
  ),
  outletHigh: toCheck({
    label: 'Outlet at the highest point of the space',
    help: 'Hydrogen rises and stays under any pocket above the outlet',
  }),
  leadsOutside: toCheck({ label: 'Outlet leads to the open air, not into accommodation' }),
  noSparks: toCheck({
    label: 'Nothing that sparks or burns in the space',
    help: 'Switches, relays, chargers, fuses, gas or petrol appliances',
  }),
};

type Given = Values<typeof inputs>;

/** The usual gas currents hold up to here, °C. */
const hottest = 40;

function gasCurrentOf(v: Given): number {
  if (v.makersGasCurrent !== undefined) return v.makersGasCurrent;
  if (v.battery === 'lithium') return 0;
  return gasCurrents[v.battery][v.charge] * (v.recombining === 'yes' ? 0.5 : 1);
}

function refuse(v: Given): InputProblem[] {
  if (v.recombining !== 'yes' || v.battery.startsWith('vented')) return [];
  const message = 'Recombination caps fit vented cells only: answer no for this battery.';
  return [{ field: 'recombining', message }];
}

function outside(v: Given): string | undefined {
  if (v.battery === 'lithium')
    return 'Lithium cells give off no hydrogen in charging; the gas of a failing cell is another hazard, which this formula doesn’t cover. Follow the maker and the local code.';
  if (v.temperature && v.temperature.in('degC') > hottest && v.makersGasCurrent === undefined)
    return `The usual gas currents hold up to 40 °C; the battery reaches ${v.temperature.text()} and gasses more. Ask its maker for the gas current at that temperature.`;
  return undefined;
}

function judgeAir(v: Given, needed: number): Judgement[] {
  const flow = limitText(needed, 'm3/h', v.fan, 3);
  if (v.fan) {
    return v.fan.in('m3/h') >= needed
      ? [{ verdict: 'satisfactory', reason: `The fan moves ${v.fan.text()}; ${flow} is needed.` }]
      : [
          {
            verdict: 'unsatisfactory',
            reason: `The fan moves ${v.fan.text()}, less than the ${flow} needed.`,
          },
        ];
  }
  const side = (name: string, found: Quantity | undefined): Judgement => {
    const area = limitText(openingNeeded(needed), 'cm2', found, 3);
    if (!found)
      return {
        verdict: 'indeterminate',
        reason: `The ${name} was not measured; ${area} of free area is needed, or a fan that moves ${flow}.`,
      };
    return found.in('cm2') >= Number(openingNeeded(needed).toPrecision(12))
      ? { verdict: 'satisfactory', reason: `The ${name} has ${found.text()}; ${area} is needed.` }
      : {
          verdict: 'unsatisfactory',
          reason: `The ${name} has ${found.text()}, less than the ${area} needed.`,
        };
  };
  return [side('inlet', v.inlet), side('outlet', v.outlet)];
}

function judgePlace(v: Given): Judgement[] {
  const capsUnseen = v.recombining === 'not-examined' && v.battery.startsWith('vented');
  const caps =
    'Whether recombination caps are fitted was not examined; the air needed is worked without them.';
  const points = judgePoints([
    {
      answer: v.outletHigh,
      what: 'whether the outlet is at the highest point',
      bad: 'The outlet is not at the highest point: hydrogen stays above it.',
    },
    {
      answer: v.leadsOutside,
      what: 'where the outlet leads',
      bad: 'The outlet does not lead to the open air.',
    },
    {
      answer: v.noSparks,
      what: 'whether anything in the space can spark or burn',
      bad: 'Something in the space can spark or burn and light the gas.',
    },
  ]);
  return capsUnseen ? [...points, { verdict: 'attention', reason: caps }] : points;
}

/** EN 50272-2 and EN IEC 62485-2, ventilation of battery spaces. */
export const batteryVentilation = defineWorksheet({
  kind: 'battery-ventilation',
  version: 1,
  title: 'Battery space ventilation',
  group: 'gas',
  system: 'dc-electrical',
  purpose:
    'Works out the air, or the openings, that keep the hydrogen of a charging battery below what can burn, and compares what is fitted.',
  inputs,
  refuse,
  applicability:
    'Lead-acid and vented nickel-cadmium batteries charged by regulated chargers, up to 40 °C, by the European standard for stationary batteries (EN IEC 62485-2, before EN 50272-2), which is used for house and starting batteries afloat for want of one of their own. Propulsion batteries are under part 3 of that standard, with higher gas currents.',
  outside,
  compute: (v) => {
    const current = gasCurrentOf(v);
    const capacity = v.capacity.in('Ah');
    const needed = Number(airNeeded(v.cells, current, capacity).toPrecision(12));
    const area = openingNeeded(needed);
    const n = (value: number) => formatNumber(value, 4);
    const share = (found: number | undefined, of: number) =>
      found === undefined ? null : (found / of) * 100;
    return {
      outputs: {
        gasCurrent: number('Gas current, mA for each A·h', current, 4),
        airflow: measured('Air needed', needed, 'm3/h', { also: 'cfm' }),
        openingArea: measured('Free area needed of inlet and of outlet, each', area, 'cm2', { also: 'in2' }),
        openingDiameter: measured('Diameter if round and open', Math.sqrt((4 * area) / Math.PI) * 10, 'mm', {
          also: 'in',
        }),
        hydrogen: measured(
          'Hydrogen given off, margins included',
          hydrogenPerAh * v.cells * current * capacity,
          'L/h',
        ),
        inletShare: measured('Inlet, of that needed', share(v.inlet?.in('cm2'), area), '%'),
        outletShare: measured('Outlet, of that needed', share(v.outlet?.in('cm2'), area), '%'),
        fanShare: measured('Fan, of that needed', share(v.fan?.in('m3/h'), needed), '%'),
      },
      ...conclude([...judgeAir(v, needed), ...judgePlace(v)]),
      working: [
        line(
          'Gas current I',
          v.makersGasCurrent !== undefined
            ? 'the maker’s'
            : v.recombining === 'yes'
              ? 'usual value, halved for recombination caps'
              : 'usual value',
          `${n(current)} mA for each A·h`,
        ),
        line(
          'Air needed Q',
          '0.05 · n · I · C / 1000',
          `0.05 × ${v.cells} × ${n(current)} × ${n(capacity)} / 1000`,
          `${formatNumber(needed, 3)} m³/h`,
        ),
        line(
          'Free area A, each',
          '28 · Q',
          `28 × ${formatNumber(needed, 3)}`,
          `${formatNumber(area, 3)} cm²`,
        ),
      ],
    };
  },
  cautions: [
    'Charging batteries give off hydrogen, which a spark lights; the space right above a cell can always burn. Stop charging and let the space clear before working there.',
    'A regulator that fails, or a charger left on equalise, gives off far more gas than this allows for.',
    'Batteries and chargers are work for a licensed electrical trade, by the local code and the battery maker’s instructions.',
  ],
  sources: [
    {
      citation: 'EN 50272-2 / EN IEC 62485-2, ventilation: Q = 0.05 n Igas C /1000, A = 28 Q at 0.1 m/s',
      standing: 'secondary',
      note: 'seen in makers’ reprints; hydrogen at 0 °C. A reprint of IEC 62485-3 rounds up to 0.055 for 25 °C: allow a tenth more in warm spaces',
    },
    {
      citation:
        'Usual gas currents: vented lead 5 and 20, valve-regulated lead 1 and 8, vented nickel-cadmium 5 and 50 mA for each A·h; recombination caps halve them',
      standing: 'secondary',
      note: 'float and boost, up to 40 °C; lead with less than 3 % of antimony',
    },
    { citation: 'Lower explosive limit of hydrogen in air: 4 %', standing: 'secondary' },
  ],
});
