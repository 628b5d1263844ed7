import { Readable } from 'node:stream';
import { type Mark, uploadLimits } from '@garboard/contract/photos';
import type { ObjectStore, StagedObject } from '@garboard/platform/object-store';
import { sharp } from '../files/sharp.ts';
import { drawMarks, openPixels, type Pixels } from './draw-marks.ts';

/** Long edge in pixels and JPEG quality of each size; print is enough for 200 dpi across a column of a report. */
export const derivedSizes = {
  screen: { edge: 1600, quality: 80 },
  print: { edge: 1200, quality: 76 },
  thumb: { edge: 320, quality: 72 },
} as const;
export type DerivedSize = keyof typeof derivedSizes;

export interface Retouch {
  /** Turns of 90 degrees clockwise, after turning upright by EXIF. */
  quarterTurns: number;
  marks: readonly Mark[];
}

/**
 * Makes sizes of a picture: upright, in sRGB, with marks burned in and nothing of the original's metadata. What
 * comes back is staged, for the caller to keep or discard. Never enlarges.
 *
 * @throws Error when the picture can't be read.
 */
export async function deriveImages<S extends DerivedSize>(
  store: ObjectStore,
  path: string,
  sizes: readonly S[],
  { quarterTurns, marks }: Retouch,
): Promise<Record<S, StagedObject>> {
  const upright = await readUpright(path, quarterTurns);
  const picture = await drawMarks(upright, marks);
  const made: [S, StagedObject][] = [];
  try {
    for (const size of sizes) made.push([size, await stageSize(store, picture, size)]);
  } catch (error) {
    await Promise.all(made.map(([, staged]) => staged.discard()));
    throw error;
  }
  return Object.fromEntries(made) as Record<S, StagedObject>;
}

/** The picture at the largest size we make; the smaller ones are made from it, so the original is decoded once. */
async function readUpright(path: string, quarterTurns: number): Promise<Pixels> {
  const { edge } = derivedSizes.screen;
  const input = { limitInputPixels: uploadLimits.pixels, failOn: 'error', sequentialRead: true } as const;
  const { data, info } = await sharp(path, input)
    .autoOrient()
    .resize(edge, edge, { fit: 'inside', withoutEnlargement: true })
    .flatten({ background: '#ffffff' })
    .toColourspace('srgb')
    .raw({ depth: 'uchar' })
    .toBuffer({ resolveWithObject: true });
  const pixels = {
    data,
    width: info.width,
    height: info.height,
    channels: info.channels as Pixels['channels'],
  };
  if (quarterTurns === 0) return pixels;
  const turned = await openPixels(pixels)
    .rotate(quarterTurns * 90)
    .raw()
    .toBuffer({ resolveWithObject: true });
  return { ...pixels, data: turned.data, width: turned.info.width, height: turned.info.height };
}

async function stageSize(store: ObjectStore, picture: Pixels, size: DerivedSize): Promise<StagedObject> {
  const { edge, quality } = derivedSizes[size];
  const bytes = await openPixels(picture)
    .resize(edge, edge, { fit: 'inside', withoutEnlargement: true })
    .jpeg({ quality, progressive: false })
    .toBuffer();
  return store.stage(Readable.from([bytes]), { maxBytes: bytes.length });
}
