import { formatNumber, line } from '../core/working.ts';
import type { Asked } from './anode-inputs.ts';
import { countedRadius, standOffFactor } from './anode-resistance.ts';
import { measuresOf, type Worked } from './anode-work.ts';

const f = (value: number) => formatNumber(value, 4);

function writeWear({ wear, capacity, fitted }: Worked): string[] {
  if (!wear?.months) return [];
  return [
    line(
      'Mean current given',
      'wasted · m · ε / t',
      `${f(wear.wasted)}% × ${f(fitted)} kg × ${f(capacity)} A·h/kg / ${f(wear.months * 730.5)} h`,
      `${f(wear.current ?? 0)} mA`,
    ),
    ...(wear.timeLeft === null
      ? []
      : [
          line(
            'Time until due',
            't · (limit − wasted) / wasted',
            `${f(wear.months)} × (${f(wear.renewAt)} − ${f(wear.wasted)}) / ${f(wear.wasted)}`,
            `${f(wear.timeLeft)} months`,
          ),
        ]),
  ];
}

function writeDemand(v: Asked, { demand, need, years, utilisation, capacity }: Worked): string[] {
  if (!demand || !need) return [];
  return [
    ...(v.area
      ? [
          line(
            'Share bare, mean',
            'a + b · t/2',
            `${v.bareStart} + ${v.barePerYear} × ${f(years)}/2, at most 1`,
          ),
          line(
            'Current needed, mean',
            'A · i · f',
            `${f(v.area.in('m2'))} m² × ${f(v.meanDensity?.in('A/m2') ?? 0)} A/m² × share`,
            `${f(demand.mean)} A`,
          ),
        ]
      : [line('Current needed', `${f(demand.mean)} A`)]),
    line(
      'Alloy needed',
      'I · t · 8760 / (u · ε)',
      `${f(demand.mean)} × ${f(years)} × 8760 / (${utilisation} × ${f(capacity)})`,
      `${f(need.mass)} kg`,
    ),
  ];
}

const formulas = {
  'long-slender': 'ρ/(2πL) · (ln(4L/r) − 1)',
  'short-slender': 'ρ/(2πL) · (ln(2L/r · (1 + √(1 + (r/2L)²))) + r/2L − √(1 + (r/2L)²))',
  'long-flush': 'ρ/(2S), S = (L + width)/2',
  other: '0.315 · ρ/√A',
} as const;

function writeOutput(v: Asked, { output }: Worked): string[] {
  if (!output || output.resistance === null) return [];
  const m = measuresOf(v);
  const put =
    output.shape === 'other'
      ? `A ${f(m.area ?? 0)} m²`
      : output.shape === 'long-flush'
        ? `L ${f(m.length ?? 0)}, width ${f(m.width ?? 0)} m`
        : `L ${f(m.length ?? 0)}, r ${f(countedRadius(m))} m`;
  const factor = output.shape.endsWith('slender') ? standOffFactor(m.standOff ?? 0) : 1;
  return [
    line(
      'Resistance of one anode',
      `${formulas[output.shape]}${factor === 1 ? '' : ` · ${factor} for its distance`}`,
      `ρ ${f(output.resistivity)} Ω·m, ${put}`,
      `${f(output.resistance)} Ω`,
    ),
    ...(output.driving === null || output.current === null
      ? []
      : [
          line(
            'Its current',
            'ΔE / R',
            `${f(output.driving)} V / ${f(output.resistance)} Ω`,
            `${f(output.current)} A`,
          ),
        ]),
    ...(output.resistanceAtEnd === null
      ? []
      : [
          line(
            'At its end, a tenth shorter and worn to its core',
            `${f(output.resistanceAtEnd)} Ω${output.currentAtEnd === null ? '' : `, ${f(output.currentAtEnd)} A`}`,
          ),
        ]),
  ];
}

/** The working on paper: wear, demand, resistance and number. */
export function writeAnodes(v: Asked, w: Worked): string[] {
  return [
    ...writeWear(w),
    ...writeDemand(v, w),
    ...writeOutput(v, w),
    ...(w.numbers ? [line('Anodes needed', `${w.numbers.most}, by ${w.numbers.governs}`)] : []),
  ];
}
