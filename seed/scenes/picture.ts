import type { Random } from './random.ts';
import { type TextureKind, textureSize, textureUrl } from './textures.ts';

/** Canvas every scene draws on; portrait pictures show its middle 1125 units. */
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
  private readonly textures = new Map<string, TextureKind>();
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

  add(...svg: string[]): void {
    this.current.body.push(...svg);
  }

  group(attributes: string, draw: () => void): void {
    this.add(`<g ${attributes}>`);
    draw();
    this.add('</g>');
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

  /** Pattern fill with a texture; `scale` enlarges it, `angle` turns it. */
  texture(kind: TextureKind, scale = 1, angle = 0): string {
    const x = Math.round(this.random.between(0, textureSize));
    const y = Math.round(this.random.between(0, textureSize));
    const id = this.define(
      (i) =>
        `<pattern id="${i}" width="${textureSize}" height="${textureSize}" patternUnits="userSpaceOnUse" patternTransform="rotate(${angle}) scale(${scale}) translate(${x} ${y})"><image href="@${kind}@" width="${textureSize}" height="${textureSize}"/></pattern>`,
    );
    this.textures.set(kind, kind);
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

  /** The two layers as SVG texts of the given pixel sizes. */
  async toSvg(view: { x: number; width: number }, pixels: { width: number; height: number }, tilt: number) {
    const urls = new Map<string, string>();
    for (const [name, kind] of this.textures) urls.set(name, await textureUrl(kind));
    const wrap = (layer: Layer, width: number, height: number): string =>
      `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height}" viewBox="${view.x} 0 ${view.width} ${canvas.height}"><defs>${layer.defs.join('')}</defs><g transform="rotate(${tilt} 1000 750) translate(1000 750) scale(1.05) translate(-1000 -750)">${layer.body.join('')}</g></svg>`.replace(
        /@(\w+)@/g,
        (_, name: string) => urls.get(name) ?? '',
      );
    return {
      back: wrap(this.layers.back, Math.round(pixels.width / 4), Math.round(pixels.height / 4)),
      front: wrap(this.layers.front, pixels.width, pixels.height),
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
