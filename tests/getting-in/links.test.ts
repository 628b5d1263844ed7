import { hashPassword } from '@garboard/core/people/passwords';
import { hashToken, newToken } from '@garboard/core/people/tokens';
import { newId } from '@garboard/db/ids';
import { buildFirm, buildPerson, type Signed } from '@garboard/seed/builders';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import { mailsTo, tokenMailedTo } from '../support/mails.ts';
import { startServer, type TestServer } from '../support/server.ts';
import { startTestWorker, type TestWorker } from '../support/worker.ts';

let server: TestServer;
let worker: TestWorker;
beforeAll(async () => {
  server = await startServer();
  worker = await startTestWorker(server);
});
afterAll(async () => {
  await worker?.close();
  await server?.close();
});

const password = 'tidal rope under mist';

/** A link as the worker would have mailed it, so many minutes ago. */
async function linkFor(email: string, minutesLeft = 15, kind = 'sign-in'): Promise<string> {
  const token = newToken();
  const expiresAt = new Date(Date.now() + minutesLeft * 60_000);
  await server.db.prisma.oneTimeLink.create({
    data: { id: newId(), kind, email, tokenHash: hashToken(token), expiresAt, mailBy: expiresAt },
  });
  return token;
}

const use = (body: object) => server.as(null).post('/v1/welcome').send(body);
const ask = (email: string) => server.as(null).post('/v1/sign-in-links').send({ email });

describe('a link to sign in', () => {
  it('is mailed, works once within 15 minutes and signs in without a password', async () => {
    const person = await buildPerson(server.db);
    const asked = await ask(person.email.toUpperCase()).expect(202);
    expect(asked.body).toEqual({ minutes: 15 });
    const token = await tokenMailedTo(server, person.email);
    const kept = await server.db.prisma.oneTimeLink.findUniqueOrThrow({
      where: { tokenHash: hashToken(token) },
    });
    const left = kept.expiresAt.getTime() - Date.now();
    expect(left).toBeGreaterThan(13 * 60_000);
    expect(left).toBeLessThanOrEqual(15 * 60_000);
    const looked = await server.as(null).post('/v1/welcome/lookup').send({ token }).expect(200);
    expect(looked.body).toEqual({
      ...{ kind: 'sign-in', email: person.email, name: person.name, codeNeeded: false },
    });
    const used = await use({ token }).expect(201);
    await server
      .as({ ...person, token: used.body.token })
      .get('/v1/me')
      .expect(200);
    const again = await use({ token }).expect(410);
    expect(again.body.detail).toContain('new one sent');
    await server.as(null).post('/v1/welcome/lookup').send({ token }).expect(410);
  });

  it('answers, and writes, the same for an address nobody has', async () => {
    const person = await buildPerson(server.db);
    const [known, unknown] = [await ask(person.email), await ask('nobody@nowhere.example')];
    expect([unknown.status, unknown.body]).toEqual([known.status, known.body]);
    const headers = (answer: typeof known) => Object.keys(answer.headers).sort();
    expect(headers(unknown)).toEqual(headers(known));
    await tokenMailedTo(server, person.email);
    await vi.waitFor(async () => {
      const waiting = await server.db.prisma.outbox.count({ where: { dispatchedAt: null } });
      expect(waiting).toBe(0);
    });
    expect(await mailsTo(server, 'nobody@nowhere.example')).toEqual([]);
  });

  it('comes in the language of the person', async () => {
    const person = await buildPerson(server.db);
    await server.db.prisma.person.update({ where: { id: person.id }, data: { language: 'es' } });
    await ask(person.email).expect(202);
    await tokenMailedTo(server, person.email);
    const [mail = ''] = await mailsTo(server, person.email);
    expect(mail).toContain('Su enlace para entrar en Garboard');
    expect(mail).toContain('<html lang="es">');
  });

  it('is refused when it has run out, though nobody has tidied it away', async () => {
    const person = await buildPerson(server.db);
    await use({ token: await linkFor(person.email, -0.1) }).expect(410);
    await use({ token: await linkFor(person.email, 0.5) }).expect(201);
  });

  it('is for the address it was sent to and no other', async () => {
    const [person, other] = [await buildPerson(server.db), await buildPerson(server.db)];
    const used = await use({ token: await linkFor(person.email) }).expect(201);
    expect(used.body.person.id).toBe(person.id);
    expect(used.body.person.id).not.toBe(other.id);
    // Somebody whose address changed since is not signed in by a link to the old one.
    const token = await linkFor(person.email);
    await server.db.prisma.person.update({
      where: { id: person.id },
      data: { email: 'moved@elsewhere.example' },
    });
    await use({ token }).expect(410);
  });

  it('is used by one of two who try at the same moment', async () => {
    const person = await buildPerson(server.db);
    const token = await linkFor(person.email);
    const both = await Promise.all([use({ token }), use({ token })]);
    expect(both.map((answer) => answer.status).sort()).toEqual([201, 410]);
  });

  it('sets a password only where there is none, and none that is easy to guess', async () => {
    const person = await buildPerson(server.db);
    const token = await linkFor(person.email);
    for (const weak of [
      '123456789012',
      'password1234',
      'qwertyuiop12',
      'aaaaaaaaaaaaaaa',
      `${person.name} 1`,
      'garboardgarboard',
    ]) {
      const refused = await use({ token, password: weak.padEnd(12, '1') }).expect(422);
      expect(refused.body.errors[0].pointer).toBe('/password');
    }
    await use({ token, password }).expect(201);
    const next = await linkFor(person.email);
    await use({ token: next, password: 'another rope in fog' }).expect(422);
    await server.as(null).post('/v1/sessions').send({ email: person.email, password }).expect(201);
  });
});

describe('an invitation', () => {
  it('leads in by a mailed link, and one that ran out by a new one', async () => {
    const firm = await buildFirm(server.db, ['principal']);
    const email = 'odalys@invited.example';
    const member = { role: 'surveyor', name: 'Odalys Invited', email };
    await server.as(firm.principal).post(`/v1/firms/${firm.id}/members`).send(member).expect(201);
    const first = await tokenMailedTo(server, email);
    await server.db.prisma.oneTimeLink.update({
      where: { tokenHash: hashToken(first) },
      data: { expiresAt: new Date(Date.now() - 1000) },
    });
    await server.as(null).post('/v1/welcome/lookup').send({ token: first }).expect(410);
    await ask(email).expect(202);
    const token = await tokenMailedTo(server, email, 2);
    const used = await use({ token, password }).expect(201);
    const me = await server
      .as({ ...(used.body.person as Signed), token: used.body.token })
      .get('/v1/me')
      .expect(200);
    expect(me.body.firmRoles).toMatchObject([{ firm: { id: firm.id }, role: 'surveyor' }]);
    const list = await server.as(firm.principal).get(`/v1/firms/${firm.id}/members`).expect(200);
    expect(list.body.items.find((m: { email: string }) => m.email === email)).toMatchObject({ joined: true });
  });

  it('is not mailed to whoever has signed in before', async () => {
    const firm = await buildFirm(server.db, ['principal']);
    const person = await buildPerson(server.db);
    await server.db.prisma.person.update({ where: { id: person.id }, data: { joinedAt: new Date() } });
    const member = { role: 'office', name: person.name, email: person.email };
    await server.as(firm.principal).post(`/v1/firms/${firm.id}/members`).send(member).expect(201);
    expect(await server.db.prisma.oneTimeLink.count({ where: { email: person.email } })).toBe(0);
  });
});

describe('a forgotten password', () => {
  it('is replaced after signing in by a link, and every other session ends', async () => {
    const person = await buildPerson(server.db);
    await server.db.prisma.person.update({
      where: { id: person.id },
      data: { passwordHash: await hashPassword('a password long gone') },
    });
    const used = await use({ token: await linkFor(person.email) }).expect(201);
    const here = server.as({ ...person, token: used.body.token });
    expect((await here.get('/v1/me/sign-in').expect(200)).body).toMatchObject({ fresh: true, byLink: true });
    const changed = await here.put('/v1/me/password').send({ password }).expect(200);
    await server.as(person).get('/v1/me').expect(401);
    await here.get('/v1/me').expect(401);
    await server
      .as({ ...person, token: changed.body.token })
      .get('/v1/me')
      .expect(200);
    await server.as(null).post('/v1/sessions').send({ email: person.email, password }).expect(201);
    await vi.waitFor(async () => {
      const mails = await mailsTo(server, person.email);
      expect(mails.some((mail) => mail.includes('Your Garboard password was changed'))).toBe(true);
    });
  });
});
