import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { inTransaction } from '@garboard/db/database';
import { buildFirm, type Signed } from '@garboard/seed/builders';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { answerAllCoverage } from '../support/coverage.ts';
import { onPath } from '../support/programs.ts';
import { startServer, type TestServer } from '../support/server.ts';

// A certificate made while the tests run must not be valid from later on.
let now = new Date(Date.now() + 3_600_000);
let server: TestServer;
let firm: { id: string; principal: Signed; surveyor: Signed; office: Signed };
const folder = mkdtempSync(join(tmpdir(), 'garboard-p12-'));
beforeAll(async () => {
  server = await startServer({ clock: () => now });
  firm = await buildFirm(server.db, ['principal', 'surveyor', 'office']);
});
afterAll(async () => {
  await server.close();
  rmSync(folder, { recursive: true });
});

const openssl = (...args: string[]) => execFileSync('openssl', args, { cwd: folder, stdio: 'pipe' });
interface Made {
  key?: string[];
  days?: number;
  usage?: string;
  /** Further arguments of `openssl pkcs12 -export`. */
  pack?: string[];
  passphrase?: string;
}

/** A P12 file made by OpenSSL, base64. */
function p12({
  key = ['rsa:2048'],
  days = 365,
  usage,
  pack = [],
  passphrase = 'Sesame öffne',
}: Made = {}): string {
  const extension = usage ? ['-addext', `keyUsage=${usage}`] : [];
  openssl(
    ...['req', '-x509', '-newkey', ...key, '-nodes', '-keyout', 'k.pem', '-out', 'c.pem', '-days', `${days}`],
    ...['-subj', '/C=NZ/O=Oilskin & Rule/CN=Oilskin & Rule sealing', ...extension],
  );
  openssl(
    'pkcs12',
    '-export',
    '-inkey',
    'k.pem',
    '-in',
    'c.pem',
    '-out',
    'k.p12',
    '-passout',
    `pass:${passphrase}`,
    ...pack,
  );
  return readFileSync(join(folder, 'k.p12')).toString('base64');
}
const path = () => `/v1/firms/${firm.id}/signing-key`;
const put = (file: string, passphrase = 'Sesame öffne', as: Signed = firm.principal) =>
  server.as(as).put(path()).send({ p12: file, passphrase });

describe.skipIf(!onPath('openssl'))('a firm’s signing key', () => {
  it.each([
    ['RSA, as OpenSSL packs today', {}, 'RSA 2048'],
    ['RSA, packed the old way', { pack: ['-legacy'] }, 'RSA 2048'],
    ['RSA of 3072 bits', { key: ['rsa:3072'] }, 'RSA 3072'],
    ['P-256', { key: ['ec', '-pkeyopt', 'ec_paramgen_curve:P-256'] }, 'ECDSA P-256'],
    [
      'P-384, for signatures',
      { key: ['ec', '-pkeyopt', 'ec_paramgen_curve:P-384'], usage: 'digitalSignature' },
      'ECDSA P-384',
    ],
  ] as [string, Made, string][])('is taken: %s', async (_, made, algorithm) => {
    const answer = await put(p12(made)).expect(200);
    expect(answer.body.key).toMatchObject({
      subject: 'Oilskin & Rule sealing (NZ, Oilskin & Rule)',
      selfSigned: true,
      algorithm,
      state: 'usable',
      addedBy: firm.principal.name,
    });
    const shown = openssl('x509', '-in', 'c.pem', '-noout', '-fingerprint', '-sha256').toString();
    expect(shown.trim().replaceAll(':', '').toLowerCase()).toContain(answer.body.key.fingerprint);
    expect((await server.as(firm.office).get(path()).expect(200)).body).toEqual(answer.body);
  });

  it('never leaves the server, and is not readable in its database', async () => {
    const answer = await put(p12()).expect(200);
    expect(JSON.stringify(answer.body)).not.toMatch(/PRIVATE|sealed|certificates/i);
    const row = await inTransaction(server.db, [firm.id], (tx) =>
      tx.signingKey.findUniqueOrThrow({ where: { firmId: firm.id } }),
    );
    const pkcs8 = openssl('pkcs8', '-topk8', '-nocrypt', '-in', 'k.pem', '-outform', 'DER');
    expect(row.sealedKey.length).toBe(pkcs8.length + 28);
    expect(Buffer.from(row.sealedKey).includes(pkcs8.subarray(40, 80))).toBe(false);
  });

  it.each([
    ['a wrong passphrase', () => p12(), 'sesame', '/passphrase', /does not open the file/],
    ['something else', () => Buffer.from('not a key').toString('base64'), '', '/p12', /not a P12 file/],
    ['a key too short', () => p12({ key: ['rsa:1024'] }), undefined, '/p12', /RSA of 2048 bits/],
    [
      'a certificate for encryption',
      () => p12({ usage: 'keyEncipherment' }),
      undefined,
      '/p12',
      /may not be used for signatures/,
    ],
    ['a file without a key', () => p12({ pack: ['-nokeys'] }), undefined, '/p12', /no private key/],
    ['endless encryption', () => p12({ pack: ['-iter', '1000001'] }), undefined, '/p12', /1000000 rounds/],
  ] as [string, () => string, string | undefined, string, RegExp][])(
    'is refused: %s',
    async (_, file, passphrase, pointer, detail) => {
      const before = (await server.as(firm.principal).get(path())).body;
      const answer = await put(file(), passphrase).expect(422);
      expect(answer.body.errors).toEqual([{ pointer, detail: expect.stringMatching(detail) }]);
      expect((await server.as(firm.principal).get(path())).body).toEqual(before);
    },
  );

  it('is refused when its certificate has expired or is not valid yet', async () => {
    const file = p12({ days: 30 });
    const today = now;
    now = new Date(today.getTime() + 40 * 86_400_000);
    expect((await put(file).expect(422)).body.detail).toMatch(/expired on \d{4}-\d\d-\d\d/);
    now = new Date(today.getTime() - 86_400_000);
    expect((await put(file).expect(422)).body.detail).toMatch(/valid from \d{4}-\d\d-\d\d on/);
    now = today;
  });

  it('is for a principal to set and remove, for the staff to see', async () => {
    const file = p12();
    for (const person of [firm.surveyor, firm.office]) {
      await put(file, undefined, person).expect(403);
      await server.as(person).delete(path()).expect(403);
      await server.as(person).get(path()).expect(200);
    }
  });
});

describe('issuing without a usable key', () => {
  it('is refused with what to do, and leaves the draft as it was', async () => {
    const surveyor = server.as(firm.surveyor);
    const vessel = await surveyor.post('/v1/vessels').send({ name: 'Grey Wagtail' }).expect(201);
    const attendances = [{ date: '2026-05-04', place: 'Arlen', condition: 'ashore' }];
    const survey = await surveyor
      .post('/v1/surveys')
      .send({ vesselId: vessel.body.id, purpose: 'condition', attendances })
      .expect(201);
    const at = `/v1/surveys/${survey.body.id}`;
    const words = { title: 't', observed: 'o', consequence: 'c', recommendation: 'r' };
    await surveyor
      .post(`${at}/findings`)
      .send({ system: 'hull', urgency: 'note', ...words })
      .expect(201);
    await answerAllCoverage(surveyor, survey.body.id);
    await surveyor.patch(at).send({ state: 'drafting' });
    const before = (await surveyor.get(at).expect(200)).body;
    const issue = () => surveyor.post(`${at}/reports`).send({ kind: 'full' });

    const today = now;
    now = new Date('2060-01-01');
    await inTransaction(server.db, [firm.id], (tx) =>
      tx.session.updateMany({ data: { expiresAt: new Date('2061-01-01') } }),
    );
    expect((await issue().expect(409)).body.detail).toMatch(/expired on .* A principal adds one/);
    now = today;
    await server.as(firm.principal).delete(path()).expect(204);
    expect((await issue().expect(409)).body.detail).toMatch(/no signing key yet\. A principal adds one/);
    expect((await surveyor.get(`${at}/reports`).expect(200)).body.items).toEqual([]);
    expect((await surveyor.get(at).expect(200)).body).toEqual(before);
  });
});
