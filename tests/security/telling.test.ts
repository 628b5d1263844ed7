import { hashPassword } from '@garboard/core/people/passwords';
import { newToken } from '@garboard/core/people/tokens';
import { buildFirm, buildPerson, type Signed } from '@garboard/seed/builders';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { startServer, type TestServer } from '../support/server.ts';

// Whether anybody has an account under an address must be told by no word, status, header or time.
let server: TestServer;
let firmId: string;
let known: Signed;
let withoutPassword: Signed;
const password = 'tidal rope under mist';
beforeAll(async () => {
  server = await startServer();
  const firm = await buildFirm(server.db, ['principal']);
  known = firm.principal;
  firmId = firm.id;
  withoutPassword = await buildPerson(server.db);
  await server.db.prisma.person.update({
    where: { id: known.id },
    data: { passwordHash: await hashPassword(password) },
  });
});
afterAll(() => server?.close());
beforeEach(() => server.db.prisma.attemptCount.deleteMany());

const signIn = (email: string, given = 'not the right password') =>
  server.as(null).post('/v1/sessions').send({ email, password: given });
const askLink = (email: string) => server.as(null).post('/v1/sign-in-links').send({ email });
let strangers = 0;
const nobody = () => {
  strangers += 1;
  return `nobody${strangers}@nowhere.example`;
};

/** All of an answer but what differs from one request to the next whoever asks. */
function told({ status, body, headers }: { status: number; body: object; headers: Record<string, string> }) {
  const { date, 'x-request-id': id, ...rest } = headers;
  expect(date && id).toBeTruthy();
  return { status, body: { ...body, instance: '' }, headers: rest };
}

describe('the answer is the same, word for word,', { timeout: 120_000 }, () => {
  it('for a wrong password, an account without one and an address nobody has', async () => {
    const answers = [known.email, withoutPassword.email, nobody(), known.email.toUpperCase()];
    const all = [];
    for (const email of answers) all.push(told(await signIn(email).expect(401)));
    for (const answer of all) expect(answer).toEqual(all[0]);
  });

  it('whether or not a link will be mailed', async () => {
    const first = told(await askLink(known.email).expect(202));
    expect(told(await askLink(nobody()).expect(202))).toEqual(first);
    expect(told(await askLink(withoutPassword.email).expect(202))).toEqual(first);
  });

  it('for any link that doesn’t work: never made, mistyped, of a report, to sign in', async () => {
    for (const path of [
      '/v1/welcome/lookup',
      '/v1/welcome',
      '/v1/share-links/lookup',
      '/v1/shared-reports',
    ]) {
      const one = told(await server.as(null).post(path).send({ token: newToken() }).expect(410));
      const two = told(await server.as(null).post(path).send({ token: newToken() }).expect(410));
      expect(two).toEqual(one);
    }
  });

  it('for people invited who have an account elsewhere and who have none', async () => {
    const invite = (email: string, name: string) =>
      server
        .as(known)
        .post(`/v1/firms/${firmId}/members`)
        .send({ email, name, role: 'surveyor', qualifications: '' })
        .expect(201);
    // Who is let into the firm is seen there under the name they gave themselves; nothing else tells them apart.
    const one = told(await invite(withoutPassword.email, withoutPassword.name));
    const two = told(await invite(nobody(), withoutPassword.name));
    const same = (answer: typeof one) => ({ ...answer.body, id: '', email: '' });
    expect(same(one)).toEqual(same(two));
    expect({ ...one.headers, 'content-length': '' }).toEqual({ ...two.headers, 'content-length': '' });
  });

  it('for ids that nobody has and those of another firm’s records', async () => {
    const other = (await buildFirm(server.db, ['principal'])).principal;
    const made = await server.as(other).post('/v1/vessels').send({ name: 'Pintle' }).expect(201);
    const theirs = told(await server.as(known).get(`/v1/vessels/${made.body.id}`).expect(404));
    const none = told(await server.as(known).get(`/v1/vessels/${known.id}`).expect(404));
    expect(theirs).toEqual(none);
  });
});

/** Middle of the sorted times of two ways of asking, taken in turn so that a busy machine slows both alike. */
async function compared(
  ways: Record<'known' | 'unknown', () => Promise<unknown>>,
  rounds: number,
): Promise<{ known: number[]; unknown: number[] }> {
  const times = { known: [] as number[], unknown: [] as number[] };
  for (let n = -2; n < rounds; n += 1) {
    // The limits are not what is measured.
    await server.db.prisma.attemptCount.deleteMany();
    for (const which of n % 2 === 0 ? (['known', 'unknown'] as const) : (['unknown', 'known'] as const)) {
      const started = performance.now();
      await ways[which]();
      if (n >= 0) times[which].push(performance.now() - started);
    }
  }
  return times;
}

/** How often one of the first takes longer than one of the second: 0.5 when nothing can be told. */
function shareLonger(first: number[], second: number[]): number {
  let longer = 0;
  for (const a of first) for (const b of second) longer += a > b ? 1 : a === b ? 0.5 : 0;
  return longer / (first.length * second.length);
}

describe('the time it takes tells nothing', { timeout: 120_000 }, () => {
  // Each difference was made on purpose once: left out, the hash of the unknown gives a share of 1.0 here.
  it('of signing in', async () => {
    const times = await compared(
      { known: () => signIn(known.email).expect(401), unknown: () => signIn(nobody()).expect(401) },
      20,
    );
    const share = shareLonger(times.known, times.unknown);
    console.info(`signing in: an account takes longer in ${(share * 100).toFixed(0)} % of comparisons`);
    expect(share).toBeGreaterThan(0.12);
    expect(share).toBeLessThan(0.88);
  });

  it('of signing in without a password set', async () => {
    const times = await compared(
      { known: () => signIn(withoutPassword.email).expect(401), unknown: () => signIn(nobody()).expect(401) },
      20,
    );
    const share = shareLonger(times.known, times.unknown);
    expect(share).toBeGreaterThan(0.12);
    expect(share).toBeLessThan(0.88);
  });

  it('of asking for a link, with which a forgotten password is replaced', async () => {
    const times = await compared(
      { known: () => askLink(known.email).expect(202), unknown: () => askLink(nobody()).expect(202) },
      20,
    );
    const share = shareLonger(times.known, times.unknown);
    console.info(
      `asking for a link: an account takes longer in ${(share * 100).toFixed(0)} % of comparisons`,
    );
    expect(share).toBeGreaterThan(0.12);
    expect(share).toBeLessThan(0.88);
  });
});
