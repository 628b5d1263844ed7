import type { Random } from './random.ts';
import { type TextureKind, textureSize, textureUrl } from './textures.ts';

/** Canvas every scene draws on; portrait pictures show the middle 1125 units. */
export const canvas = { width: 2000, height: 1500 };

export type Stops = [offset: number, colour: string, opacity?: number][];
export type Light = 'flash' | 'day' | 'dim';

interface Layer {
  defs: string[];
  body: string[];
}

/**
 * Collects one scene: a background (drawn small and blurred, as out of focus) and a sharp foreground.
 * Drawing functions push into whichever layer is current.
 */
export class Picture {
  light: Light = 'flash';
  /** Blur of the background in pixels at 500 px width; 0 keeps it in focus. */
  backBlur = 3;
  private readonly layers: { back: Layer; front: Layer } = {
    back: { defs: [], body: [] },
    front: { defs: [], body: [] },
  };
  private current: Layer = this.layers.front;
  private readonly textures = new Set<TextureKind>();
  private ids = 0;
  readonly random: Random;

  constructor(random: Random) {
    this.random = random;
  }

  private define(make: (id: string) => string): string {
    const id = `d${this.ids++}`;
    this.current.defs.push(make(id));
    return id;
  }

  /** Everything drawn inside goes to the out-of-focus background. */
  behind(draw: () => void): void {
    const before = this.current;
    this.current = this.layers.back;
    draw();
    this.current = before;
  }

  /**
   * Adds elements. Their `opacity` is turned into that of fill and stroke: librsvg gives each element with
   * `opacity` a surface of the whole picture (measured: ten times slower for a scene of many marks).
   */
  add(...svg: string[]): void {
    for (const element of svg) {
      this.current.body.push(
        element.replace(/\sopacity="([^"]*)"/g, ' fill-opacity="$1" stroke-opacity="$1"'),
      );
    }
  }

  group(attributes: string, draw: () => void): void {
    this.current.body.push(`<g ${attributes}>`);
    draw();
    this.current.body.push('</g>');
  }

  /** Draws inside an outline (path data). */
  clip(d: string, draw: () => void): void {
    const id = this.define((i) => `<clipPath id="${i}"><path d="${d}"/></clipPath>`);
    this.group(`clip-path="url(#${id})"`, draw);
  }

  /** Linear gradient over the filled shape's box; angle in degrees, 0 is left to right, 90 top to bottom. */
  linear(stops: Stops, angle = 0): string {
    const a = (angle * Math.PI) / 180;
    const dx = Math.cos(a) / 2;
    const dy = Math.sin(a) / 2;
    const id = this.define(
      (i) =>
        `<linearGradient id="${i}" x1="${0.5 - dx}" y1="${0.5 - dy}" x2="${0.5 + dx}" y2="${0.5 + dy}">${stopTags(stops)}</linearGradient>`,
    );
    return `url(#${id})`;
  }

  /** Radial gradient over the filled shape's box, its centre at (cx, cy) in fractions of the box. */
  radial(stops: Stops, cx = 0.5, cy = 0.5, r = 0.6): string {
    const id = this.define(
      (i) => `<radialGradient id="${i}" cx="${cx}" cy="${cy}" r="${r}">${stopTags(stops)}</radialGradient>`,
    );
    return `url(#${id})`;
  }

  /**
   * Pattern fill with a texture; `scale` enlarges it, `upright` lays its grain vertically (brushed and wood).
   * Scale and offset are kept such that a tile covers whole pixels: librsvg fills those ten times as fast.
   */
  texture(kind: TextureKind, scale = 1, upright = false): string {
    const snapped = Math.max(1, Math.round(scale * 64)) / 64;
    const x = 2 * Math.round(this.random.between(0, textureSize / 2));
    const y = 2 * Math.round(this.random.between(0, textureSize / 2));
    const tile: TextureKind =
      upright && kind === 'brushed' ? 'brushedDown' : upright && kind === 'wood' ? 'woodDown' : kind;
    this.textures.add(tile);
    const id = this.define(
      (i) =>
        `<pattern id="${i}" width="${textureSize}" height="${textureSize}" patternUnits="userSpaceOnUse" patternTransform="translate(${-x} ${-y}) scale(${snapped})"><use href="#${tile}"/></pattern>`,
    );
    return `url(#${id})`;
  }

  /** Attribute for a blurred shape; `sd` in canvas units. */
  soft(sd: number): string {
    const id = this.define(
      (i) =>
        `<filter id="${i}" x="-60%" y="-60%" width="220%" height="220%"><feGaussianBlur stdDeviation="${sd}"/></filter>`,
    );
    return `filter="url(#${id})"`;
  }

  /** The two layers as SVG texts, one pixel a unit; the background a quarter of that. */
  async toSvg(view: { x: number; width: number }): Promise<{ back: string; front: string }> {
    const tiles = await Promise.all(
      [...this.textures].map(
        async (kind) =>
          `<image id="${kind}" href="${await textureUrl(kind)}" width="${textureSize}" height="${textureSize}"/>`,
      ),
    );
    const wrap = (layer: Layer, width: number, height: number): string =>
      `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height}" viewBox="${view.x} 0 ${view.width} ${canvas.height}"><defs>${tiles.join('')}${layer.defs.join('')}</defs>${layer.body.join('')}</svg>`;
    return {
      back: wrap(this.layers.back, Math.round(view.width / 4), canvas.height / 4),
      front: wrap(this.layers.front, view.width, canvas.height),
    };
  }
}

const stopTags = (stops: Stops): string =>
  stops
    .map(
      ([offset, colour, opacity = 1]) =>
        `<stop offset="${offset}" stop-color="${colour}" stop-opacity="${opacity}"/>`,
    )
    .join('');
