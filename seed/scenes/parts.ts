import { ball, type Material, type MaterialName, materials, round } from './materials.ts';
import type { Picture } from './picture.ts';

/** Rectangle as path data. */
export const box = (x: number, y: number, w: number, h: number, r = 0): string =>
  r === 0
    ? `M${x} ${y}h${w}v${h}h${-w}z`
    : `M${x + r} ${y}h${w - 2 * r}a${r} ${r} 0 0 1 ${r} ${r}v${h - 2 * r}a${r} ${r} 0 0 1 ${-r} ${r}h${2 * r - w}a${r} ${r} 0 0 1 ${-r} ${-r}v${2 * r - h}a${r} ${r} 0 0 1 ${r} ${-r}z`;

/** Ellipse as path data. */
export const oval = (cx: number, cy: number, rx: number, ry = rx): string =>
  `M${cx - rx} ${cy}a${rx} ${ry} 0 1 0 ${2 * rx} 0a${rx} ${ry} 0 1 0 ${-2 * rx} 0z`;

/** Filled outline with a texture laid over it. */
export function solid(p: Picture, d: string, fill: string, over?: string, opacity = 1): void {
  p.add(`<path d="${d}" fill="${fill}"/>`);
  if (over) p.add(`<path d="${d}" fill="${over}" opacity="${opacity}"/>`);
}

/**
 * Layers a soft edge of this reach is built from. Stroking them is many times faster than a blur filter at
 * this size; too few would show as rings.
 */
const softLayers = (spread: number): number => Math.round(Math.min(14, Math.max(5, spread / 3)));

/** Soft shadow of an outline on what lies behind it. `spread` is how far its edge reaches. */
export function shadow(p: Picture, d: string, dx = 14, dy = 22, spread = 14, opacity = 0.55): void {
  const layers = softLayers(spread);
  const each = ((1 - (1 - opacity) ** (1 / layers)) * 0.8).toFixed(3);
  p.group(
    `transform="translate(${dx} ${dy})" fill="#050403" stroke="#050403" stroke-linejoin="round"`,
    () => {
      for (let k = 1; k <= layers; k++) {
        const width = ((spread * 3.4 * k) / layers).toFixed(1);
        p.add(`<path d="${d}" stroke-width="${width}" opacity="${each}"/>`);
      }
    },
  );
}

/** Straight bar, pipe or rod between two points. */
export function bar(
  p: Picture,
  [x1, y1]: [number, number],
  [x2, y2]: [number, number],
  width: number,
  material: MaterialName,
  options: { cap?: boolean; over?: string; overOpacity?: number; noShadow?: boolean } = {},
): void {
  const length = Math.hypot(x2 - x1, y2 - y1);
  const angle = (Math.atan2(y2 - y1, x2 - x1) * 180) / Math.PI;
  const d = box(0, -width / 2, length, width, Math.min(4, width / 4));
  p.group(`transform="translate(${x1} ${y1}) rotate(${angle})"`, () => {
    if (!options.noShadow) shadow(p, d, width * 0.12, width * 0.2, width * 0.14);
    solid(p, d, round(p, material), options.over, options.overOpacity);
    if (options.cap) {
      const m = materials[material];
      p.add(
        `<ellipse cx="${length}" cy="0" rx="${width * 0.16}" ry="${width / 2}" fill="${p.linear(
          [
            [0, m.light],
            [1, m.shadow],
          ],
          70,
        )}"/>`,
      );
    }
  });
}

/** Hose, tube or cable along a path, shaded by stacked strokes. */
export function tube(
  p: Picture,
  d: string,
  width: number,
  material: MaterialName,
  options: { shadow?: boolean; over?: string; overOpacity?: number; cap?: 'butt' | 'round' } = {},
): void {
  const m: Material = materials[material];
  const cap = options.cap ?? 'butt';
  const stroke = (colour: string, w: number, up: number, opacity: number, extra = ''): string =>
    `<path d="${d}" fill="none" stroke="${colour}" stroke-width="${w}" stroke-linecap="${cap}" stroke-linejoin="round" opacity="${opacity}" transform="translate(${-up * 0.45} ${-up})" ${extra}/>`;
  if (options.shadow !== false) {
    for (let k = 1; k <= 4; k++) {
      const w = width * (0.8 + k * 0.12);
      p.add(
        `<path d="${d}" fill="none" stroke="#050403" stroke-width="${w}" opacity=".17" transform="translate(${width * 0.18} ${width * 0.3})"/>`,
      );
    }
  }
  p.add(stroke(m.shadow, width, 0, 1));
  p.add(stroke(m.body, width * 0.86, width * 0.04, 0.55));
  p.add(stroke(m.body, width * 0.72, width * 0.07, 0.75));
  p.add(stroke(m.light, width * 0.5, width * 0.12, 0.35));
  p.add(stroke(m.light, width * 0.34, width * 0.16, 0.45));
  p.add(stroke(m.glint, width * 0.15, width * 0.2, 0.4));
  p.add(stroke(m.glint, width * 0.06, width * 0.21, 0.55));
  if (options.over) p.add(stroke(options.over, width, 0, options.overOpacity ?? 0.6));
}

/** Hexagon bolt head or nut seen from above. */
export function hexBolt(p: Picture, x: number, y: number, r: number, material: MaterialName): void {
  const m = materials[material];
  const turn = p.random.between(0, 60);
  const corner = (k: number, s = 1): string => {
    const a = ((turn + k * 60) * Math.PI) / 180;
    return `${(x + Math.cos(a) * r * s).toFixed(1)} ${(y + Math.sin(a) * r * s).toFixed(1)}`;
  };
  const hex = `M${[0, 1, 2, 3, 4, 5].map((k) => corner(k)).join('L')}z`;
  shadow(p, oval(x, y, r * 1.05), r * 0.14, r * 0.22, r * 0.16, 0.6);
  solid(p, oval(x, y, r * 1.28), ball(p, material));
  shadow(p, hex, r * 0.06, r * 0.1, r * 0.08, 0.5);
  for (let k = 0; k < 6; k++) {
    const facing = Math.cos(((turn + k * 60 + 30 + 125) * Math.PI) / 180) * 0.5 + 0.5;
    const tone = facing > 0.66 ? m.light : facing > 0.33 ? m.body : m.shadow;
    p.add(`<path d="M${corner(k)}L${corner(k + 1)}L${x} ${y}z" fill="${tone}"/>`);
  }
  solid(p, oval(x, y, r * 0.78), ball(p, material));
}

/** Worm-drive hose clip round a hose that runs along `angle` at (x, y); `width` is the hose's. */
export function hoseClip(
  p: Picture,
  x: number,
  y: number,
  angle: number,
  width: number,
  rusted = false,
): void {
  const band = width * 0.3;
  p.group(`transform="translate(${x} ${y}) rotate(${angle})"`, () => {
    const ring = `M${-band / 2} ${-width * 0.53}q${band * 0.3} ${width * 0.53} 0 ${width * 1.06}h${band}q${band * 0.3} ${-width * 0.53} 0 ${-width * 1.06}z`;
    shadow(p, ring, 5, 7, 5, 0.5);
    solid(p, ring, round(p, 'steel'));
    for (let k = -8; k <= 8; k++) {
      const yy = (k / 8.6) * width * 0.5;
      p.add(
        `<path d="M${-band * 0.2} ${yy}l${band * 0.62} ${width * 0.02}" stroke="#1b1e22" stroke-width="${width * 0.016}" opacity=".75" transform="translate(${band * 0.1} 0)"/>`,
      );
    }
    const worm = box(-band * 0.75, -width * 0.3, band * 1.5, width * 0.34, 6);
    shadow(p, worm, 5, 8, 5, 0.6);
    solid(p, worm, round(p, 'steel', 0));
    solid(p, oval(-band * 0.75, -width * 0.13, band * 0.42, width * 0.16), ball(p, 'steel'));
    p.add(
      `<path d="M${-band * 0.95} ${-width * 0.13}h${band * 0.42}" stroke="#16181b" stroke-width="${width * 0.03}"/>`,
    );
    if (rusted) {
      solid(p, ring, p.texture('rustPlate', 0.35), undefined);
      p.add(
        `<path d="${ring}" fill="${p.linear(
          [
            [0, '#000000', 0.6],
            [0.35, '#ffcf9a', 0.15],
            [1, '#000000', 0.7],
          ],
          90,
        )}"/>`,
      );
      solid(p, worm, p.texture('rust', 0.3));
    }
  });
}

/** Slotted or crossed countersunk screw. */
export function screw(p: Picture, x: number, y: number, r: number, crossed = true): void {
  solid(p, oval(x + r * 0.1, y + r * 0.16, r * 1.12), '#000000');
  solid(p, oval(x, y, r), ball(p, 'steel'));
  const a = p.random.between(0, 180);
  p.add(
    `<g transform="translate(${x} ${y}) rotate(${a})" stroke="#15171a" stroke-width="${r * 0.22}"><path d="M${-r * 0.6} 0h${r * 1.2}"/>${crossed ? `<path d="M0 ${-r * 0.6}v${r * 1.2}"/>` : ''}</g>`,
  );
}
