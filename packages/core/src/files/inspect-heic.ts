import { open } from 'node:fs/promises';
import { readExif } from './capture-time.ts';
import { type HeicStructure, readHeicStructure } from './heic-structure.ts';
import { type PictureVerdict, tooManyPixels } from './inspect-picture.ts';

/** How the picture of a HEIC file is to be turned, as a value of the Exif tag Orientation. */
export async function heicOrientation({ turns, exif }: HeicStructure): Promise<number> {
  // By ISO/IEC 23008-12 the file's own turns count, which the decoder applies, and Exif repeats them. Some programs
  // write the tag alone and leave the picture lying.
  if (turns !== null || !exif) return 1;
  const orientation = (await readExif(exif))?.Orientation;
  return typeof orientation === 'number' && orientation >= 1 && orientation <= 8 ? orientation : 1;
}

/**
 * Looks at the structure of a HEIC file without decoding it, which is the worker's: whether it is whole, holds a
 * picture coded as phones do, and how large that is.
 */
export async function inspectHeic(path: string): Promise<PictureVerdict> {
  const file = await open(path);
  try {
    const structure = await readHeicStructure(file);
    if (!structure) {
      return {
        problem:
          'This HEIC picture is damaged: its description can’t be read. Export it as JPEG and send that.',
      };
    }
    if (structure.end > (await file.stat()).size) {
      return {
        problem: 'The file is cut short: part of the picture is missing. Send it again from the phone.',
      };
    }
    if (!['hvc1', 'grid', 'iovl', 'iden'].includes(structure.coding)) {
      return {
        problem: `This HEIC file holds a picture coded as ${structure.coding.replace(/[^\w]/g, '?')}, which isn’t read here. Export it as JPEG and send that.`,
      };
    }
    const { width, height, turns, exif } = structure;
    const problem = tooManyPixels(width, height);
    if (problem) return { problem };
    const lies = turns === null ? (await heicOrientation(structure)) >= 5 : turns % 2 === 1;
    return { size: lies ? { width: height, height: width } : { width, height }, exif };
  } finally {
    await file.close();
  }
}
