import type { Mark } from './photos.ts';

/** Colours of marks, as burned into pictures and as drawn over them. */
export const markColours = {
  signal: '#f26a1b',
  ink: '#14233a',
  halo: '#ffffff',
  // White type stays readable on it.
  signalPlate: '#c24400',
} as const;

interface Size {
  width: number;
  height: number;
}
type Lined = Extract<Mark, { shape: 'arrow' | 'line' | 'box' | 'ring' }>;

/** How wide marks are drawn, in pixels of a picture of this size. */
export function markStroke({ width, height }: Size): number {
  return Math.max(2, Math.max(width, height) / 320);
}

/** Height of a label’s type and the room around it, in pixels of a picture of this size. */
export function labelType({ width, height }: Size): { type: number; pad: number } {
  const type = Math.max(12, Math.round(Math.max(width, height) / 55));
  return { type, pad: Math.round(type * 0.4) };
}

/** The colour that a mark is drawn in. */
export function markColour(mark: Mark): string {
  if (mark.shape === 'label') return mark.tone === 'signal' ? markColours.signalPlate : markColours.ink;
  return markColours[mark.shape === 'blur' ? 'ink' : (mark.tone ?? 'signal')];
}

/** A mark’s line as the data of an SVG path, in pixels of a picture of this size. */
export function markPath(mark: Lined, size: Size): string {
  if (mark.shape === 'ring') {
    const x = mark.centre.x * size.width;
    const y = mark.centre.y * size.height;
    const r = mark.radius * size.width;
    return `M${x - r} ${y}a${r} ${r} 0 1 0 ${2 * r} 0a${r} ${r} 0 1 0 ${-2 * r} 0Z`;
  }
  const [ax, ay] = [mark.from.x * size.width, mark.from.y * size.height];
  const [bx, by] = [mark.to.x * size.width, mark.to.y * size.height];
  if (mark.shape === 'box') return `M${ax} ${ay}H${bx}V${by}H${ax}Z`;
  const shaft = `M${ax} ${ay}L${bx} ${by}`;
  if (mark.shape === 'line') return shaft;
  const angle = Math.atan2(by - ay, bx - ax);
  const length = markStroke(size) * 6;
  const barb = (turn: number) =>
    `${bx - length * Math.cos(angle + turn)} ${by - length * Math.sin(angle + turn)}`;
  return `${shaft}M${barb(0.45)}L${bx} ${by}L${barb(-0.45)}`;
}
