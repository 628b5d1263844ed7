/** DNV-RP-B401, table 10-7: resistance of an anode to the water. Lengths in m, resistivity in Ω·m, resistance in Ω. */

/** Long slender anode standing off the hull, L ≥ 4r: `ρ/(2πL) · (ln(4L/r) − 1)`. */
export const longSlender = (resistivity: number, length: number, radius: number): number =>
  (resistivity / (2 * Math.PI * length)) * (Math.log((4 * length) / radius) - 1);

/** Short slender anode standing off, L < 4r: `ρ/(2πL) · (ln(2L/r · (1 + √(1 + (r/2L)²))) + r/2L − √(1 + (r/2L)²))`. */
export function shortSlender(resistivity: number, length: number, radius: number): number {
  const q = radius / (2 * length);
  const root = Math.sqrt(1 + q * q);
  return (resistivity / (2 * Math.PI * length)) * (Math.log(((2 * length) / radius) * (1 + root)) + q - root);
}

/** Long anode flush on the hull, L ≥ 4 widths and 4 thicknesses: `ρ/(2S)` with `S = (L + width)/2`. */
export const longFlush = (resistivity: number, length: number, width: number): number =>
  resistivity / (length + width);

/** Short flush, bracelet and other anodes: `0.315 ρ/√A`. @param area exposed to the water, m² */
export const anyShape = (resistivity: number, area: number): number =>
  (0.315 * resistivity) / Math.sqrt(area);

/**
 * Factor for how far a slender anode stands off: 1 from 0.30 m, 1.3 from 0.15 m; below, the formula does not hold.
 * @param distance m
 */
export function standOffFactor(distance: number): number | null {
  if (distance >= 0.3) return 1;
  return distance >= 0.15 ? 1.3 : null;
}

export type AnodeShape = 'long-slender' | 'short-slender' | 'long-flush' | 'other';

/** What of the alloy can be used before the anode falls apart or gives too little. */
export const usualUtilisation: Record<AnodeShape, number> = {
  'long-slender': 0.9,
  'short-slender': 0.85,
  'long-flush': 0.85,
  other: 0.8,
};

/** An anode's measures in m and m²; a rectangular section has a width and a depth, a round one a radius. */
export interface Measures {
  length?: number;
  radius?: number;
  width?: number;
  depth?: number;
  area?: number;
  /** Across the core: a pipe's diameter, a strap's width. */
  core?: number;
  standOff?: number;
}

/** Radius a section counts as: its own, or its periphery over 2π. */
export const countedRadius = ({ radius, width = 0, depth = 0 }: Measures): number =>
  radius ?? (width + depth) / Math.PI;

const slender = (resistivity: number, length: number, radius: number) =>
  (length >= 4 * radius ? longSlender : shortSlender)(resistivity, length, radius);

/** Resistance when new, Ω; null where the formula does not hold. */
export function resistanceNew(shape: AnodeShape, m: Measures, resistivity: number): number | null {
  const length = m.length ?? 0;
  switch (shape) {
    case 'long-slender':
    case 'short-slender': {
      const factor = standOffFactor(m.standOff ?? 0);
      return factor === null ? null : factor * slender(resistivity, length, countedRadius(m));
    }
    case 'long-flush':
      return longFlush(resistivity, length, m.width ?? 0);
    default:
      return anyShape(resistivity, m.area ?? 0);
  }
}

/** Radius left on a slender anode used up to its utilisation, a tenth shorter, with its core: m. */
export function radiusAtEnd(m: Measures, utilisation: number): number {
  const section = m.radius === undefined ? (m.width ?? 0) * (m.depth ?? 0) : Math.PI * m.radius ** 2;
  const core = (Math.PI / 4) * (m.core ?? 0) ** 2;
  return Math.sqrt((((section - core) * (1 - utilisation)) / 0.9 + core) / Math.PI);
}

/** Resistance at the end of its life, Ω; null where it can't be told: the core not given, or another shape. */
export function resistanceAtEnd(
  shape: AnodeShape,
  m: Measures,
  resistivity: number,
  utilisation: number,
): number | null {
  if (m.core === undefined || m.length === undefined) return null;
  const length = 0.9 * m.length;
  if (shape === 'long-flush') return m.core > 0 ? longFlush(resistivity, length, m.core) : null;
  const factor = shape === 'other' ? null : standOffFactor(m.standOff ?? 0);
  return factor === null ? null : factor * slender(resistivity, length, radiusAtEnd(m, utilisation));
}
