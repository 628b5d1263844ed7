import { ball, type MaterialName, round } from './materials.ts';
import { hexBolt, oval, shadow, solid } from './parts.ts';
import type { Picture } from './picture.ts';
import { darkSpace } from './surfaces.ts';

export function engineSpace(p: Picture): void {
  p.behind(() => darkSpace(p));
  p.backBlur = 4;
}

/** Rough casting with bolts round its edge. */
export function casting(p: Picture, d: string, material: MaterialName, angle = 60): void {
  shadow(p, d, 24, 32, 26, 0.7);
  solid(p, d, round(p, material, angle), p.texture('bump', 0.9), 0.7);
  solid(p, d, p.texture('dirt', 1), p.texture('bumpFine', 0.6), 0.3);
}

export function pulley(p: Picture, x: number, y: number, r: number, material: MaterialName): void {
  shadow(p, oval(x, y, r), 16, 22, 18, 0.65);
  solid(p, oval(x, y, r), ball(p, material));
  p.add(
    `<circle cx="${x}" cy="${y}" r="${r * 0.9}" fill="none" stroke="#070707" stroke-width="${r * 0.12}" opacity=".75"/>`,
  );
  solid(p, oval(x, y, r * 0.78), ball(p, material), p.texture('dirt', 0.8), 0.6);
  for (let k = 0; k < 4; k++) {
    const a = k * 1.571 + 0.5;
    solid(p, oval(x + Math.cos(a) * r * 0.5, y + Math.sin(a) * r * 0.5, r * 0.13), '#0d0d0e');
  }
  hexBolt(p, x, y, r * 0.22, 'dullSteel');
}
