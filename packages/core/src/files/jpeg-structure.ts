import { type FileHandle, open } from 'node:fs/promises';

/** What a JPEG file shows of harm without being decoded: its end is missing, or what lies between is not JPEG. */
export type JpegHarm = 'cut' | 'damaged' | null;

const windowBytes = 256 * 1024;

/** A part of a file that is held in memory, moved on as it is read. */
class Window {
  readonly #bytes = Buffer.allocUnsafe(windowBytes);
  #start = 0;
  #length = 0;
  constructor(readonly file: FileHandle) {}

  /** What the file holds from `position` on: at least `least` bytes unless it ends before. */
  async from(position: number, least: number): Promise<Buffer> {
    const offset = position - this.#start;
    if (offset < 0 || offset + least > this.#length) {
      this.#start = position;
      this.#length = (await this.file.read(this.#bytes, 0, windowBytes, position)).bytesRead;
      return this.#bytes.subarray(0, this.#length);
    }
    return this.#bytes.subarray(offset, this.#length);
  }
}

const startOfImage = 0xd8;
const endOfImage = 0xd9;
const startOfScan = 0xda;
const isRestart = (marker: number) => marker >= 0xd0 && marker <= 0xd7;
/** DHT, SOS, DQT, DNL, DRI, APPn and COM; frames (SOFn, DAC) stand before the first scan only. */
const mayFollow = (marker: number, inScan: boolean) =>
  marker === 0xc4 ||
  (marker >= 0xda && marker <= 0xdd) ||
  (marker >= 0xe0 && marker <= 0xef) ||
  marker === 0xfe ||
  (!inScan && marker >= 0xc0 && marker <= 0xcf);

/**
 * Walks through a JPEG file from marker to marker, by ITU-T T.81, to its end-of-image; what follows that, such as a
 * telephone's second picture, is its maker's affair. Takes a tenth of the time of decoding, and notices a file that
 * ends too early or whose middle was overwritten with something else; values that are wrong within a scan are seen by
 * a decoder only.
 */
export async function findJpegHarm(path: string): Promise<JpegHarm> {
  const file = await open(path);
  try {
    return await walk(new Window(file));
  } finally {
    await file.close();
  }
}

async function walk(window: Window): Promise<JpegHarm> {
  const head = await window.from(0, 2);
  if (head.length < 2) return 'cut';
  if (head[0] !== 0xff || head[1] !== startOfImage) return 'damaged';
  let inScan = false;
  for (let position = 2; ; ) {
    const bytes = await window.from(position, 4);
    if (bytes.length < 2) return 'cut';
    if (bytes[0] !== 0xff) return 'damaged';
    const marker = bytes[1] ?? 0;
    // Any marker may be led by more of these.
    if (marker === 0xff) {
      position += 1;
      continue;
    }
    if (marker === endOfImage) return inScan ? null : 'damaged';
    if (!mayFollow(marker, inScan)) return 'damaged';
    if (bytes.length < 4) return 'cut';
    const length = bytes.readUInt16BE(2);
    if (length < 2) return 'damaged';
    position += 2 + length;
    if (marker === startOfScan) {
      const end = await endOfScan(window, position);
      if (typeof end === 'string') return end;
      inScan = true;
      position = end;
    }
  }
}

/** Where the next marker stands that isn't a restart, or what is wrong before one. */
async function endOfScan(window: Window, start: number): Promise<number | 'cut' | 'damaged'> {
  for (let position = start; ; ) {
    const bytes = await window.from(position, 3);
    if (bytes.length < 2) return 'cut';
    let at = bytes.indexOf(0xff);
    while (at !== -1 && at + 1 < bytes.length) {
      const next = bytes[at + 1] ?? 0;
      if (next === 0xff) {
        if (at + 2 >= bytes.length) break;
        // More of these may lead a marker, but never the zero that says that the value itself is 255.
        if (bytes[at + 2] === 0) return 'damaged';
        at += 1;
        continue;
      }
      if (next !== 0 && !isRestart(next)) return position + at;
      at = bytes.indexOf(0xff, at + 2);
    }
    if (at === 0 && bytes.length < 3) return 'cut';
    position += at === -1 ? bytes.length : at;
  }
}
