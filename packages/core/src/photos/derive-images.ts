import { Readable } from 'node:stream';
import type { Mark } from '@garboard/contract/photos';
import type { ObjectStore, StagedObject } from '@garboard/platform/object-store';
import { isHeic } from '../files/heic-structure.ts';
import { inspectPicture, PictureDamaged } from '../files/inspect-picture.ts';
import { openPicture } from '../files/open-picture.ts';
import { drawMarks, openPixels, type Pixels } from './draw-marks.ts';

/** Long edge in pixels and JPEG quality of each size; smaller places on paper have prints of their own. */
export const derivedSizes = {
  screen: { edge: 1600, quality: 80 },
  print: { edge: 1200, quality: 76 },
  thumb: { edge: 320, quality: 72 },
} as const;
export type DerivedSize = keyof typeof derivedSizes;

/**
 * Pixels of a picture as people see it: upright by its file and by these further quarter turns clockwise, in sRGB, at
 * the largest size we make. Everything else is made from them, so the original is decoded once.
 *
 * @throws Error when the picture can't be read
 */
export async function readUpright(
  path: string,
  mediaType: string,
  quarterTurns: number,
  failOn: 'warning' | 'error' = 'error',
): Promise<Pixels> {
  const { edge } = derivedSizes.screen;
  const { data, info } = await (await openPicture(path, mediaType, failOn))
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

/**
 * The same of a picture that nobody has decoded yet.
 *
 * @throws PictureDamaged in words for whoever sent it; HeicUnreadable; another Error when trying again may help
 */
export async function readUprightFirst(
  path: string,
  mediaType: string,
  quarterTurns: number,
): Promise<Pixels> {
  try {
    return await readUpright(path, mediaType, quarterTurns, 'warning');
  } catch (error) {
    if (isHeic(mediaType)) throw error;
    const verdict = await inspectPicture(path);
    if ('problem' in verdict) throw new PictureDamaged(verdict.problem, { cause: error });
    return readUpright(path, mediaType, quarterTurns);
  }
}

/**
 * Makes sizes of an upright picture, with marks burned in and nothing of the original's metadata. What comes back is
 * staged, for the caller to keep or discard. Never enlarges.
 */
export async function deriveImages<S extends DerivedSize>(
  store: ObjectStore,
  upright: Pixels,
  sizes: readonly S[],
  marks: readonly Mark[],
): Promise<Record<S, StagedObject>> {
  const picture = await drawMarks(upright, marks);
  const made: [S, StagedObject][] = [];
  try {
    for (const size of sizes) made.push([size, await stage(store, picture, derivedSizes[size])]);
  } catch (error) {
    await Promise.all(made.map(([, staged]) => staged.discard()));
    throw error;
  }
  return Object.fromEntries(made) as Record<S, StagedObject>;
}

/**
 * Makes prints of an upright picture, marks burned in, of these lengths of the longer side in pixels: what a document
 * shows at a small place need not be larger. Staged, for the caller to keep or discard.
 */
export async function derivePrints(
  store: ObjectStore,
  upright: Pixels,
  edges: readonly number[],
  marks: readonly Mark[],
): Promise<Map<number, StagedObject>> {
  const picture = await drawMarks(upright, marks);
  const made = new Map<number, StagedObject>();
  try {
    for (const edge of edges) {
      made.set(edge, await stage(store, picture, { edge, quality: derivedSizes.print.quality }));
    }
  } catch (error) {
    await Promise.all([...made.values()].map((staged) => staged.discard()));
    throw error;
  }
  return made;
}

/** Pixels of the thumbnail of a picture of this size. */
export function thumbSize(width: number, height: number): { thumbWidth: number; thumbHeight: number } {
  const scale = Math.min(1, derivedSizes.thumb.edge / Math.max(width, height));
  const scaled = (side: number) => Math.max(1, Math.round(side * scale));
  return { thumbWidth: scaled(width), thumbHeight: scaled(height) };
}

async function stage(
  store: ObjectStore,
  picture: Pixels,
  { edge, quality }: { edge: number; quality: number },
): Promise<StagedObject> {
  const bytes = await openPixels(picture)
    .resize(edge, edge, { fit: 'inside', withoutEnlargement: true })
    .jpeg({ quality, progressive: false })
    .toBuffer();
  return store.stage(Readable.from([bytes]), { maxBytes: bytes.length });
}
