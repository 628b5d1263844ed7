import { networkOf } from '@garboard/api/http/attempt-limits';
import { hashPassword } from '@garboard/core/people/passwords';
import { buildPerson } from '@garboard/seed/builders';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { startServer, type TestServer } from '../support/server.ts';

let now = Date.now();
let server: TestServer;
beforeAll(async () => {
  server = await startServer({ clock: () => new Date(now) });
});
afterAll(() => server?.close());
beforeEach(async () => {
  now = Date.now();
  await server.db.prisma.attemptCount.deleteMany();
});

const password = 'tidal rope under mist';

async function withPassword() {
  const person = await buildPerson(server.db);
  const passwordHash = await hashPassword(password);
  await server.db.prisma.person.update({ where: { id: person.id }, data: { passwordHash } });
  return person;
}

const from = (address: string, email: string, given: string) =>
  server.as(null).post('/v1/sessions').set('x-forwarded-for', address).send({ email, password: given });

describe('attempts at signing in', () => {
  it('from one address don’t lock the owner out elsewhere; from many they are held up for all', async () => {
    const { email } = await withPassword();
    for (let n = 0; n < 12; n += 1) {
      await from('203.0.113.5', email, 'guess').expect(n < 10 ? 401 : 429);
    }
    await from('198.51.100.7', email, password).expect(201);
    let held = 0;
    for (let n = 0; n < 70; n += 1) {
      if ((await from(`198.51.100.${n + 10}`, email, 'guess')).status === 429) held += 1;
    }
    expect(held).toBe(10);
    const waits = await from('192.0.2.1', email, password).expect(429);
    expect(waits.body.detail).toMatch(/^Too many attempts\. Try again in \d+ minutes\.$/);
    now += 61 * 60_000;
    await from('192.0.2.1', email, password).expect(201);
  });

  it('from one address, kept up for an hour, don’t hold the owner up elsewhere', async () => {
    const { email } = await withPassword();
    const judged: number[] = [];
    for (let minute = 0; minute < 58; minute += 1) {
      for (let n = 0; n < 12; n += 1) judged.push((await from('203.0.113.5', email, 'guess')).status);
      now += 60_000;
    }
    const guesses = judged.filter((status) => status === 401).length;
    expect(guesses).toBeGreaterThan(10);
    // Within the hour in which attempts from everywhere are summed up.
    expect((await from('198.51.100.7', email, password)).status).toBe(201);
  });

  it('held up for their address don’t count against the account', async () => {
    const { email } = await withPassword();
    for (let n = 0; n < 300; n += 1) {
      const lookup = server.as(null).post('/v1/welcome/lookup').set('x-forwarded-for', '203.0.113.6');
      await lookup.send({ token: `nobody-has-this-token-${n}` }).expect(410);
    }
    for (let n = 0; n < 70; n += 1) await from('203.0.113.6', email, password).expect(429);
    now += 5 * 60_000 + 1;
    await from('203.0.113.6', email, password).expect(201);
  });

  it('are counted by every process alike, and when they come all at once', async () => {
    const { email } = await withPassword();
    const answers = await Promise.all(
      Array.from({ length: 30 }, () => from('203.0.113.9', email, 'guess').then((answer) => answer.status)),
    );
    expect(answers.filter((status) => status === 401)).toHaveLength(10);
    expect(answers.filter((status) => status === 429)).toHaveLength(20);
    const rows = await server.db.prisma.attemptCount.findMany();
    // Nobody's address stands in the table.
    for (const { key } of rows) expect(key).toMatch(/^[0-9a-f]{64}$/);
  });

  it('that succeed are forgotten', async () => {
    const { email } = await withPassword();
    for (let round = 0; round < 3; round += 1) {
      for (let n = 0; n < 9; n += 1) await from('203.0.113.11', email, 'guess').expect(401);
      await from('203.0.113.11', email, password).expect(201);
    }
  });

  it('from one address are limited whatever the account', async () => {
    const statuses: number[] = [];
    for (let n = 0; n < 310; n += 1) {
      const lookup = server.as(null).post('/v1/welcome/lookup').set('x-forwarded-for', '203.0.113.77');
      statuses.push((await lookup.send({ token: `nobody-has-this-token-${n}` })).status);
    }
    expect(statuses.filter((status) => status === 410)).toHaveLength(300);
    expect(statuses.at(-1)).toBe(429);
  });

  it('for links by mail are few, for known and unknown addresses alike', async () => {
    const { email } = await withPassword();
    for (const address of [email, 'nobody@nowhere.example']) {
      for (let n = 0; n < 6; n += 1) {
        const ask = server.as(null).post('/v1/sign-in-links').send({ email: address });
        const answer = await ask.expect(n < 5 ? 202 : 429);
        if (n === 5) expect(Number(answer.headers['retry-after'])).toBeGreaterThan(0);
      }
    }
    now += 16 * 60_000;
    await server.as(null).post('/v1/sign-in-links').send({ email }).expect(202);
  });
});

describe('asking for a link', () => {
  // Without a worker beside it, which would be busy with mails for accounts alone.
  it('takes as long for an address nobody has', async () => {
    const { email } = await withPassword();
    const times = { known: [] as number[], unknown: [] as number[] };
    for (let n = 0; n < 80; n += 1) {
      const which = n % 2 === 0 ? 'known' : 'unknown';
      // The limits are not what is measured.
      await server.db.prisma.attemptCount.deleteMany();
      const asked = which === 'known' ? email : `nobody${n}@nowhere.example`;
      const started = performance.now();
      await server.as(null).post('/v1/sign-in-links').send({ email: asked }).expect(202);
      if (n >= 20) times[which].push(performance.now() - started);
    }
    const median = (all: number[]) => all.sort((a, b) => a - b)[all.length / 2] ?? 0;
    const [known, unknown] = [median(times.known), median(times.unknown)];
    console.info(
      `asking for a link: ${known.toFixed(1)} ms for an account, ${unknown.toFixed(1)} ms for none`,
    );
    expect(Math.abs(known - unknown)).toBeLessThan(Math.max(known, unknown) * 0.5);
  });
});

describe('a network address', () => {
  it.each([
    ['203.0.113.5', '203.0.113.5'],
    ['::ffff:203.0.113.5', '203.0.113.5'],
    ['2001:db8:1:2:3:4:5:6', '2001:db8:1:2::/64'],
    ['2001:db8::1', '2001:db8:0:0::/64'],
    ['2001:0db8:0001:0002::9', '2001:db8:1:2::/64'],
    ['::1', '0:0:0:0::/64'],
    ['fe80::1%eth0', 'fe80:0:0:0::/64'],
  ])('%s counts as %s', (address, network) => {
    expect(networkOf(address)).toBe(network);
  });
});
