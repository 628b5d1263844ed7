import { readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { Readable } from 'node:stream';
import { enqueue } from '@garboard/core/outbox/enqueue';
import { getReport } from '@garboard/core/reports/get-report';
import { requestReport } from '@garboard/core/reports/request-report';
import { inTransaction } from '@garboard/db/database';
import { newId } from '@garboard/db/ids';
import sharp from 'sharp';
import { afterAll, beforeAll, expect, test, vi } from 'vitest';
import { startServer, type TestServer } from '../support/server.ts';
import { startTestWorker, type TestWorker } from '../support/worker.ts';
import { type Acting, asStaff, asWorker, publicUrl, type SurveyRows, writeSurvey } from './survey-rows.ts';

let server: TestServer;
let worker: TestWorker;
let acting: Acting;
beforeAll(async () => {
  server = await startServer();
  worker = await startTestWorker(server);
  acting = { db: server.db, store: server.store, clock: () => new Date() };
});
afterAll(async () => {
  await worker.close();
  await server.close();
});

/** A photo on file whose pictures nobody was asked to make, at the survey's first finding. */
async function addPhoto(rows: SurveyRows, original: Buffer): Promise<string> {
  const staged = await server.store.stage(Readable.from([original]), { maxBytes: 1e7 });
  await staged.keep();
  const id = newId();
  const { firmId, surveyId } = rows;
  await inTransaction(server.db, [firmId], async (tx) => {
    await tx.photo.create({
      data: {
        id,
        firmId,
        surveyId,
        sha256: staged.sha256,
        bytes: staged.bytes,
        mediaType: 'image/jpeg',
        fileName: 'hose.jpg',
        width: 600,
        height: 400,
        orderKey: id,
      },
    });
    const findingId = rows.findingIds[0] ?? '';
    await tx.findingPhoto.create({ data: { firmId, findingId, photoId: id, ordinal: 1 } });
  });
  return id;
}

const ended = (rows: SurveyRows, id: string) =>
  vi.waitFor(
    async () => {
      const report = await asStaff(acting, rows, (ctx) => getReport(ctx, id));
      expect(report.state).toMatch(/issued|failed/);
      return report;
    },
    { timeout: 25_000, interval: 200 },
  );

test('a report whose photos have no pictures yet makes them and is issued as a PDF', async () => {
  const rows = await writeSurvey(server.db, 3);
  const original = await sharp({ create: { width: 600, height: 400, channels: 3, background: '#668' } })
    .jpeg()
    .toBuffer();
  await addPhoto(rows, original);
  const { surveyId } = rows;
  const asked = await asStaff(acting, rows, (ctx) =>
    requestReport(ctx, { surveyId, kind: 'full', publicUrl }),
  );
  const report = await ended(rows, asked.id);
  expect(report).toMatchObject({ state: 'issued', progress: 100, problem: null });
  expect(report.pages).toBeGreaterThan(2);
  const pdf = await readFile(await server.store.localFile(report.sha256 ?? ''));
  expect(pdf.subarray(0, 5).toString()).toBe('%PDF-');
  expect(pdf.length).toBe(report.bytes);
  // Nothing is left of the printing, a moment after it is issued.
  await vi.waitFor(async () => expect(await readdir(join(server.dataDir, 'print'))).toEqual([]));
});

test('a photo that cannot be read fails the report in words that name it', async () => {
  const rows = await writeSurvey(server.db, 1);
  const photoId = await addPhoto(rows, Buffer.from('not a picture'));
  const { surveyId } = rows;
  const asked = await asStaff(acting, rows, (ctx) =>
    requestReport(ctx, { surveyId, kind: 'full', publicUrl }),
  );
  await asWorker(acting, rows.firmId, (ctx) =>
    ctx.tx.photo.update({ where: { id: photoId }, data: { state: 'failed' } }),
  );
  const report = await ended(rows, asked.id);
  expect(report.state).toBe('failed');
  expect(report.problem).toContain('hose.jpg');
  const survey = await asWorker(acting, rows.firmId, (ctx) =>
    ctx.tx.survey.findUniqueOrThrow({ where: { id: surveyId } }),
  );
  expect(survey.state).toBe('drafting');
});

test('an invitation is mailed with a link whose secret opens it', async () => {
  const linkId = newId();
  await inTransaction(server.db, [], async (tx) => {
    const expiresAt = new Date(Date.now() + 86_400_000);
    const row = {
      id: linkId,
      kind: 'invitation',
      tokenHash: 'unknown',
      email: 'new@harbour.example',
      expiresAt,
      mailBy: expiresAt,
    };
    await tx.person.create({ data: { id: newId(), email: row.email, name: 'New Person' } });
    await tx.oneTimeLink.create({ data: row });
    await enqueue(tx, 'mail.invitation', { linkId });
  });
  const mail = await vi.waitFor(
    async () => {
      const folder = join(server.dataDir, 'mail');
      const [name] = await readdir(folder);
      expect(name).toBeDefined();
      return readFile(join(folder, name ?? ''), 'utf8');
    },
    { timeout: 10_000, interval: 100 },
  );
  expect(mail).toContain('To: new@harbour.example');
  const token = /#token=(?:3D)?([\w-]{43})/.exec(mail.replace(/=\r\n/g, ''))?.[1];
  await server.as(null).post('/v1/welcome/lookup').send({ token }).expect(200);
});
