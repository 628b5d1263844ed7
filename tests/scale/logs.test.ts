import { once } from 'node:events';
import type { AddressInfo } from 'node:net';
import { hashPassword } from '@garboard/core/people/passwords';
import { inTransaction } from '@garboard/db/database';
import { newId } from '@garboard/db/ids';
import { loggedError, netted, withoutValues } from '@garboard/platform/logged';
import { buildJpeg } from '@garboard/seed/builders';
import { Client } from 'pg';
import { SMTPServer } from 'smtp-server';
import { afterAll, beforeAll, expect, test, vi } from 'vitest';
import { type SurveyRows, signIn, writeSurvey } from '../jobs/survey-rows.ts';
import { type Installation, newInstallation, type Running } from '../support/installation.ts';

const person = { name: 'Wilhelmina Oddfellow', email: 'wilhelmina.oddfellow@larkspur-survey.example' };
const owner = { name: 'Barnaby Threadgold', email: 'barnaby@threadgold-family.example' };
const password = 'a lighthouse under seven moons';
const files = ['Threadgold kitchen table.jpg', 'Oddfellow-passport.jpg', 'barnaby.p12'];
const words = 'Threadgold keeps the spare key under the mat';

let installation: Installation;
let api: Running;
let worker: Running;
let smtp: SMTPServer;
let rows: SurveyRows;
let token: string;
const secrets: string[] = [];

beforeAll(async () => {
  // Refuses the owner in words that repeat the address, as mail servers do.
  smtp = new SMTPServer({
    authOptional: true,
    disabledCommands: ['STARTTLS'],
    onRcptTo: ({ address }, _session, done) =>
      done(
        address === owner.email
          ? Object.assign(new Error(`<${address}>: no such mailbox of ${owner.name}`), { responseCode: 550 })
          : null,
      ),
    onData(stream, _session, done) {
      stream.resume().once('end', () => done());
    },
  });
  smtp.listen(0, '127.0.0.1');
  await once(smtp.server, 'listening');
  const { port } = smtp.server.address() as AddressInfo;
  installation = await newInstallation({ SMTP_URL: `smtp://127.0.0.1:${port}`, LOG_LEVEL: 'debug' });
  [api, worker] = await Promise.all([installation.start('api'), installation.start('worker')]);
  rows = await writeSurvey(installation.db, 2);
  const passwordHash = await hashPassword(password);
  await inTransaction(installation.db, [rows.firmId], (tx) =>
    tx.person.update({ where: { id: rows.personId }, data: { ...person, passwordHash } }),
  );
  token = await signIn(installation.db, rows.personId);
  await Promise.all([api.ready(), worker.ready()]);
}, 180_000);
afterAll(async () => {
  await installation?.close();
  await new Promise<void>((done) => smtp.close(() => done()));
});

const send = (method: string, path: string, body?: unknown, headers: Record<string, string> = {}) =>
  fetch(`${api.url}${path}`, {
    method,
    headers: {
      authorization: `Bearer ${token}`,
      ...(body instanceof FormData ? {} : { 'content-type': 'application/json' }),
      ...headers,
    },
    body: body === undefined || body instanceof FormData ? (body as FormData) : JSON.stringify(body),
  });

/** What people do on a day on which things go wrong too; answers with what was asked for and its outcome. */
async function livelyDay(): Promise<Record<string, number>> {
  const outcomes: Record<string, number> = {};
  const note = async (what: string, doing: Promise<Response>) => {
    const answer = await doing;
    outcomes[what] = answer.status;
    return answer;
  };
  const survey = `/v1/surveys/${rows.surveyId}`;
  const { email } = person;
  await note(
    'wrong password',
    send('POST', '/v1/sessions', { email, password: `${password}?` }, { authorization: '' }),
  );
  const signedIn = await note(
    'sign in',
    send('POST', '/v1/sessions', { email, password }, { authorization: '' }),
  );
  secrets.push(...signedIn.headers.getSetCookie().map((cookie) => /=([^;]+)/.exec(cookie)?.[1] ?? ''));
  await note('mail a link', send('POST', '/v1/sign-in-links', { email }, { authorization: '' }));
  await note('search', send('GET', `/v1/photo-library?q=${encodeURIComponent(owner.name)}`));
  await note(
    'a stranger’s address',
    fetch(`${api.url}/letters/${encodeURIComponent(owner.name)}?mail=${owner.email}`),
  );
  await note('a calendar', fetch(`${api.url}/v1/calendars/${'k'.repeat(20)}${'Q'.repeat(23)}/visits.ics`));
  secrets.push(`${'k'.repeat(20)}${'Q'.repeat(23)}`);
  await note('invite', send('POST', `${survey}/parties`, { role: 'owner', ...owner, released: true }));
  const form = new FormData();
  form.append('file', new Blob([Uint8Array.from(await buildJpeg(1))]), files[0]);
  form.append('file', new Blob(['no picture']), files[1]);
  await note('photos', send('POST', `${survey}/photos`, form));
  const bad = new FormData();
  bad.append('file', new Blob(['no key']), files[2]);
  await note('a key', send('POST', `${survey}/photos`, bad));
  await note(
    'malformed',
    send('PATCH', `/v1/findings/${rows.findingIds[0]}`, { observed: words, urgency: words }),
  );
  await note('a boat', send('POST', '/v1/vessels', { name: `${owner.name}’s Dream` }));
  const key = await note(
    'a program',
    send('POST', '/v1/api-keys', { name: owner.name, access: 'read', firmId: rows.firmId, role: 'surveyor' }),
  );
  secrets.push(...(JSON.stringify(await key.json()).match(/gbk_[\w-]+/g) ?? []));
  return outcomes;
}

test('what is logged names no person, no file, no word of theirs and no secret', async () => {
  const outcomes = await livelyDay();
  expect(outcomes).toMatchObject({
    'wrong password': 401,
    'sign in': 201,
    invite: 201,
    photos: 201,
    'a boat': 201,
  });
  // A photo whose file is lost: the report fails with words that name it to the surveyor.
  const photo = await inTransaction(installation.db, [rows.firmId], (tx) => tx.photo.findFirstOrThrow());
  expect(photo.fileName).toBe(files[0]);
  await vi.waitFor(
    () => {
      expect(worker.printed()).toContain('"job":"mail.sign-in-link"');
      expect(worker.printed()).toContain('"job":"photo.derive"');
    },
    { timeout: 60_000, interval: 200 },
  );
  await vi.waitFor(() => expect(worker.printed()).toMatch(/refused|not sent|job failed/), {
    timeout: 60_000,
  });
  // The database fails under a request and under a job, whose errors quote what was being written.
  const broken = new Client({ connectionString: installation.databaseUrl });
  await broken.connect();
  await broken.query(
    `ALTER TABLE vessels ADD CONSTRAINT no_dreams CHECK (name NOT LIKE '%Reverie') NOT VALID`,
  );
  expect((await send('POST', '/v1/vessels', { name: `${owner.name}’s Reverie` })).status).toBe(500);
  await broken.query('ALTER FUNCTION garboard_session(text) RENAME TO garboard_no_session');
  expect((await send('GET', '/v1/me')).status).toBe(500);
  await broken.end();

  await vi.waitFor(() => expect(api.printed().match(/"msg":"request failed"/g)).toHaveLength(2));
  const logged = api.printed() + worker.printed();
  const lines = logged.split('\n').filter((line) => line.startsWith('{'));
  expect(lines.length).toBeGreaterThan(20);
  expect(lines.map((line) => JSON.parse(line))).toContainEqual(
    expect.objectContaining({
      msg: 'request',
      req: expect.objectContaining({ route: '/v1/surveys/:id/parties', ids: { id: rows.surveyId } }),
    }),
  );
  expect(logged).toMatch(/violates check constraint .{0,3}no_dreams/);
  const people = [
    person.name,
    owner.name,
    person.email,
    owner.email,
    'Oddfellow',
    'Threadgold',
    'barnaby',
    'Wilhelmina',
  ];
  const forms = (secret: string) => [secret, encodeURIComponent(secret), JSON.stringify(secret).slice(1, -1)];
  for (const secret of [...people, password, token, words, ...files, ...secrets].flatMap(forms)) {
    const at = logged.toLowerCase().indexOf(secret.toLowerCase());
    expect(at < 0 ? '' : `${secret} in: ${logged.slice(Math.max(0, at - 300), at + 100)}`).toBe('');
  }
  expect(secrets.filter(Boolean).length).toBeGreaterThanOrEqual(3);
}, 240_000);

test('errors keep their kind, facts and place, and lose what they quote', () => {
  const cause = Object.assign(new Error('550 5.1.1 <bo@x.example> unknown'), { responseCode: 550 });
  const error = new Error(`Could not read “Bo’s boat.jpg” at https://host.example/a/b?c=d`, { cause });
  expect(loggedError(error)).toMatchObject({
    name: 'Error',
    message: 'Could not read […] at https://host.example/…',
    stack: expect.stringMatching(/^\s+at .*logs\.test\.ts/),
    cause: { responseCode: 550 },
  });
  expect(withoutValues('The job queue didn’t answer within 10 s; it isn’t there.')).toContain(
    'it isn’t there',
  );
  const id = newId();
  expect(netted(`to bo@x.example with gbk_abc-def, ${'a'.repeat(43)}, ${id} and ${'ab'.repeat(32)}`)).toBe(
    `to [address] with [key], [token], ${id} and ${'ab'.repeat(32)}`,
  );
});
