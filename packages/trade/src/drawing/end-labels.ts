import { label } from './svg.ts';

/** Words beside a point or line; `x` and `y` are where they begin, at the middle of their height. */
export interface EndLabel {
  x: number;
  y: number;
  words: string;
  colour: string;
}

const lineHeight = 13;

/**
 * Writes labels so that none lies on another: those that would touch are moved down just far enough, in the order
 * in which they come from above.
 */
export function writeApart(labels: readonly EndLabel[]): string {
  const placed: EndLabel[] = [];
  for (const next of [...labels].sort((a, b) => a.y - b.y)) {
    const above = placed.filter((p) => overlaps(p, next)).map((p) => p.y + lineHeight);
    placed.push({ ...next, y: Math.max(next.y, ...above) });
  }
  return placed.map(({ x, y, words, colour }) => label(words, { x, y: y + 4, fill: colour })).join('');
}

/** Whether two labels share some of the width, and so much height that their letters touch. A letter is 6 px wide. */
function overlaps(a: EndLabel, b: EndLabel): boolean {
  const ends = (l: EndLabel) => l.x + 6 * l.words.length;
  return a.x < ends(b) && b.x < ends(a) && b.y < a.y + lineHeight;
}
