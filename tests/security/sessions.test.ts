import { hashPassword } from '@garboard/core/people/passwords';
import { codesOf } from '@garboard/core/people/second-factor';
import { hashToken } from '@garboard/core/people/tokens';
import { buildFirm, buildPerson, type Signed } from '@garboard/seed/builders';
import { Secret } from 'otpauth';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { answerAllCoverage } from '../support/coverage.ts';
import { issueReport } from '../support/issue-report.ts';
import { startServer, type TestServer } from '../support/server.ts';

// As a browser behind an https address: cookies only, never the token of an answer's body.
const publicUrl = 'https://survey.example';
const password = 'tidal rope under mist';
const later = 'a drier harbour wall';
const dayMs = 86_400_000;
let now = Date.now();
let server: TestServer;
beforeAll(async () => {
  server = await startServer({ publicUrl, clock: () => new Date(now) });
});
afterAll(() => server?.close());
beforeEach(async () => {
  now = Date.now();
  await server.db.prisma.attemptCount.deleteMany();
});

async function withPassword(): Promise<Signed> {
  const person = await buildPerson(server.db);
  await server.db.prisma.person.update({
    where: { id: person.id },
    data: { passwordHash: await hashPassword(password) },
  });
  await server.db.prisma.session.deleteMany({ where: { personId: person.id } });
  return person;
}

/** A survey whose report is issued, and its surveyor. */
async function issuedSurvey() {
  const firm = await buildFirm(server.db, ['surveyor']);
  const surveyor = server.as(firm.surveyor);
  const vessel = await surveyor.post('/v1/vessels').send({ name: 'Tansy Rook' }).expect(201);
  const attendances = [{ date: '2026-05-04', place: 'Ropewalk Yard', condition: 'ashore' }];
  const fields = { vesselId: vessel.body.id, purpose: 'condition', attendances };
  const { id } = (await surveyor.post('/v1/surveys').send(fields).expect(201)).body;
  const finding = { system: 'gas', title: 'Gas line loses pressure', urgency: 'note', observed: 'Seen.' };
  await surveyor
    .post(`/v1/surveys/${id}/findings`)
    .send({ ...finding, recommendation: 'Renew.' })
    .expect(201);
  await answerAllCoverage(surveyor, id);
  await surveyor.patch(`/v1/surveys/${id}`).send({ state: 'drafting' }).expect(200);
  await issueReport(server, firm.id, surveyor, id);
  return { surveyor, surveyId: id as string };
}

/** One browser: keeps the one cookie that it was given last. */
class Browser {
  cookie = '';
  setCookie = '';
  async ask(method: string, path: string, body?: object): Promise<Response> {
    const answer = await fetch(`${server.url}${path}`, {
      method,
      headers: {
        origin: publicUrl,
        'sec-fetch-site': 'same-origin',
        ...(this.cookie ? { cookie: this.cookie } : {}),
        ...(body ? { 'content-type': 'application/json' } : {}),
      },
      body: body && JSON.stringify(body),
    });
    const [given] = answer.headers.getSetCookie();
    if (given) {
      this.setCookie = given;
      this.cookie = given.split(';')[0] ?? '';
    }
    return answer;
  }
  /** What a session answers that is kept from before. */
  async with(cookie: string): Promise<number> {
    const answer = await fetch(`${server.url}/v1/me`, { headers: { cookie } });
    return answer.status;
  }
}

async function signedIn(email: string, browser = new Browser()): Promise<Browser> {
  expect((await browser.ask('POST', '/v1/sessions', { email, password })).status).toBe(201);
  return browser;
}

describe('a session’s secret', { timeout: 120_000 }, () => {
  it('is another after signing in, whatever was planted or there before; the old one is worth nothing', async () => {
    const { email } = await withPassword();
    const browser = new Browser();
    const planted = `__Host-garboard_session=${'A'.repeat(43)}`;
    browser.cookie = planted;
    await signedIn(email, browser);
    expect(browser.cookie).not.toBe(planted);
    expect(await browser.with(planted)).toBe(401);
    const first = browser.cookie;
    await signedIn(email, browser);
    expect(browser.cookie).not.toBe(first);
    expect(await browser.with(first)).toBe(401);
    expect(await browser.with(browser.cookie)).toBe(200);
  });

  it('is another once codes are asked for, and every earlier one is refused', async () => {
    const { email } = await withPassword();
    const elsewhere = await signedIn(email);
    const browser = await signedIn(email);
    const before = browser.cookie;
    const begun = await (await browser.ask('POST', '/v1/me/second-factor', {})).json();
    const code = codesOf(Secret.fromBase32(begun.secret).bytes).generate({ timestamp: now });
    expect((await browser.ask('PUT', '/v1/me/second-factor', { code })).status).toBe(200);
    expect(browser.cookie).not.toBe(before);
    expect(await browser.with(before)).toBe(401);
    expect(await browser.with(elsewhere.cookie)).toBe(401);
    expect(await browser.with(browser.cookie)).toBe(200);
  });

  it('is another after the password was changed, and every earlier one is refused', async () => {
    const { email } = await withPassword();
    const elsewhere = await signedIn(email);
    const browser = await signedIn(email);
    const before = browser.cookie;
    const change = { password: later, currentPassword: password };
    expect((await browser.ask('PUT', '/v1/me/password', change)).status).toBe(200);
    expect(browser.cookie).not.toBe(before);
    expect(await browser.with(before)).toBe(401);
    expect(await browser.with(elsewhere.cookie)).toBe(401);
    expect(await browser.with(browser.cookie)).toBe(200);
  });

  it('ends on signing out, and the browser is told to drop cookie and cached files', async () => {
    const { email } = await withPassword();
    const browser = await signedIn(email);
    const before = browser.cookie;
    const out = await browser.ask('DELETE', '/v1/sessions/current');
    expect(out.status).toBe(204);
    expect(out.headers.get('clear-site-data')).toBe('"cache"');
    expect(browser.setCookie).toMatch(/^__Host-garboard_session=;.*Expires=Thu, 01 Jan 1970/);
    expect(await browser.with(before)).toBe(401);
  });

  it('is 256 random bits, kept only as a hash, and no two are alike', async () => {
    const { id, email } = await withPassword();
    const secrets = new Set<string>();
    for (let n = 0; n < 5; n += 1) {
      const secret = (await signedIn(email)).cookie.split('=')[1] ?? '';
      expect(Buffer.from(secret, 'base64url')).toHaveLength(32);
      secrets.add(secret);
    }
    expect(secrets.size).toBe(5);
    const rows = await server.db.prisma.session.findMany({ where: { personId: id } });
    expect(rows.map((row) => row.tokenHash).sort()).toEqual([...secrets].map(hashToken).sort());
    for (const secret of secrets) expect(JSON.stringify(rows)).not.toContain(secret);
  });
});

describe('a cookie', { timeout: 120_000 }, () => {
  it('is bound to this host and to https, unseen by scripts, and not sent along from other sites', async () => {
    const browser = await signedIn((await withPassword()).email);
    const parts = browser.setCookie.split('; ');
    expect(parts[0]).toMatch(/^__Host-garboard_session=/);
    expect(parts).toEqual(expect.arrayContaining(['Path=/', 'HttpOnly', 'Secure', 'SameSite=Lax']));
    // A browser refuses the name’s beginning with a domain.
    expect(browser.setCookie).not.toMatch(/domain=/i);
    expect(browser.setCookie.length).toBeLessThan(4096);
  });

  it('of a reader of a shared report is as strict, and opens that one viewing alone', async () => {
    const { surveyor, surveyId } = await issuedSurvey();
    const path = `/v1/surveys/${surveyId}/reports`;
    const reportId = (await surveyor.get(path).expect(200)).body.items[0].id;
    const link = { label: 'Yard manager', days: 7 };
    const made = await surveyor.post(`/v1/reports/${reportId}/share-links`).send(link).expect(201);
    expect(made.body.url).toMatch(/^https:\/\/survey\.example\/[^?#]*#token=/);
    const reader = new Browser();
    const token = made.body.url.split('#token=')[1];
    const opened = await reader.ask('POST', '/v1/shared-reports', { token });
    const { id } = await opened.json();
    const parts = reader.setCookie.split('; ');
    expect(parts[0]).toMatch(new RegExp(`^__Host-garboard_shared_${id}=`));
    expect(parts).toEqual(expect.arrayContaining(['Path=/', 'HttpOnly', 'Secure', 'SameSite=Strict']));
    expect((await reader.ask('GET', `/v1/shared-reports/${id}`)).status).toBe(200);
    expect(await reader.with(reader.cookie)).toBe(401);
    reader.cookie = '';
    expect((await reader.ask('GET', `/v1/shared-reports/${id}`)).status).toBe(410);
  });
});

describe('a session’s life', { timeout: 120_000 }, () => {
  it('is two weeks without a request and thirty days in all, by the server’s clock', async () => {
    const { email } = await withPassword();
    const start = now;
    const browser = await signedIn(email);
    const expires = /Expires=([^;]+)/.exec(browser.setCookie)?.[1] ?? '';
    expect(Math.round((Date.parse(expires) - start) / dayMs)).toBe(30);
    const where = { tokenHash: hashToken(browser.cookie.split('=')[1] ?? '') };
    const row = await server.db.prisma.session.findUniqueOrThrow({ where });
    expect(Math.round((row.expiresAt.getTime() - start) / dayMs)).toBe(14);
    // Used every ten days it lives on, and ends after thirty all the same.
    now = start + 10 * dayMs;
    expect(await browser.with(browser.cookie)).toBe(200);
    now = start + 20 * dayMs;
    expect(await browser.with(browser.cookie)).toBe(200);
    const kept = await server.db.prisma.session.findUniqueOrThrow({ where });
    expect(Math.round((kept.expiresAt.getTime() - start) / dayMs)).toBe(30);
  });
});
