import { createHash } from 'node:crypto';
import { readdir } from 'node:fs/promises';
import { join } from 'node:path';
import { inTransaction } from '@garboard/db/database';
import { newId } from '@garboard/db/ids';
import { buildFirm, buildJpeg, buildPerson, type Signed } from '@garboard/seed/builders';
import type { PartyRole } from '@garboard/trade/vocabulary';
import { deriveClearanceFileJob } from '@garboard/worker/jobs/derive-clearance-file';
import sharp from 'sharp';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
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

const pdf = Buffer.from('%PDF-1.4\n1 0 obj\n<<>>\nendobj\ntrailer\n<<>>\n%%EOF\n');
const words = { statement: 'Hose renewed.', workDoneBy: 'Fennel Slip Yard', workDoneOn: '2026-06-01' };

interface Scene {
  findingId: string;
  surveyId: string;
  owner: Caller;
  insurer: Caller;
  buyer: Caller;
  lender: Caller;
  setFinding(data: { state?: string; clearing?: boolean }): Promise<void>;
}

/** A survey with one issued finding that must be cleared, and its parties. */
async function scene(decidedBy: 'insurer' | 'surveyor' = 'insurer'): Promise<Scene> {
  const vessel = await surveyor.post('/v1/vessels').send({ name: 'Bobolink' }).expect(201);
  const body = { vesselId: vessel.body.id, purpose: 'insurance', clearanceDecidedBy: decidedBy };
  const surveyId: string = (await surveyor.post('/v1/surveys').send(body).expect(201)).body.id;
  const finding = {
    system: 'gas',
    title: 'Hose',
    observed: 'Cracked.',
    recommendation: 'Renew.',
    urgency: 'before-use',
  };
  const made = await surveyor.post(`/v1/surveys/${surveyId}/findings`).send(finding).expect(201);
  const findingId: string = made.body.id;
  const setFinding = async (data: { state?: string; clearing?: boolean }) => {
    await inTransaction(server.db, [firm.id], (tx) => tx.finding.update({ where: { id: findingId }, data }));
  };
  await setFinding({ state: 'open', clearing: true });
  const join = async (role: PartyRole) => {
    const person: Signed = await buildPerson(server.db, { name: `The ${role}` });
    await inTransaction(server.db, [firm.id], (tx) =>
      tx.party.create({
        data: {
          id: newId(),
          firmId: firm.id,
          surveyId,
          personId: person.id,
          role,
          name: person.name,
          released: true,
        },
      }),
    );
    return server.as(person);
  };
  const [owner, insurer, buyer, lender] = [
    await join('owner'),
    await join('insurer'),
    await join('buyer'),
    await join('lender'),
  ];
  return { findingId, surveyId, owner, insurer, buyer, lender, setFinding };
}

function send(caller: Caller, findingId: string, files: [string, Buffer][] = [], fields: object = words) {
  const request = caller.post(`/v1/findings/${findingId}/clearances`);
  for (const [name, value] of Object.entries(fields)) request.field(name, value);
  for (const [name, bytes] of files) request.attach('file', bytes, name);
  return request;
}
const decide = (caller: Caller, id: string, decision: string, reason = '', more = {}) =>
  caller.post(`/v1/clearances/${id}/decision`).send({ decision, reason, ...more });
const stateOf = async (s: Scene) => (await surveyor.get(`/v1/findings/${s.findingId}`)).body.state;

describe('evidence', () => {
  it('is sent, returned with a reason, sent again and accepted; the history tells each step', async () => {
    const s = await scene();
    const sent = await send(s.owner, s.findingId, [
      ['hose.jpg', await buildJpeg(1)],
      ['invoice.pdf', pdf],
    ]).expect(201);
    expect(sent.body).toMatchObject({
      state: 'sent',
      sentBy: { name: 'The owner', role: 'owner' },
      decidedBy: null,
    });
    expect(sent.body.files).toHaveLength(2);
    expect(await stateOf(s)).toBe('evidence-sent');
    expect((await send(s.owner, s.findingId).expect(409)).body.detail).toMatch(
      /already waiting for a decision/,
    );
    expect((await decide(s.insurer, sent.body.id, 'return').expect(422)).body.errors[0].pointer).toBe(
      '/reason',
    );
    await decide(s.insurer, sent.body.id, 'return', 'Show the clips.').expect(200);
    expect(await stateOf(s)).toBe('returned');
    const second = await send(s.owner, s.findingId).expect(201);
    const done = await decide(s.insurer, second.body.id, 'accept').expect(200);
    expect(done.body).toMatchObject({
      state: 'accepted',
      decidedBy: { name: 'The insurer', role: 'insurer' },
    });
    expect(await stateOf(s)).toBe('cleared');
    expect((await send(s.owner, s.findingId).expect(409)).body.detail).toMatch(/cleared already/);
    const late = await decide(s.insurer, second.body.id, 'return', 'No.').expect(409);
    expect(late.body).toMatchObject({ type: '/problems/already-decided' });
    expect(late.body.detail).toMatch(/The insurer decided “accept” on /);
    const list = (await s.buyer.get(`/v1/findings/${s.findingId}/clearances`).expect(200)).body.items;
    expect(list.map((c: { state: string }) => c.state)).toEqual(['returned', 'accepted']);
    const events = (await surveyor.get(`/v1/findings/${s.findingId}/events`)).body.items;
    const summaries = events.map((e: { summary: string }) => e.summary).join('|');
    expect(summaries).toMatch(
      /accepted.*\|Evidence sent.*\|Evidence returned: Show the clips\.\|Evidence sent/,
    );
  });

  it('is decided once, however many decide at once', async () => {
    const s = await scene();
    const { id } = (await send(s.owner, s.findingId)).body;
    const all = await Promise.all([
      decide(s.insurer, id, 'accept'),
      decide(s.insurer, id, 'return', 'No.'),
      decide(s.insurer, id, 'accept-as-is', '', { limit: 'Inland only.' }),
    ]);
    expect(all.map((r) => r.status).sort()).toEqual([200, 409, 409]);
  });

  it('is sent once under one Idempotency-Key, and once when sent twice at once', async () => {
    const s = await scene();
    const files: [string, Buffer][] = [['invoice.pdf', pdf]];
    const first = await send(s.owner, s.findingId, files).set('idempotency-key', s.findingId).expect(201);
    const repeat = await send(s.owner, s.findingId, files).set('idempotency-key', s.findingId).expect(201);
    expect(repeat.body).toEqual(first.body);
    expect(repeat.headers['idempotency-replayed']).toBe('true');
    await send(s.owner, s.findingId, []).set('idempotency-key', s.findingId).expect(422);
    const other = await scene();
    const both = await Promise.all([1, 2].map(() => send(other.owner, other.findingId)));
    expect(both.map((r) => r.status).sort()).toEqual([201, 409]);
  });

  it('goes nowhere with a bad file, and keeps nothing of it', async () => {
    const s = await scene();
    const good = await sharp(await buildJpeg(2))
      .jpeg({ quality: 51 })
      .toBuffer();
    const bad = await send(s.owner, s.findingId, [
      ['good.jpg', good],
      ['invoice.pdf', pdf.subarray(0, 20)],
    ]).expect(422);
    expect(bad.body).toMatchObject({ type: '/problems/files-refused', errors: [{ pointer: 'invoice.pdf' }] });
    expect(await stateOf(s)).toBe('open');
    const folder = join(server.dataDir, 'objects');
    expect(await readdir(join(folder, 'staging'))).toEqual([]);
    expect(await server.store.has(createHash('sha256').update(good).digest('hex'))).toBe(false);
    const fields = { ...words, workDoneOn: '2999-01-01' };
    expect((await send(s.owner, s.findingId, [], fields).expect(422)).body.errors[0].pointer).toBe(
      '/workDoneOn',
    );
    const empty = await send(s.owner, s.findingId, [], { statement: '' }).expect(422);
    const pointers = empty.body.errors.map((e: { pointer: string }) => e.pointer);
    expect(pointers).toEqual(['/statement', '/workDoneBy', '/workDoneOn']);
  });

  it('isn’t asked for a note, nor for a finding not yet issued or withdrawn', async () => {
    const s = await scene();
    await s.setFinding({ clearing: false });
    expect((await send(s.owner, s.findingId).expect(409)).body.detail).toMatch(/need not be cleared/);
    await s.setFinding({ state: 'withdrawn', clearing: true });
    expect((await send(s.owner, s.findingId).expect(409)).body.detail).toMatch(/withdrawn/);
    await s.setFinding({ state: 'draft' });
    await send(s.owner, s.findingId).expect(404);
  });

  it('is sent, read and decided on by those whom the survey names, and by nobody else', async () => {
    const s = await scene();
    for (const caller of [s.insurer, s.buyer, s.lender, surveyor])
      await send(caller, s.findingId).expect(403);
    const { id } = (await send(s.owner, s.findingId).expect(201)).body;
    await s.lender.get(`/v1/findings/${s.findingId}/clearances`).expect(403);
    for (const caller of [s.owner, s.buyer, surveyor]) {
      expect((await decide(caller, id, 'accept').expect(403)).body.detail).toMatch(/the insurer decides/);
    }
    const stranger = server.as((await buildFirm(server.db, ['surveyor'])).surveyor);
    await decide(stranger, id, 'accept').expect(404);
    await send(stranger, s.findingId).expect(404);

    const own = await scene('surveyor');
    const second = (await send(own.owner, own.findingId).expect(201)).body;
    await decide(own.insurer, second.id, 'accept').expect(403);
    await decide(server.as(firm.office), second.id, 'accept').expect(403);
    const limit = 'For inland waters only.';
    await decide(surveyor, second.id, 'accept-as-is', '', { limit }).expect(200);
    expect(await stateOf(own)).toBe('accepted-as-is');
  });
});

it('files are served to those who may read the evidence: documents to save, pictures without their position', async () => {
  const s = await scene();
  const sent = (
    await send(s.owner, s.findingId, [
      ['hose.jpg', await buildJpeg(3)],
      ['in voice.pdf', pdf],
    ])
  ).body;
  const [picture, invoice] = sent.files;
  await s.insurer.get(picture.url).expect(404);
  await deriveClearanceFileJob(
    { db: server.db, store: server.store },
    { firmId: firm.id, fileId: picture.id },
  );
  const address = `/v1/clearances/${sent.id}/files/${picture.id}`;
  for (const size of ['screen', 'original']) {
    const got = await s.insurer.get(`${address}?size=${size}`).expect(200);
    expect((await sharp(got.body).metadata()).exif).toBeUndefined();
  }
  const whole = await surveyor.get(`${address}?size=original`).expect(200);
  expect((await sharp(whole.body).metadata()).exif).toBeDefined();
  const doc = await s.insurer.get(invoice.url).buffer(true).expect(200);
  expect(doc.headers['content-type']).toBe('application/pdf');
  expect(doc.headers['content-disposition']).toBe(
    `attachment; filename="in voice.pdf"; filename*=UTF-8''in%20voice.pdf`,
  );
  expect(doc.headers['content-security-policy']).toContain('sandbox');
  await s.lender.get(invoice.url).expect(403);
  const stranger = server.as(await buildPerson(server.db));
  await stranger.get(invoice.url).expect(404);
});
