import { openPixels, type Pixels } from './draw-marks.ts';

/** Columns of brightness that are compared in pairs, giving eight bits a row. */
const columns = 9;
const rows = 8;

/** A step in brightness, of 255, up to which two neighbours count as equal: even grounds then don't flicker. */
const evenStep = 1;

/**
 * The 64-bit difference hash of nine by eight brightnesses, row by row: a bit says that the next one to the right is
 * brighter. Sixteen hex digits.
 *
 * @throws RangeError for another number of brightnesses
 */
export function differenceHashOf(brightness: Uint8Array): string {
  if (brightness.length !== columns * rows) {
    throw new RangeError(`A difference hash is of ${columns * rows} brightnesses, not ${brightness.length}.`);
  }
  let hash = 0n;
  for (let row = 0; row < rows; row++) {
    for (let column = 1; column < columns; column++) {
      const at = row * columns + column;
      const brighter = (brightness[at] ?? 0) - (brightness[at - 1] ?? 0) > evenStep;
      hash = (hash << 1n) | (brighter ? 1n : 0n);
    }
  }
  return hash.toString(16).padStart(16, '0');
}

/** The difference hash of an upright picture: nearly the same for other sizes, other compression and other light. */
export async function differenceHash(upright: Pixels): Promise<string> {
  // Softened first, so that an edge that moves by a little moves little.
  const soft = await openPixels(upright)
    .greyscale()
    .resize(columns * 8, rows * 8, { fit: 'fill' })
    .blur(3)
    .raw({ depth: 'uchar' })
    .toBuffer();
  const brightness = await openPixels({ data: soft, width: columns * 8, height: rows * 8, channels: 1 })
    .resize(columns, rows, { fit: 'fill', kernel: 'mitchell' })
    .toColourspace('b-w')
    .raw({ depth: 'uchar' })
    .toBuffer();
  return differenceHashOf(brightness);
}
