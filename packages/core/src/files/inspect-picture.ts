import { uploadLimits } from '@garboard/contract/limits';
import { findJpegHarm, type JpegHarm } from './jpeg-structure.ts';
import { sharp } from './sharp.ts';

export type PictureVerdict =
  /** With the Exif block where it was found on the way. */
  { size: { width: number; height: number }; exif?: Buffer | null } | { problem: string };

/** A picture is damaged, as only decoding shows; the message is for whoever sent it. */
export class PictureDamaged extends Error {
  override name = 'PictureDamaged';
}

const millions = (n: number) => (n / 1e6).toLocaleString('en-GB', { maximumFractionDigits: 1 });

/** Why a picture of this size isn't taken, or null. */
export function tooManyPixels(width: number, height: number): string | null {
  const { side, pixels } = uploadLimits;
  if (width < 1 || height < 1) return 'The picture has no size. Send it again from the camera.';
  if (Math.max(width, height) <= side && width * height <= pixels) return null;
  return (
    `The picture is too large: ${width} by ${height} pixels. At most ` +
    `${millions(pixels)} million pixels and ${side} on a side are accepted; scale it down.`
  );
}

/** How a picture is looked at: wholly decoded, or only what costs little where a decoder comes to it soon anyway. */
export type Look = 'whole' | 'quick';

const cutShort = 'The file is cut short: part of the picture is missing. Send it again from the camera.';
const damaged = 'The file is damaged: its picture can’t be read to the end. Send it again from the camera.';

/**
 * Looks at a picture: first at its header alone, so that a small file can't unfold into a huge picture, then by
 * decoding it wholly at a tiny size, so that damage shows now and not when the report is made. A quick look at a JPEG
 * follows its markers instead, which takes a tenth of the time; damage within a scan is then for whoever decodes it.
 */
export async function inspectPicture(path: string, look: Look = 'whole'): Promise<PictureVerdict> {
  const head = await sharp(path, { limitInputPixels: false })
    .metadata()
    .catch(() => null);
  if (!head?.width || !head.height) {
    return {
      problem: 'The file is damaged: its picture header can’t be read. Send it again from the camera.',
    };
  }
  const tooLarge = tooManyPixels(head.width, head.height);
  if (tooLarge) return { problem: tooLarge };
  const problem =
    head.format === 'jpeg' && look === 'quick' ? inWords(await findJpegHarm(path)) : await decode(path);
  if (problem) return { problem };
  return { size: { width: head.autoOrient.width, height: head.autoOrient.height } };
}

const inWords = (harm: JpegHarm): string | null => harm && (harm === 'cut' ? cutShort : damaged);

async function decode(path: string): Promise<string | null> {
  try {
    await sharp(path, { limitInputPixels: uploadLimits.pixels, failOn: 'warning', sequentialRead: true })
      .resize(48, 48, { fit: 'inside' })
      .raw()
      .toBuffer();
    return null;
  } catch (error) {
    const message = error instanceof Error ? error.message : '';
    const cut = /premature end of JPEG image|end of (file|input|stream)|truncat|unable to parse image/i;
    return cut.test(message) ? cutShort : damaged;
  }
}
