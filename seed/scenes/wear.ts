import type { Picture } from './picture.ts';

/** Crack as jagged line: dark in the gap, a lit edge beside it. Starts at (x, y) along `angle`. */
export function crack(
  p: Picture,
  x: number,
  y: number,
  angle: number,
  length: number,
  width = 5,
  colour = '#120d09',
): void {
  const steps = Math.max(6, Math.round(length / 26));
  let d = `M${x} ${y}`;
  let [cx, cy] = [x, y];
  let a = (angle * Math.PI) / 180;
  for (let i = 0; i < steps; i++) {
    a += p.random.between(-0.42, 0.42);
    a += ((angle * Math.PI) / 180 - a) * 0.35;
    cx += (Math.cos(a) * length) / steps;
    cy += (Math.sin(a) * length) / steps;
    d += `L${cx.toFixed(1)} ${cy.toFixed(1)}`;
  }
  p.add(
    `<path d="${d}" fill="none" stroke="#fff" stroke-width="${width}" opacity=".28" transform="translate(${width * 0.7} ${width * 0.8})" stroke-linejoin="round"/>`,
    `<path d="${d}" fill="none" stroke="${colour}" stroke-width="${width}" stroke-linejoin="round" opacity=".92"/>`,
    `<path d="${d}" fill="none" stroke="${colour}" stroke-width="${width * 3.4}" opacity=".16" stroke-linejoin="round"/>`,
  );
}

/** Stain that runs down from (x, y). */
export function weep(
  p: Picture,
  x: number,
  y: number,
  length: number,
  width: number,
  colour = '#6b3515',
  opacity = 0.75,
): void {
  for (let i = 0; i < 5; i++) {
    const dx = p.random.between(-width * 0.4, width * 0.4);
    const l = length * p.random.between(0.45, 1);
    const w = width * p.random.between(0.16, 0.42);
    const d = `M${x + dx - w} ${y}q${w} ${-w * 0.6} ${2 * w} 0q${w * 0.2} ${l * 0.5} ${-w * 0.6} ${l * 0.92}q${-w * 0.4} ${l * 0.12} ${-w * 0.8} 0q${-w * 0.9} ${-l * 0.5} ${-w * 0.6} ${-l * 0.92}z`;
    const fade = (strength: number): string =>
      p.linear(
        [
          [0, colour, opacity * strength],
          [0.7, colour, opacity * strength * 0.55],
          [1, colour, opacity * strength * 0.15],
        ],
        90,
      );
    // Two wider, fainter strokes soften the edge without a blur filter.
    const faint = fade(0.22);
    p.add(
      `<path d="${d}" fill="none" stroke="${faint}" stroke-width="16" stroke-linejoin="round"/>`,
      `<path d="${d}" fill="none" stroke="${faint}" stroke-width="8" stroke-linejoin="round"/>`,
      `<path d="${d}" fill="${fade(0.8)}"/>`,
    );
  }
}

/** A wet drop hanging or lying at (x, y). */
export function drop(p: Picture, x: number, y: number, r: number): void {
  p.add(
    `<path d="M${x} ${y - r * 1.9}q${r * 1.2} ${r * 1.5} ${r} ${r * 2.1}a${r} ${r} 0 1 1 ${-2 * r} 0q${-r * 0.2} ${-r * 0.6} ${r} ${-r * 2.1}z" fill="${p.radial(
      [
        [0, '#ffffff', 0.15],
        [0.7, '#c8d6df', 0.45],
        [1, '#1f2a33', 0.7],
      ],
    )}"/>`,
    `<ellipse cx="${x - r * 0.35}" cy="${y - r * 0.2}" rx="${r * 0.2}" ry="${r * 0.36}" fill="#fff" opacity=".95"/>`,
    `<path d="M${x - r * 0.5} ${y + r * 0.75}q${r * 0.5} ${r * 0.4} ${r} 0" stroke="#fff" stroke-width="${r * 0.14}" fill="none" opacity=".7"/>`,
  );
}

/** Many small marks scattered in a box. */
export function scatter(
  p: Picture,
  count: number,
  [x, y, w, h]: [number, number, number, number],
  mark: (x: number, y: number, size: number) => void,
): void {
  for (let i = 0; i < count; i++) {
    mark(x + p.random.next() * w, y + p.random.next() * h, p.random.next());
  }
}

/** Glare of flash or sun on a smooth surface. */
export function glare(p: Picture, x: number, y: number, rx: number, ry: number, opacity = 0.7): void {
  p.add(
    `<ellipse cx="${x}" cy="${y}" rx="${rx}" ry="${ry}" fill="${p.radial(
      [
        [0, '#ffffff', opacity],
        [0.4, '#ffffff', opacity * 0.45],
        [1, '#ffffff', 0],
      ],
      0.5,
      0.5,
      0.5,
    )}"/>`,
  );
}
