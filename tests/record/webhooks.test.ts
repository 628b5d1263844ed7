import { createServer, type IncomingMessage, type Server, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import { recordEvent } from '@garboard/core/events/record-event';
import { disableAfterMs, redeliverDue } from '@garboard/core/webhooks/deliver';
import { fanOutWebhooks } from '@garboard/core/webhooks/fan-out';
import { inTransaction } from '@garboard/db/database';
import { newId } from '@garboard/db/ids';
import { openLogger } from '@garboard/platform/logger';
import { AddressRefusedError, isPublicAddress, outwardPost } from '@garboard/platform/outward-post';
import { buildFirm, buildPerson, type Signed, testSecret } from '@garboard/seed/builders';
import { deliverWebhookJob } from '@garboard/worker/jobs/deliver-webhook';
import { Webhook } from 'standardwebhooks';
import { afterAll, beforeAll, beforeEach, expect, test } from 'vitest';
import { startServer, type TestServer } from '../support/server.ts';
import { contextFor } from './events.ts';

type Got = { headers: Record<string, string>; body: string };
type Firm = Awaited<ReturnType<typeof buildFirm<'principal' | 'office'>>>;
let server: TestServer;
let firm: Firm;
let url: string;
let got: Got[];
let answer: (request: IncomingMessage, response: ServerResponse) => void;
let now: Date;

const hour = 3_600_000;
const clock = () => now;
const open: Server[] = [];

async function listen(
  handler: (request: IncomingMessage, response: ServerResponse) => void,
): Promise<string> {
  const made = createServer(handler);
  open.push(made);
  await new Promise<void>((done) => made.listen(0, '127.0.0.1', done));
  return `http://127.0.0.1:${(made.address() as AddressInfo).port}/`;
}

beforeAll(async () => {
  server = await startServer({ clock });
  url = await listen((request, response) => {
    let body = '';
    request.on('data', (chunk) => {
      body += chunk;
    });
    request.on('end', () => {
      got.push({ headers: request.headers as Record<string, string>, body });
      answer(request, response);
    });
  });
});
beforeEach(async () => {
  now = new Date();
  got = [];
  answer = (_, response) => response.writeHead(204).end();
  firm = await buildFirm(server.db, ['principal', 'office']);
});
afterAll(async () => {
  for (const made of open) made.closeAllConnections();
  await Promise.all(open.map((made) => new Promise((done) => made.close(done))));
  await server?.close();
});

const as = (person: Signed) => server.as(person);
const asFirm = <T>(work: (ctx: ReturnType<typeof contextFor>) => Promise<T>) =>
  inTransaction(server.db, [firm.id], (tx) => work(contextFor(tx, [firm.id], clock)));

async function newEndpoint(person = firm.principal, role = 'principal', address = url) {
  const kinds = ['report.issued', 'finding.issued', 'survey.moved'];
  const made = await as(person)
    .post('/v1/webhook-endpoints')
    .send({ firmId: firm.id, role, label: 'Claims', url: address, kinds })
    .expect(201);
  return { id: made.body.endpoint.id as string, secret: made.body.secret as string };
}

async function newSurvey() {
  const surveyId = newId();
  await asFirm(async ({ tx }) => {
    const vesselId = newId();
    await tx.vessel.create({ data: { id: vesselId, firmId: firm.id, name: 'Pintle' } });
    const number = `2026-${surveyId.slice(-8)}`;
    await tx.survey.create({
      data: { id: surveyId, firmId: firm.id, vesselId, number, purpose: 'condition' },
    });
  });
  return surveyId;
}

/** Something happens to a survey; answers the deliveries that come of it. */
async function happen(
  surveyId: string,
  kind: 'report.issued' | 'survey.moved' | 'party.added' = 'report.issued',
) {
  const eventId = await asFirm((ctx) =>
    recordEvent(ctx, {
      firmId: firm.id,
      surveyId,
      reportId: newId(),
      kind,
      role: 'surveyor',
      data: { label: 'A name' },
    }),
  );
  await asFirm((ctx) => fanOutWebhooks(ctx, { firmId: firm.id, eventId }));
  await asFirm((ctx) => fanOutWebhooks(ctx, { firmId: firm.id, eventId }));
  const rows = await asFirm(({ tx }) => tx.webhookDelivery.findMany({ where: { eventId } }));
  return rows.map((row) => row.id);
}

const deliver = (deliveryId: string, allowPrivate = true) =>
  deliverWebhookJob(
    {
      ...{ db: server.db, store: server.store, log: openLogger('test', 'fatal'), clock },
      env: {
        publicUrl: server.url,
        dataDir: server.dataDir,
        secret: testSecret,
        webhookAllowPrivate: allowPrivate,
      },
    },
    { firmId: firm.id, deliveryId },
  );

const stateOf = (id: string) =>
  asFirm(({ tx }) => tx.webhookDelivery.findUniqueOrThrow({ where: { id }, include: { endpoint: true } }));

/** Lets time pass hour by hour, with the sweep at each; what is due is sent. */
async function pass(hours: number, step = 1) {
  for (let at = 0; at < hours; at += step) {
    now = new Date(now.getTime() + step * hour);
    await asFirm(redeliverDue);
    const due = await asFirm(({ tx }) =>
      tx.webhookDelivery.findMany({ where: { state: 'waiting', nextAttemptAt: { lte: now } } }),
    );
    for (const { id } of due) await deliver(id);
  }
}

test('a message is signed as the specification says, holds ids only and comes once', async () => {
  const { secret } = await newEndpoint();
  const surveyId = await newSurvey();
  const ids = await happen(surveyId);
  expect(ids).toHaveLength(1);
  await deliver(ids[0] as string);
  await deliver(ids[0] as string);
  expect(got).toHaveLength(1);
  const message = got[0] as Got;
  expect(new Webhook(secret).verify(message.body, message.headers)).toMatchObject({
    type: 'report.issued',
    data: { firmId: firm.id, surveyId },
  });
  expect(message.headers['webhook-id']).toBe(ids[0]);
  expect(message.body).not.toContain('A name');
  expect(() => new Webhook(secret).verify(`${message.body} `, message.headers)).toThrow();
  expect(await stateOf(ids[0] as string)).toMatchObject({ state: 'delivered', status: 204, attempts: 1 });
  expect(await happen(surveyId, 'party.added')).toEqual([]);
});

test('after a change of secret both sign for a day, then the new one alone', async () => {
  const before = await newEndpoint();
  const path = `/v1/webhook-endpoints/${before.id}`;
  const { body } = await as(firm.principal).post(`${path}/secret`).expect(201);
  const [first] = await happen(await newSurvey());
  await deliver(first as string);
  const both = got[0] as Got;
  for (const secret of [before.secret, body.secret]) new Webhook(secret).verify(both.body, both.headers);
  now = new Date(now.getTime() + 25 * hour);
  await as(firm.principal).post(`/v1/webhook-deliveries/${first}/replay`).expect(202);
  await deliver(first as string);
  const after = got[1] as Got;
  expect(after.headers['webhook-id']).toBe(first);
  expect(after.headers['webhook-signature']?.split(' ')).toHaveLength(1);
});

test('500 for a day: tried again, later each time, and delivered when it is back', async () => {
  await newEndpoint();
  answer = (_, response) => response.writeHead(500).end();
  const [id] = await happen(await newSurvey());
  await deliver(id as string);
  await pass(24);
  const waiting = await stateOf(id as string);
  expect(waiting).toMatchObject({ state: 'waiting', status: 500 });
  expect(waiting.endpoint.failingSince).not.toBeNull();
  expect(got.length).toBeGreaterThanOrEqual(6);
  expect(new Set(got.map((m) => m.headers['webhook-id'])).size).toBe(1);
  answer = (_, response) => response.writeHead(200).end();
  await pass(24);
  const done = await stateOf(id as string);
  expect(done.state).toBe('delivered');
  expect(done.endpoint.failingSince).toBeNull();
});

test('days of failure switch it off and tell; started again, a period is sent anew', async () => {
  const endpoint = await newEndpoint();
  answer = (_, response) => response.writeHead(503).end();
  const began = now;
  const surveyId = await newSurvey();
  const ids: string[] = [];
  for (let day = 0; day * 24 * hour <= disableAfterMs + 24 * hour; day += 1) {
    ids.push(...(await happen(surveyId)));
    await pass(24, 2);
  }
  const path = `/v1/webhook-endpoints/${endpoint.id}`;
  const list = await as(firm.principal).get('/v1/webhook-endpoints').expect(200);
  expect(list.body.items[0]).toMatchObject({ state: 'disabled', problem: 'Answered 503.' });
  const told = await asFirm(({ tx }) =>
    tx.outbox.findMany({
      where: { job: 'mail.account-change', data: { path: ['personId'], equals: firm.principal.id } },
    }),
  );
  expect(told).toHaveLength(1);
  const events = await asFirm(({ tx }) =>
    tx.event.count({ where: { firmId: firm.id, kind: 'webhook.disabled' } }),
  );
  expect(events).toBe(1);
  await as(firm.principal).post(`${path}/trial`).expect(409);
  answer = (_, response) => response.writeHead(200).end();
  got = [];
  await as(firm.principal).patch(path).send({ state: 'active' }).expect(200);
  const replay = { since: began.toISOString(), until: now.toISOString() };
  const { body } = await as(firm.principal).post(`${path}/replay`).send(replay).expect(202);
  expect(body.count).toBe(ids.length);
  for (const id of ids) await deliver(id);
  expect(got.map((m) => m.headers['webhook-id']).sort()).toEqual([...ids].sort());
});

test('410 switches an endpoint off at once', async () => {
  await newEndpoint();
  answer = (_, response) => response.writeHead(410).end();
  const [id] = await happen(await newSurvey());
  await deliver(id as string);
  expect(await stateOf(id as string)).toMatchObject({ state: 'failed', endpoint: { state: 'disabled' } });
});

test('a redirect is not followed, to a private address least of all', async () => {
  let reached = 0;
  const inside = await listen((_, response) => {
    reached += 1;
    response.end();
  });
  await newEndpoint();
  answer = (_, response) => response.writeHead(302, { location: inside }).end();
  const [id] = await happen(await newSurvey());
  await deliver(id as string);
  expect(await stateOf(id as string)).toMatchObject({ state: 'waiting', status: 302 });
  expect(reached).toBe(0);
});

test('private addresses are refused, written in any way and by name', async () => {
  for (const address of [
    '127.0.0.1',
    '10.1.2.3',
    '172.16.0.1',
    '192.168.1.1',
    '169.254.169.254',
    '100.64.0.1',
    '0.0.0.0',
    '::1',
    '::',
    'fe80::1',
    'fc00::1',
    '::ffff:127.0.0.1',
    '::ffff:a00:1',
    '64:ff9b::a00:1',
    '224.0.0.1',
    '2002:7f00:1::',
    '255.255.255.255',
  ]) {
    expect([address, isPublicAddress(address)]).toEqual([address, false]);
  }
  for (const address of ['93.184.216.34', '2606:2800:220:1::1']) expect(isPublicAddress(address)).toBe(true);
  const port = new URL(url).port;
  for (const host of ['127.0.0.1', '[::1]', 'localhost', '2130706433', '0x7f.1', '[::ffff:7f00:1]']) {
    const post = { url: `https://${host}:${port}/`, headers: {}, body: '{}', allowPrivate: false };
    await expect(outwardPost(post), host).rejects.toThrow(AddressRefusedError);
  }
  await newEndpoint();
  const [id] = await happen(await newSurvey());
  await deliver(id as string, false);
  expect(got).toEqual([]);
  expect(await stateOf(id as string)).toMatchObject({
    state: 'waiting',
    problem: 'Only https addresses are sent to.',
  });
});

test('a receiver that hangs, drips or floods is left in time', async () => {
  const hangs = await listen(() => undefined);
  const drips = await listen((_, response) => {
    response.writeHead(200);
    const timer = setInterval(() => response.write('.'), 50);
    response.on('close', () => clearInterval(timer));
  });
  const floods = await listen((_, response) => {
    response.writeHead(200);
    const more = () => {
      while (!response.destroyed && response.write(Buffer.alloc(65_536)));
      response.once('drain', more);
    };
    more();
  });
  const post = { headers: {}, body: '{}', allowPrivate: true, timeoutMs: 400 };
  await expect(outwardPost({ ...post, url: hangs })).rejects.toThrow('No whole answer within 0.4 s');
  await expect(outwardPost({ ...post, url: drips })).rejects.toThrow('No whole answer');
  expect(await outwardPost({ ...post, timeoutMs: 5_000, url: floods })).toEqual({ status: 200 });
});

test('a party is told what it may see when the message leaves; others have no part in its endpoints', async () => {
  const insurer = await buildPerson(server.db);
  const surveyId = await newSurvey();
  const partyId = newId();
  await asFirm(({ tx }) =>
    tx.party.create({
      data: {
        id: partyId,
        firmId: firm.id,
        surveyId,
        personId: insurer.id,
        role: 'insurer',
        name: 'I',
        released: false,
      },
    }),
  );
  const endpoint = await newEndpoint(insurer, 'insurer');
  await as(insurer)
    .post('/v1/webhook-endpoints')
    .send({ firmId: firm.id, role: 'owner', label: 'x', url, kinds: ['report.issued'] })
    .expect(403);
  await as(firm.office)
    .post('/v1/webhook-endpoints')
    .send({ firmId: firm.id, role: 'principal', label: 'x', url, kinds: ['report.issued'] })
    .expect(403);
  const [unreleased] = await happen(surveyId);
  await deliver(unreleased as string);
  expect(await stateOf(unreleased as string)).toMatchObject({ state: 'dropped' });
  const [moved] = await happen(surveyId, 'survey.moved');
  await deliver(moved as string);
  await asFirm(({ tx }) => tx.party.update({ where: { id: partyId }, data: { released: true } }));
  const [released] = await happen(surveyId);
  await deliver(released as string);
  expect(got.map((m) => JSON.parse(m.body).type)).toEqual(['survey.moved', 'report.issued']);
  expect(await happen(await newSurvey())).toEqual([]);
  const [late] = await happen(surveyId);
  await asFirm(({ tx }) => tx.party.delete({ where: { id: partyId } }));
  await deliver(late as string);
  expect(await stateOf(late as string)).toMatchObject({ state: 'dropped' });
  expect(got).toHaveLength(2);
  for (const other of [firm.principal, firm.office]) {
    await as(other).get(`/v1/webhook-endpoints/${endpoint.id}/deliveries`).expect(404);
    await as(other).delete(`/v1/webhook-endpoints/${endpoint.id}`).expect(404);
    await as(other).post(`/v1/webhook-deliveries/${late}/replay`).expect(404);
  }
  const log = await as(insurer).get(`/v1/webhook-endpoints/${endpoint.id}/deliveries`).expect(200);
  expect(log.body.items).toHaveLength(4);
});
