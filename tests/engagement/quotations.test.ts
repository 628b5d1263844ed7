import { createHash } from 'node:crypto';
import { readFile } from 'node:fs/promises';
import { inTransaction } from '@garboard/db/database';
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import { startServer, type TestServer } from '../support/server.ts';
import { startTestWorker, type TestWorker } from '../support/worker.ts';
import { fee, rates, type Setting, setting, surveyWith } from './setting.ts';

let server: TestServer;
let worker: TestWorker;
let at: Setting;
let now = () => new Date();
beforeAll(async () => {
  server = await startServer({ clock: () => now() });
  worker = await startTestWorker(server);
  at = await setting(server);
}, 120_000);
afterAll(async () => {
  await worker.close();
  await server.close();
});

async function drafted(more: object = {}) {
  const survey = await surveyWith(server, at, ['buyer', 'broker', 'yard']);
  const draft = await at.office
    .post(`${survey.path}/quotations`)
    .send({
      ...{ partyId: survey.buyer.partyId, lines: [fee], scope: 'Hull, rig and systems.\n\nNot the engine.' },
      ...{ validUntil: at.day(30), ...more },
    })
    .expect(201);
  return { survey, id: draft.body.id as string, path: `/v1/quotations/${draft.body.id}` };
}
async function sent() {
  const made = await drafted();
  const answer = await at.office.post(`${made.path}/sending`).expect(200);
  return { ...made, textSha256: answer.body.textSha256 as string };
}

describe('rates and terms', () => {
  it('are set by the principal, read by the staff, and change under If-Match', async () => {
    const path = `/v1/firms/${at.firm.id}`;
    await at.surveyor.put(`${path}/rates`).send(rates).expect(403);
    const read = await at.office.get(`${path}/rates`).expect(200);
    expect(read.body).toMatchObject({ ...rates, version: 1 });
    const changed = await at.principal
      .put(`${path}/rates`)
      .set('if-match', '"1"')
      .send({ ...rates, perHour: 9_900 })
      .expect(200);
    expect(changed.headers.etag).toBe('"2"');
    await at.principal.put(`${path}/rates`).set('if-match', '"1"').send(rates).expect(412);
    await at.principal
      .put(`${path}/rates`)
      .send({ ...rates, currency: 'XQQ' })
      .expect(422);
    await at.principal.post(`${path}/terms`).send({ text: 'We look, we report.' }).expect(409);
    await at.principal.post(`${path}/terms`).send({ text: 'We look, we report, we sign.' }).expect(201);
    const terms = await at.surveyor.get(`${path}/terms`).expect(200);
    expect(terms.body.items.map((t: { version: number }) => t.version)).toEqual([2, 1]);
    const other = await setting(server);
    await other.principal.get(`${path}/rates`).expect(404);
  });
});

describe('a quotation', () => {
  it('is drafted unseen, sent, read word for word and accepted, and its text is kept as PDF', async () => {
    const { survey, path } = await drafted();
    const { buyer, broker } = survey;
    await buyer.as.get(path).expect(404);
    await buyer.as.get(`${survey.path}/quotations`).expect(403);
    const edited = await at.surveyor
      .patch(path)
      .set('if-match', '"1"')
      .send({ lines: [fee, { text: 'Reduction', price: -1_000, taxRate: 20_000 }] })
      .expect(200);
    expect(edited.body).toMatchObject({ net: 26_636, tax: 5_327, total: 31_963, version: 2 });
    await at.surveyor.patch(path).set('if-match', '"1"').send({ scope: 'x' }).expect(412);
    const { body: out } = await at.surveyor.post(`${path}/sending`).expect(200);
    expect(out).toMatchObject({ state: 'sent', document: { terms: { version: 2 }, revision: 1 } });
    await at.surveyor.post(`${path}/sending`).expect(409);
    await at.surveyor.patch(path).send({ scope: 'x' }).expect(409);

    // Now the client reads it, and nobody else.
    await broker.as.get(path).expect(404);
    await broker.as
      .post(`${path}/acceptance`)
      .send({ typedName: 'B', textSha256: out.textSha256 })
      .expect(404);
    const text = await buyer.as.get(`${path}/text`).expect(200);
    expect(createHash('sha256').update(text.text, 'utf8').digest('hex')).toBe(out.textSha256);
    expect(text.text).toContain('Not the engine.');
    expect(text.text).toContain('We look, we report, we sign.');
    await at.office
      .post(`${path}/acceptance`)
      .send({ typedName: 'O', textSha256: out.textSha256 })
      .expect(403);
    const wrong = { typedName: 'Ines Tolland', textSha256: 'ab'.repeat(32) };
    await buyer.as.post(`${path}/acceptance`).send(wrong).expect(412);
    await buyer.as
      .post(`${path}/acceptance`)
      .send({ ...wrong, typedName: ' ' })
      .expect(422);
    await buyer.as.get(`${path}/pdf`).expect(409);
    const accept = { typedName: 'Ines Tolland', textSha256: out.textSha256 };
    const { body: done } = await buyer.as.post(`${path}/acceptance`).send(accept).expect(200);
    expect(done).toMatchObject({ state: 'accepted', decidedBy: 'Ines Tolland', decidedFrom: '127.0.0.1' });
    expect(Math.abs(Date.parse(done.decidedAt) - Date.now())).toBeLessThan(60_000);

    await vi.waitFor(
      async () => expect((await buyer.as.get(path)).body.pdfSha256).toMatch(/^[0-9a-f]{64}$/),
      { timeout: 90_000, interval: 200 },
    );
    const pdf = await buyer.as.get(`${path}/pdf`).buffer(true).expect(200);
    const { pdfSha256 } = (await at.office.get(path)).body;
    expect(createHash('sha256').update(pdf.body).digest('hex')).toBe(pdfSha256);
    const words = await wordsOf(pdf.body);
    for (const said of ['Tansy Rook', 'Not the engine.', '319.63 EUR', 'Ines Tolland', '127.0.0.1']) {
      expect(words).toContain(said);
    }
    expect(words.replaceAll(' ', '')).toContain(out.textSha256);
    await broker.as.get(`${path}/pdf`).expect(404);
    // The file named by the record is in the store as it was served.
    expect(await readFile(await server.store.localFile(pdfSha256))).toEqual(pdf.body);
    const events = await at.office.get(`${survey.path}/events`).expect(200);
    const kinds = events.body.items.map((e: { kind: string }) => e.kind);
    expect(kinds).toEqual(
      expect.arrayContaining(['quotation.sent', 'quotation.accepted', 'quotation.filed']),
    );
  }, 120_000);

  it('is decided once: of two, one wins and the other is told who did and when', async () => {
    const { survey, path, textSha256 } = await sent();
    const both = await Promise.all([
      survey.buyer.as.post(`${path}/acceptance`).send({ typedName: 'Ines Tolland', textSha256 }),
      survey.buyer.as.post(`${path}/refusal`).send({ reason: 'Too dear.' }),
    ]);
    expect(both.map((r) => r.status).sort()).toEqual([200, 409]);
    const told = both.find((r) => r.status === 409);
    expect(told?.body).toMatchObject({ type: expect.stringContaining('already-decided') });
    expect(told?.body.detail).toMatch(/^This quotation was (accepted|declined) by .+ at \d{4}-/);
    await at.office.post(`${path}/withdrawal`).send({ reason: 'x' }).expect(409);
  });

  it('is declined with a reason', async () => {
    const { survey, path } = await sent();
    await survey.buyer.as.post(`${path}/refusal`).send({ reason: '' }).expect(422);
    const answer = await survey.buyer.as.post(`${path}/refusal`).send({ reason: 'Too dear.' }).expect(200);
    expect(answer.body).toMatchObject({
      state: 'declined',
      reason: 'Too dear.',
      decidedBy: survey.buyer.person.name,
    });
  });

  it('is replaced by the next one sent, and can’t be accepted then', async () => {
    const first = await sent();
    const { survey } = first;
    const second = await at.office
      .post(`${survey.path}/quotations`)
      .send({ partyId: survey.buyer.partyId, lines: [fee], scope: 'Hull only.', validUntil: at.day(9) })
      .expect(201);
    expect(second.body.revision).toBe(2);
    await at.office.post(`/v1/quotations/${second.body.id}/sending`).expect(200);
    const accept = { typedName: 'Ines Tolland', textSha256: first.textSha256 };
    const late = await survey.buyer.as.post(`${first.path}/acceptance`).send(accept).expect(409);
    expect(late.body.detail).toContain('Replaced by revision 2');
    const list = await survey.buyer.as.get(`${survey.path}/quotations`).expect(200);
    expect(list.body.items.map((q: { state: string }) => q.state)).toEqual(['sent', 'withdrawn']);
  });

  it('ends with its last day where the boat lies', async () => {
    const { survey, path, textSha256 } = await sent();
    now = () => new Date(Date.now() + 32 * 86_400_000);
    try {
      const late = await survey.buyer.as
        .post(`${path}/acceptance`)
        .send({ typedName: 'Ines Tolland', textSha256 })
        .expect(409);
      expect(late.body.detail).toContain('its last day has passed');
      expect((await survey.buyer.as.get(path)).body.expired).toBe(true);
    } finally {
      now = () => new Date();
    }
  });

  it('refuses a yard as client, lines below nothing and a day gone by', async () => {
    const { survey, path } = await drafted();
    const { yard } = survey;
    await at.office.patch(path).send({ partyId: yard.partyId }).expect(422);
    const less = [{ text: 'Reduction', price: -1, taxRate: 0 }];
    expect((await at.office.patch(path).send({ lines: less }).expect(422)).body.errors[0].pointer).toBe(
      '/lines',
    );
    await at.office
      .patch(path)
      .send({ validUntil: at.day(-2) })
      .expect(200);
    await at.office.post(`${path}/sending`).expect(422);
    await at.office.post(`${path}/withdrawal`).send({ reason: 'Not needed.' }).expect(200);
  });

  it('waits for rates and terms', async () => {
    const firm = await setting(server);
    await inTransaction(server.db, [firm.firm.id], (tx) => tx.firmTerms.deleteMany({}));
    const survey = await surveyWith(server, firm, ['owner']);
    const body = { partyId: survey.owner.partyId, lines: [fee], scope: 'Hull.', validUntil: at.day(5) };
    const draft = await firm.office.post(`${survey.path}/quotations`).send(body).expect(201);
    const refused = await firm.office.post(`/v1/quotations/${draft.body.id}/sending`).expect(409);
    expect(refused.body.detail).toContain('terms of business');
  });

  it('is not changed by a party even where the use case is left out', async () => {
    const { survey, id } = await sent();
    const sight = { firmIds: [], personId: survey.buyer.person.id, asParty: true };
    const change = (data: object) =>
      inTransaction(server.db, sight, (tx) => tx.quotation.updateMany({ where: { id }, data }));
    await expect(change({ state: 'accepted', total: 1 })).rejects.toThrow();
    await expect(change({ state: 'withdrawn' })).rejects.toThrow();
    const other = { firmIds: [], personId: survey.broker.person.id, asParty: true };
    expect(await inTransaction(server.db, other, (tx) => tx.quotation.count({ where: { id } }))).toBe(0);
  });
});

async function wordsOf(pdf: Buffer): Promise<string> {
  const document = await getDocument({ data: new Uint8Array(pdf), verbosity: 0 }).promise;
  const pages = [];
  for (let page = 1; page <= document.numPages; page++) {
    const content = await (await document.getPage(page)).getTextContent();
    pages.push(content.items.map((item) => ('str' in item ? item.str : '')).join(' '));
  }
  await document.loadingTask.destroy();
  return pages.join(' ').replace(/\s+/g, ' ');
}
