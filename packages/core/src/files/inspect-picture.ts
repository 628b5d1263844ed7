import { uploadLimits } from '@garboard/contract/limits';
import { sharp } from './sharp.ts';

export type PictureVerdict =
  /** With the Exif block where it was found on the way. */
  { size: { width: number; height: number }; exif?: Buffer | null } | { problem: string };

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

/**
 * Looks at a picture: first at its header alone, so that a small file can't unfold into a huge picture, then by
 * decoding it wholly at a tiny size, so that damage shows now and not when the report is made.
 */
export async function inspectPicture(path: string): Promise<PictureVerdict> {
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
  try {
    await sharp(path, { limitInputPixels: uploadLimits.pixels, failOn: 'warning', sequentialRead: true })
      .resize(48, 48, { fit: 'inside' })
      .raw()
      .toBuffer();
  } catch (error) {
    return { problem: damage(error instanceof Error ? error.message : '') };
  }
  return { size: { width: head.autoOrient.width, height: head.autoOrient.height } };
}

function damage(message: string): string {
  const cut = /premature end of JPEG image|end of (file|input|stream)|truncat|unable to parse image/i.test(
    message,
  );
  return cut
    ? 'The file is cut short: part of the picture is missing. Send it again from the camera.'
    : 'The file is damaged: its picture can’t be read to the end. Send it again from the camera.';
}
