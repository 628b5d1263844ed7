import { hashPassword } from '@garboard/core/people/passwords';
import { buildFirm, buildJpeg, type Signed } from '@garboard/seed/builders';
import { afterAll, beforeAll, describe, expect, it, test } from 'vitest';
import { startServer, type TestServer } from '../support/server.ts';

// What another site can make a signed-in person's browser send. Cookies are SameSite=Lax besides; here they always come.
let server: TestServer;
let principal: Signed;
const password = 'tidal rope under mist';
const evil = 'https://elsewhere.example';

beforeAll(async () => {
  server = await startServer();
  principal = (await buildFirm(server.db, ['principal'])).principal;
  await server.db.prisma.person.update({
    where: { id: principal.id },
    data: { passwordHash: await hashPassword(password) },
  });
});
afterAll(() => server?.close());

const cookie = () => `garboard_session=${principal.token}`;
const json = { 'content-type': 'application/json' };
const vessel = JSON.stringify({ name: 'Fairlead' });
const write = (headers: Record<string, string>, body: string | FormData = vessel, path = '/v1/vessels') =>
  fetch(`${server.url}${path}`, { method: 'POST', headers: { cookie: cookie(), ...headers }, body });
const vessels = () => server.db.prisma.vessel.count();

describe('a write that another site has a browser make', () => {
  const foreign: [string, Record<string, string>][] = [
    ['of another site', { origin: evil, 'sec-fetch-site': 'cross-site' }],
    ['of another site, by an old browser', { origin: evil }],
    ['of a page in a sandbox or from a file', { origin: 'null', 'sec-fetch-site': 'cross-site' }],
    ['that is no address', { origin: 'not an address' }],
    ['whose name begins like ours', { origin: 'http://127.0.0.1:3000.elsewhere.example' }],
    [
      'of a neighbour under the same domain',
      { origin: 'http://files.127.0.0.1', 'sec-fetch-site': 'same-site' },
    ],
    ['without an origin, across sites', { 'sec-fetch-site': 'cross-site' }],
    ['without an origin, of a neighbour', { 'sec-fetch-site': 'same-site' }],
  ];
  it.each(foreign)('is refused with an origin %s', async (_, headers) => {
    const before = await vessels();
    const answer = await write({ ...json, ...headers });
    expect(answer.status).toBe(403);
    expect((await answer.json()).type).toBe('/problems/foreign-origin');
    expect(await vessels()).toBe(before);
  });

  it('is refused as the forms a page can send without asking, even where no origin is told', async () => {
    const before = await vessels();
    for (const type of [
      'text/plain',
      'application/x-www-form-urlencoded',
      'text/plain; a=application/json',
    ]) {
      expect((await write({ 'content-type': type })).status).toBe(415);
    }
    const form = new FormData();
    form.append('name', 'Fairlead');
    // A form is no JSON: what the route needs isn’t in it.
    expect((await write({}, form)).status).toBe(422);
    expect(await vessels()).toBe(before);
  });

  it('is refused for uploads, which are forms', async () => {
    const made = await server.as(principal).post('/v1/vessels').send({ name: 'Fairlead' }).expect(201);
    const survey = await server
      .as(principal)
      .post('/v1/surveys')
      .send({ vesselId: made.body.id, purpose: 'insurance' })
      .expect(201);
    const form = new FormData();
    form.append('file', new Blob([new Uint8Array(await buildJpeg(1))]), 'a.jpg');
    const path = `/v1/surveys/${survey.body.id}/photos`;
    expect((await write({ origin: evil }, form, path)).status).toBe(403);
    expect((await write({ origin: 'null' }, form, path)).status).toBe(403);
    expect(await server.db.prisma.photo.count()).toBe(0);
  });

  it('can’t sign somebody in as somebody else, though no session is needed for it', async () => {
    const body = JSON.stringify({ email: principal.email, password });
    const foreignHeaders: Record<string, string>[] = [
      { origin: evil },
      { origin: 'null' },
      { 'sec-fetch-site': 'cross-site' },
    ];
    for (const headers of foreignHeaders) {
      const answer = await fetch(`${server.url}/v1/sessions`, {
        method: 'POST',
        headers: { ...json, ...headers },
        body,
      });
      expect(answer.status).toBe(403);
      expect(answer.headers.get('set-cookie')).toBeNull();
    }
  });

  it('is taken from our own pages, and from programs that bring a token', async () => {
    const own = new URL(server.url).origin;
    expect((await write({ ...json, origin: own, 'sec-fetch-site': 'same-origin' })).status).toBe(201);
    expect((await write({ ...json, origin: 'http://127.0.0.1:3000' })).status).toBe(201);
    expect((await write({ ...json, 'sec-fetch-site': 'same-origin' })).status).toBe(201);
    expect((await write(json)).status).toBe(201);
    await server.as(principal).post('/v1/vessels').set('origin', evil).send({ name: 'Fairlead' }).expect(201);
  });
});

test('reading never changes anything: routes that write have no method a page can trigger by a link or picture', async () => {
  const { routes } = await import('@garboard/contract/routes');
  const byGet = Object.values(routes).filter((route) => route.method === 'GET');
  expect(byGet.length).toBeGreaterThan(50);
  // A form, an image or a link makes GET and POST only; DELETE, PUT and PATCH need a script of our own.
  for (const route of byGet) expect('body' in route && route.body).toBeFalsy();
  const before = await vessels();
  const answer = await fetch(`${server.url}/v1/vessels?name=Fairlead&_method=POST`, {
    headers: { cookie: cookie(), 'x-http-method-override': 'POST' },
  });
  expect(answer.status).toBeLessThan(500);
  expect(await vessels()).toBe(before);
});

test('no other origin is told that it may read or ask', async () => {
  for (const [method, path] of [
    ['OPTIONS', '/v1/vessels'],
    ['GET', '/v1/me'],
    ['GET', '/health/live'],
    ['GET', '/openapi.json'],
    ['POST', '/v1/sessions'],
  ] as const) {
    const answer = await fetch(`${server.url}${path}`, {
      method,
      headers: {
        origin: evil,
        cookie: cookie(),
        'access-control-request-method': 'POST',
        'access-control-request-headers': 'content-type',
      },
    });
    const cors = [...answer.headers.keys()].filter((name) => name.startsWith('access-control-'));
    expect(cors, `${method} ${path}`).toEqual([]);
    expect(answer.headers.get('cross-origin-resource-policy')).toBe('same-origin');
  }
});
