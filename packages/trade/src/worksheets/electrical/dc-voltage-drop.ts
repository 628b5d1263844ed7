import { measured, said } from '../core/outputs.ts';
import { symbolOf } from '../core/units.ts';
import { conclude, type Judgement } from '../core/verdict.ts';
import { formatNumber, line } from '../core/working.ts';
import { defineWorksheet, type Values } from '../core/worksheet.ts';
import { type Conductor, engineSpaceFactor, tableAmperes } from './conductor-table.ts';
import { inputs } from './dc-voltage-drop-inputs.ts';
import {
  amperesOf,
  areaForDrop,
  byArea,
  byGauge,
  circularMilMethod,
  dropInArea,
  findSizes,
  metricMethod,
  reaches,
} from './dc-voltage-drop-sizes.ts';

type Asked = Values<typeof inputs>;

const f = (value: number) => formatNumber(value, 5);

/** Everything in the units of the formula: ft and circular mils, or m and mm²; A, V. */
function work(v: Asked) {
  const method = v.method === 'metric' ? metricMethod(v.run) : circularMilMethod(v.areaBasis, v.run);
  const length = v.length.in(method.lengthUnit) * (v.lengthIs === 'one-way' ? 2 : 1);
  const volts = v.voltage.in('V');
  const share = v.allowedDrop?.in('%') ?? (v.circuit === 'critical' ? 3 : 10);
  const allowed = (share / 100) * volts;
  const each = v.current.in('A') / v.parallel;
  const area = areaForDrop(method.constant, each, length, allowed);
  const found = findSizes(method, v, { area, amperes: each });
  const fitted =
    v.method === 'metric'
      ? v.fittedArea && byArea(v.fittedArea.in('mm2'))
      : v.fitted && byGauge(method, v.fitted);
  const looked = fitted ?? found.needed;
  const drop = looked ? dropInArea(method.constant, each, length, looked.area) : null;
  return { method, length, volts, share, allowed, each, area, ...found, fitted, looked, drop };
}

function judgeFitted(v: Asked, w: ReturnType<typeof work>, fitted: Conductor): Judgement[] {
  const lost = (100 * dropInArea(w.method.constant, w.each, w.length, fitted.area)) / w.volts;
  const within = reaches(w.share, lost);
  const carries = amperesOf(fitted, v);
  const cool = reaches(carries, w.each);
  const judgements: Judgement[] = [
    {
      verdict: within ? 'satisfactory' : v.circuit === 'critical' ? 'unsatisfactory' : 'attention',
      reason: `${fitted.name} loses ${formatNumber(lost, 3)}% of ${f(w.volts)} V; ${f(w.share)}% is allowed${
        within ? '' : `, for which it takes ${w.nameOf(w.forDrop)}`
      }.`,
    },
    {
      verdict: cool ? 'satisfactory' : 'unsatisfactory',
      reason:
        carries === 0
          ? `${fitted.name} is thinner than any conductor the table allows a current.`
          : `${fitted.name} may carry ${f(carries)} A here; the load is ${f(w.each)} A${cool ? '' : ': it can overheat'}.`,
    },
  ];
  if (fitted.area < w.method.least.area) {
    const kind = v.run === 'single' ? 'a separate conductor' : 'a conductor in a sheath';
    const reason = `${fitted.name} is thinner than the least for ${kind}, ${w.method.least.name}.`;
    judgements.push({ verdict: 'unsatisfactory', reason });
  }
  return judgements;
}

function judge(v: Asked, w: ReturnType<typeof work>): Judgement[] {
  if (w.fitted) return judgeFitted(v, w, w.fitted);
  const reason = w.needed
    ? `No conductor was given to judge. The circuit needs ${w.needed.name}.`
    : `The circuit needs more than ${w.largest}: conductors in parallel, a shorter run or a higher voltage.`;
  return [{ verdict: 'indeterminate', reason }];
}

function currentSize(v: Asked, { forCurrent, nameOf }: ReturnType<typeof work>): string {
  if (!forCurrent?.awg) return nameOf(forCurrent);
  const as = forCurrent.awg === forCurrent.name ? '' : ` as ${forCurrent.awg}`;
  const factor = v.engineSpace ? ` × ${engineSpaceFactor(v.insulation)} in an engine space` : '';
  return `${forCurrent.name}, ${tableAmperes(forCurrent.awg, v.insulation)} A at ${v.insulation} °C${as}${factor}`;
}

function writeOut(v: Asked, w: ReturnType<typeof work>): string[] {
  const { letter, constant, lengthUnit, areaUnit } = w.method;
  const areaText = (value: number) => `${f(value)} ${symbolOf(areaUnit)}`;
  return [
    line(
      'Length there and back',
      'L',
      v.lengthIs === 'one-way' ? `2 × ${v.length.text()}` : '',
      `${f(w.length)} ${lengthUnit}`,
    ),
    line('Drop allowed', 'E', `${f(w.share)}% × ${f(w.volts)} V`, `${f(w.allowed)} V`),
    ...(v.parallel > 1
      ? [line('Current in each conductor', 'I', `${v.current.text()} / ${v.parallel}`, `${f(w.each)} A`)]
      : []),
    line(
      'Area needed',
      `${letter} = K · I · L / E`,
      `${constant} × ${f(w.each)} × ${f(w.length)} / ${f(w.allowed)}`,
      areaText(w.area),
    ),
    line(
      'Size for the drop',
      w.forDrop && areaUnit === 'cmil'
        ? `${w.forDrop.name}, ${areaText(w.forDrop.area)}`
        : w.nameOf(w.forDrop),
    ),
    line('Size for the current', currentSize(v, w)),
    line('Least size', w.method.least.name),
    line('Size needed', 'the largest of the three', w.nameOf(w.needed)),
    ...(w.looked && w.drop !== null
      ? [
          line(
            `Drop in ${w.looked.name}`,
            `K · I · L / ${letter}`,
            `${constant} × ${f(w.each)} × ${f(w.length)} / ${f(w.looked.area)}`,
            `${formatNumber(w.drop, 3)} V, ${formatNumber((100 * w.drop) / w.volts, 3)}%`,
          ),
        ]
      : []),
  ];
}

/** Drop in a DC circuit, the conductor it needs, and whether the one fitted will do. */
export const dcVoltageDrop = defineWorksheet({
  kind: 'dc-voltage-drop',
  version: 1,
  title: 'Voltage drop of a DC circuit',
  group: 'electrical',
  system: 'dc-electrical',
  purpose:
    'Finds the conductor a DC circuit needs for its drop, its current and its strength, and judges the one fitted.',
  inputs,
  refuse: (v) => {
    if (v.method === 'metric' && v.fitted) {
      const message = 'AWG size fitted: the metric formula takes the metric size; or choose circular mils.';
      return [{ field: 'fitted', message }];
    }
    if (v.method === 'circular-mils' && v.fittedArea) {
      const message = 'Metric size fitted: circular mils take the AWG size; or choose the metric formula.';
      return [{ field: 'fittedArea', message }];
    }
    return [];
  },
  applicability:
    'Copper conductors of DC systems of 50 V or less. Joints, switches, fuses and warm conductors add to the drop: where it matters, measure it under load.',
  outside: (v) =>
    v.voltage.in('V') > 50
      ? `The 3% and 10% rules and the cable tables are for DC systems of 50 V or less; this is ${v.voltage.text()}.`
      : undefined,
  compute: (v) => {
    const w = work(v);
    const name = w.looked?.name ?? 'the conductor';
    return {
      outputs: {
        allowedDrop: measured('Drop allowed', w.allowed, 'V'),
        areaNeeded: measured(
          'Area needed for the drop',
          w.area,
          w.method.areaUnit,
          w.method.areaUnit === 'cmil' ? { digits: 5, also: 'mm2' } : {},
        ),
        sizeForDrop: said('Size for the drop', w.forDrop?.name ?? null, w.nameOf(w.forDrop)),
        sizeForCurrent: said('Size for the current', w.forCurrent?.name ?? null, w.nameOf(w.forCurrent)),
        leastSize: said('Least size', w.method.least.name),
        sizeNeeded: said('Size needed', w.needed?.name ?? null, w.nameOf(w.needed)),
        drop: measured(`Drop in ${name}`, w.drop, 'V'),
        dropShare: measured(
          `Drop in ${name}, share of the voltage`,
          w.drop === null ? null : (100 * w.drop) / w.volts,
          '%',
        ),
        mayCarry: measured(`Current ${name} may carry here`, w.looked ? amperesOf(w.looked, v) : null, 'A'),
      },
      ...conclude(judge(v, w)),
      working: writeOut(v, w),
    };
  },
  cautions: [
    'A conductor too thin for its current can start a fire. A battery drives thousands of amperes through a slipped spanner: isolate before working.',
    'A calculation does not show bad joints: measure the drop under load, at the equipment.',
    'Changes to wiring are for a competent marine electrician, by the local code.',
  ],
  sources: [
    {
      citation: 'ABYC E-11: CM = K·I·L/E with K = 10.75; 3% and 10%',
      standing: 'secondary',
      note: 'the clause as quoted by others and by cable suppliers',
    },
    {
      citation: 'Circular mils: SAE least areas and true AWG areas',
      standing: 'secondary',
      note: 'from a reprinted boat-wiring table; published selection tables differ by which of the two they use',
    },
    {
      citation: 'ISO 10133: E = 0.0164·I·L/S; at least 1 mm² separate, 0.75 mm² in a sheath (7.7)',
      standing: 'secondary',
      note: '0.0164 gives some 8% less drop than K = 10.75: they are not conversions of each other',
    },
    {
      citation: '33 CFR 183.425(b) to (f) and Table 5 (2015 edition): amperes and least sizes',
      standing: 'printed',
      note: 'United States rule. A metric size is given the amperes of the largest AWG size whose SAE area it reaches (our rule)',
    },
    {
      citation: 'Metric sizes offered: those usually sold',
      standing: 'practice',
      note: 'common practice, no source',
    },
  ],
});
