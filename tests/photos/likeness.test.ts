import { differenceHash, differenceHashOf } from '@garboard/core/photos/difference-hash';
import { groupByLikeness, hammingDistance, likenessBits } from '@garboard/core/photos/likeness';
import type { SceneKey } from '@garboard/seed/scenes/index';
import { renderScene } from '@garboard/seed/scenes/render';
import sharp from 'sharp';
import { beforeAll, describe, expect, it } from 'vitest';
import { leastMs } from '../support/least-time.ts';

const keys: SceneKey[] = [
  ...(['larkspindle-afloat', 'oxbow-ashore', 'gas-locker-blocked', 'battery-loose', 'nav-light'] as const),
  ...(['hull-blisters', 'propeller', 'rudder-gap', 'exhaust-elbow', 'steering-ram', 'flares'] as const),
];

async function hashOf(jpeg: Buffer): Promise<string> {
  const { data, info } = await sharp(jpeg).autoOrient().raw().toBuffer({ resolveWithObject: true });
  return differenceHash({ data, width: info.width, height: info.height, channels: 3 });
}

const scenes = new Map<string, { jpeg: Buffer; hash: string }>();
beforeAll(async () => {
  for (const key of keys) {
    const options = { seed: 5, takenAt: new Date('2026-05-04'), orientation: 1, longSide: 700 } as const;
    const jpeg = Buffer.from(await renderScene(key, options));
    scenes.set(key, { jpeg, hash: await hashOf(jpeg) });
  }
}, 120_000);

async function cropped(jpeg: Buffer, share: number): Promise<Buffer> {
  const { width, height } = await sharp(jpeg).metadata();
  const [left, top] = [Math.round(width * share), Math.round(height * share)];
  return sharp(jpeg)
    .extract({ left, top, width: width - 2 * left, height: height - 2 * top })
    .jpeg()
    .toBuffer();
}

describe('the difference hash of a picture', () => {
  it('compares each brightness with the next, row by row, a single step being none', () => {
    expect(differenceHashOf(new Uint8Array(72))).toBe('0000000000000000');
    expect(differenceHashOf(Uint8Array.from({ length: 72 }, (_, i) => (i % 9) * 2))).toBe('ffffffffffffffff');
    const one = new Uint8Array(72);
    one[71] = 9;
    expect(differenceHashOf(one)).toBe('0000000000000001');
    one[0] = 8;
    one[1] = 10;
    one[2] = 11;
    expect(differenceHashOf(one)).toBe('8000000000000001');
    expect(() => differenceHashOf(new Uint8Array(64))).toThrow(RangeError);
  });

  it('tells distances in bits', () => {
    expect(hammingDistance('0000000000000000', 'ffffffffffffffff')).toBe(64);
    expect(hammingDistance('8000000000000001', '0000000080000000')).toBe(3);
  });

  it.each<[string, (jpeg: Buffer) => Promise<Buffer>]>([
    ['made smaller', (jpeg) => sharp(jpeg).resize(320).jpeg().toBuffer()],
    ['compressed harder', (jpeg) => sharp(jpeg).jpeg({ quality: 35 }).toBuffer()],
    ['a quarter brighter', (jpeg) => sharp(jpeg).modulate({ brightness: 1.25 }).jpeg().toBuffer()],
    ['a quarter darker', (jpeg) => sharp(jpeg).modulate({ brightness: 0.75 }).jpeg().toBuffer()],
    ['a little out of focus', (jpeg) => sharp(jpeg).blur(2).jpeg().toBuffer()],
    ['cropped by 2 % on each side', (jpeg) => cropped(jpeg, 0.02)],
    [
      'lying, with its orientation in Exif',
      (jpeg) => sharp(jpeg).rotate(270).withMetadata({ orientation: 6 }).jpeg().toBuffer(),
    ],
  ])('stays near when the picture is %s', async (_name, change) => {
    const distances: Record<string, number> = {};
    for (const [key, { jpeg, hash }] of scenes) {
      distances[key] = hammingDistance(hash, await hashOf(await change(jpeg)));
    }
    expect(Math.max(...Object.values(distances)), JSON.stringify(distances)).toBeLessThanOrEqual(
      likenessBits,
    );
  });

  it('is far from that of every other scene', () => {
    const all = [...scenes];
    for (const [i, [key, { hash }]] of all.entries()) {
      for (const [other, scene] of all.slice(i + 1)) {
        expect(hammingDistance(hash, scene.hash), `${key}, ${other}`).toBeGreaterThan(likenessBits);
      }
    }
  });
});

describe('groups of near-duplicates', () => {
  it('hold the takes of one scene and nothing else, led by the first', async () => {
    const photos: { id: string; dhash: string | null }[] = [];
    for (const [key, { jpeg, hash }] of scenes) {
      photos.push({ id: `${key} 1`, dhash: hash });
      photos.push({ id: `${key} 2`, dhash: await hashOf(await cropped(jpeg, 0.015)) });
    }
    photos.push({ id: 'not derived', dhash: null });
    const groups = groupByLikeness(photos);
    expect(Object.fromEntries(groups)).toEqual(
      Object.fromEntries(keys.flatMap((key) => [1, 2].map((n) => [`${key} ${n}`, `${key} 1`]))),
    );
  });

  it('leave pictures without features alone', async () => {
    const plain = (background: string) =>
      sharp({ create: { width: 400, height: 300, channels: 3, background } })
        .jpeg()
        .toBuffer();
    const photos = [
      { id: 'a', dhash: await hashOf(await plain('#ffffff')) },
      { id: 'b', dhash: await hashOf(await plain('#203040')) },
    ];
    expect(groupByLikeness(photos).size).toBe(0);
  });

  it('don’t grow from neighbour to neighbour', () => {
    const step = 'fffffff000000000';
    const photos = [
      { id: 'a', dhash: step },
      { id: 'b', dhash: 'fffffff0000000ff' },
      { id: 'c', dhash: 'fffffff00000ffff' },
    ];
    expect(Object.fromEntries(groupByLikeness(photos))).toEqual({ a: 'a', b: 'a' });
  });

  it('of 3 000 photos take less than a tenth of a second', () => {
    let seed = 1;
    const next = () => {
      seed = (Math.imul(seed, 1_103_515_245) + 12_345) >>> 0;
      return seed.toString(16).padStart(8, '0');
    };
    const photos = Array.from({ length: 3000 }, (_, i) => ({ id: String(i), dhash: next() + next() }));
    expect(leastMs(5, () => groupByLikeness(photos))).toBeLessThan(100);
  });
});
