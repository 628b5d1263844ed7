import sharp from 'sharp';
import type { Orientation } from '../world/types.ts';
import { type SceneKey, scenes } from './index.ts';
import { canvas, type Light, Picture } from './picture.ts';
import { type Random, seededRandom } from './random.ts';

export interface RenderOptions {
  seed: number;
  takenAt: Date;
  orientation: Orientation;
  /** Hold the camera upright; always so for orientations 6 and 8. */
  portrait?: boolean;
  /** Offset of the camera's clock from UTC. */
  utcOffsetMinutes?: number;
  /** Position to store, degrees, north and east positive. */
  position?: { latitude: number; longitude: number };
  /** Long side in pixels; 4000 unless a small picture is wanted for looking at. */
  longSide?: number;
}

const noiseTable = ((): Int8Array => {
  const random = seededRandom(977);
  const table = new Int8Array(65536);
  for (let i = 0; i < table.length; i++) {
    table[i] = Math.round((random.next() + random.next() + random.next() - 1.5) * 22);
  }
  return table;
})();

/** Brightness at the middle, fall-off towards the corners, and noise of each kind of light. */
const lights: Record<Light, { centre: number; fall: number; noise: number; warm: number }> = {
  flash: { centre: 1.14, fall: 0.52, noise: 0.75, warm: 0.02 },
  day: { centre: 1.03, fall: 0.2, noise: 0.5, warm: 0 },
  dim: { centre: 1.0, fall: 0.46, noise: 1.1, warm: 0.05 },
};

/** Lays the sharp layer over the blurred one and adds what a lens and sensor add. Works in place on `back`. */
function expose(
  back: Buffer,
  front: Buffer,
  width: number,
  height: number,
  light: Light,
  random: Random,
): void {
  const { centre, fall, noise, warm } = lights[light];
  const cx = width * (0.5 + random.between(-0.08, 0.08));
  const cy = height * (0.47 + random.between(-0.06, 0.06));
  const reach = 1 / (width * width * 0.25 + height * height * 0.25);
  const red = 1 + warm;
  const blue = 1 - warm;
  for (let y = 0; y < height; y++) {
    const rowNoise = Math.floor(random.next() * 65536);
    const dy2 = (y - cy) * (y - cy);
    for (let x = 0; x < width; x++) {
      const d = (dy2 + (x - cx) * (x - cx)) * reach;
      const gain = centre - fall * d;
      const i = y * width + x;
      const f = i * 4;
      const b = i * 3;
      const keep = 255 - (front[f + 3] ?? 0);
      const alpha = 255 - keep;
      const luma = (noiseTable[(rowNoise + x) & 65535] ?? 0) * noise;
      const chroma = (noiseTable[(rowNoise * 3 + x * 5) & 65535] ?? 0) * noise * 0.35;
      const r = (((front[f] ?? 0) * alpha + (back[b] ?? 0) * keep) / 255) * gain * red + luma + chroma;
      const g = (((front[f + 1] ?? 0) * alpha + (back[b + 1] ?? 0) * keep) / 255) * gain + luma;
      const u =
        (((front[f + 2] ?? 0) * alpha + (back[b + 2] ?? 0) * keep) / 255) * gain * blue + luma - chroma;
      back[b] = Math.max(0, Math.min(r, 255));
      back[b + 1] = Math.max(0, Math.min(g, 255));
      back[b + 2] = Math.max(0, Math.min(u, 255));
    }
  }
}

/**
 * Draws a scene as a camera would have stored it: a JPEG of 12 megapixels with EXIF capture time and
 * orientation, its pixels turned so that applying the orientation makes it upright. The same options give
 * the same picture. Fails if the scene's SVG is malformed.
 */
export async function renderScene(scene: SceneKey, options: RenderOptions): Promise<Buffer> {
  const random = seededRandom(options.seed);
  const picture = new Picture(random);
  scenes[scene](picture);

  const portrait = options.portrait ?? (options.orientation === 6 || options.orientation === 8);
  const width = portrait ? (canvas.height * 3) / 4 : canvas.width;
  const height = canvas.height;
  const svg = await picture.toSvg({ x: Math.round((canvas.width - width) / 2), width });

  const [front, back] = await Promise.all([
    sharp(Buffer.from(svg.front), { unlimited: true }).ensureAlpha().raw().toBuffer(),
    backdrop(svg.back, picture.backBlur, width, height),
  ]);
  expose(back, front, width, height, picture.light, random);

  // One turn for the camera's orientation and the hand's tilt, cropped to what stays inside.
  const turned = { 1: 0, 3: 180, 6: 270, 8: 90 }[options.orientation];
  const tilt = random.between(-1.8, 1.8);
  const long = options.longSide ?? 4000;
  const sideways = turned % 180 !== 0;
  const stored = sideways ? { width: height, height: width } : { width, height };
  const landscape = stored.width >= stored.height;
  const turnedSize = rotatedSize(width, height, turned + tilt);
  const keep = insideFraction(stored, tilt);
  const crop = { width: Math.floor(stored.width * keep), height: Math.floor(stored.height * keep) };
  return sharp(back, { raw: { width, height, channels: 3 } })
    .rotate(turned + tilt)
    .extract({
      left: Math.floor((turnedSize.width - crop.width) / 2),
      top: Math.floor((turnedSize.height - crop.height) / 2),
      ...crop,
    })
    .resize(landscape ? long : (long * 3) / 4, landscape ? (long * 3) / 4 : long, {
      kernel: 'linear',
      fit: 'fill',
    })
    .jpeg({ quality: 82, optimiseCoding: false })
    .withExif(exifBlock(options))
    .withMetadata({ orientation: options.orientation })
    .toBuffer();
}

/** Box round a rectangle turned by an angle in degrees. */
function rotatedSize(width: number, height: number, degrees: number) {
  const a = (degrees * Math.PI) / 180;
  const [c, s] = [Math.abs(Math.cos(a)), Math.abs(Math.sin(a))];
  return { width: width * c + height * s, height: width * s + height * c };
}

/** Largest share of a rectangle, same proportions, that lies inside it after a small turn. */
function insideFraction({ width, height }: { width: number; height: number }, degrees: number): number {
  const a = Math.abs((degrees * Math.PI) / 180);
  const ratio = Math.max(width / height, height / width);
  return 1 / (Math.cos(a) + ratio * Math.sin(a)) - 0.004;
}

async function backdrop(svg: string, blur: number, width: number, height: number): Promise<Buffer> {
  const small = sharp(Buffer.from(svg), { unlimited: true }).flatten({ background: '#2a2724' });
  const blurred = await (blur > 0 ? small.blur(blur) : small).png({ compressionLevel: 1 }).toBuffer();
  return sharp(blurred).resize(width, height, { kernel: 'linear', fit: 'fill' }).raw().toBuffer();
}

/** EXIF block: capture time in local time with its offset, orientation, and a position when asked for. */
function exifBlock(options: RenderOptions) {
  const offset = options.utcOffsetMinutes ?? 0;
  const local = new Date(options.takenAt.getTime() + offset * 60_000).toISOString();
  const stamp = `${local.slice(0, 10).replaceAll('-', ':')} ${local.slice(11, 19)}`;
  const two = (n: number): string => String(n).padStart(2, '0');
  const size = Math.abs(offset);
  const zone = `${offset < 0 ? '-' : '+'}${two(Math.floor(size / 60))}:${two(size % 60)}`;
  const { position } = options;
  return {
    IFD0: { DateTime: stamp },
    IFD2: { DateTimeOriginal: stamp, OffsetTimeOriginal: zone },
    ...(position && {
      IFD3: {
        GPSLatitudeRef: position.latitude < 0 ? 'S' : 'N',
        GPSLatitude: degreesMinutesSeconds(position.latitude),
        GPSLongitudeRef: position.longitude < 0 ? 'W' : 'E',
        GPSLongitude: degreesMinutesSeconds(position.longitude),
      },
    }),
  };
}

function degreesMinutesSeconds(degrees: number): string {
  const hundredths = Math.round(Math.abs(degrees) * 360_000);
  const d = Math.floor(hundredths / 360_000);
  const m = Math.floor((hundredths % 360_000) / 6000);
  return `${d}/1 ${m}/1 ${hundredths % 6000}/100`;
}
