import { randomUUID } from 'node:crypto';
import { setTimeout as sleep } from 'node:timers/promises';
import { hashPassword } from '@garboard/core/people/passwords';
import { inTransaction } from '@garboard/db/database';
import { buildJpeg } from '@garboard/seed/builders';
import { afterAll, beforeAll, describe, expect, test, vi } from 'vitest';
import { type SurveyRows, signIn, writeSurvey } from '../jobs/survey-rows.ts';
import { type Balancer, startBalancer } from '../support/balancer.ts';
import { type Installation, newInstallation, type Running } from '../support/installation.ts';

const email = 'quorn@tallowstrake.example';
const password = 'nine herons on a cold mole';

let installation: Installation;
let apis: Running[];
let balancer: Balancer;
let rows: SurveyRows;
let token: string;

beforeAll(async () => {
  installation = await newInstallation({ DRAIN_SECONDS: '3', LOG_LEVEL: 'warn' });
  balancer = await startBalancer();
  apis = await Promise.all([installation.start('api'), installation.start('api')]);
  rows = await writeSurvey(installation.db, 1);
  const passwordHash = await hashPassword(password);
  await inTransaction(installation.db, [rows.firmId], (tx) =>
    tx.person.update({ where: { id: rows.personId }, data: { email, passwordHash } }),
  );
  token = await signIn(installation.db, rows.personId);
  await Promise.all(apis.map((api) => api.ready()));
}, 180_000);
afterAll(async () => {
  await balancer?.close();
  await installation?.close();
});

const at = (n: number) => apis[n % apis.length]?.url ?? '';
const json = (body: unknown, headers: Record<string, string> = {}) => ({
  method: 'POST',
  headers: { 'content-type': 'application/json', ...headers },
  body: JSON.stringify(body),
});
const mine = () => ({ authorization: `Bearer ${token}` });

describe('two processes are one service', () => {
  test('a session begun at one is good at the other, and ends at both', async () => {
    const begun = await fetch(`${at(0)}/v1/sessions`, json({ email, password }));
    expect(begun.status).toBe(201);
    const cookie = begun.headers.getSetCookie()[0]?.split(';')[0] ?? '';
    const me = (n: number) => fetch(`${at(n)}/v1/me`, { headers: { cookie } });
    expect([(await me(0)).status, (await me(1)).status]).toEqual([200, 200]);
    const ended = await fetch(`${at(1)}/v1/sessions/current`, {
      method: 'DELETE',
      headers: { cookie, 'sec-fetch-site': 'same-origin' },
    });
    expect(ended.status).toBe(204);
    expect([(await me(0)).status, (await me(1)).status]).toEqual([401, 401]);
  });

  test('attempts at a password are counted together', async () => {
    const guess = (n: number) =>
      fetch(`${at(n)}/v1/sessions`, json({ email: 'nobody@lee.example', password: 'wrong wrong wrong' }));
    const statuses: number[] = [];
    for (let n = 0; n < 12; n += 1) statuses.push((await guess(n)).status);
    expect(statuses).toEqual([...Array(10).fill(401), 429, 429]);
  });

  test('documents looked up are counted together', async () => {
    const looks = await Promise.all(
      Array.from({ length: 64 }, (_, n) => fetch(`${at(n)}/v1/verifications/2345-6789-ABCD-EFGH-JKMN`)),
    );
    const statuses = looks.map(({ status }) => status);
    expect(statuses.filter((status) => status === 429)).toHaveLength(4);
    expect(looks.find(({ status }) => status === 429)?.headers.get('retry-after')).toMatch(/^\d+$/);
  });

  test('one idempotency key sent to both at once makes one record, and both tell of it', async () => {
    const headers = { ...mine(), 'idempotency-key': randomUUID() };
    const answers = await Promise.all(
      [0, 1, 0, 1].map((n) => fetch(`${at(n)}/v1/vessels`, json({ name: 'Sent Twice' }, headers))),
    );
    const bodies = await Promise.all(answers.map((answer) => answer.json() as Promise<{ id: string }>));
    expect(answers.map(({ status }) => status)).toEqual([201, 201, 201, 201]);
    expect(new Set(bodies.map(({ id }) => id)).size).toBe(1);
    const count = await inTransaction(installation.db, [rows.firmId], (tx) =>
      tx.vessel.count({ where: { name: 'Sent Twice' } }),
    );
    expect(count).toBe(1);
  });
});

/** A body that takes a while to be sent, as by a telephone. */
function slowForm(bytes: Buffer, ms: number) {
  const boundary = `b${randomUUID()}`;
  const head = `--${boundary}\r\ncontent-disposition: form-data; name="file"; filename="slow.jpg"\r\n\r\n`;
  const pieces = 20;
  async function* body() {
    yield Buffer.from(head);
    for (let i = 0; i < pieces; i += 1) {
      yield bytes.subarray((bytes.length * i) / pieces, (bytes.length * (i + 1)) / pieces);
      await sleep(ms / pieces);
    }
    yield Buffer.from(`\r\n--${boundary}--\r\n`);
  }
  return { type: `multipart/form-data; boundary=${boundary}`, body: body() };
}

test('both are replaced one after the other under load, and nobody notices', async () => {
  balancer.serve(apis.map(({ url }) => url));
  await vi.waitFor(async () => expect((await fetch(`${balancer.url}/health/ready`)).status).toBe(200), {
    timeout: 20_000,
  });
  let going = true;
  const failed: string[] = [];
  const made: string[] = [];
  let [reads, uploads] = [0, 0];
  const expecting = async (what: string, status: number, asked: Promise<Response>) => {
    const answer = await asked.catch((error: unknown) => ({ status: 0, text: async () => String(error) }));
    const text = await answer.text();
    if (answer.status !== status) failed.push(`${what}: ${answer.status} ${text.slice(0, 200)}`);
    return answer.status === status ? text : '';
  };
  const reader = async () => {
    while (going) {
      await expecting('read', 200, fetch(`${balancer.url}/v1/surveys`, { headers: mine() }));
      reads += 1;
    }
  };
  const writer = async () => {
    while (going) {
      const name = `Boat ${made.length}`;
      const headers = { ...mine(), 'idempotency-key': randomUUID() };
      const text = await expecting(
        'write',
        201,
        fetch(`${balancer.url}/v1/vessels`, json({ name }, headers)),
      );
      if (text) made.push(JSON.parse(text).id);
    }
  };
  const uploader = async (seed: number) => {
    for (let n = seed; going; n += 100) {
      const { type, body } = slowForm(await buildJpeg(n, { width: 400, height: 300 }), 1_500);
      const init = { method: 'POST', headers: { ...mine(), 'content-type': type }, body, duplex: 'half' };
      const sent = fetch(
        `${balancer.url}/v1/surveys/${rows.surveyId}/photos`,
        init as unknown as RequestInit,
      );
      await expecting('upload', 201, sent);
      uploads += 1;
    }
  };
  const load = Promise.all([reader(), reader(), writer(), writer(), uploader(1), uploader(2)]);

  for (const old of apis) {
    const next = await installation.start('api');
    await next.ready();
    apis = [...apis.filter((api) => api !== old), next];
    // As an orchestrator does: the new one is announced, the old one is told to end and found not ready by the checks.
    balancer.serve([...apis, old].map(({ url }) => url));
    expect(await old.end('SIGTERM'), old.printed().slice(-2_000)).toBe(0);
    balancer.serve(apis.map(({ url }) => url));
  }
  going = false;
  await load;
  expect(failed).toEqual([]);
  expect(reads).toBeGreaterThan(10);
  expect(made.length).toBeGreaterThan(10);
  expect(uploads).toBeGreaterThanOrEqual(4);
  const kept = await inTransaction(installation.db, [rows.firmId], (tx) =>
    tx.vessel.count({ where: { name: { startsWith: 'Boat ' } } }),
  );
  expect(kept).toBe(made.length);
}, 240_000);
