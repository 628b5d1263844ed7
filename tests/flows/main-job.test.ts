import { mkdir, writeFile } from 'node:fs/promises';
import { buildFirm, buildJpeg, buildPerson, type Signed } from '@garboard/seed/builders';
import { PDFDocument } from 'pdf-lib';
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { answerAllCoverage } from '../support/coverage.ts';
import { type Caller, startServer, type TestServer } from '../support/server.ts';
import { startTestWorker, type TestWorker } from '../support/worker.ts';

let server: TestServer;
let worker: TestWorker;
beforeAll(async () => {
  server = await startServer();
  worker = await startTestWorker(server);
});
afterAll(async () => {
  await worker.close();
  await server.close();
});

/** Asks until the answer fits; fails with the last one. */
async function until<T>(ask: () => Promise<T>, fits: (answer: T) => boolean, seconds = 40): Promise<T> {
  const end = Date.now() + seconds * 1000;
  for (;;) {
    const answer = await ask();
    if (fits(answer)) return answer;
    if (Date.now() > end) throw new Error(`Still not so after ${seconds} s: ${JSON.stringify(answer)}`);
    await new Promise((resolve) => setTimeout(resolve, 100));
  }
}

interface OutlineItem {
  title: string;
  items: OutlineItem[];
}
const titlesOf = (items: readonly OutlineItem[]): string[] =>
  items.flatMap((i) => [i.title, ...titlesOf(i.items)]);

async function invite(surveyor: Caller, surveyId: string, role: string, person: Signed, released: boolean) {
  const { name, email } = person;
  await surveyor.post(`/v1/surveys/${surveyId}/parties`).send({ role, name, email, released }).expect(201);
}

async function invoice(): Promise<Buffer> {
  const document = await PDFDocument.create();
  document.addPage().drawText('Invoice 17: seacock renewed');
  return Buffer.from(await document.save());
}

describe('the whole job, over REST', () => {
  it('goes from first photo to clearance letter', async () => {
    const firm = await buildFirm(server.db, ['surveyor']);
    const surveyor = server.as(firm.surveyor);
    const [owner, insurer, broker, yard] = await Promise.all([1, 2, 3, 4].map(() => buildPerson(server.db)));
    if (!owner || !insurer || !broker || !yard) throw new Error('cast incomplete');

    const vessel = await surveyor
      .post('/v1/vessels')
      .send({ name: 'Saltmeadow', lengthOverallM: 9.8 })
      .expect(201);
    const made = await surveyor.post('/v1/surveys').send({ vesselId: vessel.body.id, purpose: 'insurance' });
    const surveyId: string = made.body.id;
    const path = `/v1/surveys/${surveyId}`;
    await invite(surveyor, surveyId, 'owner', owner, true);
    await invite(surveyor, surveyId, 'insurer', insurer, true);
    await invite(surveyor, surveyId, 'broker', broker, false);

    const early = await surveyor.post(`${path}/reports`).send({ kind: 'full' }).expect(409);
    expect(early.body.detail.length).toBeGreaterThan(20);

    const uploaded = await surveyor
      .post(`${path}/photos`)
      .attach('file', await buildJpeg(1, { takenAt: '2026:05:04 11:00:00' }), 'second.jpg')
      .attach('file', await buildJpeg(2, { takenAt: '2026:05:04 10:00:00', orientation: 6 }), 'first.jpg')
      .attach('file', Buffer.from('not a picture'), 'letter.jpg')
      .expect(201);
    expect(uploaded.body.items).toHaveLength(2);
    expect(uploaded.body.refused).toMatchObject([{ name: 'letter.jpg' }]);
    const listed = await until(
      () => surveyor.get(`${path}/photos`),
      (r) => r.body.items.every((p: { state: string }) => p.state === 'ready'),
    );
    expect(listed.body.items.map((p: { fileName: string }) => p.fileName)).toEqual([
      'first.jpg',
      'second.jpg',
    ]);
    expect(listed.body.items[0]).toMatchObject({ width: 900, height: 1200 });
    const photoIds: string[] = listed.body.items.map((p: { id: string }) => p.id);
    await surveyor.patch(`/v1/photos/${photoIds[0]}`).send({ caption: 'The seacock' }).expect(200);

    const finding = {
      system: 'through-hulls',
      title: 'Heads inlet seacock seized',
      observed: 'The lever does not move <b>at all</b>.',
      consequence: 'The hose cannot be shut off.',
      recommendation: 'Renew the seacock.',
      urgency: 'within-days',
      withinDays: 30,
      harms: ['flooding'],
      references: ['ISO 9093'],
      photoIds: [photoIds[0]],
    };
    const first = await surveyor.post(`${path}/findings`).send(finding).expect(201);
    await surveyor
      .post(`${path}/findings`)
      .send({ ...finding, title: 'Worn mooring line', urgency: 'note', withinDays: null, photoIds: [] })
      .expect(201);
    await surveyor
      .patch(path)
      .send({ attendances: [{ date: '2026-05-04', place: 'Ropewalk Yard', condition: 'ashore' }] })
      .expect(200);

    const ownerSees = server.as(owner);
    expect((await ownerSees.get(`${path}/findings`).expect(200)).body.items).toEqual([]);
    await ownerSees.get(`/v1/findings/${first.body.id}`).expect(404);

    const unanswered = await surveyor.post(`${path}/reports`).send({ kind: 'full' }).expect(409);
    expect(unanswered.body.detail).toContain('Through-hull fittings and seacocks');
    await answerAllCoverage(surveyor, surveyId);
    const requested = await surveyor.post(`${path}/reports`).send({ kind: 'full' }).expect(202);
    const report = await until(
      () => surveyor.get(`/v1/reports/${requested.body.id}`),
      (r) => r.body.state === 'issued' || r.body.state === 'failed',
    );
    expect(report.body).toMatchObject({ state: 'issued', revision: 1, progress: 100 });

    const pdf = await ownerSees.get(`/v1/reports/${report.body.id}/pdf`).buffer(true).expect(200);
    const bytes = pdf.body as Buffer;
    await mkdir('tests/artefacts', { recursive: true });
    await writeFile('tests/artefacts/main-job-report.pdf', bytes);
    const read = await getDocument({ data: new Uint8Array(bytes) }).promise;
    expect(read.numPages).toBe(report.body.pages);
    expect((await read.getMarkInfo())?.Marked).toBe(true);
    const titles = titlesOf((await read.getOutline()) ?? []);
    expect(titles.length).toBeGreaterThan(5);
    expect(titles.join(' ')).toContain('Heads inlet seacock seized');
    const texts: string[] = [];
    for (let n = 1; n <= read.numPages; n += 1) {
      const content = await (await read.getPage(n)).getTextContent();
      texts.push(content.items.map((i) => ('str' in i ? i.str : '')).join(' '));
    }
    expect(texts.join(' ').replace(/\s+/g, ' ')).toContain('<b>at all</b>');

    await server.as(broker).get(`/v1/reports/${report.body.id}`).expect(404);
    await server.as(yard).get(path).expect(404);
    const seen = await ownerSees.get(`/v1/findings/${first.body.id}`).expect(200);
    expect(seen.body).toMatchObject({ state: 'open', requiresClearing: true, may: { sendEvidence: true } });
    const thumb: string = seen.body.photos[0].images.thumb;
    await ownerSees.get(thumb).expect(200).expect('content-type', 'image/jpeg');
    await ownerSees.get(`/v1/photos/${photoIds[0]}/image?size=original`).expect(403);
    await ownerSees.get(`/v1/photos/${photoIds[1]}/image?size=thumb`).expect(404);
    await server.as(broker).get(thumb).expect(404);

    // Released to the broker at last, and withdrawn again.
    const parties = await surveyor.get(`${path}/parties`).expect(200);
    const asBroker = parties.body.items.find((p: { role: string }) => p.role === 'broker');
    const brokerPath = `${path}/parties/${asBroker.id}`;
    await ownerSees.patch(brokerPath).send({ released: true }).expect(403);
    await surveyor.patch(brokerPath).send({ released: true }).expect(200);
    await server.as(broker).get(`/v1/reports/${report.body.id}/pdf`).expect(200);
    await surveyor.patch(brokerPath).send({ released: false }).expect(200);
    await server.as(broker).get(`/v1/reports/${report.body.id}/pdf`).expect(404);

    // A later edit is not shown before it is issued.
    await surveyor.patch(`/v1/findings/${first.body.id}`).send({ observed: 'Changed.' }).expect(200);
    expect((await ownerSees.get(`/v1/findings/${first.body.id}`)).body.observed).toContain('at all');

    // The owner brings in a yard; the yard sends evidence; the insurer returns it, then accepts.
    await ownerSees
      .post(`${path}/parties`)
      .send({ role: 'yard', name: yard.name, email: yard.email, findingIds: [first.body.id] })
      .expect(201);
    await ownerSees
      .post(`${path}/parties`)
      .send({ role: 'broker', name: 'X', email: 'x@x.example' })
      .expect(403);
    const clearances = `/v1/findings/${first.body.id}/clearances`;
    const send = (who: Signed) =>
      server
        .as(who)
        .post(clearances)
        .field('statement', 'Seacock renewed')
        .field('workDoneBy', 'Ropewalk Yard')
        .field('workDoneOn', '2026-05-20');
    await send(insurer).expect(403);
    const refused = await send(yard).attach('file', Buffer.from('%PDF-nonsense'), 'bill.pdf').expect(422);
    expect(refused.body.errors[0].pointer).toBe('bill.pdf');
    const sent = await send(yard)
      .attach('file', await buildJpeg(9), 'after.jpg')
      .attach('file', await invoice(), 'bill.pdf')
      .expect(201);
    expect(sent.body).toMatchObject({
      state: 'sent',
      files: [{ fileName: 'after.jpg' }, { fileName: 'bill.pdf' }],
    });
    const waiting = await send(yard).expect(409);
    expect(waiting.body.detail).toMatch(/decision|decide/i);
    const decide = (who: Signed, id: string, body: object) =>
      server.as(who).post(`/v1/clearances/${id}/decision`).send(body);
    await decide(owner, sent.body.id, { decision: 'accept' }).expect(403);
    await decide(firm.surveyor, sent.body.id, { decision: 'accept' }).expect(403);
    await decide(insurer, sent.body.id, { decision: 'return' }).expect(422);
    await decide(insurer, sent.body.id, { decision: 'return', reason: 'Show the lever closed.' }).expect(200);
    const tooSoon = await surveyor.post(`${path}/reports`).send({ kind: 'clearance-letter' }).expect(409);
    expect(tooSoon.body.detail).toMatch(/status letter/i);
    const again = await send(owner).expect(201);
    const both = await Promise.all(
      ['accept', 'accept'].map((decision) => decide(insurer, again.body.id, { decision })),
    );
    expect(both.map((r) => r.status).sort()).toEqual([200, 409]);
    const cleared = await send(owner).expect(409);
    expect(cleared.body.detail).toMatch(/cleared/i);

    const history = await ownerSees.get(`/v1/findings/${first.body.id}/events`).expect(200);
    expect(history.body.items.map((e: { kind: string }) => e.kind)).toEqual([
      'evidence.accepted',
      'evidence.sent',
      'evidence.returned',
      'evidence.sent',
      'finding.issued',
    ]);
    const letter = await surveyor.post(`${path}/reports`).send({ kind: 'clearance-letter' }).expect(202);
    const done = await until(
      () => server.as(insurer).get(`/v1/reports/${letter.body.id}`),
      (r) => r.body.state === 'issued',
    );
    expect(done.body.kind).toBe('clearance-letter');
    const list = await server.as(insurer).get('/v1/recommendations?state=cleared').expect(200);
    expect(list.body.items).toMatchObject([
      { title: finding.title, state: 'cleared', vesselName: 'Saltmeadow' },
    ]);
    const used = await surveyor.delete(`/v1/photos/${photoIds[0]}`).expect(409);
    expect(used.body.detail).toMatch(/finding|report/i);
  });
});
