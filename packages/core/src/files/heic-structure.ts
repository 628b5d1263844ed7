import type { FileHandle } from 'node:fs/promises';

/** What a HEIC file says about its main picture, read from its boxes (ISO/IEC 14496-12 and 23008-12), not decoded. */
export interface HeicStructure {
  /** How the main picture is coded, such as `hvc1`, or `grid` of such tiles. */
  coding: string;
  /** Pixels before turning, cropped as the file asks. */
  width: number;
  height: number;
  /** Quarter turns anticlockwise; null when the file neither turns nor mirrors by itself. */
  turns: number | null;
  /** The Exif block as TIFF bytes, if there is one. */
  exif: Buffer | null;
  /** Where its last item ends: a shorter file is cut short. */
  end: number;
}

// Phones write these; what is inside is looked at apart.
const heicTypes = new Set(['image/heic', 'image/heif', 'image/heic-sequence', 'image/heif-sequence']);

/** Whether a file of this type, found by its content, is read as HEIC. */
export const isHeic = (mediaType: string): boolean => heicTypes.has(mediaType);

interface Box {
  type: string;
  body: Buffer;
}
interface Item {
  type: string;
  start: number;
  length: number;
  /** Whether `start` counts from the begin of the file. */
  inFile: boolean;
  end: number;
}

/** Far more than the description of a picture of a hundred tiles takes. */
const mostMeta = 4 * 1024 * 1024;

/** Reads the description of a HEIC file. @returns null when it isn't built as one */
export async function readHeicStructure(file: FileHandle): Promise<HeicStructure | null> {
  try {
    const meta = await findMeta(file);
    if (!meta) return null;
    const boxes = boxesIn(meta.subarray(4));
    const primary = primaryId(one(boxes, 'pitm'));
    const items = itemsOf(one(boxes, 'iinf'), one(boxes, 'iloc'));
    const main = items.get(primary);
    const iprp = boxesIn(one(boxes, 'iprp'));
    const properties = propertiesOf(boxesIn(one(iprp, 'ipco')), iprp, primary);
    const of = (type: string) => properties.find((p) => p.type === type)?.body;
    const [size, crop] = [of('ispe'), of('clap')];
    if (!main || !size) return null;
    const turned = of('irot') ?? of('imir');
    const exifItem = [...items.values()].find((item) => item.type === 'Exif' && item.inFile);
    return {
      coding: main.type,
      width: crop ? Math.floor(crop.readUInt32BE(0) / crop.readUInt32BE(4)) : size.readUInt32BE(4),
      height: crop ? Math.floor(crop.readUInt32BE(8) / crop.readUInt32BE(12)) : size.readUInt32BE(8),
      turns: turned ? (of('irot')?.readUInt8(0) ?? 0) & 3 : null,
      exif: exifItem ? await readExif(file, exifItem) : null,
      end: Math.max(...[...items.values()].map((item) => item.end)),
    };
  } catch (error) {
    // A number that points outside the boxes; anything else is a fault of the disk.
    if (error instanceof RangeError || error instanceof MissingBox) return null;
    throw error;
  }
}

class MissingBox extends Error {}

/** The `meta` box among those at the top of the file. */
async function findMeta(file: FileHandle): Promise<Buffer | null> {
  const { size: fileSize } = await file.stat();
  const head = Buffer.alloc(16);
  for (let at = 0, seen = 0; at + 8 <= fileSize && seen < 64; seen++) {
    await file.read(head, 0, 16, at);
    const short = head.readUInt32BE(0);
    const header = short === 1 ? 16 : 8;
    const length = short === 1 ? Number(head.readBigUInt64BE(8)) : short === 0 ? fileSize - at : short;
    if (length < header) return null;
    if (head.toString('latin1', 4, 8) === 'meta') {
      if (length > mostMeta || at + length > fileSize) return null;
      const body = Buffer.alloc(length - header);
      await file.read(body, 0, body.length, at + header);
      return body;
    }
    at += length;
  }
  return null;
}

function boxesIn(bytes: Buffer): Box[] {
  const boxes: Box[] = [];
  for (let at = 0; at + 8 <= bytes.length; ) {
    const length = bytes.readUInt32BE(at) || bytes.length - at;
    if (length < 8 || at + length > bytes.length) throw new RangeError('A box reaches beyond its parent.');
    boxes.push({ type: bytes.toString('latin1', at + 4, at + 8), body: bytes.subarray(at + 8, at + length) });
    at += length;
  }
  return boxes;
}

function one(boxes: readonly Box[], type: string): Buffer {
  const box = boxes.find((b) => b.type === type);
  if (!box) throw new MissingBox(type);
  return box.body;
}

const primaryId = (pitm: Buffer) => (pitm.readUInt8(0) === 0 ? pitm.readUInt16BE(4) : pitm.readUInt32BE(4));

/** Kinds and places of the items, by id. */
function itemsOf(iinf: Buffer, iloc: Buffer): Map<number, Item> {
  const types = new Map<number, string>();
  for (const { type, body } of boxesIn(iinf.subarray(iinf.readUInt8(0) === 0 ? 6 : 8))) {
    const version = body.readUInt8(0);
    if (type !== 'infe' || version < 2) continue;
    const wide = version > 2;
    const id = wide ? body.readUInt32BE(4) : body.readUInt16BE(4);
    types.set(id, body.toString('latin1', wide ? 10 : 8, wide ? 14 : 12));
  }
  const items = new Map<number, Item>();
  const version = iloc.readUInt8(0);
  const sizes = iloc.readUInt16BE(4);
  const [offsetSize, lengthSize, baseSize] = [sizes >> 12, (sizes >> 8) & 15, (sizes >> 4) & 15];
  const indexSize = version > 0 ? sizes & 15 : 0;
  let at = 6;
  const take = (bytes: number): number => {
    at += bytes;
    if (bytes === 0) return 0;
    return bytes === 8 ? Number(iloc.readBigUInt64BE(at - 8)) : iloc.readUIntBE(at - bytes, bytes);
  };
  const count = take(version < 2 ? 2 : 4);
  for (let i = 0; i < count; i++) {
    const id = take(version < 2 ? 2 : 4);
    const method = version > 0 ? take(2) & 15 : 0;
    take(2);
    const base = take(baseSize);
    const item: Item = { type: types.get(id) ?? '', start: 0, length: 0, inFile: method === 0, end: 0 };
    for (let extent = 0, extents = take(2); extent < extents; extent++) {
      take(indexSize);
      const start = base + take(offsetSize);
      const length = take(lengthSize);
      if (extent === 0) Object.assign(item, { start, length });
      if (item.inFile) item.end = Math.max(item.end, start + length);
    }
    items.set(id, item);
  }
  return items;
}

/** The properties of an item, in the order in which they apply. */
function propertiesOf(all: readonly Box[], iprp: readonly Box[], itemId: number): Box[] {
  const found: Box[] = [];
  for (const { type, body } of iprp) {
    if (type !== 'ipma') continue;
    const [wideId, wideIndex] = [body.readUInt8(0) > 0, (body.readUInt8(3) & 1) === 1];
    let at = 8;
    for (let entry = body.readUInt32BE(4); entry > 0; entry--) {
      const id = wideId ? body.readUInt32BE(at) : body.readUInt16BE(at);
      at += wideId ? 4 : 2;
      for (let links = body.readUInt8(at++); links > 0; links--) {
        const index = wideIndex ? body.readUInt16BE(at) & 0x7fff : body.readUInt8(at) & 0x7f;
        at += wideIndex ? 2 : 1;
        const property = all[index - 1];
        if (id === itemId && property) found.push(property);
      }
    }
  }
  return found;
}

/** The TIFF part of an Exif item, which begins with how far in it stands. */
async function readExif(file: FileHandle, { start, length }: Item): Promise<Buffer | null> {
  if (length < 12 || length > mostMeta) return null;
  const bytes = Buffer.alloc(length);
  const { bytesRead } = await file.read(bytes, 0, length, start);
  if (bytesRead < length) return null;
  const tiff = bytes.subarray(Math.min(length, 4 + bytes.readUInt32BE(0)));
  return tiff.length >= 8 ? tiff : null;
}
