import { box, oval, solid } from './parts.ts';
import type { Picture } from './picture.ts';

const whole = box(-120, -120, 2240, 1740);

/** White gelcoat, a little dirty. */
export function gelcoat(p: Picture, tone = '#dcdad0', dark = '#a5a49b'): void {
  solid(
    p,
    whole,
    p.linear(
      [
        [0, tone],
        [1, dark],
      ],
      60,
    ),
    p.texture('dirt', 2.4),
    0.16,
  );
  solid(p, whole, p.texture('grit', 0.7), p.texture('bump', 2.2), 0.07);
}

/** Bare laminate of a bilge, painted grey long ago. */
export function bilgePaint(p: Picture): void {
  solid(
    p,
    whole,
    p.linear(
      [
        [0, '#8b8a80'],
        [0.6, '#69675d'],
        [1, '#3c3a33'],
      ],
      75,
    ),
    p.texture('bump', 1.8),
    0.55,
  );
  solid(p, whole, p.texture('dirt', 1.3), p.texture('streaks', 1.6), 0.5);
}

/** Varnished plywood or sole bearers. */
export function timber(p: Picture, upright = false): void {
  solid(
    p,
    whole,
    p.texture('wood', 1.7, upright),
    p.linear(
      [
        [0, '#ffdcae', 0.14],
        [1, '#100800', 0.6],
      ],
      70,
    ),
  );
  solid(p, whole, p.texture('dirt', 1.6));
}

/** Antifouled bottom. */
export function antifoul(p: Picture, tone = '#7d2b22', dark = '#431511'): void {
  solid(
    p,
    whole,
    p.linear(
      [
        [0, tone],
        [1, dark],
      ],
      80,
    ),
    p.texture('bump', 1.3),
    0.5,
  );
  solid(p, whole, p.texture('bumpFine', 0.8), p.texture('dirt', 1.8), 0.35);
}

/** Painted steel plate. */
export function paintedSteel(p: Picture, tone = '#4d5a60', dark = '#252c30'): void {
  solid(
    p,
    whole,
    p.linear(
      [
        [0, tone],
        [1, dark],
      ],
      70,
    ),
    p.texture('bump', 2),
    0.4,
  );
  solid(p, whole, p.texture('streaks', 1.4), p.texture('bumpFine', 0.9), 0.25);
}

/** Non-slip deck: diamonds in moulded gelcoat. */
export function nonSlip(p: Picture): void {
  gelcoat(p, '#d3d2c6', '#a9a79b');
  const lines: string[] = [];
  for (let k = -30; k < 90; k++) lines.push(`M${k * 34} -120l900 1740M${k * 34} 1620l900 -1740`);
  p.add(
    `<path d="${lines.join('')}" stroke="#6f6d63" stroke-width="7" opacity=".34" fill="none"/>`,
    `<path d="${lines.join('')}" stroke="#fff" stroke-width="4" opacity=".34" fill="none" transform="translate(-5 -5)"/>`,
  );
  solid(p, whole, p.texture('dirt', 1.5));
}

/** Unfocused dark machinery space with a few lights. */
export function darkSpace(p: Picture, warm = true): void {
  solid(
    p,
    whole,
    p.linear(
      [
        [0, warm ? '#3b322a' : '#2a3036'],
        [1, '#0d0b0a'],
      ],
      80,
    ),
  );
  for (let i = 0; i < 14; i++) {
    const tone = ['#6b5a44', '#4a5860', '#7c7364', '#2a2a2a', '#8a3f22'][i % 5] ?? '#444444';
    p.add(
      `<path d="${box(p.random.between(-100, 1900), p.random.between(-100, 1400), p.random.between(60, 460), p.random.between(40, 300), 20)}" fill="${tone}" opacity="${p.random.between(0.25, 0.7)}" transform="rotate(${p.random.between(-25, 25)} 1000 750)"/>`,
    );
  }
}

/** Unfocused boatyard: pale sky, hulls, ground. */
export function yardBehind(p: Picture): void {
  solid(
    p,
    whole,
    p.linear(
      [
        [0, '#b9c9d6'],
        [0.45, '#dfe5e6'],
        [0.5, '#8b8d86'],
        [1, '#6d6a60'],
      ],
      90,
    ),
  );
  for (let i = 0; i < 9; i++) {
    const x = p.random.between(-200, 2000);
    const tone = ['#e8e8e4', '#2f4a66', '#7a2b25', '#c9c6b8', '#3d5a49'][i % 5] ?? '#ccc';
    p.add(
      `<path d="${oval(x, p.random.between(480, 760), p.random.between(140, 330), p.random.between(60, 150))}" fill="${tone}" opacity=".85"/>`,
    );
    p.add(`<path d="${box(x, -100, 8, 720)}" fill="#6f757a" opacity=".6"/>`);
  }
}
