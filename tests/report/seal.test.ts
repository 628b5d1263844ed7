import { createHash, X509Certificate } from 'node:crypto';
import { copyFile, readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { reportDataSchema, reportDataText } from '@garboard/contract/report-data';
import { reportSnapshot } from '@garboard/contract/report-snapshot';
import type { KeyPair } from '@garboard/core/signing/open-p12';
import { selfMadeKey } from '@garboard/seed/self-made-key';
import { sealOf } from '@garboard/worker/seal/seal-of';
import { sealPdf } from '@garboard/worker/seal/seal-pdf';
import { Ajv2020 } from 'ajv/dist/2020.js';
import addFormats from 'ajv-formats';
import jsQR from 'jsqr';
import { PDFDocument } from 'pdf-lib';
import sharp from 'sharp';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { onPath, says } from '../support/programs.ts';
import { openPdf, startPrinting } from './printing.ts';
import { sampleLetter, sampleReport } from './sample-snapshot.ts';

const at = new Date('2026-05-07T10:20:30Z');
const url = 'https://survey.example/verify/7K3QD-9XM2R-ABCDE-FGHJK';
const verification = { code: '7K3QD9XM2RABCDEFGHJK', url };
const snapshot = reportSnapshot.parse({ ...sampleReport(6, 2), verification });

let printing: Awaited<ReturnType<typeof startPrinting>>;
let raw: string;
const pairs = {} as Record<'rsa' | 'ec', KeyPair>;

beforeAll(async () => {
  printing = await startPrinting();
  raw = (await printing.printSnapshot(snapshot)).pdfPath;
  const made = { firmName: 'Tallow & Strake', country: 'NZ' };
  const valid = { validFrom: new Date('2026-01-01'), validUntil: new Date('2036-01-01') };
  for (const kind of ['rsa', 'ec'] as const) pairs[kind] = await selfMadeKey({ ...made, ...valid, kind });
}, 60_000);
afterAll(() => printing.end());

/** A copy of a printed PDF, sealed. */
async function seal(name: string, pair: KeyPair = pairs.ec, from = raw): Promise<string> {
  const path = join(printing.folder, `${name}.pdf`);
  await copyFile(from, path);
  const signer = { ...pair, subject: 'Tallow & Strake' };
  const { request } = sealOf({ snapshot, signer, chromium: 'HeadlessChrome/131.0.1.2', at });
  await sealPdf({ ...request, path });
  return path;
}

/** The signature taken out of a PDF by its byte range alone, and what it covers. */
async function signatureOf(path: string): Promise<{ cms: Buffer; covered: Buffer; size: number }> {
  const bytes = await readFile(path);
  const text = bytes.toString('latin1');
  const [a = 0, b = 0, c = 0, d = 0] = (/\/ByteRange \[([\d\s]+)\]/.exec(text)?.[1] ?? '')
    .trim()
    .split(/\s+/)
    .map(Number);
  const hex = text.slice(a + b + 1, c - 1);
  expect(text[a + b]).toBe('<');
  expect(text[c - 1]).toBe('>');
  const padded = Buffer.from(hex, 'hex');
  // The outermost length says where the CMS ends and the room left begins.
  const cms = padded.subarray(0, 4 + padded.readUInt16BE(2));
  return { cms, covered: Buffer.concat([bytes.subarray(a, a + b), bytes.subarray(c, c + d)]), size: c + d };
}

describe.skipIf(!onPath('pdfsig', 'pdfinfo', 'pdfdetach'))('to poppler’s eyes', () => {
  it.each(['rsa', 'ec'] as const)(
    'a document signed by a key of kind %s is valid and wholly signed',
    async (kind) => {
      const told = await says('pdfsig', [await seal(kind, pairs[kind])]);
      expect(told).toContain('Signature is Valid.');
      expect(told).toContain('Total document signed');
      expect(told).toContain('Signature Type: ETSI.CAdES.detached');
      expect(told).toContain('Signing Hash Algorithm: SHA-256');
      expect(told).toContain('Signer Certificate Common Name: Tallow & Strake');
      expect(told).not.toContain('Signature #2');
    },
  );

  it('one flipped bit anywhere breaks it: in a page, in the data, after the signature', async () => {
    const path = await seal('whole');
    const bytes = await readFile(path);
    const places = [
      Math.floor(bytes.length / 3),
      bytes.indexOf('EmbeddedFile') + 200,
      bytes.lastIndexOf('startxref') - 30,
    ];
    for (const place of places) {
      const broken = Buffer.from(bytes);
      broken[place] = (broken[place] ?? 0) ^ 1;
      const copy = join(printing.folder, 'broken.pdf');
      await writeFile(copy, broken);
      expect(await says('pdfsig', [copy])).not.toContain('Signature is Valid.');
    }
  });

  it('something added after signing is no longer wholly signed', async () => {
    const path = await seal('added');
    await writeFile(path, Buffer.concat([await readFile(path), Buffer.from('\n% more\n')]));
    expect(await says('pdfsig', [path])).not.toContain('Total document signed');
  });

  it('it stays tagged and says what it is', async () => {
    const told = await says('pdfinfo', [await seal('info')]);
    expect(told).toMatch(/Tagged: +yes/);
    expect(told).toMatch(/Title: +Grey Wagtail: Pre-purchase survey 2026-0042, revision 1/);
    expect(told).toMatch(/Author: +Ines Quorn, Tallow & Strake Marine Surveyors/);
    expect(told).toMatch(/Subject: +Survey report, survey 2026-0042, revision 1/);
    expect(told).toMatch(/Creator: +Garboard \d+\.\d+\.\d+/);
    expect(told).toMatch(/Producer: +Chromium 131\.0\.1\.2/);
    const xmp = await says('pdfinfo', ['-meta', await seal('meta')]);
    expect(xmp).toContain('<dc:language><rdf:Bag><rdf:li>en</rdf:li></rdf:Bag></dc:language>');
  });

  it('its data comes out as it went in, and fits the published schema', async () => {
    const out = join(printing.folder, 'out.json');
    await says('pdfdetach', ['-savefile', 'garboard-report.json', '-o', out, await seal('data')]);
    const text = await readFile(out, 'utf8');
    expect(text).toBe(reportDataText(snapshot));
    const ajv = addFormats.default(new Ajv2020({ strict: false }));
    const fits = ajv.compile(reportDataSchema('https://survey.example'));
    expect(fits(JSON.parse(text)), JSON.stringify(fits.errors)).toBe(true);
    expect(fits(JSON.parse(JSON.stringify(sampleLetter('status-letter', snapshot.findings))))).toBe(true);
    expect(fits({ ...JSON.parse(text), frozenAt: 'yesterday' })).toBe(false);
  });

  it('the last page’s square leads to the address, and its number is that of the data', async () => {
    const path = await seal('square');
    const { numPages } = await openPdf(path);
    const args = ['-r', '150', '-png', '-f', `${numPages}`, '-l', `${numPages}`, '-singlefile'];
    await says('pdftoppm', [...args, path, join(printing.folder, 'last')]);
    const picture = sharp(join(printing.folder, 'last.png')).ensureAlpha();
    const { data, info } = await picture.raw().toBuffer({ resolveWithObject: true });
    expect(jsQR(new Uint8ClampedArray(data), info.width, info.height)?.data).toBe(url);
    const hash = createHash('sha256').update(reportDataText(snapshot)).digest('hex');
    const text = await says('pdftotext', ['-f', `${numPages}`, path, '-']);
    expect(text.replace(/\s/g, '')).toContain(hash);
    expect(text).toContain('7K3QD-9XM2R-ABCDE-FGHJK');
  });
});

describe.skipIf(!onPath('openssl'))('to OpenSSL’s eyes', () => {
  it.each(['rsa', 'ec'] as const)('the signature by %s verifies over the byte range', async (kind) => {
    const { cms, covered, size } = await signatureOf(await seal(`openssl-${kind}`, pairs[kind]));
    expect(size).toBe((await readFile(join(printing.folder, `openssl-${kind}.pdf`))).length);
    const [der, content, certificate] = ['sig.der', 'content.bin', 'cert.pem'].map((n) =>
      join(printing.folder, n),
    );
    await writeFile(der ?? '', cms);
    await writeFile(content ?? '', covered);
    await writeFile(certificate ?? '', new X509Certificate(pairs[kind].certificates[0] ?? '').toString());
    const args = ['-binary', '-inform', 'DER', '-in', der ?? '', '-content', content ?? ''];
    const trusted = ['-CAfile', certificate ?? '', '-purpose', 'any', '-attime', `${at.getTime() / 1000}`];
    // -cades makes OpenSSL check the signing-certificate attribute against the certificate as well.
    const told = await says('openssl', [
      'cms',
      '-verify',
      '-cades',
      ...args,
      ...trusted,
      '-out',
      '/dev/null',
    ]);
    expect(told).toMatch(/successful/i);
    await writeFile(content ?? '', Buffer.concat([covered, Buffer.from('x')]));
    expect(await says('openssl', ['cms', '-verify', ...args, ...trusted, '-out', '/dev/null'])).toMatch(
      /failure/i,
    );
  });

  it('the signed attributes are those of the baseline, in the order of DER, and no signing time', async () => {
    const { cms, covered } = await signatureOf(await seal('attributes'));
    const der = join(printing.folder, 'attributes.der');
    await writeFile(der, cms);
    const told = await says('openssl', ['cms', '-cmsout', '-print', '-noout', '-inform', 'DER', '-in', der]);
    const signed = told.slice(
      told.indexOf('signedAttrs:'),
      told.indexOf('signatureAlgorithm:', told.indexOf('signedAttrs:')),
    );
    expect(signed).toContain('contentType (1.2.840.113549.1.9.3)');
    expect(signed).toContain('messageDigest (1.2.840.113549.1.9.4)');
    expect(signed).toContain('(1.2.840.113549.1.9.16.2.47)');
    expect(signed).not.toContain('signingTime');
    expect(told).toMatch(/eContent: <ABSENT>/);
    const tree = await says('openssl', ['asn1parse', '-inform', 'DER', '-in', der]);
    const hex = (bytes: Buffer) => createHash('sha256').update(bytes).digest('hex').toUpperCase();
    expect(tree).toContain(`[HEX DUMP]:${hex(covered)}`);
    expect(tree).toContain(`[HEX DUMP]:${hex(pairs.ec.certificates[0] ?? Buffer.alloc(0))}`);
  });
});

describe('sealing', () => {
  it('leaves pages, bookmarks, links and tags as they were printed', async () => {
    const [before, after] = [await openPdf(raw), await openPdf(await seal('same'))];
    expect(after.numPages).toBe(before.numPages);
    const titles = async (pdf: typeof before) => JSON.stringify((await pdf.getOutline()).map((o) => o.title));
    expect(await titles(after)).toBe(await titles(before));
    for (const number of [1, 4, after.numPages]) {
      const tree = async (pdf: typeof before) =>
        JSON.stringify(await (await pdf.getPage(number)).getStructTree());
      expect((await tree(after)).length).toBe((await tree(before)).length);
    }
    expect(await after.getMarkInfo()).toMatchObject({ Marked: true });
    const bytes = [await readFile(raw), await readFile(join(printing.folder, 'same.pdf'))] as const;
    expect(bytes[1].subarray(0, bytes[0].length).equals(bytes[0])).toBe(true);
  });

  it('takes a PDF whose cross-references are packed, as other browsers write them', async () => {
    const packed = join(printing.folder, 'packed-in.pdf');
    const document = await PDFDocument.load(await readFile(raw), { updateMetadata: false });
    await writeFile(packed, await document.save({ useObjectStreams: true }));
    const path = await seal('packed', pairs.ec, packed);
    expect((await openPdf(path)).numPages).toBe(document.getPageCount());
    const { cms, size } = await signatureOf(path);
    expect(cms.length).toBeGreaterThan(500);
    expect(size).toBe((await readFile(path)).length);
  });

  it('gives the same bytes for the same revision, apart from dates, ids and the signature', async () => {
    const again = (await printing.printSnapshot(snapshot)).pdfPath;
    const normal = async (path: string) =>
      (await readFile(path))
        .toString('latin1')
        .replace(/D:\d{14}[^)>]*/g, 'D:')
        .replace(/\/ID\s*\[[^\]]*\]/g, '/ID')
        .replace(/\/Contents <[0-9a-f]+>/, '/Contents');
    const hash = (text: string) => createHash('sha256').update(text).digest('hex');
    expect(hash(await normal(again))).toBe(hash(await normal(raw)));
    const sealed = [await seal('one', pairs.rsa), await seal('two', pairs.rsa, again)];
    const [one, two] = await Promise.all(sealed.map(normal));
    expect(hash(one ?? '')).toBe(hash(two ?? 'none'));
  });
});
