import { createHash } from 'node:crypto';
import { readFile } from 'node:fs/promises';
import type { Finding } from '@garboard/contract/findings';
import { derivedSizes } from '@garboard/core/photos/derive-images';
import { claimReport } from '@garboard/core/reports/claim-report';
import { failReport } from '@garboard/core/reports/fail-report';
import { finishReport } from '@garboard/core/reports/finish-report';
import { inTransaction } from '@garboard/db/database';
import { openLogger } from '@garboard/platform/logger';
import { buildFirm, buildJpeg, buildPerson, type Signed } from '@garboard/seed/builders';
import { collectObjectJob } from '@garboard/worker/jobs/collect-object';
import { derivePhotoJob } from '@garboard/worker/jobs/derive-photo';
import { gatherPhotos } from '@garboard/worker/jobs/gather-photos';
import sharp from 'sharp';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { answerAllCoverage } from '../support/coverage.ts';
import { issueReport } from '../support/issue-report.ts';
import { type Caller, startServer, type TestServer } from '../support/server.ts';

let server: TestServer;
let firm: Awaited<ReturnType<typeof buildFirm<'surveyor'>>>;
let surveyor: Caller;
let ownerPerson: Signed;
let owner: Caller;
let yard: Caller;
beforeAll(async () => {
  server = await startServer();
  firm = await buildFirm(server.db, ['surveyor']);
  surveyor = server.as(firm.surveyor);
  ownerPerson = await buildPerson(server.db);
  owner = server.as(ownerPerson);
});
afterAll(() => server.close());

const sizes = ['thumb', 'screen', 'print'] as const;
const marks = [{ shape: 'box', from: { x: 0.1, y: 0.1 }, to: { x: 0.6, y: 0.6 } }];
const jobs = () => ({ db: server.db, store: server.store, log: openLogger('test-jobs', 'fatal') });
const derive = (photoId: string) =>
  derivePhotoJob(jobs(), { firmId: firm.id, photoId }, { lastAttempt: true });

/** A survey with a finding that shows a photo, ready to be issued and released to owner and yard. */
async function readySurvey(seed: number) {
  const vessel = await surveyor.post('/v1/vessels').send({ name: 'Sedge Plover' }).expect(201);
  const attendances = [{ date: '2026-05-04', place: 'Hard 3', condition: 'ashore' }];
  const body = { vesselId: vessel.body.id, purpose: 'condition', attendances };
  const surveyId: string = (await surveyor.post('/v1/surveys').send(body).expect(201)).body.id;
  const path = `/v1/surveys/${surveyId}`;
  const up = await surveyor
    .post(`${path}/photos`)
    .attach('file', await buildJpeg(seed), 'stem.jpg')
    .expect(201);
  const photoId: string = up.body.items[0].id;
  await surveyor.patch(`/v1/photos/${photoId}`).send({ caption: 'As seen' }).expect(200);
  const words = { system: 'deck', title: 'Soft deck', observed: 'Soft.', recommendation: 'Dry it.' };
  const finding = { ...words, urgency: 'before-use', photoIds: [photoId] };
  const { body: kept } = await surveyor.post(`${path}/findings`).send(finding).expect(201);
  const yardPerson = await buildPerson(server.db);
  yard = server.as(yardPerson);
  for (const [role, { name, email }] of [['owner', ownerPerson] as const, ['yard', yardPerson] as const]) {
    const given = role === 'yard' ? { findingIds: [kept.id] } : {};
    await surveyor
      .post(`${path}/parties`)
      .send({ role, name, email, released: true, ...given })
      .expect(201);
  }
  await answerAllCoverage(surveyor, surveyId);
  return { surveyId, path, photoId, findingId: kept.id as string };
}

/** Marks, turns and captions a photo, and has its sizes made and the old ones collected, as the worker does. */
async function rework(photoId: string, caption: string, quarterTurns: number): Promise<void> {
  await surveyor.patch(`/v1/photos/${photoId}`).send({ marks, quarterTurns, caption }).expect(200);
  await derive(photoId);
  await collectAsked();
}

async function collectAsked(): Promise<void> {
  const asked = await inTransaction(server.db, [], (tx) =>
    tx.outbox.findMany({ where: { job: 'object.collect' } }),
  );
  for (const { data } of asked) await collectObjectJob(jobs(), data as { sha256: string });
}

async function latestFull(path: string): Promise<string> {
  const { body } = await surveyor.get(`${path}/reports`).expect(200);
  return body.items[0].id;
}

const sumOf = (bytes: Buffer) => createHash('sha256').update(bytes).digest('hex');

/** What was served under an address, by its sum: comparing megabytes item by item is slow. */
async function served(caller: Caller, address: string): Promise<string> {
  return sumOf((await caller.get(address).expect(200)).body);
}

const pictures = (caller: Caller, address: string) =>
  Promise.all(sizes.map((size) => served(caller, `${address}?size=${size}`)));
const ofReport = (caller: Caller, reportId: string, photoId: string) =>
  pictures(caller, `/v1/reports/${reportId}/photos/${photoId}/image`);
const ofPhoto = (caller: Caller, photoId: string) => pictures(caller, `/v1/photos/${photoId}/image`);

async function photoInFinding(caller: Caller, findingId: string) {
  const finding: Finding = (await caller.get(`/v1/findings/${findingId}`).expect(200)).body;
  const [photo] = finding.photos;
  if (!photo?.images.screen || !photo.images.thumb) throw new Error('The finding shows no picture.');
  const { caption, width, height } = photo;
  return { caption, width, height, screen: await served(caller, photo.images.screen) };
}

const asWorker = <T>(work: (ctx: Parameters<typeof claimReport>[0]) => Promise<T>) =>
  inTransaction(server.db, [firm.id], (tx) =>
    work({
      actor: { kind: 'system', firmIds: [firm.id] },
      tx,
      store: server.store,
      clock: () => new Date(),
      log: console,
    }),
  );
const made = { sha256: 'ef'.repeat(32), pages: 3, bytes: 99, renderer: 'Garboard', signedBy: 'Builders' };

describe('the pictures of an issued report', () => {
  it('stay as issued for parties and for the report’s page, until it is issued again', async () => {
    const { surveyId, path, photoId, findingId } = await readySurvey(31);
    await derive(photoId);
    const plain = await ofPhoto(surveyor, photoId);
    await issueReport(server, firm.id, surveyor, surveyId);
    const first = await latestFull(path);
    expect(await ofReport(owner, first, photoId)).toEqual(plain);

    await rework(photoId, 'Words for later', 1);
    const marked = await ofPhoto(surveyor, photoId);
    expect(new Set([...plain, ...marked]).size).toBe(2 * sizes.length);
    const screen = await surveyor.get(`/v1/photos/${photoId}/image?size=screen`).expect(200);
    expect(await sharp(screen.body).metadata()).toMatchObject({ width: 900, height: 1200 });

    // Staff work on; what was issued is what everybody reads.
    const issuedView = { caption: 'As seen', width: 1200, height: 900, screen: plain[1] };
    expect(await photoInFinding(surveyor, findingId)).toEqual({
      ...{ caption: 'Words for later', width: 900, height: 1200 },
      screen: marked[1],
    });
    expect(await photoInFinding(owner, findingId)).toEqual(issuedView);
    expect(await photoInFinding(yard, findingId)).toEqual(issuedView);
    expect(await ofPhoto(owner, photoId)).toEqual(plain);
    expect(await ofReport(owner, first, photoId)).toEqual(plain);
    expect(await ofReport(surveyor, first, photoId)).toEqual(plain);
    const record = (await owner.get(`/v1/photos/${photoId}`).expect(200)).body;
    expect(record).toMatchObject({ width: 1200, height: 900, thumbWidth: 320, thumbHeight: 240 });
    expect(await served(owner, record.images.print)).toBe(plain[2]);
    const listed = (await owner.get(`${path}/photos`).expect(200)).body.items[0];
    expect(listed.images).toEqual(record.images);

    await issueReport(server, firm.id, surveyor, surveyId);
    const second = await latestFull(path);
    expect(second).not.toBe(first);
    expect(await photoInFinding(owner, findingId)).toEqual(await photoInFinding(surveyor, findingId));
    expect(await ofPhoto(owner, photoId)).toEqual(marked);
    expect(await ofReport(owner, second, photoId)).toEqual(marked);
    expect(await ofReport(owner, first, photoId)).toEqual(plain);

    // A list of recommendations shows today's pictures on its own page and changes none of the findings.
    await rework(photoId, 'Later still', 2);
    await issueReport(server, firm.id, surveyor, surveyId, 'recommendations');
    const recommendations = await latestFull(path);
    expect(await ofReport(owner, recommendations, photoId)).toEqual(await ofPhoto(surveyor, photoId));
    expect(await ofPhoto(owner, photoId)).toEqual(marked);
  });

  it('are there for whoever may read the report, and may be cached for ever', async () => {
    const { path, photoId } = await readySurvey(32);
    await derive(photoId);
    const asked = await surveyor.post(`${path}/reports`).send({ kind: 'full' }).expect(202);
    const address = `/v1/reports/${asked.body.id}/photos/${photoId}/image`;
    expect((await surveyor.get(address).expect(409)).body.detail).toContain('not been issued');
    await owner.get(address).expect(404);
    const claimed = await asWorker((ctx) => claimReport(ctx, asked.body.id));
    // Marked while it is printed: the report was made from the picture before.
    const plain = await ofPhoto(surveyor, photoId);
    await rework(photoId, 'Words for later', 1);
    const input = { reportId: asked.body.id as string, claim: claimed?.claim ?? '', ...made };
    expect(await asWorker((ctx) => finishReport(ctx, input))).toBe(true);
    expect(await ofReport(owner, asked.body.id, photoId)).toEqual(plain);

    const image = await owner.get(address).expect(200);
    expect(sumOf(image.body)).toBe(plain[1]);
    expect(image.headers['cache-control']).toBe('private, max-age=31536000, immutable');
    await yard.get(address).expect(404);
    await owner.get(`${address}?size=original`).expect(422);
    const other = await readySurvey(33);
    await owner.get(`/v1/reports/${asked.body.id}/photos/${other.photoId}/image`).expect(404);

    // A report from before pictures were kept shows what there is, and nobody keeps that for ever.
    await inTransaction(server.db, [firm.id], (tx) =>
      tx.reportPhoto.updateMany({
        where: { reportId: asked.body.id },
        data: { thumbHash: null, screenHash: null, printHash: null, width: null, height: null },
      }),
    );
    const now = await ofPhoto(surveyor, photoId);
    expect(await ofPhoto(owner, photoId)).toEqual(now);
    expect(await ofReport(owner, asked.body.id, photoId)).toEqual(now);
    expect((await owner.get(address)).headers['cache-control']).toBe('private, no-cache');
  });

  it('are those of the attempt that was issued; those of one given up are removed', async () => {
    const { path, photoId } = await readySurvey(34);
    const asked = await surveyor.post(`${path}/reports`).send({ kind: 'full' }).expect(202);
    const pinned = () =>
      inTransaction(server.db, [firm.id], (tx) =>
        tx.reportPhoto.findFirst({ where: { reportId: asked.body.id } }),
      );
    // Its sizes are still being made: none to keep yet.
    await asWorker((ctx) => claimReport(ctx, asked.body.id));
    expect(await pinned()).toMatchObject({ screenHash: null, width: null });
    await derive(photoId);
    const taken = await asWorker((ctx) => claimReport(ctx, asked.body.id));
    const before = (await pinned())?.screenHash ?? '';
    expect(await server.store.has(before)).toBe(true);
    await rework(photoId, 'Again', 1);
    expect(await server.store.has(before)).toBe(true);
    const failure = { reportId: asked.body.id as string, claim: taken?.claim ?? '', problem: 'No paper.' };
    expect(await asWorker((ctx) => failReport(ctx, failure))).toBe(true);
    const again = await surveyor.post(`${path}/reports`).send({ kind: 'full' }).expect(202);
    expect(again.body.revision).toBe(1);
    expect(await pinned()).toBeNull();
    await collectAsked();
    expect(await server.store.has(before)).toBe(false);

    // What a claim before the photo was ready could not keep is kept at issue.
    await surveyor.patch(`/v1/photos/${photoId}`).send({ quarterTurns: 2 }).expect(200);
    const claimed = await asWorker((ctx) => claimReport(ctx, again.body.id));
    await derive(photoId);
    const input = { reportId: again.body.id as string, claim: claimed?.claim ?? '', ...made };
    expect(await asWorker((ctx) => finishReport(ctx, input))).toBe(true);
    expect(await ofReport(owner, again.body.id, photoId)).toEqual(await ofPhoto(surveyor, photoId));
  });

  it('are printed with marks and turns made just before, whose sizes nobody has made yet', async () => {
    const { photoId } = await readySurvey(35);
    await derive(photoId);
    await surveyor.patch(`/v1/photos/${photoId}`).send({ marks, quarterTurns: 1 }).expect(200);
    const within = asWorker;
    const edges = new Map([[photoId, derivedSizes.print.edge]]);
    const [file] = await gatherPhotos(jobs(), {
      firmId: firm.id,
      edges,
      within,
      onGathered: () => undefined,
    });
    expect(sumOf(await readFile(file?.path ?? ''))).toBe((await ofPhoto(surveyor, photoId))[2]);
    expect(await sharp(file?.path).metadata()).toMatchObject({ width: 900, height: 1200 });
  });
});
