import { choice, count, measure, optional, words, yesNo } from '../core/fields.ts';
import { rows } from '../core/list-fields.ts';
import { settle } from '../core/units.ts';
import { formatNumber, line } from '../core/working.ts';
import type { InputProblem, Values } from '../core/worksheet.ts';
import { leftOf, losses } from './flooding-arithmetic.ts';

export const flowUnits = { unit: 'L/min', units: ['L/h', 'L/s', 'm3/h', 'usgpm', 'usgph'] } as const;

const columns = {
  pump: words({ label: 'Pump', help: 'Where it is', max: 40 }),
  basis: choice({
    label: 'Its flow is known from',
    choices: {
      label: 'Its label or leaflet, open flow',
      curve: 'The maker’s curve, at the lift on board',
      measured: 'A measurement on board, at the discharge',
    },
  }),
  flow: measure({ label: 'That flow', min: 0, max: 20_000, ...flowUnits }),
  onBattery: optional(
    yesNo({
      label: 'Curve: battery voltage only',
      help: 'Curves are drawn for 13.6 V; answer no where the curve is for 12 V. Yes when left out',
    }),
  ),
  bends: optional(count({ label: 'Curve: right-angle bends', min: 0, max: 30 })),
  checkValve: optional(yesNo({ label: 'Curve: a check valve in the hose' })),
  corrugated: optional(yesNo({ label: 'Curve: hose corrugated inside' })),
};

export const pumpsField = optional(
  rows({
    label: 'Pumps',
    help: 'That run by themselves or that the crew can be counted on to man',
    each: 'pump',
    min: 0,
    max: 8,
    columns,
  }),
);

type Pump = NonNullable<Values<{ pumps: typeof pumpsField }>['pumps']>[number];

/** Losses given for a flow they don't belong to. */
export const pumpProblems = (pumps: readonly Pump[]): InputProblem[] =>
  pumps.flatMap((pump, row) => {
    if (pump.basis === 'curve') return [];
    const given = (['onBattery', 'bends', 'checkValve', 'corrugated'] as const).find((key) => pump[key]);
    const message = `Pumps, row ${row + 1}: losses of hose and voltage belong to a flow from the maker’s curve; leave them out for a ${pump.basis === 'label' ? 'label rating, which is cut as a whole' : 'measured flow, which has them already'}.`;
    return given ? [{ field: `pumps/${row}/${given}`, message }] : [];
  });

/** What a pump really moves, L/min. */
export function realFlow(pump: Pump, installedShare: number): number {
  const flow = pump.flow.in('L/min');
  if (pump.basis === 'measured') return flow;
  return settle(flow * (pump.basis === 'label' ? installedShare / 100 : leftOf(lossesOf(pump))));
}

const lossesOf = (pump: Pump) => ({
  onBattery: pump.onBattery ?? true,
  bends: pump.bends ?? 0,
  checkValve: pump.checkValve ?? false,
  corrugated: pump.corrugated ?? false,
});

/** How a pump's real flow comes about, on paper. */
export function pumpLine(pump: Pump, installedShare: number): string {
  const result = `${formatNumber(realFlow(pump, installedShare), 4)} L/min`;
  const flow = `${formatNumber(pump.flow.in('L/min'), 4)}`;
  if (pump.basis === 'measured') return line(`Pump ${pump.pump}`, 'as measured', result);
  if (pump.basis === 'label') {
    return line(
      `Pump ${pump.pump}`,
      'label × share left as installed',
      `${flow} × ${formatNumber(installedShare / 100, 3)}`,
      result,
    );
  }
  const { onBattery, bends, checkValve, corrugated } = lossesOf(pump);
  const factors = [
    ...(onBattery ? [`${losses.voltage} (voltage)`] : []),
    ...(bends > 0 ? [`${losses.bend}^${bends} (bends)`] : []),
    ...(checkValve ? [`${losses.checkValve} (check valve)`] : []),
    ...(corrugated ? [`${losses.corrugated} (corrugated hose)`] : []),
  ];
  return line(`Pump ${pump.pump}`, 'flow at its lift × losses', [flow, ...factors].join(' × '), result);
}
