import { createHash } from 'node:crypto';
import { readdir, readFile } from 'node:fs/promises';
import { connect } from 'node:net';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { inTransaction } from '@garboard/db/database';
import { newId } from '@garboard/db/ids';
import { openLogger } from '@garboard/platform/logger';
import { NoRetryError } from '@garboard/platform/queue';
import { buildFirm, buildJpeg, buildPerson } from '@garboard/seed/builders';
import { collectObjectJob } from '@garboard/worker/jobs/collect-object';
import { derivePhotoJob } from '@garboard/worker/jobs/derive-photo';
import sharp from 'sharp';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type Caller, startServer, type TestServer } from '../support/server.ts';

let server: TestServer;
let firm: Awaited<ReturnType<typeof buildFirm<'surveyor'>>>;
let surveyor: Caller;
beforeAll(async () => {
  server = await startServer();
  firm = await buildFirm(server.db, ['surveyor']);
  surveyor = server.as(firm.surveyor);
});
afterAll(() => server.close());

const log = openLogger('test-jobs', 'fatal');
const jobs = () => ({ db: server.db, store: server.store, log });
const staged = () => readdir(join(server.dataDir, 'objects', 'staging'));

async function newSurvey(): Promise<{ id: string }> {
  const vessel = await surveyor.post('/v1/vessels').send({ name: 'Bobolink' }).expect(201);
  const body = { vesselId: vessel.body.id, purpose: 'insurance' };
  return (await surveyor.post('/v1/surveys').send(body).expect(201)).body;
}

function upload(surveyId: string, files: [string, Buffer][], caller = surveyor) {
  const request = caller.post(`/v1/surveys/${surveyId}/photos`);
  for (const [name, bytes] of files) request.attach('file', bytes, name);
  return request;
}

const derive = (photoId: string) =>
  derivePhotoJob(jobs(), { firmId: firm.id, photoId }, { lastAttempt: true });

describe('uploading', () => {
  it('keeps the good files of an upload and names the bad ones', async () => {
    const { id } = await newSurvey();
    const good = await buildJpeg(1);
    const cut = (await buildJpeg(2)).subarray(0, 9000);
    const up = await upload(id, [
      ['../stem.jpg', good],
      ['cut.jpg', cut],
      ['page.jpg', Buffer.from('<html>')],
      ['second.jpg', await buildJpeg(3, { orientation: 6 })],
    ]).expect(201);
    expect(up.body.items).toHaveLength(2);
    expect(up.body.items[0]).toMatchObject({
      fileName: 'stem.jpg',
      state: 'processing',
      width: 1200,
      height: 900,
      takenAt: '2026-05-04T10:20:30.000Z',
      images: { thumb: null, screen: null, print: null },
    });
    expect(up.body.items[1]).toMatchObject({ width: 900, height: 1200 });
    expect(up.body.refused.map((r: { name: string }) => r.name)).toEqual(['cut.jpg', 'page.jpg']);
    expect(await staged()).toEqual([]);
    expect((await surveyor.get(`/v1/surveys/${id}`)).body.photoCount).toBe(2);
    // The same bytes again: the photo there is, counted once.
    const again = await upload(id, [['again.jpg', good]]).expect(201);
    expect(again.body.items[0].id).toBe(up.body.items[0].id);
    expect((await surveyor.get(`/v1/surveys/${id}`)).body.photoCount).toBe(2);
  });

  it('makes one photo of the same file sent twice at once', async () => {
    const { id } = await newSurvey();
    const bytes = await buildJpeg(4);
    const both = await Promise.all([1, 2, 3].map((n) => upload(id, [[`${n}.jpg`, bytes]])));
    expect(both.map((r) => r.status)).toEqual([201, 201, 201]);
    expect(new Set(both.map((r) => r.body.items[0].id)).size).toBe(1);
    expect((await surveyor.get(`/v1/surveys/${id}`)).body.photoCount).toBe(1);
  });

  it('refuses when nothing can be taken, and leaves nothing behind', async () => {
    const { id } = await newSurvey();
    const bad = await upload(id, [['a.jpg', Buffer.from('no picture')]]).expect(422);
    expect(bad.body.type).toBe('/problems/files-refused');
    expect(bad.body.errors[0]).toMatchObject({
      pointer: 'a.jpg',
      detail: expect.stringContaining('Send JPEG'),
    });
    await upload(id, [['big.jpg', Buffer.alloc(41 * 1024 * 1024)]]).expect(413);
    const part = surveyor.post(`/v1/surveys/${id}/photos`).field('note', 'no file');
    expect((await part.expect(422)).body.detail).toMatch(/holds no file/);
    await surveyor.post(`/v1/surveys/${id}/photos`).send({}).expect(415);
    // A large file doesn't keep the one after it out.
    const mixed = await upload(id, [
      ['big.jpg', Buffer.alloc(41 * 1024 * 1024)],
      ['good.jpg', await buildJpeg(5)],
    ]).expect(201);
    expect(mixed.body.items).toHaveLength(1);
    expect(mixed.body.refused[0].problem).toContain('40 MB');
    expect(await staged()).toEqual([]);
  });

  it('refuses strangers, other firms and shut surveys before it reads', async () => {
    const { id } = await newSurvey();
    const bytes = await buildJpeg(6);
    await upload(id, [['a.jpg', bytes]], server.as(null)).expect(401);
    const other = await buildFirm(server.db, ['surveyor']);
    await upload(id, [['a.jpg', bytes]], server.as(other.surveyor)).expect(404);
    await surveyor.patch(`/v1/surveys/${id}`).send({ state: 'cancelled' }).expect(200);
    expect((await upload(id, [['a.jpg', bytes]]).expect(409)).body.detail).toMatch(/cancelled/);
  });

  it.each([
    ['after a line', '--b\r\n'],
    ['in the head of a part', '--b\r\n\r\n'],
    ['in a file', '--b\r\ncontent-disposition: form-data; name="file"; filename="a.jpg"\r\n\r\nabc'],
    [
      'before its last boundary',
      '--b\r\ncontent-disposition: form-data; name="file"; filename="a.jpg"\r\n\r\nabc\r\n--b\r\n',
    ],
  ])('says of a form that ends %s what is wrong with it, and keeps nothing', async (_where, text) => {
    const { id } = await newSurvey();
    const answer = await surveyor
      .post(`/v1/surveys/${id}/photos`)
      .set('content-type', 'multipart/form-data; boundary=b')
      .send(text)
      .expect(400);
    expect(answer.body.detail).toMatch(/breaks off before its end/);
    expect(await staged()).toEqual([]);
  });

  it('keeps nothing of an upload that breaks off', async () => {
    const { id } = await newSurvey();
    const good = await buildJpeg(7);
    const head =
      '--cut\r\nContent-Disposition: form-data; name="file"; filename="a.jpg"\r\nContent-Type: image/jpeg\r\n\r\n';
    const socket = connect(Number(new URL(server.url).port), '127.0.0.1');
    socket.on('error', () => undefined);
    socket.write(
      `POST /v1/surveys/${id}/photos HTTP/1.1\r\nHost: here\r\nAuthorization: Bearer ${firm.surveyor.token}\r\n` +
        `Content-Type: multipart/form-data; boundary=cut\r\nContent-Length: 9000000\r\n\r\n${head}`,
    );
    socket.write(good);
    socket.write(`\r\n${head}`);
    socket.write(good.subarray(0, 5000));
    await pause(400);
    expect((await staged()).length).toBeGreaterThan(0);
    socket.destroy();
    for (let i = 0; i < 40 && (await staged()).length > 0; i++) await pause(50);
    expect(await staged()).toEqual([]);
    expect((await surveyor.get(`/v1/surveys/${id}/photos`)).body.items).toEqual([]);
  });
});

describe('a photo', () => {
  it('is made into sizes, turned, marked, served by hash and removed with its files', async () => {
    const { id: surveyId } = await newSurvey();
    const up = await upload(surveyId, [['Wet “deck”.jpg', await buildJpeg(8)]]).expect(201);
    const photo = up.body.items[0];
    const path = `/v1/photos/${photo.id}`;
    expect((await surveyor.get(`${path}/image?size=thumb`).expect(404)).body.detail).toMatch(
      /being prepared/,
    );
    await derive(photo.id);
    await derive(photo.id);
    const ready = (await surveyor.get(path).expect(200)).body;
    expect(ready).toMatchObject({ state: 'ready', version: 1 });
    const image = await surveyor.get(ready.images.thumb).expect(200);
    expect(image.headers).toMatchObject({
      'content-type': 'image/jpeg',
      'cache-control': 'private, max-age=31536000, immutable',
      'x-content-type-options': 'nosniff',
    });
    expect(image.headers['content-disposition']).toContain(
      "filename*=UTF-8''Wet%20%E2%80%9Cdeck%E2%80%9D-thumb.jpg",
    );
    expect(await sharp(image.body).metadata()).toMatchObject({ width: 320, height: 240 });
    await surveyor
      .get(ready.images.thumb)
      .set('if-none-match', image.headers.etag ?? '')
      .expect(304);
    const open = await surveyor.get(`${path}/image?size=thumb&v=other`).expect(200);
    expect(open.headers['cache-control']).toBe('private, no-cache');
    const original = await surveyor.get(`${path}/image?size=original`).expect(200);
    expect(original.body.length).toBe(photo.bytes);

    const marks = [
      { shape: 'arrow', from: { x: 0.1, y: 0.1 }, to: { x: 0.5, y: 0.5 } },
      { shape: 'ring', centre: { x: 0.5, y: 0.5 }, radius: 0.2 },
      { shape: 'box', from: { x: 0.6, y: 0.6 }, to: { x: 0.8, y: 0.8 } },
      { shape: 'line', from: { x: 0.1, y: 0.9 }, to: { x: 0.9, y: 0.9 } },
      { shape: 'label', at: { x: 0.2, y: 0.2 }, text: 'Soft here' },
      { shape: 'blur', from: { x: 0.7, y: 0.1 }, to: { x: 0.9, y: 0.3 } },
    ];
    const turned = await surveyor
      .patch(path)
      .set('if-match', '"1"')
      .send({ quarterTurns: 1, marks })
      .expect(200);
    expect(turned.body).toMatchObject({ state: 'processing', width: 900, height: 1200, version: 2 });
    await surveyor.patch(path).set('if-match', '"1"').send({ caption: 'Late' }).expect(412);
    // A caption written meanwhile must not make the sizes go stale.
    await surveyor.patch(path).send({ caption: 'Soft at the chainplate' }).expect(200);
    await derive(photo.id);
    const marked = (await surveyor.get(path)).body;
    expect(marked).toMatchObject({ state: 'ready', caption: 'Soft at the chainplate', marks });
    expect(marked.images.thumb).not.toBe(ready.images.thumb);
    const hashOf = (address: string) => new URL(address, 'http://here').searchParams.get('v') ?? '';
    const old = hashOf(ready.images.thumb);
    await collectObjectJob(jobs(), { sha256: old });
    await collectObjectJob(jobs(), { sha256: photo.sha256 });
    expect(await server.store.has(old)).toBe(false);
    // Whatever is drawn over it and however it is turned, the original is what came.
    const bytes = await readFile(await server.store.localFile(photo.sha256));
    expect(createHash('sha256').update(bytes).digest('hex')).toBe(photo.sha256);

    await surveyor.delete(path).expect(204);
    await surveyor.get(path).expect(404);
    expect((await surveyor.get(`/v1/surveys/${surveyId}`)).body.photoCount).toBe(0);
    await collectObjectJob(jobs(), { sha256: photo.sha256 });
    expect(await server.store.has(photo.sha256)).toBe(false);
  });

  it('becomes failed at once, in words, when decoding shows that a part of it is gone', async () => {
    const { id: surveyId } = await newSurvey();
    const grain = { type: 'gaussian', mean: 128, sigma: 40 } as const;
    const create = { width: 1200, height: 900, channels: 3, background: '#777', noise: grain } as const;
    const whole = await sharp({ create }).jpeg({ quality: 90 }).toBuffer();
    const gap = Buffer.concat([whole.subarray(0, 100_000), whole.subarray(170_000)]);
    const up = await upload(surveyId, [['gap.jpg', gap]]).expect(201);
    const [photo] = up.body.items;
    const data = { firmId: firm.id, photoId: photo.id };
    await expect(derivePhotoJob(jobs(), data, { lastAttempt: false })).rejects.toThrow(NoRetryError);
    const { body } = await surveyor.get(`/v1/photos/${photo.id}`);
    expect(body.state).toBe('failed');
    expect(body.problem).toMatch(/^The file is (cut short|damaged): .* Send it again from the camera\.$/);
    expect(await staged()).toEqual([]);
  });

  it('becomes failed on the last attempt only', async () => {
    const { id: surveyId } = await newSurvey();
    const photo = (await upload(surveyId, [['a.jpg', await buildJpeg(9)]])).body.items[0];
    await server.store.remove(photo.sha256);
    const data = { firmId: firm.id, photoId: photo.id };
    await expect(derivePhotoJob(jobs(), data, { lastAttempt: false })).rejects.toThrow();
    expect((await surveyor.get(`/v1/photos/${photo.id}`)).body.state).toBe('processing');
    await expect(derivePhotoJob(jobs(), data, { lastAttempt: true })).rejects.toThrow();
    expect((await surveyor.get(`/v1/photos/${photo.id}`)).body.state).toBe('failed');
  });

  it('stays while a finding shows it, and is hidden from parties until a report shows it', async () => {
    const { id: surveyId } = await newSurvey();
    const up = await upload(surveyId, [
      ['a.jpg', await buildJpeg(10)],
      ['b.jpg', await buildJpeg(11)],
    ]);
    const [a, b] = up.body.items;
    for (const photo of [a, b]) await derive(photo.id);
    const finding = {
      system: 'deck',
      title: 'Soft deck',
      observed: 'Soft.',
      recommendation: 'Dry it.',
      urgency: 'note',
      photoIds: [a.id],
    };
    await surveyor.post(`/v1/surveys/${surveyId}/findings`).send(finding).expect(201);
    expect((await surveyor.delete(`/v1/photos/${a.id}`).expect(409)).body.detail).toMatch(
      /Finding 1, “Soft deck”, shows/,
    );

    const owner = await buildPerson(server.db);
    await inTransaction(server.db, [firm.id], async (tx) => {
      const base = { firmId: firm.id, surveyId };
      await tx.party.create({
        data: { id: newId(), ...base, personId: owner.id, role: 'owner', name: owner.name, released: true },
      });
      const report = { id: newId(), ...base, kind: 'full', revision: 1, snapshot: {}, requestedBy: 'x' };
      await tx.report.create({ data: { ...report, state: 'issued' } });
      await tx.reportPhoto.create({ data: { firmId: firm.id, reportId: report.id, photoId: b.id } });
    });
    expect((await surveyor.delete(`/v1/photos/${b.id}`).expect(409)).body.detail).toMatch(/revision 1/);
    const party = server.as(owner);
    const list = await party.get(`/v1/surveys/${surveyId}/photos`).expect(200);
    expect(list.body.items.map((p: { id: string }) => p.id)).toEqual([b.id]);
    await surveyor.patch(`/v1/photos/${b.id}`).send({ caption: 'Working words' }).expect(200);
    expect((await party.get(`/v1/photos/${b.id}`).expect(200)).body.caption).toBe('');
    await party.get(`/v1/photos/${b.id}/image?size=print`).expect(200);
    await party.get(`/v1/photos/${b.id}/image?size=original`).expect(403);
    await party.get(`/v1/photos/${a.id}/image?size=thumb`).expect(404);
    await party.patch(`/v1/photos/${b.id}`).send({ caption: 'Mine' }).expect(403);
    await party.delete(`/v1/photos/${b.id}`).expect(403);
  });

  it('comes in the order it was taken, page by page', async () => {
    const { id: surveyId } = await newSurvey();
    const days = ['2026:05:06 08:00:00', '2026:05:04 08:00:00', '2026:05:05 08:00:00'];
    const files = await Promise.all(
      days.map(
        async (takenAt, i): Promise<[string, Buffer]> => [`${i}.jpg`, await buildJpeg(20 + i, { takenAt })],
      ),
    );
    await upload(surveyId, files).expect(201);
    const first = (await surveyor.get(`/v1/surveys/${surveyId}/photos?limit=2`)).body;
    const rest = (await surveyor.get(`/v1/surveys/${surveyId}/photos?limit=2&cursor=${first.next}`)).body;
    const names = [...first.items, ...rest.items].map((p: { fileName: string }) => p.fileName);
    expect(names).toEqual(['1.jpg', '2.jpg', '0.jpg']);
    expect(rest.next).toBeNull();
  });
});
