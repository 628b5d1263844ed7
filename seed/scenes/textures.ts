import sharp from 'sharp';
import { seededRandom } from './random.ts';

/**
 * Tiling textures as PNG data URLs, made once a process. Drawing them here and filling SVG patterns with
 * them is many times faster than feTurbulence at picture size (measured: 1.1 s for one full frame).
 */
export type TextureKind =
  | 'bump'
  | 'bumpFine'
  | 'rust'
  | 'rustPlate'
  | 'verdigris'
  | 'salt'
  | 'dirt'
  | 'grit'
  | 'brushed'
  | 'brushedDown'
  | 'wood'
  | 'woodDown'
  | 'streaks';

export const textureSize = 384;

type Field = Float32Array;

/** Periodic fractal value noise in [0, 1], `cells` lattice cells across, stretched by whole factors. */
function fractal(seed: number, cellsX: number, cellsY: number, octaves: number, gain = 0.5): Field {
  const random = seededRandom(seed);
  const size = textureSize;
  const out = new Float32Array(size * size);
  let amplitude = 1;
  let total = 0;
  for (let o = 0; o < octaves; o++) {
    const nx = Math.min(size, cellsX << o);
    const ny = Math.min(size, cellsY << o);
    const lattice = new Float32Array(nx * ny);
    for (let i = 0; i < lattice.length; i++) lattice[i] = random.next();
    for (let y = 0; y < size; y++) {
      const fy = (y * ny) / size;
      const y0 = Math.floor(fy);
      const ty = fy - y0;
      const sy = ty * ty * (3 - 2 * ty);
      const rowA = (y0 % ny) * nx;
      const rowB = ((y0 + 1) % ny) * nx;
      for (let x = 0; x < size; x++) {
        const fx = (x * nx) / size;
        const x0 = Math.floor(fx);
        const tx = fx - x0;
        const sx = tx * tx * (3 - 2 * tx);
        const xa = x0 % nx;
        const xb = (x0 + 1) % nx;
        const a = (lattice[rowA + xa] ?? 0) * (1 - sx) + (lattice[rowA + xb] ?? 0) * sx;
        const b = (lattice[rowB + xa] ?? 0) * (1 - sx) + (lattice[rowB + xb] ?? 0) * sx;
        const i = y * size + x;
        out[i] = (out[i] ?? 0) + amplitude * (a * (1 - sy) + b * sy);
      }
    }
    total += amplitude;
    amplitude *= gain;
  }
  for (let i = 0; i < out.length; i++) out[i] = (out[i] ?? 0) / total;
  return out;
}

/** How strongly each point of a height field faces a light from the upper left; about -1 to 1. */
function lit(height: Field, relief: number): Field {
  const size = textureSize;
  const out = new Float32Array(size * size);
  for (let y = 0; y < size; y++) {
    const up = ((y + size - 1) % size) * size;
    const down = ((y + 1) % size) * size;
    for (let x = 0; x < size; x++) {
      const left = (x + size - 1) % size;
      const right = (x + 1) % size;
      const dx = (height[y * size + right] ?? 0) - (height[y * size + left] ?? 0);
      const dy = (height[down + x] ?? 0) - (height[up + x] ?? 0);
      out[y * size + x] = Math.max(-1, Math.min(1, (dx + 1.3 * dy) * relief));
    }
  }
  return out;
}

type Pixel = [red: number, green: number, blue: number, alpha: number];
const step = (from: number, to: number, v: number): number => {
  const t = Math.max(0, Math.min(1, (v - from) / (to - from)));
  return t * t * (3 - 2 * t);
};

function paint(shade: (i: number) => Pixel): Buffer {
  const out = Buffer.alloc(textureSize * textureSize * 4);
  for (let i = 0; i < textureSize * textureSize; i++) {
    const [r, g, b, a] = shade(i);
    out[i * 4] = Math.max(0, Math.min(255, r));
    out[i * 4 + 1] = Math.max(0, Math.min(255, g));
    out[i * 4 + 2] = Math.max(0, Math.min(255, b));
    out[i * 4 + 3] = Math.max(0, Math.min(255, a));
  }
  return out;
}

const relief = (height: Field, strength: number): Buffer => {
  const light = lit(height, strength);
  return paint((i) => {
    const v = light[i] ?? 0;
    return v < 0 ? [0, 0, 0, -v * 190] : [255, 250, 240, v * 130];
  });
};

const transposed = (tile: Buffer): Buffer => {
  const out = Buffer.alloc(tile.length);
  for (let y = 0; y < textureSize; y++) {
    for (let x = 0; x < textureSize; x++) {
      tile.copy(out, (x * textureSize + y) * 4, (y * textureSize + x) * 4, (y * textureSize + x) * 4 + 4);
    }
  }
  return out;
};

const makers: Record<TextureKind, () => Buffer> = {
  bump: () => relief(fractal(11, 12, 12, 5, 0.55), 7),
  bumpFine: () => relief(fractal(12, 48, 48, 4, 0.6), 4),
  rust: () => {
    const spread = fractal(21, 6, 6, 7, 0.7);
    const colour = fractal(22, 10, 10, 5, 0.65);
    const light = lit(spread, 7);
    return paint((i) => {
      const c = step(0.3, 0.72, colour[i] ?? 0);
      const l = (light[i] ?? 0) * 46;
      return [
        62 + 84 * c + l,
        32 + 46 * c + l,
        18 + 20 * c + l * 0.8,
        235 * step(0.47, 0.68, spread[i] ?? 0),
      ];
    });
  },
  rustPlate: () => {
    const height = fractal(31, 10, 10, 6, 0.6);
    const colour = fractal(32, 5, 5, 6, 0.62);
    const light = lit(height, 9);
    return paint((i) => {
      const c = step(0.3, 0.74, colour[i] ?? 0);
      const l = (light[i] ?? 0) * 62;
      return [58 + 82 * c + l, 36 + 40 * c + l, 27 + 16 * c + l * 0.85, 255];
    });
  },
  verdigris: () => {
    const spread = fractal(41, 9, 9, 6, 0.6);
    const light = lit(spread, 12);
    return paint((i) => {
      const v = spread[i] ?? 0;
      const l = (light[i] ?? 0) * 50;
      const white = step(0.56, 0.66, v);
      return [70 + 130 * white + l, 150 + 70 * white + l, 125 + 85 * white + l, 240 * step(0.47, 0.57, v)];
    });
  },
  salt: () => {
    const spread = fractal(51, 14, 14, 6, 0.72);
    const light = lit(spread, 6);
    return paint((i) => {
      const l = 206 + (light[i] ?? 0) * 45;
      return [l, l, l - 8, 190 * step(0.52, 0.74, spread[i] ?? 0)];
    });
  },
  dirt: () => {
    const spread = fractal(61, 4, 4, 7, 0.68);
    return paint((i) => [44, 37, 27, 165 * step(0.36, 0.86, spread[i] ?? 0)]);
  },
  grit: () => {
    const fine = fractal(71, 128, 128, 3, 0.9);
    return paint((i) => {
      const v = (fine[i] ?? 0) - 0.5;
      return v < 0 ? [10, 10, 12, -v * 330] : [255, 255, 250, v * 300];
    });
  },
  brushed: () => {
    const fine = fractal(81, 4, 256, 2, 0.7);
    return paint((i) => {
      const v = (fine[i] ?? 0) - 0.5;
      return v < 0 ? [20, 22, 26, -v * 260] : [255, 255, 255, v * 260];
    });
  },
  wood: () => {
    const grain = fractal(91, 2, 40, 4, 0.6);
    const pores = fractal(92, 12, 256, 2, 0.7);
    return paint((i) => {
      const g = Math.sin((grain[i] ?? 0) * 34) * 0.5 + 0.5;
      const p = step(0.6, 0.8, pores[i] ?? 0) * 46;
      return [128 + 36 * g - p, 82 + 28 * g - p, 48 + 18 * g - p, 255];
    });
  },
  brushedDown: () => transposed(makers.brushed()),
  woodDown: () => transposed(makers.wood()),
  streaks: () => {
    const down = fractal(101, 40, 3, 4, 0.6);
    return paint((i) => [70, 52, 34, 220 * step(0.5, 0.85, down[i] ?? 0)]);
  },
};

const made = new Map<TextureKind, Promise<string>>();

/** PNG data URL of a texture tile, `textureSize` pixels square. */
export function textureUrl(kind: TextureKind): Promise<string> {
  let url = made.get(kind);
  if (!url) {
    url = sharp(makers[kind](), { raw: { width: textureSize, height: textureSize, channels: 4 } })
      .png({ compressionLevel: 2 })
      .toBuffer()
      .then((png) => `data:image/png;base64,${png.toString('base64')}`);
    made.set(kind, url);
  }
  return url;
}
