import { mkdtemp, readdir, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Readable } from 'node:stream';
import { crc32, deflateSync } from 'node:zlib';
import { captureInstant } from '@garboard/core/files/capture-time';
import { cleanFileName } from '@garboard/core/files/file-name';
import { type Accepts, inspectUpload } from '@garboard/core/files/inspect-upload';
import { type ObjectStore, openObjectStore } from '@garboard/platform/object-store';
import sharp from 'sharp';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';

let folder: string;
let store: ObjectStore;

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'garboard-inspect-'));
  store = await openObjectStore(`file://${folder}`, folder);
});
afterAll(() => rm(folder, { recursive: true, force: true }));

const noise = (width: number, height: number) =>
  sharp({
    create: {
      width,
      height,
      channels: 3,
      background: '#777',
      noise: { type: 'gaussian', mean: 128, sigma: 40 },
    },
  });

/** What becomes of one file; the staged copy is dropped again. */
async function inspect(name: string, bytes: Buffer, accepts: Accepts = 'pictures', timeZone = 'UTC') {
  const staged = await store.stage(Readable.from([bytes]), { maxBytes: 100e6 });
  const now = new Date('2026-11-25T12:00:00Z');
  const upload = await inspectUpload([{ name, staged, maxBytes: 100e6 }], { accepts, timeZone, now });
  await staged.discard();
  return { accepted: upload.accepted[0], problem: upload.refused[0]?.problem };
}

/** A PNG that claims a size in its header and holds next to nothing. */
function bombPng(width: number, height: number): Buffer {
  const chunk = (type: string, data: Buffer) => {
    const body = Buffer.concat([Buffer.from(type), data]);
    const length = Buffer.alloc(4);
    length.writeUInt32BE(data.length);
    const crc = Buffer.alloc(4);
    crc.writeUInt32BE(crc32(body));
    return Buffer.concat([length, body, crc]);
  };
  const header = Buffer.alloc(13);
  header.writeUInt32BE(width, 0);
  header.writeUInt32BE(height, 4);
  header.set([8, 2, 0, 0, 0], 8);
  const signature = Buffer.from('89504e470d0a1a0a', 'hex');
  const data = deflateSync(Buffer.alloc(1_000_000));
  return Buffer.concat([
    signature,
    chunk('IHDR', header),
    chunk('IDAT', data),
    chunk('IEND', Buffer.alloc(0)),
  ]);
}

describe('pictures that are accepted', () => {
  it.each(['jpeg', 'png', 'webp'] as const)('takes %s by its content', async (format) => {
    const { accepted, problem } = await inspect(
      'picture.bin',
      await noise(120, 80).toFormat(format).toBuffer(),
    );
    expect(problem).toBeUndefined();
    expect(accepted).toMatchObject({
      mediaType: `image/${format}`,
      size: { width: 120, height: 80 },
      takenAt: null,
    });
  });

  it('takes a mislabelled picture as what it is', async () => {
    const { accepted } = await inspect('stern.jpg', await noise(60, 40).png().toBuffer());
    expect(accepted?.mediaType).toBe('image/png');
  });

  it('reads the size upright and the time of capture with its offset', async () => {
    const bytes = await noise(120, 80)
      .withMetadata({ orientation: 6 })
      .withExifMerge({ IFD2: { DateTimeOriginal: '2026:05:04 10:11:12', OffsetTimeOriginal: '+02:00' } })
      .jpeg()
      .toBuffer();
    const { accepted } = await inspect('a.jpg', bytes);
    expect(accepted?.size).toEqual({ width: 80, height: 120 });
    expect(accepted?.takenAt?.toISOString()).toBe('2026-05-04T08:11:12.000Z');
  });

  it('reads a time without an offset in the zone of the survey, and ignores clocks never set', async () => {
    const dated = (at: string) =>
      noise(40, 30)
        .withExif({ IFD2: { DateTimeOriginal: at } })
        .jpeg()
        .toBuffer();
    const summer = await inspect('a.jpg', await dated('2026:07:01 09:00:00'), 'pictures', 'Europe/Lisbon');
    expect(summer.accepted?.takenAt?.toISOString()).toBe('2026-07-01T08:00:00.000Z');
    const unset = await inspect('b.jpg', await dated('1980:01:01 00:00:00'));
    expect(unset.accepted?.takenAt).toBeNull();
    const ahead = await inspect('c.jpg', await dated('2031:01:01 00:00:00'));
    expect(ahead.accepted?.takenAt).toBeNull();
  });
});

describe('pictures that are refused', () => {
  it('notices a file cut short, in each format', async () => {
    for (const format of ['jpeg', 'png', 'webp'] as const) {
      const whole = await noise(600, 400).toFormat(format).toBuffer();
      const { problem } = await inspect(`cut.${format}`, whole.subarray(0, Math.floor(whole.length * 0.6)));
      expect(problem, format).toMatch(/cut short|damaged/);
    }
  });

  it('notices a JPEG that lacks only its last bytes', async () => {
    const whole = await noise(600, 400).jpeg().toBuffer();
    expect((await inspect('cut.jpg', whole.subarray(0, -300))).problem).toMatch(/cut short.*Send it again/);
  });

  it('notices damage in the middle', async () => {
    // The same noise at every run: now and then damage happens to decode, and then nobody can notice it.
    let seed = 1;
    const pixels = Buffer.alloc(1200 * 800 * 3);
    for (let i = 0; i < pixels.length; i++) {
      seed = (seed * 16_807) % 2_147_483_647;
      pixels[i] = seed & 0xff;
    }
    const raw = { width: 1200, height: 800, channels: 3 } as const;
    const bytes = await sharp(pixels, { raw }).jpeg().toBuffer();
    bytes.fill(0xff, Math.floor(bytes.length / 2), Math.floor(bytes.length / 2) + 3000);
    expect((await inspect('hurt.jpg', bytes)).problem).toMatch(/damaged|cut short/);
  });

  it('decodes evidence before it is taken; a photo whose markers are whole is left to the worker', async () => {
    const whole = await noise(1200, 900).jpeg({ quality: 90 }).toBuffer();
    const gap = Buffer.concat([whole.subarray(0, 100_000), whole.subarray(170_000)]);
    expect((await inspect('gap.jpg', gap)).problem).toBeUndefined();
    expect((await inspect('gap.jpg', gap, 'evidence')).problem).toMatch(/damaged|cut short/);
  });

  it('follows the markers of progressive pictures, restarts and second pictures, to where they end', async () => {
    const plain = await noise(600, 400).jpeg().toBuffer();
    const pictures = {
      progressive: await noise(600, 400).jpeg({ progressive: true, mozjpeg: true }).toBuffer(),
      'a second picture behind it': Buffer.concat([plain, plain.subarray(0, 5_000)]),
      'filling before a marker': Buffer.concat([plain.subarray(0, -2), Buffer.from([0xff, 0xff, 0xd9])]),
      tall: await noise(64, 9_000).jpeg().toBuffer(),
    };
    for (const [what, bytes] of Object.entries(pictures)) {
      expect((await inspect('a.jpg', bytes)).problem, what).toBeUndefined();
      // Wherever it is cut, that is said.
      for (const share of [0.02, 0.5, 0.93]) {
        const cut = bytes.subarray(0, Math.floor(Math.min(bytes.length, plain.length) * share));
        if (what !== 'tall') expect((await inspect('a.jpg', cut)).problem, what).toMatch(/cut short|damaged/);
      }
    }
  });

  it('refuses a decompression bomb by its header, without decoding it', async () => {
    const bomb = bombPng(30_000, 30_000);
    const before = performance.now();
    expect((await inspect('bomb.png', bomb)).problem).toMatch(/too large: 30000 by 30000 pixels/);
    expect((await inspect('wide.png', bombPng(20_001, 2))).problem).toMatch(/too large/);
    expect(performance.now() - before).toBeLessThan(2000);
  });

  it('refuses what is no picture of ours and says what it is', async () => {
    const gif = await noise(20, 20).gif().toBuffer();
    expect((await inspect('a.jpg', gif)).problem).toContain('image/gif');
    expect(
      (await inspect('a.jpg', Buffer.from('<svg xmlns="http://www.w3.org/2000/svg"/>'))).problem,
    ).toMatch(/Send JPEG/);
    expect((await inspect('a.jpg', Buffer.from('<script>alert(1)</script>'))).problem).toContain(
      'no picture',
    );
    expect((await inspect('a.jpg', Buffer.alloc(0))).problem).toMatch(/empty/);
  });

  it('refuses HEIC that can’t be read and says how to send it', async () => {
    const brand = Buffer.from('ftypheic\0\0\0\0heicmif1');
    const length = Buffer.alloc(4);
    length.writeUInt32BE(brand.length + 4);
    const { problem } = await inspect('IMG_1.HEIC', Buffer.concat([length, brand, Buffer.alloc(4000)]));
    expect(problem).toMatch(/HEIC.*Export it as JPEG/);
  });

  it('says so when a file was too large to be kept', async () => {
    const options = { accepts: 'pictures', timeZone: 'UTC', now: new Date() } as const;
    const upload = await inspectUpload(
      [{ name: 'big.jpg', staged: null, maxBytes: 40 * 1024 * 1024 }],
      options,
    );
    expect(upload.refused).toEqual([
      { name: 'big.jpg', problem: expect.stringContaining('larger than the 40 MB'), tooLarge: true },
    ]);
  });
});

describe('documents', () => {
  const pdf = Buffer.from('%PDF-1.4\n1 0 obj\n<<>>\nendobj\ntrailer\n<<>>\n%%EOF\n');

  it('takes a PDF as evidence only', async () => {
    expect((await inspect('invoice.pdf', pdf, 'evidence')).accepted).toMatchObject({
      mediaType: 'application/pdf',
      size: null,
    });
    expect((await inspect('invoice.pdf', pdf)).problem).toContain('application/pdf');
  });

  it('refuses a PDF without its end', async () => {
    expect((await inspect('invoice.pdf', pdf.subarray(0, 30), 'evidence')).problem).toMatch(/cut short/);
  });
});

describe('names and times', () => {
  it('keeps the name alone, in plain characters, not too long', () => {
    expect(cleanFileName('..\\..\\etc/passwd')).toBe('passwd');
    expect(cleanFileName('a\u0000b\nc\u202egpj.exe')).toBe('abcgpj.exe');
    expect(cleanFileName('é'.repeat(300))).toHaveLength(200);
    expect(cleanFileName(undefined)).toBe('unnamed');
    expect(cleanFileName('dir/')).toBe('unnamed');
  });

  it('finds the instant around a change of clocks', () => {
    // Clocks in Lisbon go forward at 01:00 UTC on 29 March 2026.
    const at = (date: string) => captureInstant(date, undefined, 'Europe/Lisbon')?.toISOString();
    expect(at('2026:03:29 00:59:00')).toBe('2026-03-29T00:59:00.000Z');
    expect(at('2026:03:29 02:30:00')).toBe('2026-03-29T01:30:00.000Z');
    expect(captureInstant('2026:05:04 10:00:00', '-05:00', 'UTC')?.toISOString()).toBe(
      '2026-05-04T15:00:00.000Z',
    );
    expect(captureInstant('0000:00:00 00:00:00', undefined, 'UTC')).toBeNull();
  });
});

it('leaves nothing in the store', async () => {
  expect(await readdir(join(folder, 'staging'))).toEqual([]);
  expect(await readdir(folder)).toEqual(['staging']);
});
