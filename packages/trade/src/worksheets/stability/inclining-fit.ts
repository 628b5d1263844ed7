/** One pendulum or inclinometer reading: the moment shifted, and the tangent of the heel. */
export interface HeelReading {
  /** Moment, t·m, to starboard positive. */
  moment: number;
  /** Tangent of the heel. */
  tangent: number;
}

/** The straight line through the readings. */
export interface HeelLine {
  /** Moment for a tangent of one, t·m: displacement times GM. */
  slope: number;
  /** Moment at no heel, t·m; zero for a line through the origin. */
  intercept: number;
  /** Standard error of the slope, t·m; null when there are too few readings to tell. */
  slopeError: number | null;
  /** Greatest departure of a reading from the line, in per cent of the greatest moment. */
  departure: number;
}

/**
 * Least squares of moment upon tangent. Through the origin, `Σ(t·m) / Σt²`, when readings are counted from the mark
 * before the first shift; else with a free intercept.
 * @returns undefined when the tangents don't differ, so that no line can be drawn
 */
export function fitHeel(readings: readonly HeelReading[], throughOrigin: boolean): HeelLine | undefined {
  const n = readings.length;
  const mean = (pick: (r: HeelReading) => number) =>
    throughOrigin ? 0 : readings.reduce((sum, r) => sum + pick(r), 0) / n;
  const t0 = mean((r) => r.tangent);
  const m0 = mean((r) => r.moment);
  let squares = 0;
  let products = 0;
  for (const { moment, tangent } of readings) {
    squares += (tangent - t0) ** 2;
    products += (tangent - t0) * (moment - m0);
  }
  if (squares < 1e-12) return undefined;
  const slope = products / squares;
  const intercept = m0 - slope * t0;
  const off = readings.map((r) => r.moment - intercept - slope * r.tangent);
  const free = n - (throughOrigin ? 1 : 2);
  const residual = off.reduce((sum, value) => sum + value * value, 0);
  const greatest = Math.max(...readings.map((r) => Math.abs(r.moment)));
  return {
    slope,
    intercept,
    slopeError: free > 0 ? Math.sqrt(residual / free / squares) : null,
    departure: greatest > 0 ? (100 * Math.max(...off.map(Math.abs))) / greatest : 0,
  };
}
