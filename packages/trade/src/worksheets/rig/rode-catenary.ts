/** A rode between anchor and bow: metres, newtons. */
export interface Rode {
  /** Chain next to the anchor, m. */
  chain: number;
  /** Its weight in water, N/m. */
  weight: number;
  /** Rope above it, m; taken as weightless in water. */
  rope: number;
  /** From the seabed to the bow roller, m. */
  height: number;
  /** Horizontal pull, N. */
  pull: number;
}

/** How it lies. */
export interface Lie {
  /** Chain that stays on the seabed, m. */
  grounded: number;
  /** Vertical pull at the anchor, N. */
  lift: number;
  /** Angle of the pull at the anchor above the seabed, degrees. */
  angle: number;
  /** Tension at the bow, N. */
  bowTension: number;
  /** Horizontal distance from anchor to bow, m. */
  reach: number;
}

/** Steel under sea water weighs so much of what it weighs in air: 1 − 1.025/7.85. */
export const submergedShare = 0.87;
/** Standard gravity, m/s². */
export const gravity = 9.80665;

/** Weight of chain in water, N/m, from its mass in air, kg/m. */
export const weightInWater = (mass: number): number => mass * gravity * submergedShare;

/**
 * Chain that just lies flat at the anchor: `L = √(h (h + 2F/w))`, m.
 * @param height seabed to bow roller, m
 * @param pull horizontal, N
 * @param weight in water, N/m
 */
export const tangentLength = (height: number, pull: number, weight: number): number =>
  Math.sqrt(height * (height + (2 * pull) / weight));

/** Horizontal pull in N that such a length of chain (m) just holds flat: `F = w (L² − h²) / 2h`. */
export const tangentPull = (height: number, length: number, weight: number): number =>
  (weight * (length * length - height * height)) / (2 * height);

/** Height gained by lifted chain and the rope above it when the vertical pull at its foot is `lift`, m. */
function rise(rode: Rode, lifted: number, lift: number): number {
  const { pull, weight, rope } = rode;
  const top = lift + weight * lifted;
  const curve = weight > 0 ? (Math.hypot(pull, top) - Math.hypot(pull, lift)) / weight : 0;
  return curve + (rope * top) / Math.hypot(pull, top);
}

/** The value in `[low, high]` where a rising function meets `wanted`; 80 halvings. */
function solve(rising: (x: number) => number, wanted: number, low: number, high: number): number {
  let a = low;
  let b = high;
  for (let step = 0; step < 80; step++) {
    const middle = (a + b) / 2;
    if (rising(middle) < wanted) a = middle;
    else b = middle;
  }
  return (a + b) / 2;
}

/**
 * How a rode of chain and rope lies under a steady pull: a catenary of chain, a straight line of rope. The rode must
 * be longer than the height.
 * @throws when it is not
 */
export function lieOf(rode: Rode): Lie {
  const { chain, rope, height, pull } = rode;
  const weight = chain > 0 ? rode.weight : 0;
  if (chain + rope <= height) throw new Error('a rode must be longer than the height it spans');
  const flat = weight > 0 && rise(rode, chain, 0) >= height;
  const lifted = flat ? solve((s) => rise(rode, s, 0), height, 0, chain) : chain;
  let lift = 0;
  if (!flat) {
    let high = pull;
    while (rise({ ...rode, weight }, chain, high) < height && high < 1e12) high *= 2;
    lift = solve((x) => rise({ ...rode, weight }, chain, x), height, 0, high);
  }
  const top = lift + weight * lifted;
  const across = weight > 0 ? (pull / weight) * (Math.asinh(top / pull) - Math.asinh(lift / pull)) : 0;
  return {
    grounded: chain - lifted,
    lift,
    angle: (Math.atan2(lift, pull) * 180) / Math.PI,
    bowTension: Math.hypot(pull, top),
    reach: chain - lifted + across + (rope * pull) / Math.hypot(pull, top),
  };
}

/** Points of the rode from the anchor to the bow, m, for drawing to scale. */
export function shapeOf(rode: Rode, lie: Lie): Array<[x: number, y: number]> {
  const weight = rode.chain > 0 ? rode.weight : 0;
  const points: Array<[number, number]> = [[0, 0]];
  if (lie.grounded > 0) points.push([lie.grounded, 0]);
  const lifted = rode.chain - lie.grounded;
  const steps = 40;
  for (let i = 1; i <= steps && weight > 0; i++) {
    const vertical = lie.lift + (weight * lifted * i) / steps;
    const x = (rode.pull / weight) * (Math.asinh(vertical / rode.pull) - Math.asinh(lie.lift / rode.pull));
    const y = (Math.hypot(rode.pull, vertical) - Math.hypot(rode.pull, lie.lift)) / weight;
    points.push([lie.grounded + x, y]);
  }
  if (rode.rope > 0) points.push([lie.reach, rode.height]);
  return points;
}
