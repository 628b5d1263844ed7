import { formatNumber } from '../core/working.ts';
import {
  type AreaBasis,
  type Awg,
  type Conductor,
  engineSpaceFactor,
  gauges,
  type InsulationRating,
  metricSizes,
  tableAmperes,
} from './conductor-table.ts';

/** Area needed: `K I L / E`. Circular mils with K = 10.75 and feet, mm² with 0.0164 and metres; A, V. */
export const areaForDrop = (constant: number, amperes: number, length: number, volts: number): number =>
  (constant * amperes * length) / volts;

/** Volts lost: `K I L / area`. Units as in {@link areaForDrop}. */
export const dropInArea = (constant: number, amperes: number, length: number, area: number): number =>
  (constant * amperes * length) / area;

/** A formula with its sizes. */
export interface Method {
  sizes: readonly Conductor[];
  /** Ohm · circular mil / ft, or ohm · mm² / m. */
  constant: number;
  /** The letter of the area on paper. */
  letter: 'CM' | 'S';
  lengthUnit: 'ft' | 'm';
  areaUnit: 'cmil' | 'mm2';
  /** The thinnest conductor allowed whatever the current. */
  least: Conductor;
}

type Run = 'single' | 'sheath';

/** AWG sizes: `CM = K I L / E` with K = 10.75, feet. Least sizes of 33 CFR 183.425(d) and (e). */
export function circularMilMethod(basis: AreaBasis, run: Run): Method {
  const sizes = gauges(basis);
  const least = sizes.find((size) => size.awg === (run === 'single' ? '16 AWG' : '18 AWG')) as Conductor;
  return { sizes, constant: 10.75, letter: 'CM', lengthUnit: 'ft', areaUnit: 'cmil', least };
}

/** Metric sizes: `S = 0.0164 I L / E`, metres. Least sizes of ISO 10133, clause 7.7. */
export function metricMethod(run: Run): Method {
  const least = metricSizes.find((size) => size.area === (run === 'single' ? 1 : 0.75)) as Conductor;
  return { sizes: metricSizes, constant: 0.0164, letter: 'S', lengthUnit: 'm', areaUnit: 'mm2', least };
}

/** The conductor of a gauge, if the method has it. */
export const byGauge = (method: Method, awg: Awg): Conductor | undefined =>
  method.sizes.find((size) => size.awg === awg);

/** A conductor of any metric area in mm², with the gauge whose amperes it may carry. */
export function byArea(area: number): Conductor {
  const awg = metricSizes.filter((size) => size.area <= area * (1 + 1e-9)).at(-1)?.awg;
  return { name: `${formatNumber(area)} mm²`, area, ...(awg ? { awg } : {}) };
}

export interface Place {
  insulation: InsulationRating;
  engineSpace: boolean;
}

/** Amperes a conductor may carry; 0 when it is thinner than the table begins. 33 CFR 183.425(b), (c). */
export function amperesOf(conductor: Conductor, { insulation, engineSpace }: Place): number {
  if (!conductor.awg) return 0;
  return tableAmperes(conductor.awg, insulation) * (engineSpace ? engineSpaceFactor(insulation) : 1);
}

/** At least as much, with binary noise ignored: a need that is met exactly is met. */
export const reaches = (value: number, need: number): boolean => value >= need * (1 - 1e-12);

/** Sizes for the drop, for the current and for both and strength; undefined where none is thick enough. */
export function findSizes(method: Method, place: Place, need: { area: number; amperes: number }) {
  const forDrop = method.sizes.find((size) => reaches(size.area, need.area));
  const forCurrent = method.sizes.find((size) => reaches(amperesOf(size, place), need.amperes));
  const needed =
    forDrop && forCurrent
      ? [forDrop, forCurrent, method.least].reduce((a, b) => (b.area > a.area ? b : a))
      : undefined;
  const largest = (method.sizes.at(-1) as Conductor).name;
  const nameOf = (size: Conductor | undefined) => size?.name ?? `larger than ${largest}`;
  return { forDrop, forCurrent, needed, largest, nameOf };
}
