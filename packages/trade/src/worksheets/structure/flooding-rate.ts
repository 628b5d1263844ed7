import { chart, type Series } from '../../drawing/chart.ts';
import { fallback, measure, optional } from '../core/fields.ts';
import { measured, type Output } from '../core/outputs.ts';
import { convert, settle, symbolOf } from '../core/units.ts';
import { conclude, type Judgement } from '../core/verdict.ts';
import { formatNumber, line } from '../core/working.ts';
import { type Computed, defineWorksheet, type Values } from '../core/worksheet.ts';
import { inflow, noLoss, openingFor, roundArea, sharpEdge } from './flooding-arithmetic.ts';
import { pumpLine, pumpProblems, pumpsField, realFlow } from './flooding-pumps.ts';

const inputs = {
  diameter: optional(
    measure({
      label: 'Diameter of a round opening',
      help: 'Of a hose tail, the bore; give the area instead for another shape',
      unit: 'mm',
      units: ['cm', 'in'],
      above: 0,
      max: 1000,
    }),
  ),
  area: optional(
    measure({
      label: 'Area of another opening',
      unit: 'cm2',
      units: ['mm2', 'in2', 'm2', 'ft2'],
      above: 0,
      max: 10_000,
    }),
  ),
  depth: measure({
    label: 'Depth of its middle below the waterline',
    unit: 'm',
    units: ['cm', 'mm', 'in', 'ft'],
    above: 0,
    max: 15,
  }),
  volume: measure({
    label: 'Volume that matters',
    help: 'Up to the batteries, the cabin sole, or all the space that can flood',
    unit: 'L',
    units: ['m3', 'usgal', 'ft3'],
    above: 0,
    max: 1_000_000,
  }),
  pumps: pumpsField,
  installedShare: fallback(
    measure({
      label: 'Share of a label’s flow left as installed',
      unit: '%',
      units: ['one'],
      above: 0,
      max: 100,
    }),
    50,
  ),
  leastTime: optional(
    measure({
      label: 'Time wanted until that volume is in',
      help: 'To find the place and stop it',
      unit: 'min',
      units: ['s', 'h'],
      above: 0,
      max: 10_000,
    }),
  ),
};

/** Flows in L/min, volume in L. */
interface Flood {
  area: number;
  sharp: number;
  smooth: number;
  pumped: number;
  volume: number;
}

interface Found extends Computed {
  flood: Flood;
}

const perMinute = (cubicMetresPerSecond: number) => settle(60_000 * cubicMetresPerSecond);
const share = (v: Values<typeof inputs>) => v.installedShare.in('%');

function floodOf(v: Values<typeof inputs>): Flood {
  const area = v.diameter ? roundArea(v.diameter.in('m')) : (v.area?.in('m2') ?? 0);
  const depth = v.depth.in('m');
  return {
    area,
    sharp: perMinute(inflow(area, depth, sharpEdge)),
    smooth: perMinute(inflow(area, depth, noLoss)),
    pumped: (v.pumps ?? []).reduce((sum, pump) => sum + realFlow(pump, share(v)), 0),
    volume: v.volume.in('L'),
  };
}

/** Minutes until the volume is in; null when the pumps keep up. */
const timeToFill = ({ volume, pumped }: Flood, flow: number): number | null =>
  flow > pumped ? volume / (flow - pumped) : null;

const flowText = (value: number) =>
  `${formatNumber(value, 3)} L/min (${formatNumber(convert(value, 'L/min', 'usgpm'), 3)} US gal/min)`;
const timeText = (minutes: number) =>
  minutes < 1 ? `${formatNumber(60 * minutes, 2)} s` : `${formatNumber(minutes, 3)} min`;

function timeOutput(label: string, minutes: number | null): Output {
  if (minutes === null) return { label, value: null, unit: 'min', text: 'never while the pumps run' };
  return measured(label, minutes, 'min', minutes < 2 ? { also: 's' } : minutes > 120 ? { also: 'h' } : {});
}

function judge(v: Values<typeof inputs>, flood: Flood): Judgement[] {
  const soonest = timeToFill(flood, flood.smooth);
  const latest = timeToFill(flood, flood.sharp);
  const pumps = `the pumps’ ${flowText(flood.pumped)}`;
  if (soonest === null) {
    const reason = `At most ${flowText(flood.smooth)} come in, and ${pumps} keep up for as long as they run.`;
    return [{ verdict: 'satisfactory', reason }];
  }
  const against = flood.pumped > 0 ? ` against ${pumps}` : ' and nothing pumps';
  const comes = `Between ${flowText(flood.sharp)} and ${flowText(flood.smooth)} come in${against}`;
  const until =
    latest === null
      ? `${v.volume.text(3)} are in after ${timeText(soonest)} at the soonest; with a sharp-edged opening the pumps keep up`
      : `${v.volume.text(3)} are in after ${timeText(soonest)} to ${timeText(latest)}`;
  const wanted = v.leastTime?.in('min');
  if (wanted !== undefined && settle(soonest) < wanted) {
    const reason = `${comes}: ${until}, and ${v.leastTime?.text(3)} are wanted.`;
    return [{ verdict: 'unsatisfactory', reason }];
  }
  const enough = wanted === undefined ? '' : ` The ${v.leastTime?.text(3)} wanted are there.`;
  return [{ verdict: 'attention', reason: `${comes}: ${until}.${enough}` }];
}

function compute(v: Values<typeof inputs>): Found {
  const flood = floodOf(v);
  const soonest = timeToFill(flood, flood.smooth);
  const latest = timeToFill(flood, flood.sharp);
  const depth = v.depth.in('m');
  const held = (coefficient: number) =>
    flood.pumped > 0 ? 1000 * openingFor(flood.pumped / 60_000, depth, coefficient) : null;
  const f = (value: number) => formatNumber(value, 4);
  const flow = (label: string, value: number) => measured(label, value, 'L/min', { also: 'usgpm' });
  return {
    flood,
    outputs: {
      inflowSharp: flow('Inflow, sharp-edged opening (Cd 0.6)', flood.sharp),
      inflowSmooth: flow('Inflow, smooth opening (Cd 1.0)', flood.smooth),
      pumpFlow: flow('What the pumps really move', flood.pumped),
      gainSharp: flow('Gain of water, sharp-edged', Math.max(0, settle(flood.sharp - flood.pumped))),
      gainSmooth: flow('Gain of water, smooth', Math.max(0, settle(flood.smooth - flood.pumped))),
      timeSoonest: timeOutput('Volume in, soonest', soonest),
      timeLatest: timeOutput('Volume in, latest', latest),
      timeWithoutPumps: timeOutput('Volume in without pumps, soonest', flood.volume / flood.smooth),
      heldOpening: measured('Largest round opening the pumps hold at this depth', held(noLoss), 'mm', {
        also: 'in',
      }),
      heldSharpOpening: measured('The same, sharp-edged', held(sharpEdge), 'mm', { also: 'in' }),
    },
    ...conclude(judge(v, flood)),
    working: [
      v.diameter
        ? line('Area of the opening', 'π D² / 4', `π × ${f(v.diameter.in('m'))}² / 4`, `${f(flood.area)} m²`)
        : line('Area of the opening', 'as given', `${f(flood.area)} m²`),
      line(
        'Speed of the water',
        '√(2 g h)',
        `√(2 × 9.80665 × ${f(depth)})`,
        `${f(Math.sqrt(2 * 9.80665 * depth))} m/s`,
      ),
      line('Inflow, sharp-edged', '0.6 · A · √(2 g h)', `${f(flood.sharp)} L/min`),
      line('Inflow, smooth', '1.0 · A · √(2 g h)', `${f(flood.smooth)} L/min`),
      ...(v.pumps ?? []).map((pump) => pumpLine(pump, share(v))),
      ...(soonest === null
        ? []
        : [
            line(
              'Volume in, soonest',
              'V / (Q − pumps)',
              `${f(flood.volume)} / (${f(flood.smooth)} − ${f(flood.pumped)})`,
              timeText(soonest),
            ),
          ]),
    ],
  };
}

/** A line from nothing to `share` of the volume, in the unit it was given in, over minutes. */
function filling(
  v: Values<typeof inputs>,
  { volume }: Flood,
  gain: number,
  share: number,
): Array<[number, number]> {
  return [
    [0, 0],
    [(share * volume) / gain, share * v.volume.value],
  ];
}

/** Volume against time for either kind of opening and without pumps; what the pumps hold is said, not drawn. */
function volumeChart(v: Values<typeof inputs>, flood: Flood, isShort: boolean) {
  const kinds = [
    { words: 'smooth', gain: settle(flood.smooth - flood.pumped), strong: isShort },
    { words: 'sharp-edged', gain: settle(flood.sharp - flood.pumped), strong: false },
  ];
  const series = kinds
    .filter(({ gain }) => gain > 0)
    .map(({ words, gain, strong }): Series => {
      return { kind: 'line', points: filling(v, flood, gain, 1.12), words, strong };
    });
  if (flood.pumped > 0) {
    const points = filling(v, flood, flood.smooth, 1.28);
    series.push({ kind: 'dashed', points, words: 'no pumps' });
  }
  const held = kinds.filter(({ gain }) => gain <= 0).map(({ words }) => words);
  const last = Math.max(...series.map(({ points }) => points.at(-1)?.[0] ?? 0));
  return chart({
    key: 'volume',
    title: 'Volume of water against time',
    description: judge(v, flood)
      .map(({ reason }) => reason)
      .join(' '),
    x: { label: 'Time, min', fromZero: true },
    y: { label: `Volume, ${symbolOf(v.volume.unit)}`, fromZero: true },
    height: 280,
    series,
    limits: [{ axis: 'y', at: v.volume.value, words: v.volume.text(3) }],
    notes:
      held.length > 0
        ? [{ at: [last / 2, 0] as [number, number], words: `${held.join(' and ')}: the pumps keep up` }]
        : [],
  });
}

/** What an opening lets in, what the pumps take out, and how long until a volume is reached. */
export const floodingRate = defineWorksheet({
  kind: 'flooding-rate',
  version: 1,
  title: 'Flooding rate',
  group: 'structure',
  system: 'bilge',
  purpose:
    'Tells how fast water comes in through an opening below the waterline, whether the pumps as installed hold it, and how long until a volume is in.',
  inputs,
  refuse: (v) => [
    ...((v.diameter === undefined) === (v.area === undefined)
      ? [
          {
            field: v.diameter ? 'area' : 'diameter',
            message: 'Give either the diameter of a round opening or the area of another.',
          },
        ]
      : []),
    ...pumpProblems(v.pumps ?? []),
  ],
  applicability:
    'A boat at rest, while the water inside stands below the opening. As she settles the depth grows and more comes in; once the water inside covers the opening only the difference of levels drives it. A hose left on the opening lets in less.',
  compute,
  draw: (v, { flood, verdict }) => [volumeChart(v, flood, verdict === 'unsatisfactory')],
  cautions: [
    'Stopping the water comes before pumping it: know every seacock, keep a plug of the right size at each, and try that the valves move.',
    'An electric pump runs only as long as its battery stays dry and charged; a hand pump only as long as its crew.',
    'Never open a skin fitting or pull a hose afloat to try this. Measure a pump with clean water and a bucket, and mind oil in the bilge: pumping it overboard is an offence.',
  ],
  sources: [
    {
      citation: 'Orifice flow Q = Cd A √(2 g h), Cd about 0.6 for a sharp edge',
      standing: 'secondary',
      note: 'published flooding tables use 1.0 (whsyc.org) or 0.6 (Ocean Navigator, June 2021); both are shown. The rule 20 D √H is linear in D and not used',
    },
    {
      citation: 'Label ratings at 13.6 V: −20 % on battery; open-flow tests 15 to 33 % below rating',
      standing: 'secondary',
      note: 'BoatUS 2014, BoatUS Foundation Findings 14',
    },
    {
      citation: 'Installed 40 to 50 % of label; each right-angle bend −10 %; check valve −10 to −20 %',
      standing: 'secondary',
      note: 'boats.com; 0.85 taken for the valve',
    },
    {
      citation: 'Corrugated hose up to −30 %',
      standing: 'secondary',
      note: 'joomag GCF 2017; others print −20 %',
    },
    { citation: 'Losses multiply', standing: 'practice', note: 'common practice, no source' },
  ],
});
