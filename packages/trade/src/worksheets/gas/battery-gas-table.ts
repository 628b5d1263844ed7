/**
 * Current that makes gas while charging, mA for each A·h of capacity, by kind of cell and charge: the usual values of
 * EN 50272-2 and EN IEC 62485-2, up to 40 °C, their safety factor of 5 included. Lead capacity at the ten-hour rate,
 * nickel-cadmium at the five-hour rate.
 */
export const gasCurrents = {
  'vented-lead': { float: 5, boost: 20 },
  'valve-regulated-lead': { float: 1, boost: 8 },
  'vented-nickel-cadmium': { float: 5, boost: 50 },
} as const;

export type GassingBattery = keyof typeof gasCurrents;

/** Hydrogen from one cell and ampere-hour of gas current, m³ at 0 °C. */
export const hydrogenPerAh = 0.42e-3;

/** v · q · s = 24 × 0.42×10⁻³ × 5, as the standard rounds it, m³/(A·h). */
export const airPerAh = 0.05;

/**
 * Air needed, m³/h, so that hydrogen stays below 4 % with the standard's margins: `Q = 0.05 n I C / 1000`.
 * @param cells in series
 * @param gasCurrent mA/(A·h)
 * @param capacity A·h of all strings in parallel
 */
export const airNeeded = (cells: number, gasCurrent: number, capacity: number): number =>
  (airPerAh * cells * gasCurrent * capacity) / 1000;

/** Free area of the inlet, and again of the outlet, cm², for natural ventilation at 0.1 m/s: `A = 28 Q`. */
export const openingNeeded = (airflow: number): number => 28 * airflow;
