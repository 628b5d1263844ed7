import { createRequire } from 'node:module';
import { sharp } from '../files/sharp.ts';

// From npm, so that a label is the same on a machine without any font of its own.
const fontfile = createRequire(import.meta.url).resolve('dejavu-fonts-ttf/ttf/DejaVuSans-Bold.ttf');

const escaped = (text: string) => text.replace(/&/g, '&amp;').replace(/</g, '&lt;').replace(/>/g, '&gt;');

export interface LabelLook {
  /** Height of the type and the room around it, in pixels. */
  type: number;
  pad: number;
  plate: string;
  maxWidth: number;
}

/** A label as a picture: white type on a plate. */
export async function drawLabel(text: string, { type, pad, plate, maxWidth }: LabelLook): Promise<Buffer> {
  const line = await sharp({
    text: {
      text: `<span foreground="white">${escaped(text)}</span>`,
      font: `DejaVu Sans Bold ${type}`,
      fontfile,
      dpi: 72,
      rgba: true,
    },
  })
    .png()
    .toBuffer();
  return sharp(line)
    .resize({ width: Math.max(1, maxWidth - 2 * pad), withoutEnlargement: true })
    .flatten({ background: plate })
    .extend({ top: pad, bottom: pad, left: pad, right: pad, background: plate })
    .png()
    .toBuffer();
}
