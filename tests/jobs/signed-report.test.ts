import { createHash } from 'node:crypto';
import { readFile } from 'node:fs/promises';
import { reportDataText } from '@garboard/contract/report-data';
import { hashToken, newToken } from '@garboard/core/people/tokens';
import { getReport } from '@garboard/core/reports/get-report';
import { requestReport } from '@garboard/core/reports/request-report';
import { retryReport } from '@garboard/core/reports/retry-report';
import { keepKey } from '@garboard/core/signing/keep-key';
import { inTransaction } from '@garboard/db/database';
import { newId } from '@garboard/db/ids';
import { sealerOf } from '@garboard/platform/sealing';
import { buildSigningKey, type Signed } from '@garboard/seed/builders';
import { selfMadeKey } from '@garboard/seed/self-made-key';
import { Ajv2020 } from 'ajv/dist/2020.js';
import addFormats from 'ajv-formats';
import { parse } from 'csv-parse/sync';
import { afterAll, beforeAll, describe, expect, test, vi } from 'vitest';
import { onPath, says } from '../support/programs.ts';
import { startServer, type TestServer } from '../support/server.ts';
import { startTestWorker, type TestWorker } from '../support/worker.ts';
import { type Acting, asStaff, publicUrl, type SurveyRows, writeSurvey } from './survey-rows.ts';

let server: TestServer;
let worker: TestWorker;
let acting: Acting;
beforeAll(async () => {
  server = await startServer();
  worker = await startTestWorker(server);
  acting = { db: server.db, store: server.store, clock: () => new Date() };
}, 60_000);
afterAll(async () => {
  await worker.close();
  await server.close();
});

const ask = (rows: SurveyRows) =>
  asStaff(acting, rows, (ctx) => requestReport(ctx, { surveyId: rows.surveyId, kind: 'full', publicUrl }));
const ended = (rows: SurveyRows, id: string) =>
  vi.waitFor(
    async () => {
      const report = await asStaff(acting, rows, (ctx) => getReport(ctx, id));
      expect(report.state).toMatch(/issued|failed/);
      return report;
    },
    { timeout: 25_000, interval: 100 },
  );
const issue = async (rows: SurveyRows) => ended(rows, (await ask(rows)).id);
const stranger = () => server.as(null);

/** The survey's surveyor, signed in. */
async function signIn(rows: SurveyRows): Promise<Signed> {
  const token = newToken();
  const expiresAt = new Date(Date.now() + 3_600_000);
  await inTransaction(server.db, [], (tx) =>
    tx.session.create({
      data: { id: newId(), personId: rows.personId, tokenHash: hashToken(token), expiresAt },
    }),
  );
  return { id: rows.personId, name: '', email: '', token };
}

describe('an issued report', () => {
  test('is signed as a whole, records what made it, and can be verified by code and by file', async () => {
    const rows = await writeSurvey(server.db, 2);
    const first = await issue(rows);
    expect(first).toMatchObject({
      state: 'issued',
      signedBy: 'Builders Survey (NZ)',
    });
    expect(first.renderer).toMatch(/^Garboard \d+\.\d+\.\d+, Chromium \d+/);
    const path = await server.store.localFile(first.sha256 ?? '');
    const bytes = await readFile(path);
    expect(createHash('sha256').update(bytes).digest('hex')).toBe(first.sha256);
    if (onPath('pdfsig')) {
      const told = await says('pdfsig', [path]);
      expect(told).toContain('Signature is Valid.');
      expect(told).toContain('Total document signed');
    }
    const code = first.verificationCode ?? '';
    expect(code).toMatch(/^([0-9A-HJKMNP-TV-Z]{5}-){3}[0-9A-HJKMNP-TV-Z]{5}$/);
    const genuine = {
      verdict: 'genuine',
      document: {
        firmName: 'Tallow & Strake',
        kind: 'full',
        revision: 1,
        issuedAt: first.issuedAt,
        sha256: first.sha256,
        supersededBy: null,
      },
    };
    for (const typed of [
      code,
      code.toLowerCase().replaceAll('-', ''),
      code.replaceAll('-', ' ').replaceAll('0', 'o'),
    ]) {
      const answer = await stranger()
        .get(`/v1/verifications/${encodeURIComponent(typed)}`)
        .expect(200);
      expect(answer.body).toEqual(genuine);
    }
    const byFile = await stranger().post('/v1/verifications').send({ sha256: first.sha256 }).expect(200);
    expect(byFile.body).toEqual(genuine);
    bytes[1000] = (bytes[1000] ?? 0) ^ 1;
    const changed = createHash('sha256').update(bytes).digest('hex');
    const unknown = { verdict: 'unknown', document: null };
    expect((await stranger().post('/v1/verifications').send({ sha256: changed })).body).toEqual(unknown);
    expect((await stranger().get('/v1/verifications/00000-00000-00000-00000')).body).toEqual(unknown);
    await stranger().post('/v1/verifications').send({ sha256: 'short' }).expect(422);

    const second = await issue(rows);
    const replaced = {
      verdict: 'superseded',
      document: { ...genuine.document, supersededBy: { revision: 2, issuedAt: second.issuedAt } },
    };
    expect((await stranger().get(`/v1/verifications/${code}`).expect(200)).body).toEqual(replaced);
    expect((await stranger().post('/v1/verifications').send({ sha256: first.sha256 })).body).toEqual(
      replaced,
    );
    expect((await stranger().get(`/v1/verifications/${second.verificationCode}`)).body.verdict).toBe(
      'genuine',
    );
  }, 60_000);

  test('is there as data that fits the published schema, and as a table without formulas', async () => {
    const rows = await writeSurvey(server.db, 3);
    const title = '=HYPERLINK("http://x.example","a")';
    const observed = 'Cracked, "crazed"\nand @loose; −3 mm, Ναυσικά';
    await inTransaction(server.db, [rows.firmId], (tx) =>
      tx.finding.update({
        where: { id: rows.findingIds[0] },
        data: { title, observed, recommendation: '+1' },
      }),
    );
    const report = await issue(rows);
    const surveyor = server.as(await signIn(rows));
    const data = (await surveyor.get(`/v1/reports/${report.id}/data`).expect(200)).body;
    const schema = (await stranger().get('/v1/schemas/report-data.json').expect(200)).body;
    const fits = addFormats.default(new Ajv2020({ strict: false })).compile(schema);
    expect(fits(data), JSON.stringify(fits.errors)).toBe(true);
    if (onPath('pdfdetach')) {
      const out = `${server.dataDir}/attached.json`;
      await says('pdfdetach', ['-save', '1', '-o', out, await server.store.localFile(report.sha256 ?? '')]);
      expect(await readFile(out, 'utf8')).toBe(reportDataText(data));
    }
    const answer = await surveyor.get(`/v1/reports/${report.id}/data.csv`).expect(200);
    expect(answer.headers['content-type']).toContain('text/csv');
    expect(answer.headers['content-disposition']).toContain('2026-0042 findings r1.csv');
    expect(answer.text.startsWith('\ufeffnumber,system,title,')).toBe(true);
    expect(answer.text.endsWith('\r\n')).toBe(true);
    const table = parse(answer.text, { columns: true, bom: true, record_delimiter: '\r\n' }) as Record<
      string,
      string
    >[];
    expect(table).toHaveLength(3);
    expect(table[0]).toMatchObject({ number: '1', system: 'Gas (LPG)', title: `'${title}`, observed });
    expect(table[0]?.recommendation).toBe("'+1");
    for (const cell of table.flatMap((row) => Object.values(row))) expect(cell).not.toMatch(/^\s*[=+@-]/);
    await stranger().get(`/v1/reports/${report.id}/data.csv`).expect(401);
  }, 60_000);
});

test('a key that has gone meanwhile fails the report in words, the draft untouched; with a key it is issued', async () => {
  const rows = await writeSurvey(server.db, 1);
  const remove = () =>
    inTransaction(server.db, [rows.firmId], async (tx) => {
      const { id } = await asked;
      await tx.signingKey.delete({ where: { firmId: rows.firmId } });
      return id;
    });
  await worker.close();
  const asked = ask(rows);
  const id = await remove();
  worker = await startTestWorker(server);
  const failed = await ended(rows, id);
  expect(failed).toMatchObject({ state: 'failed', problem: expect.stringMatching(/no signing key yet/) });
  const finding = await asStaff(acting, rows, (ctx) =>
    ctx.tx.finding.findUniqueOrThrow({ where: { id: rows.findingIds[0] } }),
  );
  expect(finding).toMatchObject({ state: 'draft', issued: null });

  // Kept under another installation's secret, as after a restore without it.
  const [validFrom, validUntil] = [new Date('2020-01-01'), new Date('2040-01-01')];
  const pair = await selfMadeKey({ firmName: 'x', country: 'NZ', validFrom, validUntil, kind: 'ec' });
  const sealer = sealerOf('quite another secret of 32 or more characters');
  await inTransaction(server.db, [rows.firmId], (tx) =>
    keepKey({ tx, clock: () => new Date() }, { firmId: rows.firmId, pair, sealer, addedBy: 'x' }),
  );
  const again = () => asStaff(acting, rows, (ctx) => retryReport(ctx, id));
  await again();
  expect((await ended(rows, id)).problem).toMatch(/secret is not the one it was kept with/);
  await inTransaction(server.db, [rows.firmId], (tx) => buildSigningKey(tx, rows.firmId));
  await again();
  expect(await ended(rows, id)).toMatchObject({ state: 'issued', revision: 1, problem: null });
}, 90_000);

test('asking too often is refused for a while', async () => {
  const codes = Array.from({ length: 80 }, () => stranger().get('/v1/verifications/AAAAA-AAAAA-AAAAA-AAAAA'));
  const answers = await Promise.all(codes);
  const refused = answers.filter((answer) => answer.status === 429);
  expect(refused.length).toBeGreaterThanOrEqual(20);
  expect(refused[0]?.body.detail).toContain('Try again in a minute');
});
