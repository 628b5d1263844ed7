/** Standard gravity, m/s². */
const gravity = 9.80665;

/** Discharge coefficients that bound a real opening: sharp edge, and smooth without loss. */
export const sharpEdge = 0.6;
export const noLoss = 1;

/** Water through an opening, m³/s: `Cd A √(2 g h)`. Area in m², depth of its middle below the waterline in m. */
export const inflow = (area: number, depth: number, coefficient: number): number =>
  coefficient * area * Math.sqrt(2 * gravity * depth);

/** Round opening that lets in so much, m; the inverse of {@link inflow}. Flow in m³/s, depth in m. */
export const openingFor = (flow: number, depth: number, coefficient: number): number =>
  Math.sqrt((4 * flow) / (Math.PI * coefficient * Math.sqrt(2 * gravity * depth)));

/** Area of a round opening, m², from its diameter in m. */
export const roundArea = (diameter: number): number => (Math.PI * diameter * diameter) / 4;

/** What is left of a flow for each loss, as a factor. */
export const losses = {
  /** Rated at 13.6 V and fed by a battery. */
  voltage: 0.8,
  /** Each right-angle bend. */
  bend: 0.9,
  /** The middle of 10 to 20 per cent. */
  checkValve: 0.85,
  /** Hose corrugated inside; up to 30 per cent. */
  corrugated: 0.7,
} as const;

export interface PumpLosses {
  onBattery: boolean;
  bends: number;
  checkValve: boolean;
  corrugated: boolean;
}

/** What is left of a maker's flow at the pump's lift, as a factor: losses multiply. */
export const leftOf = ({ onBattery, bends, checkValve, corrugated }: PumpLosses): number =>
  (onBattery ? losses.voltage : 1) *
  losses.bend ** bends *
  (checkValve ? losses.checkValve : 1) *
  (corrugated ? losses.corrugated : 1);
