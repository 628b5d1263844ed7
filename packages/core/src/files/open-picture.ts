import { open } from 'node:fs/promises';
import { uploadLimits } from '@garboard/contract/limits';
import type { Sharp } from 'sharp';
import { decodeHeic, HeicUnreadable } from './decode-heic.ts';
import { isHeic, readHeicStructure } from './heic-structure.ts';
import { heicOrientation } from './inspect-heic.ts';
import { sharp } from './sharp.ts';

/**
 * Opens a kept picture, upright as its camera meant it.
 *
 * @param failOn the least of a decoder's complaints that counts
 * @throws HeicUnreadable; errors of damage in other pictures come when the pixels are asked for
 */
export async function openPicture(
  path: string,
  mediaType: string,
  failOn: 'warning' | 'error' = 'error',
): Promise<Sharp> {
  if (isHeic(mediaType)) return openHeic(path);
  const input = { limitInputPixels: uploadLimits.pixels, failOn, sequentialRead: true } as const;
  return sharp(path, input).autoOrient();
}

async function openHeic(path: string): Promise<Sharp> {
  const file = await open(path);
  const structure = await readHeicStructure(file).finally(() => file.close());
  if (!structure) throw new HeicUnreadable('The HEIC file could not be decoded: its description is damaged.');
  const { data, width, height } = await decodeHeic(path);
  const lying = sharp(data, { raw: { width, height, channels: 4 }, limitInputPixels: uploadLimits.pixels });
  return turnUpright(lying, await heicOrientation(structure));
}

/** By the Exif tag Orientation: mirrored first, then turned clockwise. */
function turnUpright(picture: Sharp, orientation: number): Sharp {
  const mirrored = [2, 4, 5, 7].includes(orientation) ? picture.flop() : picture;
  const degrees = { 3: 180, 4: 180, 5: 270, 6: 90, 7: 90, 8: 270 }[orientation];
  return degrees === undefined ? mirrored : mirrored.rotate(degrees);
}
