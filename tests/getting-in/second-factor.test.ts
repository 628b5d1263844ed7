import { hashPassword } from '@garboard/core/people/passwords';
import { codesOf, stepOf } from '@garboard/core/people/second-factor';
import { hashToken, newToken } from '@garboard/core/people/tokens';
import { newId } from '@garboard/db/ids';
import { buildPerson, type Signed } from '@garboard/seed/builders';
import { Secret } from 'otpauth';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { startServer, type TestServer } from '../support/server.ts';

describe('codes by RFC 6238', () => {
  // Appendix B, test vectors for SHA-1: secret of 20 ASCII digits, time in seconds, code of eight digits. A code of six
  // is the same number modulo a million (RFC 4226, 5.3).
  const secret = Buffer.from('12345678901234567890');
  it.each([
    [59, '94287082'],
    [1111111109, '07081804'],
    [1111111111, '14050471'],
    [1234567890, '89005924'],
    [2000000000, '69279037'],
    [20000000000, '65353130'],
  ])('at %i seconds', (seconds, printed) => {
    const timestamp = seconds * 1000;
    expect(codesOf(secret).generate({ timestamp })).toBe(printed.slice(2));
    expect(stepOf(secret, printed.slice(2), new Date(timestamp))).toBe(Math.floor(seconds / 30));
  });

  it('accepts a clock that is off by a step and no more', () => {
    const at = (seconds: number) => new Date(seconds * 1000);
    const code = codesOf(secret).generate({ timestamp: 1_234_567_890_000 });
    const step = Math.floor(1_234_567_890 / 30);
    expect(stepOf(secret, code, at(1_234_567_890 + 30))).toBe(step);
    expect(stepOf(secret, code, at(1_234_567_890 - 30))).toBe(step);
    expect(stepOf(secret, code, at(1_234_567_890 + 60))).toBeNull();
    expect(stepOf(secret, code, at(1_234_567_890 - 60))).toBeNull();
  });
});

let server: TestServer;
/** The server's clock runs ahead by so many seconds, so that no test waits for the next code. */
let ahead = 0;
const now = () => new Date(Date.now() + ahead * 1000);
beforeAll(async () => {
  server = await startServer({ clock: now });
});
afterAll(() => server?.close());
beforeEach(() => server.db.prisma.attemptCount.deleteMany());

const password = 'tidal rope under mist';

async function withPassword(): Promise<Signed> {
  const person = await buildPerson(server.db);
  const passwordHash = await hashPassword(password);
  await server.db.prisma.person.update({ where: { id: person.id }, data: { passwordHash } });
  return person;
}

const signIn = (email: string, code?: string) =>
  server
    .as(null)
    .post('/v1/sessions')
    .send({ email, password, ...(code ? { code } : {}) });

/** The app's code so many steps from now. */
const codeOf = (secret: string, steps = 0): string =>
  codesOf(Buffer.from(Secret.fromBase32(secret).bytes)).generate({
    timestamp: now().getTime() + steps * 30_000,
  });

/** Turns the second factor on and moves on to the next code. */
async function turnOn(person: Signed) {
  const api = server.as(person);
  const begun = await api.post('/v1/me/second-factor').send({ currentPassword: password }).expect(201);
  const { secret } = begun.body;
  const on = await api
    .put('/v1/me/second-factor')
    .send({ code: codeOf(secret) })
    .expect(200);
  // The session that asked has ended.
  await api.get('/v1/me').expect(401);
  person.token = on.body.token;
  ahead += 60;
  return {
    secret: secret as string,
    uri: begun.body.uri as string,
    codes: on.body.recoveryCodes as string[],
  };
}

describe('a second factor', () => {
  it('is on from the first right code, asked for at sign-in, and its secret is kept sealed', async () => {
    const person = await withPassword();
    const api = server.as(person);
    const { secret, uri, codes } = await turnOn(person);
    expect(uri).toContain('otpauth://totp/Garboard');
    expect(uri).toContain(`secret=${secret}`);
    const kept = await server.db.prisma.secondFactor.findUniqueOrThrow({ where: { personId: person.id } });
    expect(Buffer.from(kept.sealed).includes(Buffer.from(Secret.fromBase32(secret).bytes))).toBe(false);
    expect(codes).toHaveLength(10);
    expect(codes[0]).toMatch(/^[2-9A-HJ-NP-Z]{4}-[2-9A-HJ-NP-Z]{4}-[2-9A-HJ-NP-Z]{4}$/);
    const means = await api.get('/v1/me/sign-in').expect(200);
    expect(means.body).toMatchObject({ recoveryCodesLeft: 10 });
    expect(means.body.secondFactorSince).not.toBeNull();
    const asked = await signIn(person.email).expect(401);
    expect(asked.body.type).toBe('/problems/code-needed');
    const wrong = await signIn(person.email, '000000').expect(401);
    expect(wrong.body.type).toBe('/problems/wrong-code');
    await signIn(person.email, codeOf(secret)).expect(201);
  });

  it('tells nobody without the right password whether codes are asked for', async () => {
    const person = await withPassword();
    await turnOn(person);
    const wrong = await server
      .as(null)
      .post('/v1/sessions')
      .send({ email: person.email, password: 'not the right one', code: '123456' })
      .expect(401);
    expect(wrong.body.type).toBe('/problems/wrong-credentials');
  });

  it('takes no code twice, nor one from before it', async () => {
    const person = await withPassword();
    const { secret } = await turnOn(person);
    const code = codeOf(secret);
    await signIn(person.email, code).expect(201);
    await signIn(person.email, code).expect(401);
    // One step back would still be within the tolerance of clocks.
    await signIn(person.email, codeOf(secret, -1)).expect(401);
    const next = codeOf(secret, 1);
    const both = await Promise.all([signIn(person.email, next), signIn(person.email, next)]);
    expect(both.map((answer) => answer.status).sort()).toEqual([201, 401]);
  });

  it('is asked for after a link too, which a wrong code doesn’t use up', async () => {
    const person = await withPassword();
    const { secret } = await turnOn(person);
    const token = newToken();
    const expiresAt = new Date(now().getTime() + 600_000);
    await server.db.prisma.oneTimeLink.create({
      data: { id: newId(), kind: 'sign-in', email: person.email, tokenHash: hashToken(token), expiresAt },
    });
    const use = (body: object) =>
      server
        .as(null)
        .post('/v1/welcome')
        .send({ token, ...body });
    const looked = await server.as(null).post('/v1/welcome/lookup').send({ token }).expect(200);
    expect(looked.body.codeNeeded).toBe(true);
    expect((await use({}).expect(401)).body.type).toBe('/problems/code-needed');
    expect((await use({ code: '000000' }).expect(401)).body.type).toBe('/problems/wrong-code');
    await use({ code: codeOf(secret) }).expect(201);
    await use({ code: codeOf(secret, 1) }).expect(410);
  });

  it('is replaced by a recovery code, each once, as people type them', async () => {
    const person = await withPassword();
    const { codes } = await turnOn(person);
    const [first = '', second = ''] = codes;
    await signIn(person.email, first.toLowerCase().replaceAll('-', ' ')).expect(201);
    await signIn(person.email, first).expect(401);
    await signIn(person.email, `${second.slice(0, -1)}${second.endsWith('2') ? '3' : '2'}`).expect(401);
    const renewed = await server
      .as((await signIn(person.email, second).expect(201)).body)
      .post('/v1/me/recovery-codes')
      .send({ code: codes[2] })
      .expect(201);
    await signIn(person.email, codes[3]).expect(401);
    await signIn(person.email, renewed.body.recoveryCodes[0]).expect(201);
    const hashes = await server.db.prisma.recoveryCode.findMany({ where: { personId: person.id } });
    expect(hashes.every(({ hash }) => hash.startsWith('$argon2id$'))).toBe(true);
  });

  it('ends every other session when it comes on, and goes only with a code', async () => {
    const person = await withPassword();
    const other = await signIn(person.email).expect(201);
    const { secret } = await turnOn(person);
    await server.as(other.body).get('/v1/me').expect(401);
    const api = server.as(person);
    await api.post('/v1/me/second-factor').send({ currentPassword: password }).expect(409);
    await api.post('/v1/me/second-factor/removal').send({ code: '000000' }).expect(401);
    await api
      .post('/v1/me/second-factor/removal')
      .send({ code: codeOf(secret) })
      .expect(204);
    await signIn(person.email).expect(201);
    await api
      .post('/v1/me/second-factor/removal')
      .send({ code: codeOf(secret, 1) })
      .expect(409);
  });

  it('is begun only by who shows to be at the keyboard, and confirmed only when begun', async () => {
    const person = await withPassword();
    const api = server.as(person);
    await server.db.prisma.session.updateMany({
      where: { personId: person.id },
      data: { createdAt: new Date(now().getTime() - 3_600_000) },
    });
    expect((await api.post('/v1/me/second-factor').send({}).expect(403)).body.type).toBe(
      '/problems/proof-needed',
    );
    const wrong = await api.post('/v1/me/second-factor').send({ currentPassword: 'wrong' }).expect(403);
    expect(wrong.body.errors[0].pointer).toBe('/currentPassword');
    await api.put('/v1/me/second-factor').send({ code: '123456' }).expect(401);
    await api.post('/v1/me/second-factor').send({ currentPassword: password }).expect(201);
  });

  it('lets thirty codes an hour be tried, from wherever, and says when to go on', async () => {
    const person = await withPassword();
    const { secret } = await turnOn(person);
    const statuses: number[] = [];
    for (let n = 0; n < 34; n += 1) {
      const answer = await server
        .as(null)
        .post('/v1/sessions')
        .set('x-forwarded-for', `203.0.113.${n}`)
        .send({ email: person.email, password, code: String(n).padStart(6, '0') });
      statuses.push(answer.status);
      if (answer.status === 429) expect(Number(answer.headers['retry-after'])).toBeGreaterThan(3000);
    }
    expect(statuses.filter((status) => status === 401)).toHaveLength(30);
    await signIn(person.email, codeOf(secret)).expect(429);
    ahead += 3700;
    await signIn(person.email, codeOf(secret)).expect(201);
  });
});
