import { hashPassword } from '@garboard/core/people/passwords';
import { hashToken } from '@garboard/core/people/tokens';
import { buildFirm, buildPerson, type Signed } from '@garboard/seed/builders';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { startServer, type TestServer } from '../support/server.ts';

let server: TestServer;
beforeAll(async () => {
  server = await startServer();
});
afterAll(() => server?.close());
beforeEach(() => server.db.prisma.attemptCount.deleteMany());

const password = 'tidal rope under mist';
const firefox = 'Mozilla/5.0 (X11; Linux x86_64; rv:140.0) Gecko/20100101 Firefox/140.0';

async function withPassword(): Promise<Signed> {
  const person = await buildPerson(server.db);
  const passwordHash = await hashPassword(password);
  await server.db.prisma.person.update({ where: { id: person.id }, data: { passwordHash } });
  return person;
}

const signIn = (email: string) => server.as(null).post('/v1/sessions').send({ email, password });
const dayMs = 86_400_000;

describe('sessions', () => {
  it('are listed with the browser in words, and ended one by one or all the others', async () => {
    const person = await withPassword();
    await server.db.prisma.session.deleteMany({ where: { personId: person.id } });
    const here = await signIn(person.email).set('user-agent', firefox).expect(201);
    const api = server.as(here.body);
    for (let n = 0; n < 3; n += 1) await signIn(person.email).expect(201);
    const { items } = (await api.get('/v1/sessions').expect(200)).body;
    expect(items).toHaveLength(4);
    const current = items.find((s: { current: boolean }) => s.current);
    expect(current).toMatchObject({ device: 'Firefox on Linux', address: '127.0.0.1' });
    const [newest] = items;
    await api.delete(`/v1/sessions/${newest.id}`).expect(204);
    await api.delete(`/v1/sessions/${newest.id}`).expect(404);
    const stranger = await buildPerson(server.db);
    await server.as(stranger).delete(`/v1/sessions/${current.id}`).expect(404);
    await api.delete('/v1/sessions/others').expect(204);
    const left = (await api.get('/v1/sessions').expect(200)).body.items;
    expect(left.map((s: { id: string }) => s.id)).toEqual([current.id]);
  });

  it('get a new token at every sign-in, and the one brought along ends', async () => {
    const person = await withPassword();
    const first = await signIn(person.email).expect(201);
    const cookie = first.headers['set-cookie']?.[0]?.split(';')[0] ?? '';
    const second = await signIn(person.email).set('cookie', cookie).set('origin', server.url).expect(201);
    expect(second.body.token).not.toBe(first.body.token);
    await server.as(first.body).get('/v1/me').expect(401);
    // A token planted in somebody's browser is worth nothing before and after.
    const planted = 'garboard_session=0123456789012345678901234567890123456789012';
    const third = await signIn(person.email).set('cookie', planted).set('origin', server.url).expect(201);
    expect(third.headers['set-cookie']?.[0]).not.toContain(planted.split('=')[1]);
  });

  it('end after two weeks without a request, thirty days at the latest', async () => {
    const person = await withPassword();
    const { body } = await signIn(person.email).expect(201);
    const where = { tokenHash: hashToken(body.token) };
    const ends = async () =>
      (await server.db.prisma.session.findUniqueOrThrow({ where })).expiresAt.getTime() - Date.now();
    expect(await ends()).toBeLessThan(14 * dayMs + 1000);
    const ago = (days: number) => new Date(Date.now() - days * dayMs);
    await server.db.prisma.session.update({ where, data: { lastSeenAt: ago(10), createdAt: ago(10) } });
    await server.as(body).get('/v1/me').expect(200);
    expect(Math.round((await ends()) / dayMs)).toBe(14);
    await server.db.prisma.session.update({ where, data: { lastSeenAt: ago(1), createdAt: ago(29) } });
    await server.as(body).get('/v1/me').expect(200);
    expect(Math.round((await ends()) / dayMs)).toBe(1);
    await server.db.prisma.session.update({ where, data: { expiresAt: ago(0.001) } });
    await server.as(body).get('/v1/me').expect(401);
  });
});

describe('changing the password', () => {
  it('takes the present one, even in a new session that didn’t begin with a link', async () => {
    const person = await withPassword();
    const here = await signIn(person.email).expect(201);
    const change = (body: object) => server.as(here.body).put('/v1/me/password').send(body);
    const next = 'a drier harbour wall';
    expect((await change({ password: next }).expect(403)).body.type).toBe('/problems/proof-needed');
    await change({ password: next, currentPassword: 'not it' }).expect(403);
    const weak = await change({ password: '111111111111', currentPassword: password }).expect(422);
    expect(weak.body.errors[0].pointer).toBe('/password');
    const changed = await change({ password: next, currentPassword: password }).expect(200);
    await server.as(here.body).get('/v1/me').expect(401);
    await server.as(person).get('/v1/me').expect(401);
    await server.as(changed.body).get('/v1/me').expect(200);
    await signIn(person.email).expect(401);
  });

  it('can’t be used to guess the present one', async () => {
    const person = await withPassword();
    const here = await signIn(person.email).expect(201);
    const statuses = new Set<number>();
    for (let n = 0; n < 14; n += 1) {
      const body = { password: 'a drier harbour wall', currentPassword: `guess ${n}` };
      statuses.add((await server.as(here.body).put('/v1/me/password').send(body)).status);
    }
    expect([...statuses]).toEqual([403, 429]);
  });
});

describe('over https', () => {
  it('the cookie is bound to the host and to secure connections', async () => {
    const firm = await buildFirm(server.db, ['principal']);
    expect(firm.id).toBeTruthy();
    const { sessionCookie, cookieOptions } = await import('@garboard/api/http/session');
    expect(sessionCookie('https://survey.example')).toBe('__Host-garboard_session');
    expect(cookieOptions('https://survey.example')).toEqual({
      ...{ path: '/', httpOnly: true, sameSite: 'lax', secure: true },
    });
    expect(sessionCookie('http://127.0.0.1:3000')).toBe('garboard_session');
  });
});
