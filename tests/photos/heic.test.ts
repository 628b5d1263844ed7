import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { decodeHeic, HeicUnreadable } from '@garboard/core/files/decode-heic';
import { inspectHeic } from '@garboard/core/files/inspect-heic';
import { readUpright } from '@garboard/core/photos/derive-images';
import { inTransaction } from '@garboard/db/database';
import { openLogger } from '@garboard/platform/logger';
import { NoRetryError } from '@garboard/platform/queue';
import { buildFirm, buildJpeg } from '@garboard/seed/builders';
import { derivePhotoJob } from '@garboard/worker/jobs/derive-photo';
import sharp from 'sharp';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { encodeHeic, turnedBy } from '../support/heic.ts';
import { type Caller, startServer, type TestServer } from '../support/server.ts';

let folder: string;
let server: TestServer;
let firm: Awaited<ReturnType<typeof buildFirm<'surveyor'>>>;
let surveyor: Caller;
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'garboard-heic-test-'));
  server = await startServer();
  firm = await buildFirm(server.db, ['surveyor']);
  surveyor = server.as(firm.surveyor);
});
afterAll(async () => {
  await server.close();
  await rm(folder, { recursive: true, force: true });
});

const log = openLogger('test-heic', 'fatal');

async function kept(bytes: Buffer): Promise<string> {
  const path = join(folder, `${bytes.length}-${Math.random()}.heic`);
  await writeFile(path, bytes);
  return path;
}

/** Left half red, right half blue. */
async function halves(width: number, height: number, orientation = 1): Promise<Buffer> {
  const right = { create: { width: width / 2, height, channels: 3, background: '#1020d0' } } as const;
  return sharp({ create: { width, height, channels: 3, background: '#d01020' } })
    .composite([{ input: right, left: width / 2, top: 0 }])
    .withMetadata({ orientation })
    .jpeg()
    .toBuffer();
}

async function newSurvey(): Promise<string> {
  const vessel = await surveyor.post('/v1/vessels').send({ name: 'Tern Kettle' }).expect(201);
  const body = { vesselId: vessel.body.id, purpose: 'insurance' };
  return (await surveyor.post('/v1/surveys').send(body).expect(201)).body.id;
}
const upload = (surveyId: string, bytes: Buffer) =>
  surveyor.post(`/v1/surveys/${surveyId}/photos`).attach('file', bytes, 'IMG_0001.HEIC');

describe('a HEIC photo', () => {
  it('is taken with its time, kept untouched and made into the same sizes as any other', async () => {
    const jpeg = await buildJpeg(21, { width: 2016, height: 1512, takenAt: '2026:06:07 08:09:10' });
    const heic = await encodeHeic(jpeg);
    const up = await upload(await newSurvey(), heic).expect(201);
    const photo = up.body.items[0];
    expect(photo).toMatchObject({
      ...{ mediaType: 'image/heic', width: 2016, height: 1512, thumbWidth: 320, thumbHeight: 240 },
      ...{ takenAt: '2026-06-07T08:09:10.000Z', state: 'processing', dhash: null },
    });
    await derivePhotoJob(
      { db: server.db, store: server.store, log },
      { firmId: firm.id, photoId: photo.id },
      { lastAttempt: false },
    );
    const ready = (await surveyor.get(`/v1/photos/${photo.id}`).expect(200)).body;
    expect(ready).toMatchObject({
      state: 'ready',
      problem: null,
      dhash: expect.stringMatching(/^[0-9a-f]{16}$/),
    });
    const screen = (await surveyor.get(ready.images.screen).expect(200)).body;
    expect(await sharp(screen).metadata()).toMatchObject({ format: 'jpeg', width: 1600, height: 1200 });
    // The same picture as through JPEG, up to what compression does.
    const [a, b] = await Promise.all(
      [screen, jpeg].map((bytes) =>
        sharp(bytes).resize(64, 48, { fit: 'fill' }).removeAlpha().raw().toBuffer(),
      ),
    );
    const off = [...(a ?? [])].map((v, i) => Math.abs(v - (b?.[i] ?? 0)));
    expect(off.reduce((sum, v) => sum + v, 0) / off.length).toBeLessThan(4);
    const original = await surveyor.get(`/v1/photos/${photo.id}/image?size=original`).expect(200);
    expect(original.headers['content-type']).toBe('image/heic');
    expect(Buffer.compare(await readFile(await server.store.localFile(photo.sha256)), heic)).toBe(0);
  });

  it.each([
    ['nothing', 1, null, [400, 200], 'left'],
    ['Exif alone', 6, null, [200, 400], 'top'],
    ['Exif alone, the other way', 8, null, [200, 400], 'bottom'],
    ['Exif alone, upside down', 3, null, [400, 200], 'right'],
    ['its own turn', 1, 3, [200, 400], 'top'],
    ['its own turn, as Exif says too', 6, 3, [200, 400], 'top'],
    ['its own turn against Exif', 6, 2, [400, 200], 'right'],
  ] as const)('stands upright by %s', async (_by, orientation, turns, [width, height], redAt) => {
    const plain = await encodeHeic(await halves(400, 200, orientation));
    const path = await kept(turns === null ? plain : turnedBy(plain, turns));
    expect(await inspectHeic(path)).toMatchObject({ size: { width, height } });
    const upright = await readUpright(path, 'image/heic', 0);
    expect([upright.width, upright.height]).toEqual([width, height]);
    const places = {
      left: { left: 10, top: height / 2 - 5 },
      right: { left: width - 20, top: height / 2 - 5 },
      top: { left: width / 2 - 5, top: 10 },
      bottom: { left: width / 2 - 5, top: height - 20 },
    };
    const reds: Record<string, boolean> = {};
    for (const [place, at] of Object.entries(places)) {
      const raw = { width: upright.width, height: upright.height, channels: upright.channels };
      const patch = await sharp(upright.data, { raw })
        .extract({ ...at, width: 10, height: 10 })
        .png()
        .toBuffer();
      const [r, , b] = (await sharp(patch).stats()).channels.map((c) => c.mean);
      reds[place] = (r ?? 0) > 150 && (b ?? 0) < 100;
    }
    expect(reds[redAt], JSON.stringify(reds)).toBe(true);
    const opposite = { left: 'right', right: 'left', top: 'bottom', bottom: 'top' }[redAt];
    expect(reds[opposite], JSON.stringify(reds)).toBe(false);
  });

  it('is decoded without holding up anything else', async () => {
    const path = await kept(await encodeHeic(await buildJpeg(22, { width: 4032, height: 3024 })));
    let longest = 0;
    let last = performance.now();
    const timer = setInterval(() => {
      longest = Math.max(longest, performance.now() - last);
      last = performance.now();
    }, 5);
    const before = performance.now();
    const { width, height, data } = await decodeHeic(path);
    const took = performance.now() - before;
    clearInterval(timer);
    expect([width, height, data.length]).toEqual([4032, 3024, 4032 * 3024 * 4]);
    expect(longest).toBeLessThan(took / 2);
  });
});

describe('a HEIC photo that is no good', () => {
  it('is refused when it is cut short or its description is damaged', async () => {
    const heic = await encodeHeic(await buildJpeg(23));
    const id = await newSurvey();
    const cut = await upload(id, heic.subarray(0, heic.length - 2000)).expect(422);
    expect(cut.body.detail).toMatch(/IMG_0001.HEIC: The file is cut short.*Send it again/);
    const hurt = Buffer.from(heic);
    hurt.fill(0xff, 100, 400);
    expect((await upload(id, hurt).expect(422)).body.detail).toMatch(/damaged.*JPEG/);
    expect((await surveyor.get(`/v1/surveys/${id}/photos`)).body.items).toEqual([]);
  });

  it('is refused by the size it claims, without decoding', async () => {
    const heic = Buffer.from(await encodeHeic(await buildJpeg(24)));
    const ispe = heic.indexOf('ispe', 0, 'latin1');
    heic.writeUInt32BE(60_000, ispe + 8);
    expect(await inspectHeic(await kept(heic))).toMatchObject({
      problem: expect.stringMatching(/too large: 60000 by/),
    });
  });

  it('ends as failed with a word for people when it can’t be decoded, and is never lost', async () => {
    const heic = Buffer.from(await encodeHeic(await buildJpeg(25)));
    // Whole by its structure; what is coded inside is not.
    const data = heic.indexOf('mdat', 0, 'latin1') + 4;
    heic.fill(0x55, data, data + Math.floor((heic.length - data) * 0.8));
    const id = await newSurvey();
    const photo = (await upload(id, heic).expect(201)).body.items[0];
    const job = derivePhotoJob(
      { db: server.db, store: server.store, log },
      { firmId: firm.id, photoId: photo.id },
      { lastAttempt: false },
    );
    await expect(job).rejects.toThrow(NoRetryError);
    const failed = (await surveyor.get(`/v1/photos/${photo.id}`).expect(200)).body;
    expect(failed).toMatchObject({ state: 'failed', problem: expect.stringMatching(/can’t be read.*JPEG/) });
    expect(await server.store.has(photo.sha256)).toBe(true);
    await expect(decodeHeic(await kept(heic))).rejects.toThrow(HeicUnreadable);
    // Nothing derived is left half made.
    const row = await inTransaction(server.db, [firm.id], (tx) =>
      tx.photo.findUniqueOrThrow({ where: { id: photo.id } }),
    );
    expect(row.thumbHash).toBeNull();
  });
});
