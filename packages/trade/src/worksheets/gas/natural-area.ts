/** A supply or exhaust opening of a compartment, in square inches. */
export interface Aperture {
  use: 'supply' | 'exhaust';
  area: number;
  /** Free area of the end fitting of a flexible duct. */
  fitting?: number;
}

/** Each opening must be larger than this, in²: 33 CFR 183.630(e). */
export const leastEach = 3;

/**
 * 33 CFR 183.630(d): least area of the supply openings together, and of the exhaust openings together, in².
 * Not below zero, where the formula goes for volumes under 5 ft³.
 * @param volume net volume, ft³
 */
export const naturalArea = (volume: number): number => Math.max(0, 5 * Math.log(volume / 5));

/** What of an opening counts, in²: an end fitting may have 80 % of the area its duct must have (183.630(f)). */
export const effectiveArea = ({ area, fitting }: Aperture): number =>
  fitting === undefined ? area : Math.min(area, fitting / 0.8);

/** The openings of one side together, in², and how many of them are no larger than 3 in². */
export function tally(apertures: readonly Aperture[]): { total: number; tooSmall: number } {
  const areas = apertures.map(effectiveArea);
  return {
    // Conversion noise must not fail an area met exactly.
    total: Number(areas.reduce((sum, area) => sum + area, 0).toPrecision(12)),
    tooSmall: areas.filter((area) => Number(area.toPrecision(12)) <= leastEach).length,
  };
}
