/** One pendulum or inclinometer reading: the moment shifted, and the tangent of the heel. */
export interface HeelReading {
  /** Which pendulum or inclinometer gave it: each has a zero of its own. */
  instrument: string;
  /** Moment, t·m, to starboard positive. */
  moment: number;
  /** Tangent of the heel. */
  tangent: number;
}

/** The straight line through the readings. */
export interface HeelLine<Reading extends HeelReading> {
  /** Moment for a tangent of one, t·m: displacement times GM. */
  slope: number;
  /** The readings with their tangents counted from upright, so that the line goes through the origin. */
  readings: Reading[];
  /** Standard error of the slope, t·m; null when there are too few readings to tell. */
  slopeError: number | null;
  /** Greatest departure of a reading from the line, in per cent of the greatest moment. */
  departure: number;
}

const meanOf = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;

/**
 * Least squares of moment upon tangent. Through the origin, `Σ(t·m) / Σt²`, when readings are counted from the mark
 * before the first shift; else one slope with an intercept for each instrument, whose zero may be anywhere.
 * @returns undefined when the readings of no instrument differ, so that no line can be drawn
 */
export function fitHeel<Reading extends HeelReading>(
  readings: readonly Reading[],
  throughOrigin: boolean,
): HeelLine<Reading> | undefined {
  const centres = new Map<string, { t: number; m: number }>();
  for (const { instrument } of readings) {
    if (centres.has(instrument)) continue;
    const own = readings.filter((r) => r.instrument === instrument);
    const centre = { t: meanOf(own.map((r) => r.tangent)), m: meanOf(own.map((r) => r.moment)) };
    centres.set(instrument, throughOrigin ? { t: 0, m: 0 } : centre);
  }
  const centre = (r: Reading) => centres.get(r.instrument) ?? { t: 0, m: 0 };
  let squares = 0;
  let products = 0;
  for (const r of readings) {
    const { t, m } = centre(r);
    squares += (r.tangent - t) ** 2;
    products += (r.tangent - t) * (r.moment - m);
  }
  const slope = products / squares;
  if (squares < 1e-12 || slope === 0) return undefined;
  const upright = readings.map((r) => ({ ...r, tangent: r.tangent - centre(r).t + centre(r).m / slope }));
  const off = upright.map((r) => r.moment - slope * r.tangent);
  const free = readings.length - 1 - (throughOrigin ? 0 : centres.size);
  const residual = off.reduce((sum, value) => sum + value * value, 0);
  const greatest = Math.max(...readings.map((r) => Math.abs(r.moment)));
  return {
    slope,
    readings: upright,
    slopeError: free > 0 ? Math.sqrt(residual / free / squares) : null,
    departure: greatest > 0 ? (100 * Math.max(...off.map(Math.abs))) / greatest : 0,
  };
}
