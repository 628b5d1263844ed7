import { join } from 'node:path';
import { createCanvas } from '@napi-rs/canvas';
import type { PDFDocumentProxy } from 'pdfjs-dist/legacy/build/pdf.mjs';
import sharp from 'sharp';
import { eachPage } from '../printing.ts';

/** A page in shades of grey, one byte a pixel. */
export interface PageImage {
  width: number;
  height: number;
  grey: Buffer;
}

/** Where the accepted pages lie. */
export const acceptedDir = join(import.meta.dirname, 'accepted');
export const acceptedFile = (name: string, page: number): string =>
  join(acceptedDir, `${name}-${String(page).padStart(2, '0')}.png`);

/** Enough to see a line of text move, and small to keep. */
const dotsPerInch = 50;

/** Every page of a PDF as a picture, drawn by another program than the one that made it. */
export async function pageImages(pdf: PDFDocumentProxy): Promise<PageImage[]> {
  return eachPage(pdf, async (page) => {
    const viewport = page.getViewport({ scale: dotsPerInch / 72 });
    const width = Math.ceil(viewport.width);
    const height = Math.ceil(viewport.height);
    const canvas = createCanvas(width, height);
    const canvasContext = canvas.getContext('2d') as unknown as CanvasRenderingContext2D;
    await page.render({ canvas: null, canvasContext, viewport }).promise;
    return greyOf(await sharp(canvas.toBuffer('image/png')).toBuffer());
  });
}

/** A picture's pixels in grey. */
export async function greyOf(png: Buffer | string): Promise<PageImage> {
  const { data, info } = await sharp(png)
    .flatten({ background: '#ffffff' })
    .greyscale()
    .raw()
    .toBuffer({ resolveWithObject: true });
  return { width: info.width, height: info.height, grey: data };
}

/** Writes a page to be accepted; sixteen greys are enough to compare with. */
export async function writePage(file: string, { width, height, grey }: PageImage): Promise<void> {
  await sharp(grey, { raw: { width, height, channels: 1 } })
    .png({ palette: true, colours: 16, compressionLevel: 9 })
    .toFile(file);
}

/**
 * The share of pixels that differ by more than a quarter of the range from every pixel next to their place on the
 * other page: what smoothing and half a pixel's shift leave alone.
 */
export function differingShare(a: PageImage, b: PageImage): number {
  if (a.width !== b.width || a.height !== b.height) return 1;
  let differing = 0;
  for (let y = 1; y < a.height - 1; y++) {
    for (let x = 1; x < a.width - 1; x++) {
      const value = a.grey[y * a.width + x] ?? 0;
      let nearest = 255;
      for (let dy = -1; dy <= 1; dy++) {
        for (let dx = -1; dx <= 1; dx++) {
          const other = b.grey[(y + dy) * b.width + x + dx] ?? 0;
          nearest = Math.min(nearest, Math.abs(value - other));
        }
      }
      if (nearest > 64) differing++;
    }
  }
  return differing / (a.width * a.height);
}

/** How far down its text area a page is used, from 0 to 1; the running head and foot don't count. */
export function usedHeight({ width, height, grey }: PageImage): number {
  const top = Math.round(height * 0.075);
  const bottom = Math.round(height * 0.93);
  for (let y = bottom; y > top; y--) {
    for (let x = 0; x < width; x++) if ((grey[y * width + x] ?? 255) < 200) return (y - top) / (bottom - top);
  }
  return 0;
}

/** The share of the page that is inked. */
export function inkShare({ grey }: PageImage): number {
  let inked = 0;
  for (const value of grey) if (value < 200) inked++;
  return inked / grey.length;
}
