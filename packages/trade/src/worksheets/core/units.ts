// The library in one file: as a thousand of them it was a third of what each process loads to start.
import math from 'mathjs/lib/browser/math.js';

/**
 * Every unit a worksheet takes or gives, by the key that travels in JSON: how it is printed, and how many of what
 * the units library knows. Definitions: NIST SP 811,
 * appendix B.8; knot and nautical mile, BIPM SI brochure, table 8; circular mil, area of a circle 0.001 in across.
 */
const table = {
  // share and number
  one: ['', ''],
  '%': ['%', '', 0.01],
  ppm: ['ppm', '', 1e-6],
  // length
  m: ['m', 'm'],
  mm: ['mm', 'mm'],
  cm: ['cm', 'cm'],
  um: ['µm', 'um'],
  km: ['km', 'km'],
  in: ['in', 'inch'],
  ft: ['ft', 'ft'],
  mil: ['mil', 'mil'],
  nmi: ['nmi', 'm', 1852],
  // area
  m2: ['m²', 'm^2'],
  cm2: ['cm²', 'cm^2'],
  mm2: ['mm²', 'mm^2'],
  in2: ['in²', 'inch^2'],
  ft2: ['ft²', 'ft^2'],
  cmil: ['circular mils', 'mil^2', Math.PI / 4],
  // volume
  m3: ['m³', 'm^3'],
  L: ['L', 'l'],
  mL: ['mL', 'ml'],
  in3: ['in³', 'inch^3'],
  ft3: ['ft³', 'ft^3'],
  usgal: ['US gal', 'inch^3', 231],
  // time
  s: ['s', 's'],
  min: ['min', 'minute'],
  h: ['h', 'hour'],
  day: ['days', 'day'],
  month: ['months', 's', 2629800],
  year: ['years', 's', 31557600],
  // speed and rotation
  'm/s': ['m/s', 'm/s'],
  kn: ['kn', 'm/hour', 1852],
  'km/h': ['km/h', 'km/hour'],
  mph: ['mph', 'mi/hour'],
  rpm: ['rpm', '1/minute'],
  Hz: ['Hz', '1/s'],
  // flow
  'm3/h': ['m³/h', 'm^3/hour'],
  'L/min': ['L/min', 'l/minute'],
  'L/h': ['L/h', 'l/hour'],
  'L/s': ['L/s', 'l/s'],
  'mL/min': ['mL/min', 'ml/minute'],
  cfm: ['ft³/min', 'ft^3/minute'],
  usgpm: ['US gal/min', 'inch^3/minute', 231],
  usgph: ['US gal/h', 'inch^3/hour', 231],
  // mass and what hangs on it
  kg: ['kg', 'kg'],
  g: ['g', 'g'],
  t: ['t', 'tonne'],
  lb: ['lb', 'lbm'],
  oz: ['oz', 'oz'],
  ston: ['short tons', 'lbm', 2000],
  lton: ['long tons', 'lbm', 2240],
  'kg/m': ['kg/m', 'kg/m'],
  'lb/ft': ['lb/ft', 'lbm/ft'],
  'kg/m3': ['kg/m³', 'kg/m^3'],
  'lb/ft3': ['lb/ft³', 'lbm/ft^3'],
  // force and moment
  N: ['N', 'N'],
  daN: ['daN', 'N', 10],
  kN: ['kN', 'kN'],
  kgf: ['kgf', 'N', 9.80665],
  tf: ['tf', 'N', 9806.65],
  lbf: ['lbf', 'lbf'],
  'N/m': ['N/m', 'N/m'],
  'N m': ['N·m', 'N m'],
  'kN m': ['kN·m', 'N m', 1000],
  'lbf in': ['lbf·in', 'lbf inch'],
  'lbf ft': ['lbf·ft', 'lbf ft'],
  // pressure and stress
  Pa: ['Pa', 'Pa'],
  hPa: ['hPa', 'Pa', 100],
  kPa: ['kPa', 'kPa'],
  MPa: ['MPa', 'MPa'],
  GPa: ['GPa', 'GPa'],
  mbar: ['mbar', 'Pa', 100],
  bar: ['bar', 'bar'],
  psi: ['psi', 'lbf/inch^2'],
  'kgf/cm2': ['kgf/cm²', 'Pa', 98066.5],
  ksi: ['ksi', 'lbf/inch^2', 1000],
  Mpsi: ['Mpsi', 'lbf/inch^2', 1e6],
  mmH2O: ['mm water', 'Pa', 9.80665],
  inH2O: ['in water', 'Pa', 249.08891],
  mmHg: ['mm Hg', 'Pa', 133.3224],
  inHg: ['in Hg', 'Pa', 3386.389],
  // temperature, absolute readings; kelvin also for differences
  degC: ['°C', 'degC'],
  degF: ['°F', 'degF'],
  K: ['K', 'K'],
  // angle
  deg: ['°', 'deg'],
  rad: ['rad', 'rad'],
  // power
  kW: ['kW', 'kW'],
  W: ['W', 'W'],
  hp: ['hp', 'ft lbf/s', 550],
  PS: ['PS', 'W', 735.49875],
  // electrical
  V: ['V', 'V'],
  mV: ['mV', 'mV'],
  kV: ['kV', 'kV'],
  A: ['A', 'A'],
  mA: ['mA', 'mA'],
  uA: ['µA', 'uA'],
  Ah: ['A·h', 'A hour'],
  ohm: ['Ω', 'ohm'],
  mohm: ['mΩ', 'ohm', 0.001],
  kohm: ['kΩ', 'kohm'],
  Mohm: ['MΩ', 'ohm', 1e6],
  Gohm: ['GΩ', 'ohm', 1e9],
  'ohm m': ['Ω·m', 'ohm m'],
  'ohm cm': ['Ω·cm', 'ohm cm'],
  'A/m2': ['A/m²', 'A/m^2'],
  'mA/m2': ['mA/m²', 'mA/m^2'],
  'mA/ft2': ['mA/ft²', 'mA/ft^2'],
  'Ah/kg': ['A·h/kg', 'A hour/kg'],
  'mA/Ah': ['mA/A·h', 'A/(A hour)', 0.001],
  'mm/year': ['mm/year', 'mm/s', 1 / 31_557_600],
  // light
  cd: ['cd', 'cd'],
} as const satisfies Record<string, readonly [symbol: string, libraryName: string, factor?: number]>;

export type Unit = keyof typeof table;
export const units = Object.keys(table) as Unit[];

/** How a unit is printed. */
export const symbolOf = (unit: Unit): string => table[unit][0];

/** A factor and an offset: `value * scale + shift` is the value in SI base units. */
interface Linear {
  scale: number;
  shift: number;
  dimension: string;
}

const known = new Map<Unit, Linear>();

// The library parses a unit once; afterwards a conversion is a multiplication.
function linear(unit: Unit): Linear {
  const kept = known.get(unit);
  if (kept) return kept;
  const [, libraryName, factor = 1]: readonly [string, string, number?] = table[unit];
  const made =
    libraryName === '' ? { scale: factor, shift: 0, dimension: '' } : fromLibrary(libraryName, factor);
  known.set(unit, made);
  return made;
}

function fromLibrary(libraryName: string, factor: number): Linear {
  const si = math.unit(factor, libraryName).toSI();
  const dimension = si.formatUnits();
  const at = (value: number) => Number(math.unit(value, libraryName).toNumeric(dimension));
  const shift = at(0);
  return { scale: at(factor) - shift, shift, dimension };
}

/** Binary noise of a conversion is removed, so that a limit met exactly in one unit is met in another; no minus zero. */
export const settle = (value: number): number =>
  Number.isFinite(value) ? Number(value.toPrecision(12)) + 0 : value;

/** Whether a value is below a limit by more than two conversions there and back leave as noise. */
export const isBelow = (value: number, limit: number): boolean => value < limit - 1e-9 * Math.abs(limit);

/** Whether two units measure the same thing. */
export const comparable = (a: Unit, b: Unit): boolean => linear(a).dimension === linear(b).dimension;

/**
 * A value in another unit, to 12 significant digits; unchanged when the unit is the same.
 * @throws when the two units measure different things: a mistake in the worksheet, not in its inputs.
 */
export function convert(value: number, from: Unit, to: Unit): number {
  if (from === to) return value;
  const a = linear(from);
  const b = linear(to);
  if (a.dimension !== b.dimension) throw new Error(`${from} can't be converted to ${to}`);
  return settle((settle(value * a.scale + a.shift) - b.shift) / b.scale);
}
