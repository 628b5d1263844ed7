import { hashPassword } from '@garboard/core/people/passwords';
import { hashToken, newToken } from '@garboard/core/people/tokens';
import { newId } from '@garboard/db/ids';
import { buildFirm, buildPerson } from '@garboard/seed/builders';
import { firstAccountLink } from '@garboard/seed/first-account';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { startServer, type TestServer } from '../support/server.ts';

let server: TestServer;
beforeAll(async () => {
  server = await startServer();
});
afterAll(() => server.close());

const password = 'a password for tests';

async function withPassword() {
  const person = await buildPerson(server.db);
  await server.db.prisma.person.update({
    where: { id: person.id },
    data: { passwordHash: await hashPassword(password) },
  });
  return person;
}

describe('signing in', () => {
  it('founds the firm on an empty installation by a link that works once', async () => {
    const link = await firstAccountLink(server.db, server.url);
    const token = new URL(link).hash.replace('#token=', '');
    const looked = await server.as(null).post('/v1/welcome/lookup').send({ token }).expect(200);
    expect(looked.body.kind).toBe('first-account');
    const body = {
      token,
      password,
      name: 'Orla Test',
      email: 'Orla@Firm.example',
      firmName: 'Orla & Daughters',
    };
    const short = await server
      .as(null)
      .post('/v1/welcome')
      .send({ ...body, password: 'short' })
      .expect(422);
    expect(short.body.errors[0].pointer).toBe('/password');
    const made = await server.as(null).post('/v1/welcome').send(body).expect(201);
    const me = await server
      .as({ ...made.body.person, token: made.body.token })
      .get('/v1/me')
      .expect(200);
    expect(me.body.firmRoles).toMatchObject([{ firm: { name: 'Orla & Daughters' }, role: 'principal' }]);
    await server.as(null).post('/v1/welcome').send(body).expect(410);
  });

  it('gives a token and a cookie, and ends both on signing out', async () => {
    const person = await withPassword();
    const signedIn = await server
      .as(null)
      .post('/v1/sessions')
      .send({ email: person.email.toUpperCase(), password })
      .expect(201);
    expect(signedIn.body.person.email).toBe(person.email);
    const cookie = signedIn.headers['set-cookie']?.[0] ?? '';
    expect(cookie).toMatch(/HttpOnly/);
    expect(cookie).toMatch(/SameSite=Lax/);
    const pair = cookie.split(';')[0] ?? '';
    await server.as(null).get('/v1/me').set('cookie', pair).expect(200);
    await server
      .as(null)
      .delete('/v1/sessions/current')
      .set('cookie', pair)
      .set('origin', 'http://evil.example')
      .expect(403);
    await server
      .as(null)
      .delete('/v1/sessions/current')
      .set('cookie', pair)
      .set('origin', server.url)
      .expect(204);
    const after = await server.as(null).get('/v1/me').set('cookie', pair).expect(401);
    expect(after.headers['content-type']).toContain('application/problem+json');
  });

  it('says the same for a wrong password and an unknown address, and slows guessing down', async () => {
    const person = await withPassword();
    const wrong = await server
      .as(null)
      .post('/v1/sessions')
      .send({ email: person.email, password: 'nope' })
      .expect(401);
    const unknown = await server
      .as(null)
      .post('/v1/sessions')
      .send({ email: 'nobody@nowhere.example', password: 'nope' })
      .expect(401);
    expect(unknown.body.detail).toBe(wrong.body.detail);
    let status = 401;
    for (let i = 0; i < 15 && status === 401; i += 1) {
      const answer = await server
        .as(null)
        .post('/v1/sessions')
        .send({ email: person.email, password: 'nope' });
      status = answer.status;
      if (status === 429) expect(Number(answer.headers['retry-after'])).toBeGreaterThan(0);
    }
    expect(status).toBe(429);
    await server.as(null).post('/v1/sessions').send({ email: person.email, password }).expect(429);
  });

  it('keeps tokens only as hashes and refuses expired sessions', async () => {
    const person = await buildPerson(server.db);
    const token = newToken();
    await server.db.prisma.session.create({
      data: {
        id: newId(),
        personId: person.id,
        tokenHash: hashToken(token),
        expiresAt: new Date(Date.now() - 1000),
      },
    });
    await server
      .as({ ...person, token })
      .get('/v1/me')
      .expect(401);
    expect(await server.db.prisma.session.count({ where: { tokenHash: token } })).toBe(0);
  });
});

describe('a firm', () => {
  it('is changed by its principal, and only at the version seen', async () => {
    const firm = await buildFirm(server.db, ['principal', 'surveyor']);
    const principal = server.as(firm.principal);
    const seen = await principal.get(`/v1/firms/${firm.id}`).expect(200);
    const { etag } = seen.headers;
    await server.as(firm.surveyor).patch(`/v1/firms/${firm.id}`).send({ phone: '1' }).expect(403);
    const edit = { addressLines: ['1 Quay'], phone: '+44 1632 960000' };
    await principal
      .patch(`/v1/firms/${firm.id}`)
      .set('if-match', etag ?? '')
      .send(edit)
      .expect(200);
    await principal
      .patch(`/v1/firms/${firm.id}`)
      .set('if-match', etag ?? '')
      .send(edit)
      .expect(412);
  });

  it('invites a colleague, who gets a link to choose a password', async () => {
    const firm = await buildFirm(server.db, ['principal']);
    const member = { role: 'surveyor', name: 'Nils Colleague', email: 'nils@colleague.example' };
    const made = await server
      .as(firm.principal)
      .post(`/v1/firms/${firm.id}/members`)
      .send(member)
      .expect(201);
    expect(made.body).toMatchObject({ role: 'surveyor', joined: false });
    await server.as(firm.principal).post(`/v1/firms/${firm.id}/members`).send(member).expect(409);
    const link = await server.db.prisma.oneTimeLink.findFirstOrThrow({ where: { email: member.email } });
    const job = await server.db.prisma.outbox.findFirst({ where: { data: { equals: { linkId: link.id } } } });
    expect(job?.job).toBe('mail.invitation');
    const list = await server.as(firm.principal).get(`/v1/firms/${firm.id}/members`).expect(200);
    expect(list.body.items.map((m: { email: string }) => m.email)).toContain(member.email);
    const stranger = await buildFirm(server.db, ['principal']);
    await server.as(stranger.principal).get(`/v1/firms/${firm.id}/members`).expect(404);
  });
});
