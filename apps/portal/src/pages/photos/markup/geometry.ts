import type { Mark } from '@garboard/contract/photos';

export type Shape = Mark['shape'];
export type Tone = 'signal' | 'ink';
export interface Point {
  x: number;
  y: number;
}
export interface Size {
  width: number;
  height: number;
}

const within = (v: number) => Math.min(1, Math.max(0, v));
// Six digits are a hundredth of a pixel of the largest picture; more would only be noise in what is kept.
const rounded = (v: number) => Math.round(v * 1e6) / 1e6;
export const pinned = ({ x, y }: Point): Point => ({ x: rounded(within(x)), y: rounded(within(y)) });

/** Points of a mark by which it is resized. A label has none: its size follows from its words. */
export function handlesOf(mark: Mark, { width, height }: Size): Point[] {
  switch (mark.shape) {
    case 'arrow':
    case 'line':
      return [mark.from, mark.to];
    case 'box':
    case 'blur': {
      const { from, to } = mark;
      return [from, { x: to.x, y: from.y }, to, { x: from.x, y: to.y }];
    }
    case 'ring': {
      const { centre, radius } = mark;
      // Beside the centre, or where the edge of the picture cuts the ring there, above or below it.
      const across = (radius * width) / height;
      const spots = [
        { x: centre.x + radius, y: centre.y },
        { x: centre.x - radius, y: centre.y },
        { x: centre.x, y: centre.y + across },
        { x: centre.x, y: centre.y - across },
      ];
      return [spots.find(({ x, y }) => x >= 0 && x <= 1 && y >= 0 && y <= 1) ?? pinned(spots[0] ?? centre)];
    }
    case 'label':
      return [];
  }
}

/** The mark with one of its handles brought to a point. */
export function withHandle(mark: Mark, handle: number, to: Point, { width, height }: Size): Mark {
  const p = pinned(to);
  switch (mark.shape) {
    case 'arrow':
    case 'line':
      return handle === 0 ? { ...mark, from: p } : { ...mark, to: p };
    case 'box':
    case 'blur': {
      const { from, to: far } = mark;
      if (handle === 0) return { ...mark, from: p };
      if (handle === 1) return { ...mark, from: { x: from.x, y: p.y }, to: { x: p.x, y: far.y } };
      if (handle === 2) return { ...mark, to: p };
      return { ...mark, from: { x: p.x, y: from.y }, to: { x: far.x, y: p.y } };
    }
    case 'ring': {
      const away = Math.hypot((p.x - mark.centre.x) * width, (p.y - mark.centre.y) * height);
      return { ...mark, radius: rounded(Math.min(1, Math.max(0.005, away / width))) };
    }
    case 'label':
      return mark;
  }
}

/** The mark moved by shares of the picture, kept whole: it stops where its first point would leave the picture. */
export function moved(mark: Mark, by: Point): Mark {
  const points = pointsOf(mark);
  const least = (key: 'x' | 'y') => -Math.min(...points.map((p) => p[key]));
  const most = (key: 'x' | 'y') => 1 - Math.max(...points.map((p) => p[key]));
  const step = {
    x: Math.min(most('x'), Math.max(least('x'), by.x)),
    y: Math.min(most('y'), Math.max(least('y'), by.y)),
  };
  return mapped(mark, (p) => pinned({ x: p.x + step.x, y: p.y + step.y }));
}

/** The mark made larger or smaller by shares of the picture: its far end moves. */
export function resized(mark: Mark, by: Point, size: Size): Mark {
  if (mark.shape === 'label') return mark;
  if (mark.shape === 'ring') {
    const radius = rounded(Math.min(1, Math.max(0.005, mark.radius + by.x - by.y)));
    return { ...mark, radius };
  }
  const last = mark.shape === 'box' || mark.shape === 'blur' ? 2 : 1;
  return withHandle(mark, last, { x: mark.to.x + by.x, y: mark.to.y + by.y }, size);
}

/** A new mark drawn from one point to another. */
export function drawn(shape: Exclude<Shape, 'label'>, from: Point, to: Point, tone: Tone, size: Size): Mark {
  if (shape === 'ring') return withHandle({ shape, centre: pinned(from), radius: 0.01, tone }, 0, to, size);
  const ends = { from: pinned(from), to: pinned(to) };
  return shape === 'blur' ? { shape, ...ends } : { shape, ...ends, tone };
}

/**
 * Whether two points are too near to have been meant as a mark, on a picture shown this wide: a click, or a finger
 * that trembled.
 */
export function isSlip(from: Point, to: Point, shownWidth: number): boolean {
  return Math.hypot(to.x - from.x, to.y - from.y) * shownWidth < 8;
}

/**
 * Marks as they stand after their picture has been turned clockwise by quarters; `size` is the picture's before.
 * A radius is a share of the width, which a quarter turn exchanges with the height.
 */
export function turned(marks: readonly Mark[], quarters: number, size: Size): Mark[] {
  const n = ((quarters % 4) + 4) % 4;
  if (n === 0) return [...marks];
  const once = marks.map((mark): Mark => {
    const next = mapped(mark, ({ x, y }) => pinned({ x: 1 - y, y: x }));
    if (next.shape !== 'ring') return next;
    return { ...next, radius: rounded(within((next.radius * size.width) / size.height)) };
  });
  return turned(once, n - 1, { width: size.height, height: size.width });
}

function pointsOf(mark: Mark): Point[] {
  if (mark.shape === 'ring') return [mark.centre];
  if (mark.shape === 'label') return [mark.at];
  return [mark.from, mark.to];
}

function mapped(mark: Mark, change: (point: Point) => Point): Mark {
  if (mark.shape === 'ring') return { ...mark, centre: change(mark.centre) };
  if (mark.shape === 'label') return { ...mark, at: change(mark.at) };
  return { ...mark, from: change(mark.from), to: change(mark.to) };
}
