import type { Unit } from '../core/units.ts';

/** Round solid shafts in torsion: the arithmetic that the propulsion worksheets share. */

/** Yield in torsional shear (psi), modulus of elasticity (Mpsi) and density (lb/in³), as the trade prints them. */
export interface ShaftMaterial {
  words: string;
  yieldPsi: number;
  modulusMpsi: number;
  densityLbIn3: number;
  /** Greatest diameter (in) that the yield figure is printed for. */
  upToIn?: number;
}

/** Trade figures, treated as torsional-shear yield by their sources; the bar's certificate outranks them. */
export const shaftMaterials = {
  'stainless-22': {
    words: 'Boat-shaft stainless, grade 22',
    yieldPsi: 70_000,
    modulusMpsi: 28,
    densityLbIn3: 0.285,
    upToIn: 2,
  },
  'stainless-18': {
    words: 'Boat-shaft stainless, grade 18',
    yieldPsi: 60_000,
    modulusMpsi: 28.8,
    densityLbIn3: 0.281,
  },
  'stainless-17': {
    words: 'Boat-shaft stainless, grade 17',
    yieldPsi: 70_000,
    modulusMpsi: 28.5,
    densityLbIn3: 0.284,
  },
  'nickel-copper-400': {
    words: 'Nickel-copper alloy 400',
    yieldPsi: 40_000,
    modulusMpsi: 26,
    densityLbIn3: 0.319,
  },
  'nickel-copper-k500': {
    words: 'Nickel-copper alloy K500',
    yieldPsi: 67_000,
    modulusMpsi: 26,
    densityLbIn3: 0.306,
  },
  'tobin-bronze': {
    words: 'Naval (Tobin) bronze',
    yieldPsi: 20_000,
    modulusMpsi: 16,
    densityLbIn3: 0.304,
  },
  'stainless-304': {
    words: 'Stainless 304',
    yieldPsi: 20_000,
    modulusMpsi: 28,
    densityLbIn3: 0.286,
  },
} as const satisfies Record<string, ShaftMaterial>;

export type ShaftMaterialKey = keyof typeof shaftMaterials;

/** The materials as choices of a form. */
export const shaftMaterialWords = Object.fromEntries(
  Object.entries(shaftMaterials).map(([key, material]) => [key, material.words]),
) as Record<ShaftMaterialKey, string>;

export const shaftMaterialOf = (key: ShaftMaterialKey): ShaftMaterial => shaftMaterials[key];

/** Torque in N·m of so many kW at so many revolutions a minute: `T = P / ω`. */
export const shaftTorque = (kilowatts: number, rpm: number): number =>
  (kilowatts * 1000) / ((2 * Math.PI * rpm) / 60);

/** Greatest shear stress in MPa of a solid round shaft, torque in N·m, diameter in mm: `τ = 16 T / (π d³)`. */
export const torsionalStress = (torqueNm: number, diameterMm: number): number =>
  (16 * torqueNm * 1000) / (Math.PI * diameterMm ** 3);

/** Diameter in mm at which a torque in N·m gives a shear stress in MPa: `d = ∛(16 T / (π τ))`. */
export const diameterForStress = (torqueNm: number, stressMpa: number): number =>
  Math.cbrt((16 * torqueNm * 1000) / (Math.PI * stressMpa));

/** Share of torsional strength left when the diameter has gone evenly to `ratio` of what it was. */
export const strengthLeft = (ratio: number): number => ratio ** 3;

/** Share of torsional (and bending) stiffness left when the diameter has gone evenly to `ratio` of what it was. */
export const stiffnessLeft = (ratio: number): number => ratio ** 4;

/**
 * Longest span between shaft bearings, ft: `√(3.21 D / N) · (E / ρ)^¼`, D in inches, N in rpm, E in psi, ρ in lb/in³.
 * The form printed with the shaft formula.
 */
export const longestSpan = (diameterIn: number, rpm: number, material: ShaftMaterial): number =>
  Math.sqrt((3.21 * diameterIn) / rpm) * ((material.modulusMpsi * 1e6) / material.densityLbIn3) ** 0.25;

/** Whether a surveyor who measured in this unit thinks in inches. */
export const inInches = (unit: Unit): boolean => unit === 'in' || unit === 'mil' || unit === 'ft';
