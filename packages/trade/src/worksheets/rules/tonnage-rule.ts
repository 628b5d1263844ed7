import { settle } from '../core/units.ts';

/** Feet to the nearest tenth, halves up, as the Coast Guard's formula sheet takes dimensions. */
export const tenthOfFoot = (feet: number): number => Math.round(settle(feet * 10)) / 10;

/**
 * The share of L × B × D that a hull's gross tonnage takes, 46 CFR 69.209(a). Three quarters of it for a sailing hull
 * whose depth includes the keel.
 */
export function hullCoefficient(hull: { sailing: boolean; barge: boolean; keelInDepth: boolean }): number {
  if (hull.barge) return 0.84;
  if (!hull.sailing) return 0.67;
  return hull.keelInDepth ? 0.375 : 0.5;
}

/** The share of gross tonnage that is net, 46 CFR 69.209(b). */
export function netShare(vessel: { sailing: boolean; machineryInHull: boolean }): number {
  if (!vessel.machineryInHull) return 1;
  return vessel.sailing ? 0.9 : 0.8;
}
