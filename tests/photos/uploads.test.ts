import { createHash } from 'node:crypto';
import { readdir, rm, utimes } from 'node:fs/promises';
import { join } from 'node:path';
import { partMediaType } from '@garboard/contract/uploads';
import { tidyUploads } from '@garboard/core/uploads/tidy-uploads';
import { inTransaction } from '@garboard/db/database';
import { newId } from '@garboard/db/ids';
import { buildFirm, buildJpeg } from '@garboard/seed/builders';
import sharp from 'sharp';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { encodeHeic } from '../support/heic.ts';
import { type Caller, startServer, type TestServer } from '../support/server.ts';

let server: TestServer;
let firm: Awaited<ReturnType<typeof buildFirm<'surveyor' | 'office'>>>;
let surveyor: Caller;
beforeAll(async () => {
  server = await startServer();
  firm = await buildFirm(server.db, ['surveyor', 'office']);
  surveyor = server.as(firm.surveyor);
});
afterAll(() => server.close());

const partsFolder = () => join(server.dataDir, 'objects', 'parts');
const parts = () => readdir(partsFolder()).catch(() => []);
const sha256Of = (bytes: Buffer) => createHash('sha256').update(bytes).digest('hex');

async function newSurvey(): Promise<string> {
  const vessel = await surveyor.post('/v1/vessels').send({ name: 'Gannet Loom' }).expect(201);
  const body = { vesselId: vessel.body.id, purpose: 'insurance' };
  return (await surveyor.post('/v1/surveys').send(body).expect(201)).body.id;
}

function announced(bytes: Buffer, more: object = {}) {
  return { id: newId(), name: 'deck.jpg', bytes: bytes.length, sha256: sha256Of(bytes), ...more };
}
const announce = (surveyId: string, body: object, caller = surveyor) =>
  caller.post(`/v1/surveys/${surveyId}/uploads`).send(body);
const send = (id: string, offset: number, bytes: Buffer, caller = surveyor) =>
  caller
    .patch(`/v1/uploads/${id}`)
    .set('content-type', partMediaType)
    .set('upload-offset', String(offset))
    .send(bytes);
const photosOf = async (surveyId: string) =>
  (await surveyor.get(`/v1/surveys/${surveyId}/photos`).expect(200)).body.items;

/** Sends the rest of a file in parts of this size. */
async function sendRest(id: string, bytes: Buffer, from = 0, size = 20_000) {
  let answer = await send(id, from, bytes.subarray(from, from + size));
  while (answer.status === 200 && answer.body.received < bytes.length) {
    const at = answer.body.received;
    answer = await send(id, at, bytes.subarray(at, at + size));
  }
  return answer;
}

describe('an upload in parts', () => {
  it('becomes a photo with its id, caption and finding', async () => {
    const surveyId = await newSurvey();
    const finding = await surveyor
      .post(`/v1/surveys/${surveyId}/findings`)
      .send({ system: 'deck', title: 'Stanchion base loose', urgency: 'note' })
      .expect(201);
    const bytes = await buildJpeg(31, { takenAt: '2026:05:06 07:08:09' });
    const body = announced(bytes, { caption: 'Port side', findingId: finding.body.id });
    const first = await announce(surveyId, body).expect(201);
    expect(first.body).toEqual({
      ...{ id: body.id, surveyId, received: 0, bytes: bytes.length },
      ...{ state: 'receiving', photoId: null, problem: null },
    });
    const half = Math.floor(bytes.length / 2);
    const one = await send(body.id, 0, bytes.subarray(0, half)).expect(200);
    expect(one.body).toMatchObject({ received: half, state: 'receiving' });
    expect(one.headers['upload-offset']).toBe(String(half));
    expect((await surveyor.get(`/v1/uploads/${body.id}`).expect(200)).body).toEqual(one.body);
    const last = await send(body.id, half, bytes.subarray(half)).expect(200);
    expect(last.body).toMatchObject({ received: bytes.length, state: 'kept', photoId: body.id });
    const [photo] = await photosOf(surveyId);
    expect(photo).toMatchObject({
      ...{
        id: body.id,
        caption: 'Port side',
        fileName: 'deck.jpg',
        sha256: body.sha256,
        state: 'processing',
      },
      takenAt: '2026-05-06T07:08:09.000Z',
    });
    const shown = (await surveyor.get(`/v1/findings/${finding.body.id}`).expect(200)).body;
    expect(shown.photos.map((p: { id: string }) => p.id)).toEqual([body.id]);
    expect(shown.version).toBe(finding.body.version + 1);
    expect((await surveyor.get(`/v1/surveys/${surveyId}`)).body.photoCount).toBe(1);
    expect(await parts()).not.toContain(body.id);
  });

  it('is one photo however often announcing, parts and ending are repeated, also at once', async () => {
    const surveyId = await newSurvey();
    const bytes = await buildJpeg(32);
    const body = announced(bytes);
    const begun = await Promise.all([1, 2, 3].map(() => announce(surveyId, body)));
    expect(begun.map((r) => r.status)).toEqual([201, 201, 201]);
    const half = Math.floor(bytes.length / 2);
    const firsts = await Promise.all([1, 2, 3].map(() => send(body.id, 0, bytes.subarray(0, half))));
    expect(firsts.map((r) => r.status).sort()).toEqual([200, 409, 409]);
    const lasts = await Promise.all([1, 2, 3].map(() => send(body.id, half, bytes.subarray(half))));
    for (const last of lasts) expect([200, 409]).toContain(last.status);
    expect(lasts.some((r) => r.body.state === 'kept')).toBe(true);
    // The answer was lost: the same part again, and the announcement again.
    expect((await send(body.id, half, bytes.subarray(half)).expect(200)).body.state).toBe('kept');
    expect((await announce(surveyId, body).expect(201)).body).toMatchObject({
      state: 'kept',
      photoId: body.id,
    });
    expect(await photosOf(surveyId)).toHaveLength(1);
    // Deleted by a colleague: sending it once more doesn't bring it back.
    await surveyor.delete(`/v1/photos/${body.id}`).expect(204);
    expect((await announce(surveyId, body).expect(201)).body.state).toBe('kept');
    expect(await photosOf(surveyId)).toHaveLength(0);
  });

  it('says where to go on when a part begins elsewhere', async () => {
    const surveyId = await newSurvey();
    const bytes = await buildJpeg(33);
    const body = announced(bytes);
    await announce(surveyId, body).expect(201);
    await send(body.id, 0, bytes.subarray(0, 5000)).expect(200);
    const wrong = await send(body.id, 9000, bytes.subarray(9000, 9500)).expect(409);
    expect(wrong.headers['upload-offset']).toBe('5000');
    expect(wrong.body.detail).toMatch(/has 5000 bytes.*Upload-Offset: 5000/);
    expect((await sendRest(body.id, bytes, 5000)).body.state).toBe('kept');
  });

  it('takes HEIC like any other upload, and the phone’s time where the picture tells none', async () => {
    const surveyId = await newSurvey();
    const plain = await sharp({ create: { width: 300, height: 200, channels: 3, background: '#456' } })
      .jpeg()
      .toBuffer();
    const heic = await encodeHeic(plain);
    const body = announced(heic, { takenAt: '2026-05-04T09:00:00Z', name: 'x/y/IMG.HEIC' });
    await announce(surveyId, body).expect(201);
    expect((await sendRest(body.id, heic)).body.state).toBe('kept');
    expect((await photosOf(surveyId))[0]).toMatchObject({
      ...{ mediaType: 'image/heic', fileName: 'IMG.HEIC', takenAt: '2026-05-04T09:00:00.000Z' },
    });
  });

  it('of a picture that the survey has needs no bytes', async () => {
    const surveyId = await newSurvey();
    const bytes = await buildJpeg(34);
    const up = await surveyor
      .post(`/v1/surveys/${surveyId}/photos`)
      .attach('file', bytes, 'a.jpg')
      .expect(201);
    const answer = await announce(surveyId, announced(bytes)).expect(201);
    expect(answer.body).toMatchObject({
      state: 'kept',
      photoId: up.body.items[0].id,
      received: bytes.length,
    });
    expect(await photosOf(surveyId)).toHaveLength(1);
  });
});

describe('an upload that is broken off', () => {
  it('goes on after the server was started again', async () => {
    const surveyId = await newSurvey();
    const bytes = await buildJpeg(35);
    const body = announced(bytes);
    await announce(surveyId, body).expect(201);
    await send(body.id, 0, bytes.subarray(0, 7000)).expect(200);
    // Nothing of an upload is held in memory: another process over the same database and store goes on with it.
    const { buildApp } = await import('@garboard/api/app');
    const { openObjectStore } = await import('@garboard/platform/object-store');
    const { openLogger } = await import('@garboard/platform/logger');
    const other = await buildApp({
      ...{ env: { publicUrl: server.url, dataDir: server.dataDir }, db: server.db, clock: () => new Date() },
      store: await openObjectStore(`file://${join(server.dataDir, 'objects')}`, server.dataDir),
      ...{ log: openLogger('other', 'fatal'), probes: {}, portalDir: null },
    } as unknown as Parameters<typeof buildApp>[0]);
    const headers = { authorization: `Bearer ${firm.surveyor.token}`, 'content-type': partMediaType };
    const last = await other.inject({
      ...{ method: 'PATCH', url: `/v1/uploads/${body.id}`, payload: bytes.subarray(7000) },
      headers: { ...headers, 'upload-offset': '7000' },
    });
    await other.close();
    expect(last.json()).toMatchObject({ state: 'kept', photoId: body.id });
  });

  it('is ended by an empty part when the server went away after the last byte', async () => {
    const surveyId = await newSurvey();
    const bytes = await buildJpeg(36);
    const body = announced(bytes);
    await announce(surveyId, body).expect(201);
    // As the server leaves it when it ends between taking the last part and making the photo.
    await server.store.putPart(body.id, 0, bytes);
    await inTransaction(server.db, [firm.id], (tx) =>
      tx.photoUpload.update({ where: { id: body.id }, data: { received: bytes.length } }),
    );
    const answer = await send(body.id, bytes.length, Buffer.alloc(0)).expect(200);
    expect(answer.body).toMatchObject({ state: 'kept', photoId: body.id });
  });

  it('begins again when its parts are gone', async () => {
    const surveyId = await newSurvey();
    const bytes = await buildJpeg(37);
    const body = announced(bytes);
    await announce(surveyId, body).expect(201);
    await send(body.id, 0, bytes.subarray(0, 7000)).expect(200);
    await rm(join(partsFolder(), body.id), { recursive: true });
    const answer = await send(body.id, 7000, bytes.subarray(7000)).expect(200);
    expect(answer.body).toMatchObject({ state: 'receiving', received: 0 });
    expect((await sendRest(body.id, bytes)).body.state).toBe('kept');
  });

  it('is given up a week after its last part', async () => {
    const surveyId = await newSurvey();
    const bytes = await buildJpeg(38);
    const body = announced(bytes);
    await announce(surveyId, body).expect(201);
    await send(body.id, 0, bytes.subarray(0, 7000)).expect(200);
    const day = 24 * 60 * 60_000;
    const tidy = (days: number) =>
      inTransaction(server.db, [firm.id], (tx) => tidyUploads(tx, new Date(Date.now() + days * day)));
    expect(await tidy(6.9)).toBe(0);
    expect(await server.store.sweepParts(8 * day)).toBe(0);
    expect(await tidy(7.1)).toBeGreaterThan(0);
    await surveyor.get(`/v1/uploads/${body.id}`).expect(404);
    const longAgo = new Date(Date.now() - 8.1 * day);
    await utimes(join(partsFolder(), body.id), longAgo, longAgo);
    expect(await server.store.sweepParts(8 * day)).toBe(1);
    expect(await parts()).not.toContain(body.id);
  });
});

describe('an upload that can’t be taken', () => {
  it('is refused by its size, emptiness and finding before a byte is sent', async () => {
    const surveyId = await newSurvey();
    const bytes = await buildJpeg(39);
    const big = await announce(surveyId, announced(bytes, { bytes: 41 * 1024 * 1024 })).expect(413);
    expect(big.body.detail).toContain('40 MB');
    expect((await announce(surveyId, announced(bytes, { bytes: 0 })).expect(422)).body.detail).toMatch(
      /empty/,
    );
    await announce(surveyId, announced(bytes, { id: 'no-uuid' })).expect(422);
    const other = await announce(surveyId, announced(bytes, { findingId: newId() })).expect(422);
    expect(other.body.errors[0]).toMatchObject({ pointer: '/findingId' });
    const office = server.as(firm.office);
    await announce(surveyId, announced(bytes), office).expect(201);
    await announce(surveyId, announced(bytes, { findingId: newId() }), office).expect(403);
  });

  it('is refused when its id belongs to something else, here or at another firm', async () => {
    const surveyId = await newSurvey();
    const bytes = await buildJpeg(40);
    const body = announced(bytes);
    await announce(surveyId, body).expect(201);
    const again = await announce(surveyId, { ...announced(await buildJpeg(41)), id: body.id }).expect(409);
    expect(again.body.detail).toMatch(/Make a new id/);
    await announce(await newSurvey(), body).expect(409);
    const up = await surveyor
      .post(`/v1/surveys/${surveyId}/photos`)
      .attach('file', await buildJpeg(42), 'b.jpg');
    await announce(surveyId, announced(bytes, { id: up.body.items[0].id })).expect(409);
    const theirs = await buildFirm(server.db, ['surveyor']);
    const stranger = server.as(theirs.surveyor);
    const vessel = await stranger.post('/v1/vessels').send({ name: 'Other' }).expect(201);
    const survey = await stranger.post('/v1/surveys').send({ vesselId: vessel.body.id, purpose: 'damage' });
    await announce(survey.body.id, body, stranger).expect(409);
    await stranger.get(`/v1/uploads/${body.id}`).expect(404);
    await send(body.id, 0, bytes, stranger).expect(404);
  });

  it('is told what is wrong with a part', async () => {
    const surveyId = await newSurvey();
    const bytes = await buildJpeg(43);
    const body = announced(bytes);
    await announce(surveyId, body).expect(201);
    const bare = surveyor.patch(`/v1/uploads/${body.id}`).set('content-type', partMediaType).send(bytes);
    expect((await bare.expect(422)).body.detail).toMatch(/Upload-Offset/);
    await send(body.id, 0, Buffer.alloc(1024 * 1024 + 1)).expect(413);
    const long = await send(body.id, 0, Buffer.concat([bytes, Buffer.alloc(10)])).expect(422);
    expect(long.body.detail).toMatch(/was announced with/);
    const json = surveyor.patch(`/v1/uploads/${body.id}`).set('upload-offset', '0').send({});
    await json.expect(415);
    expect((await surveyor.get(`/v1/uploads/${body.id}`)).body.received).toBe(0);
  });

  it('ends as refused, with the reason, for other bytes and for what is no picture', async () => {
    const surveyId = await newSurvey();
    const bytes = await buildJpeg(44);
    const lied = announced(bytes, { sha256: 'a'.repeat(64) });
    await announce(surveyId, lied).expect(201);
    const other = await send(lied.id, 0, bytes).expect(422);
    expect(other.body.detail).toMatch(/SHA-256 differs/);
    const text = Buffer.from('<html>no picture</html>');
    const page = announced(text);
    await announce(surveyId, page).expect(201);
    expect((await send(page.id, 0, text).expect(422)).body.detail).toMatch(/no picture that we know/);
    const after = (await surveyor.get(`/v1/uploads/${page.id}`).expect(200)).body;
    expect(after).toMatchObject({ state: 'refused', photoId: null, problem: expect.stringMatching(/JPEG/) });
    await send(page.id, 0, text).expect(422);
    expect(await photosOf(surveyId)).toEqual([]);
    for (const { id } of [lied, page]) expect(await parts()).not.toContain(id);
    expect(await readdir(join(server.dataDir, 'objects', 'staging'))).toEqual([]);
  });

  it('waits while the survey is shut, and goes on when it is opened again', async () => {
    const surveyId = await newSurvey();
    const bytes = await buildJpeg(45);
    const body = announced(bytes);
    await announce(surveyId, body).expect(201);
    await surveyor.patch(`/v1/surveys/${surveyId}`).send({ state: 'cancelled' }).expect(200);
    expect((await send(body.id, 0, bytes).expect(409)).body.detail).toMatch(/cancelled/);
    expect((await surveyor.get(`/v1/uploads/${body.id}`)).body).toMatchObject({
      state: 'receiving',
      received: 0,
    });
  });
});
