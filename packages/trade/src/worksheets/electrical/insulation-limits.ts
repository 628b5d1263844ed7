/** What a tester must apply and the insulation must show. V DC and MΩ. */
export interface InsulationLimit {
  /** Least and greatest test voltage, V DC. */
  test: readonly [number, number];
  /** Least insulation resistance, MΩ. */
  least: number;
}

/** BS 7671, table 64: 250 V and 0.5 MΩ up to 50 V, 500 V and 1 MΩ up to 500 V, 1 000 V and 1 MΩ above. */
export function wiringLimit(ratedVolts: number): InsulationLimit {
  if (ratedVolts <= 50) return { test: [250, 250], least: 0.5 };
  return ratedVolts <= 500 ? { test: [500, 500], least: 1 } : { test: [1000, 1000], least: 1 };
}

export type Winding = 'random' | 'form' | 'older';

/** IEEE 43: test voltages by rated voltage, least resistance at 40 °C after 1 minute by construction. */
export function machineLimit(ratedVolts: number, winding: Winding): InsulationLimit {
  return { test: machineTest(ratedVolts), least: machineLeast(ratedVolts, winding) };
}

function machineTest(ratedVolts: number): readonly [number, number] {
  if (ratedVolts < 1000) return [500, 500];
  if (ratedVolts <= 2500) return [500, 1000];
  if (ratedVolts <= 5000) return [1000, 2500];
  return ratedVolts <= 12_000 ? [2500, 5000] : [5000, 10_000];
}

function machineLeast(ratedVolts: number, winding: Winding): number {
  if (winding === 'older') return ratedVolts / 1000 + 1;
  return winding === 'form' ? 100 : 5;
}

/**
 * Resistance at 40 °C from a reading at another temperature: it halves for every 10 °C warmer.
 * `R₄₀ = R · 0.5^((40 − T)/10)`, IEEE 43.
 * @param resistance as read; any unit, the same comes back
 * @param temperature of the winding, °C
 */
export const at40 = (resistance: number, temperature: number): number =>
  resistance * 0.5 ** ((40 - temperature) / 10);

export type InsulationClass = 'A' | 'B' | 'F' | 'H';

/** Least ratio of the 10-minute to the 1-minute reading. IEEE 43-2000. */
export const leastPolarisationIndex = (insulationClass: InsulationClass): number =>
  insulationClass === 'A' ? 1.5 : 2;
