/** DNV-RP-B401 counts 8 760 hours to a year. */
export const hoursPerYear = 8760;

/** Share of a coated surface that needs current after so many years: `a + b t`, at most 1. */
export const coatingBreakdown = (start: number, perYear: number, years: number): number =>
  Math.min(1, start + perYear * years);

/** Current a surface needs, A: `A · i · f`. @param area m² @param density A/m² @param share bare, 0 to 1 */
export const currentDemand = (area: number, density: number, share: number): number => area * density * share;

/**
 * Alloy needed, kg: `I · t · 8760 / (u ε)`.
 * @param current mean, A
 * @param years
 * @param utilisation 0 to 1
 * @param capacity A·h/kg
 */
export const alloyNeeded = (current: number, years: number, utilisation: number, capacity: number): number =>
  (current * years * hoursPerYear) / (utilisation * capacity);

/** Years so much usable alloy lasts at a current: the reverse of {@link alloyNeeded}. */
export const yearsOf = (mass: number, current: number, utilisation: number, capacity: number): number =>
  (mass * utilisation * capacity) / (current * hoursPerYear);

export type Alloy = 'zinc' | 'aluminium' | 'magnesium';

/** A·h/kg in sea water. Magnesium: 8.8 lb per ampere and year at half efficiency, MIL-HDBK-1004/10. */
export const usualCapacity: Record<Alloy, number> = {
  zinc: 780,
  aluminium: 2000,
  magnesium: (0.5 * hoursPerYear) / (8.8 * 0.45359237),
};

/** Working potential, mV against sea-water silver chloride; none for magnesium, which has no printed one. */
export const usualPotential: Record<Alloy, number | undefined> = {
  zinc: -1000,
  aluminium: -1050,
  magnesium: undefined,
};
