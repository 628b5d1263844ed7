import { createRequire } from 'node:module';
import { sharp } from '../files/sharp.ts';

// From npm, so that a label is the same on a machine without any font of its own.
const fontfile = createRequire(import.meta.url).resolve('dejavu-fonts-ttf/ttf/DejaVuSans-Bold.ttf');

const plate = '#14233a';

const escaped = (text: string) => text.replace(/&/g, '&amp;').replace(/</g, '&lt;').replace(/>/g, '&gt;');

/** A label as a picture: white type on a dark plate, at most `maxWidth` wide; the type is about `pixels` high. */
export async function drawLabel(text: string, pixels: number, maxWidth: number): Promise<Buffer> {
  const pad = Math.round(pixels * 0.4);
  const line = await sharp({
    text: {
      text: `<span foreground="white">${escaped(text)}</span>`,
      font: `DejaVu Sans Bold ${pixels}`,
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
