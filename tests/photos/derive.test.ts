import { mkdtemp, readdir, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Mark } from '@garboard/contract/photos';
import { deriveImages, readUpright } from '@garboard/core/photos/derive-images';
import { type ObjectStore, openObjectStore } from '@garboard/platform/object-store';
import sharp, { type Sharp } from 'sharp';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';

let folder: string;
let store: ObjectStore;

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'garboard-derive-'));
  store = await openObjectStore(`file://${join(folder, 'store')}`, folder);
});
afterAll(() => rm(folder, { recursive: true, force: true }));

const all = ['screen', 'print', 'thumb'] as const;

afterEach(() => store.sweepStaging(-1));

async function derive(bytes: Buffer, quarterTurns = 0, marks: Mark[] = []) {
  const path = join(folder, 'original');
  await writeFile(path, bytes);
  const upright = await readUpright(path, 'image/jpeg', quarterTurns);
  const made = await deriveImages(store, upright, all, marks);
  const open = (size: (typeof all)[number]) => sharp(made[size].localPath);
  return { made, open };
}

/** Mean colour of a patch around a point given in shares. */
async function colourAt(picture: Sharp, x: number, y: number) {
  const { width, height } = await picture.metadata();
  const patch = { left: Math.round(x * width) - 2, top: Math.round(y * height) - 2, width: 5, height: 5 };
  const { channels } = await sharp(await picture.clone().extract(patch).png().toBuffer()).stats();
  return channels.map((c) => Math.round(c.mean));
}

/** Left half red, right half blue, 2000 by 1000. */
const halves = () =>
  sharp({ create: { width: 2000, height: 1000, channels: 3, background: '#d00000' } }).composite([
    {
      input: { create: { width: 1000, height: 1000, channels: 3, background: '#0000d0' } },
      left: 1000,
      top: 0,
    },
  ]);

describe('sizes', () => {
  it('are upright, as large as stated and free of metadata', async () => {
    const bytes = await halves()
      .withMetadata({ orientation: 6 })
      .withExifMerge({
        IFD0: { Make: 'Invented' },
        IFD3: { GPSLatitudeRef: 'N', GPSLatitude: '38/1 42/1 0/1' },
      })
      .jpeg()
      .toBuffer();
    expect((await sharp(bytes).metadata()).exif).toBeDefined();
    const { open } = await derive(bytes);
    const edges = { screen: 1600, print: 1200, thumb: 320 };
    for (const size of all) {
      const meta = await open(size).metadata();
      expect(meta).toMatchObject({
        format: 'jpeg',
        width: edges[size] / 2,
        height: edges[size],
        isProgressive: false,
        space: 'srgb',
      });
      for (const kind of ['exif', 'icc', 'xmp', 'iptc'] as const) expect(meta[kind], kind).toBeUndefined();
      expect(meta.orientation).toBeUndefined();
    }
    // Orientation 6 is turned 90 degrees clockwise: what was left comes to the top.
    const [red] = await colourAt(open('screen'), 0.5, 0.1);
    const [, , blue] = await colourAt(open('screen'), 0.5, 0.9);
    expect(red).toBeGreaterThan(180);
    expect(blue).toBeGreaterThan(180);
  });

  it('turn by quarters on top of that', async () => {
    const { open } = await derive(await halves().jpeg().toBuffer(), 3);
    expect(await open('screen').metadata()).toMatchObject({ width: 800, height: 1600 });
    // Three quarters clockwise: what was right comes to the top.
    const [, , blue] = await colourAt(open('screen'), 0.5, 0.1);
    expect(blue).toBeGreaterThan(180);
  });

  it('never enlarge', async () => {
    const { open } = await derive(
      await sharp({ create: { width: 200, height: 100, channels: 3, background: '#888' } })
        .png()
        .toBuffer(),
    );
    for (const size of all) expect(await open(size).metadata()).toMatchObject({ width: 200, height: 100 });
  });

  it('put transparent and grey pictures on white, in colour', async () => {
    const clear = sharp({
      create: { width: 400, height: 300, channels: 4, background: { r: 0, g: 0, b: 0, alpha: 0 } },
    });
    const first = await derive(await clear.png().toBuffer());
    expect(await colourAt(first.open('screen'), 0.5, 0.5)).toEqual([255, 255, 255]);
    const grey = await sharp({ create: { width: 400, height: 300, channels: 3, background: '#808080' } })
      .toColourspace('b-w')
      .png()
      .toBuffer();
    const box: Mark = { shape: 'box', from: { x: 0.2, y: 0.2 }, to: { x: 0.8, y: 0.8 } };
    const second = await derive(grey, 0, [box]);
    const [r, g, b] = await colourAt(second.open('screen'), 0.2, 0.5);
    expect((r ?? 0) - (b ?? 0)).toBeGreaterThan(30);
    expect(g).toBeDefined();
  });

  it('are the same bytes when made again', async () => {
    const bytes = await halves().jpeg().toBuffer();
    const [a, b] = [await derive(bytes), await derive(bytes)];
    expect(all.map((size) => a.made[size].sha256)).toEqual(all.map((size) => b.made[size].sha256));
  });

  it('fail on a file that is no picture and leave nothing staged', async () => {
    await expect(derive(Buffer.from('no picture'))).rejects.toThrow();
    expect(await readdir(join(folder, 'store', 'staging'))).toEqual([]);
  });
});

describe('marks', () => {
  const plain = () =>
    sharp({ create: { width: 1600, height: 1200, channels: 3, background: '#4a6a80' } })
      .jpeg()
      .toBuffer();
  const isSignal = ([r = 0, g = 0, b = 0]: number[]) => r > 190 && g < 170 && b < 120;

  it.each<[string, Mark, [number, number]]>([
    ['arrow', { shape: 'arrow', from: { x: 0.2, y: 0.5 }, to: { x: 0.8, y: 0.5 } }, [0.5, 0.5]],
    ['line', { shape: 'line', from: { x: 0.5, y: 0.1 }, to: { x: 0.5, y: 0.9 } }, [0.5, 0.5]],
    ['box', { shape: 'box', from: { x: 0.8, y: 0.8 }, to: { x: 0.3, y: 0.3 } }, [0.3, 0.5]],
    ['ring', { shape: 'ring', centre: { x: 0.5, y: 0.5 }, radius: 0.2 }, [0.7, 0.5]],
  ])('burns in the %s where it belongs and nowhere else', async (_name, mark, [x, y]) => {
    const { open } = await derive(await plain(), 0, [mark]);
    expect(await colourAt(open('screen'), x, y)).toSatisfy(isSignal);
    expect(await colourAt(open('screen'), 0.05, 0.05)).not.toSatisfy(isSignal);
    // And into the smaller sizes too.
    const small = await colourAt(open('print'), x, y);
    expect(small[0]).toBeGreaterThan(150);
  });

  it('writes a label whole, with characters of markup as characters', async () => {
    const label = (text: string): Mark => ({ shape: 'label', at: { x: 0.98, y: 0.98 }, text });
    const { open } = await derive(await plain(), 0, [label('Crack <12 mm & growing>')]);
    const area = { left: 1100, top: 1100, width: 500, height: 100 };
    const { channels } = await sharp(await open('screen').extract(area).png().toBuffer()).stats();
    expect(channels[0]?.max).toBeGreaterThan(230);
    expect(channels[0]?.min).toBeLessThan(40);
  });

  it('blurs a region beyond recovery and leaves the rest', async () => {
    const stripes = Buffer.alloc(1600 * 1200 * 3);
    for (let i = 0; i < stripes.length; i += 3) stripes.fill(Math.floor(i / 3 / 8) % 2 ? 255 : 0, i, i + 3);
    const bytes = await sharp(stripes, { raw: { width: 1600, height: 1200, channels: 3 } })
      .png()
      .toBuffer();
    const { open } = await derive(bytes, 0, [
      { shape: 'blur', from: { x: 0.25, y: 0.25 }, to: { x: 0.75, y: 0.75 } },
    ]);
    const spread = async (left: number) => {
      const patch = await open('screen')
        .extract({ left, top: 500, width: 120, height: 120 })
        .png()
        .toBuffer();
      return (await sharp(patch).stats()).channels[0]?.stdev ?? 0;
    };
    expect(await spread(700)).toBeLessThan(12);
    expect(await spread(40)).toBeGreaterThan(90);
  });

  it('leaves nothing of what a blur hides: another text of the same greyness gives the same picture', async () => {
    const sheet = (text: string, at: { x: number; y: number }) =>
      sharp(
        Buffer.from(
          `<svg xmlns="http://www.w3.org/2000/svg" width="1600" height="1200"><rect width="1600" height="1200" fill="#ddd"/>
          <g transform="translate(${at.x} ${at.y})">${[...text].map((c, i) => `<rect x="${(Number(c) * 7) % 18}" y="${i * 3}" width="6" height="2" fill="#111"/>`).join('')}</g></svg>`,
        ),
      )
        .png()
        .toBuffer();
    const [x, y] = [800, 600];
    for (const [width, height] of [
      [24, 30],
      [90, 90],
    ] as const) {
      const mark: Mark = {
        ...{ shape: 'blur', from: { x: x / 1600, y: y / 1200 } },
        to: { x: (x + width) / 1600, y: (y + height) / 1200 },
      };
      const area = { left: x, top: y, width, height };
      const seen = async (text: string) => {
        const { open } = await derive(await sheet(text, { x, y }), 0, [mark]);
        return open('screen').extract(area).greyscale().raw().toBuffer();
      };
      const [one, other] = [await seen('1234567890'), await seen('1357924680')];
      const most = Math.max(...one.map((v, i) => Math.abs(v - (other[i] ?? 0))));
      // Of 204 between ink and paper; less than compression alone may change.
      expect(most, `${width} by ${height}`).toBeLessThan(24);
    }
  });

  it('turn with nothing: they are drawn on the turned picture', async () => {
    const mark: Mark = { shape: 'line', from: { x: 0.1, y: 0.1 }, to: { x: 0.9, y: 0.1 } };
    const { open } = await derive(await plain(), 1, [mark]);
    expect(await open('screen').metadata()).toMatchObject({ width: 1200, height: 1600 });
    expect(await colourAt(open('screen'), 0.5, 0.1)).toSatisfy(isSignal);
  });
});
