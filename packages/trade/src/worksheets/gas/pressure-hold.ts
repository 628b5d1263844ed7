/** A pressure hold in plain numbers: gauge and air pressures in mbar, temperatures in kelvin. */
export interface Held {
  start: number;
  end: number;
  /** Air pressure at the start and at the end. */
  air: { start: number; end: number };
  /** The smallest change that the gauge shows. */
  resolution: number;
  /** Temperatures of the gas, if both were taken, and the smallest change that the thermometer shows. */
  warmth?: { start: number; end: number; resolution: number };
}

export interface Explained {
  /** Absolute pressure at the start, mbar. */
  absolute: number;
  /** What the gauge would show at the end with no leak, mbar. */
  expected: number;
  /** What is missing from that, mbar; negative for a rise. */
  fall: number;
  /** Change of pressure for one kelvin, mbar/K. */
  perKelvin: number;
  /** The smallest fall that can be told from none, mbar: the gauge's step and the thermometer's together. */
  least: number;
}

/** Taken when no temperature was: 15 °C, for the size of what warming would do. */
const usualTemperature = 288.15;

// Conversions leave noise at the twelfth digit; a step of the gauge must still be met by the same step.
const steady = (mbar: number) => Math.round(mbar * 1e6) / 1e6;

/**
 * What of a pressure hold the gas law explains: at constant volume p₂ = p₁ T₂/T₁, all absolute
 * (40 CFR 1065.644 uses the same relation). Without temperatures they are taken as unchanged.
 */
export function explainHold({ start, end, air, resolution, warmth }: Held): Explained {
  const absolute = start + air.start;
  const expected = absolute * (warmth ? warmth.end / warmth.start : 1) - air.end;
  const perKelvin = absolute / (warmth?.start ?? usualTemperature);
  const least = steady(resolution + (warmth ? perKelvin * warmth.resolution : 0));
  return { absolute, expected, fall: steady(expected - end), perKelvin, least };
}

/**
 * Gas lost in a minute, mL at the start's temperature and air pressure: `V (p₁ − p₂ T₁/T₂) / (t pₐ)`, absolute.
 * Negative for a rise.
 * @param volume mL shut in
 * @param minutes time held
 */
export function leakRate(held: Held, volume: number, minutes: number): number {
  const ratio = held.warmth ? held.warmth.start / held.warmth.end : 1;
  const lost = held.start + held.air.start - (held.end + held.air.end) * ratio;
  return (volume * lost) / (minutes * held.air.start);
}
