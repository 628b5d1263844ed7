import { labelType, markColour, markColours, markPath, markStroke } from '@garboard/contract/mark-paths';
import type { Mark } from '@garboard/contract/photos';
import type { OverlayOptions, Sharp } from 'sharp';
import { sharp } from '../files/sharp.ts';
import { drawLabel } from './draw-label.ts';

/** Pixels of an upright picture, without alpha. */
export interface Pixels {
  data: Buffer;
  width: number;
  height: number;
  channels: 1 | 2 | 3 | 4;
}

/** Opens pixels for further work. */
export const openPixels = ({ data, width, height, channels }: Pixels): Sharp =>
  sharp(data, { raw: { width, height, channels } });

/** Burns marks into a picture: blurred regions first, so that other marks stay sharp on them. */
export async function drawMarks(picture: Pixels, marks: readonly Mark[]): Promise<Pixels> {
  if (marks.length === 0) return picture;
  const overlays: OverlayOptions[] = [];
  for (const mark of marks) if (mark.shape === 'blur') overlays.push(...(await blurred(picture, mark)));
  const drawn = marks.map((mark) => drawing(mark, picture)).join('');
  if (drawn) {
    const { width, height } = picture;
    const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height}">${drawn}</svg>`;
    overlays.push({ input: Buffer.from(svg), left: 0, top: 0 });
  }
  for (const mark of marks) if (mark.shape === 'label') overlays.push(await label(picture, mark));
  const { data, info } = await openPixels(picture)
    .composite(overlays)
    .removeAlpha()
    .raw()
    .toBuffer({ resolveWithObject: true });
  return { data, width: info.width, height: info.height, channels: info.channels as Pixels['channels'] };
}

type Shape<S extends Mark['shape']> = Extract<Mark, { shape: S }>;
type Size = { width: number; height: number };

/** The rectangle between two corners in whole pixels, at least one pixel, within the picture. */
function region({ from, to }: Shape<'blur'>, { width, height }: Size) {
  const left = Math.min(Math.floor(Math.min(from.x, to.x) * width), width - 1);
  const top = Math.min(Math.floor(Math.min(from.y, to.y) * height), height - 1);
  const right = Math.max(left + 1, Math.ceil(Math.max(from.x, to.x) * width));
  const bottom = Math.max(top + 1, Math.ceil(Math.max(from.y, to.y) * height));
  return { left, top, width: right - left, height: bottom - top };
}

/** Most cells along a side of a blurred region, and the least pixels that are averaged into one along each side. */
const blurCells = 6;
const blurCellPixels = 12;

// A blur alone can be undone in part. Averaged down to a few cells first, what was there is gone for good.
async function blurred(picture: Pixels, mark: Shape<'blur'>): Promise<OverlayOptions[]> {
  const area = region(mark, picture);
  const cellsOf = (side: number) => Math.max(1, Math.min(blurCells, Math.floor(side / blurCellPixels)));
  const cells = await openPixels(picture)
    .extract(area)
    .resize(cellsOf(area.width), cellsOf(area.height), { fit: 'fill', kernel: 'linear' })
    .png()
    .toBuffer();
  const input = await sharp(cells)
    .resize(area.width, area.height, { fit: 'fill', kernel: 'cubic' })
    .png()
    .toBuffer();
  return [{ input, left: area.left, top: area.top }];
}

async function label(picture: Pixels, mark: Shape<'label'>): Promise<OverlayOptions> {
  const drawn = await drawLabel(mark.text, {
    ...labelType(picture),
    plate: markColour(mark),
    maxWidth: picture.width,
  });
  const { width, height } = await sharp(drawn).metadata();
  // Fits into the picture whole, even when it stands at the edge of a very low one.
  const input =
    height > picture.height ? await sharp(drawn).resize({ height: picture.height }).toBuffer() : drawn;
  return {
    input,
    left: Math.max(0, Math.min(Math.round(mark.at.x * picture.width), picture.width - width)),
    top: Math.max(0, Math.min(Math.round(mark.at.y * picture.height), picture.height - height)),
  };
}

function drawing(mark: Mark, size: Size): string {
  if (mark.shape === 'blur' || mark.shape === 'label') return '';
  const stroke = markStroke(size);
  const colour = markColour(mark);
  const path = markPath(mark, size);
  // Every line is drawn twice, the wider white one below, so that it shows on any ground.
  const lined = [
    { c: markColours.halo, w: stroke * 2 },
    { c: colour, w: stroke },
  ].map(
    ({ c, w }) =>
      `<path d="${path}" fill="none" stroke="${c}" stroke-width="${w}" stroke-linecap="round" stroke-linejoin="round"/>`,
  );
  if (mark.shape !== 'arrow') return lined.join('');
  const { x, y } = mark.from;
  const tail = `<circle cx="${x * size.width}" cy="${y * size.height}" r="${stroke * 1.8}" fill="${colour}" stroke="${markColours.halo}" stroke-width="${stroke / 2}"/>`;
  return `${lined.join('')}${tail}`;
}
