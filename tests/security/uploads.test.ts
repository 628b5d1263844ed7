import { inTransaction } from '@garboard/db/database';
import { openLogger } from '@garboard/platform/logger';
import { buildPerson, type Signed } from '@garboard/seed/builders';
import { deriveClearanceFileJob } from '@garboard/worker/jobs/derive-clearance-file';
import { derivePhotoJob } from '@garboard/worker/jobs/derive-photo';
import sharp from 'sharp';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type Asker, buildPlace, buildStaffedFirm, type Place } from '../isolation/world.ts';
import { encodeHeic } from '../support/heic.ts';
import { startServer, type TestServer } from '../support/server.ts';
import {
  activePdf,
  greyPng,
  type HostileFile,
  harmlessFiles,
  hostileNames,
  manyScans,
  refusedFiles,
  script,
} from './hostile-files.ts';

let server: TestServer;
let firm: Awaited<ReturnType<typeof buildStaffedFirm>>;
let owner: Signed;
let place: Place;
beforeAll(async () => {
  server = await startServer();
  firm = await buildStaffedFirm(server);
  owner = await buildPerson(server.db);
  const asker: Asker = {
    name: 'owner',
    role: 'owner',
    person: owner,
    released: true,
    client: true,
    assigned: false,
  };
  place = await buildPlace(server, firm, {
    name: 'own',
    decidedBy: 'surveyor',
    held: false,
    askers: [asker],
  });
}, 300_000);
afterAll(() => server?.close());

const options = ({ name, type }: Pick<HostileFile, 'name' | 'type'>) => ({
  filename: name,
  contentType: type,
});
const sentence = /^.{0,220}\p{Lu}.*[.!]$/su;

async function sendPhoto(bytes: Buffer, file: Pick<HostileFile, 'name' | 'type'>) {
  const path = `/v1/surveys/${place.ids.surveys}/photos`;
  return server.as(firm.surveyor).post(path).attach('file', bytes, options(file));
}

/** Sends evidence for a finding made for it, since one that waits for its decision takes no more. */
async function sendEvidence(bytes: Buffer, file: Pick<HostileFile, 'name' | 'type'>) {
  await inTransaction(server.db, [firm.id], (tx) =>
    tx.finding.updateMany({ where: { id: place.ids.findings ?? '' }, data: { state: 'open' } }),
  );
  return server
    .as(owner)
    .post(`/v1/findings/${place.ids.findings}/clearances`)
    .field('statement', 'Done.')
    .field('workDoneBy', 'Yard')
    .field('workDoneOn', '2026-05-05')
    .attach('file', bytes, options(file));
}

const jobs = () => ({ db: server.db, store: server.store, log: openLogger('test', 'fatal') });

/** Bytes of an answer, whatever it is. */
const bytesOf = (request: ReturnType<ReturnType<TestServer['as']>['get']>) =>
  request.buffer(true).parse((answer, done) => {
    const parts: Buffer[] = [];
    answer.on('data', (part: Buffer) => parts.push(part));
    answer.on('end', () => done(null, Buffer.concat(parts)));
  });

/** What a browser is told of a file from outside, so that it never acts as a page of ours. */
function expectInert(headers: Record<string, string>): void {
  expect(headers['x-content-type-options']).toBe('nosniff');
  expect(headers['content-disposition']).toMatch(
    /^(inline|attachment); filename="[\x20-\x7e]*"; filename\*=UTF-8''[\w%.~-]+$/,
  );
  expect(headers['content-security-policy']).toMatch(/default-src 'none'.*sandbox$/);
}

describe('files that are nothing to be kept', () => {
  it.each(refusedFiles)('$what is refused in words', { timeout: 240_000 }, async (file) => {
    const bytes = await file.bytes();
    for (const answer of [await sendPhoto(bytes, file), await sendEvidence(bytes, file)]) {
      const told: string = answer.body.refused?.[0]?.problem ?? answer.body.detail;
      expect({ told, status: answer.status }).toEqual({ told: expect.stringMatching(sentence), status: 422 });
    }
  });

  it('HEIC that says it is 100 000 pixels wide is refused in words', { timeout: 240_000 }, async () => {
    const picture = await sharp({ create: { width: 320, height: 240, channels: 3, background: '#888' } })
      .jpeg()
      .toBuffer();
    const heic = await encodeHeic(picture);
    for (let at = heic.indexOf('ispe'); at >= 0; at = heic.indexOf('ispe', at + 4))
      heic.writeUInt32BE(100_000, at + 8);
    const answer = await sendPhoto(heic, { name: 'a.heic', type: 'image/heic' });
    expect(answer.status).toBe(422);
    expect(answer.body.detail).toMatch(/too large/);
  });
});

describe('pictures that hold more than a picture', () => {
  it.each(harmlessFiles)(
    '$what is shown as a picture and nothing else',
    { timeout: 240_000 },
    async (file) => {
      const sent = await sendPhoto(await file.bytes(), file);
      expect(sent.status).toBe(201);
      const photoId: string = sent.body.items[0].id;
      await derivePhotoJob(jobs(), { firmId: firm.id, photoId }, { lastAttempt: true });
      for (const size of ['thumb', 'screen', 'print'] as const) {
        const shown = await bytesOf(
          server.as(firm.surveyor).get(`/v1/photos/${photoId}/image?size=${size}`),
        ).expect(200);
        expect(shown.headers['content-type']).toBe('image/jpeg');
        expectInert(shown.headers);
        const bytes: Buffer = shown.body;
        expect(bytes.includes('script')).toBe(false);
        expect(bytes.includes('PK\x03\x04')).toBe(false);
        const { exif, xmp, pages = 1 } = await sharp(bytes).metadata();
        expect({ exif, xmp, pages }).toEqual({ exif: undefined, xmp: undefined, pages: 1 });
      }
      const original = await bytesOf(
        server.as(firm.surveyor).get(`/v1/photos/${photoId}/image?size=original`),
      ).expect(200);
      expect(original.headers['content-type']).toMatch(/^image\/(jpeg|png|webp)$/);
      expectInert(original.headers);
      await server.as(owner).get(`/v1/photos/${photoId}/image?size=original`).expect(404);
    },
  );

  it('evidence is seen by the other side without what its camera wrote', { timeout: 240_000 }, async () => {
    const [file] = harmlessFiles;
    if (!file) throw new Error('No file.');
    const sent = await sendEvidence(await file.bytes(), file);
    expect(sent.status).toBe(201);
    const fileId: string = sent.body.files[0].id;
    await deriveClearanceFileJob(jobs(), { firmId: firm.id, fileId });
    const path = `/v1/clearances/${sent.body.id}/files/${fileId}`;
    // Outside the firm the screen size stands for the original.
    const seen = await bytesOf(server.as(owner).get(`${path}?size=original`)).expect(200);
    expect((await sharp(seen.body).metadata()).exif).toBeUndefined();
    expectInert(seen.headers);
    const original = await bytesOf(server.as(firm.surveyor).get(`${path}?size=original`)).expect(200);
    expectInert(original.headers);
  });
});

describe('PDF with scripts, programs and files in it', () => {
  it('is kept as it came and only ever handed over to be saved', { timeout: 240_000 }, async () => {
    const pdf = await activePdf();
    const sent = await sendEvidence(pdf, { name: 'bill.html', type: 'text/html' });
    expect(sent.status).toBe(201);
    const { id, mediaType } = sent.body.files[0];
    expect(mediaType).toBe('application/pdf');
    for (const person of [owner, firm.surveyor]) {
      const got = await bytesOf(server.as(person).get(`/v1/clearances/${sent.body.id}/files/${id}`)).expect(
        200,
      );
      expect(got.headers['content-type']).toBe('application/pdf');
      expect(got.headers['content-disposition']).toMatch(/^attachment;/);
      expectInert(got.headers);
      expect(got.body.equals(pdf)).toBe(true);
    }
  });
  it('is no photo', async () => {
    const answer = await sendPhoto(await activePdf(), { name: 'a.jpg', type: 'image/jpeg' });
    expect(answer.status).toBe(422);
  });
});

describe('names of files', () => {
  it.each(hostileNames.map((name) => ({ name, shown: name.slice(0, 40) })))('$shown', async ({ name }) => {
    const seed = hostileNames.indexOf(name);
    const picture = await sharp({ create: { width: 40 + seed, height: 30, channels: 3, background: '#357' } })
      .jpeg()
      .toBuffer();
    // By hand: clients tidy names up before they send them.
    const line = `Content-Disposition: form-data; name="file"; filename="${name.replace(/"/g, '%22').replace(/[\r\n\0]/g, ' ')}"`;
    const head = `--b\r\n${line}\r\nContent-Type: text/html\r\n\r\n`;
    const body = Buffer.concat([Buffer.from(head), picture, Buffer.from('\r\n--b--\r\n')]);
    const sent = await server
      .as(firm.surveyor)
      .post(`/v1/surveys/${place.ids.surveys}/photos`)
      .set('content-type', 'multipart/form-data; boundary=b')
      .send(body);
    if (sent.status !== 201) {
      expect({ status: sent.status, detail: sent.body.detail }).toEqual({
        status: 422,
        detail: expect.stringMatching(sentence),
      });
      return;
    }
    const { fileName, id } = sent.body.items[0];
    expect(fileName).not.toMatch(/[\\/\p{Cc}\u202a-\u202e\u2066-\u2069]/u);
    expect(fileName.length).toBeGreaterThan(0);
    expect(fileName.length).toBeLessThanOrEqual(200);
    const got = await bytesOf(server.as(firm.surveyor).get(`/v1/photos/${id}/image?size=original`)).expect(
      200,
    );
    expectInert(got.headers);
    expect(got.headers['set-cookie']).toBeUndefined();
  });
});

describe('pictures that unfold', () => {
  /** The most that the process held while this was done, in MB above what it held before. */
  async function grownBy(work: () => Promise<void>): Promise<number> {
    const before = process.memoryUsage().rss;
    let most = before;
    const looking = setInterval(() => {
      most = Math.max(most, process.memoryUsage().rss);
    }, 20);
    try {
      await work();
    } finally {
      clearInterval(looking);
    }
    return Math.round((most - before) / 1e6);
  }
  // As large as is accepted, from files of a few hundred kilobytes.
  const bombs = [
    { what: 'PNG of 100 million pixels', bytes: () => greyPng(10_000, 10_000, { pixels: true }) },
    {
      what: 'PNG of 36 million pixels, interlaced',
      bytes: () => greyPng(6000, 6000, { pixels: true, interlaced: true }),
    },
    {
      what: 'progressive JPEG of 100 million pixels',
      bytes: () =>
        sharp({ create: { width: 10_000, height: 10_000, channels: 3, background: '#fff' } })
          .jpeg({ progressive: true })
          .toBuffer(),
    },
    { what: 'JPEG of a thousand scans', bytes: manyScans },
  ];
  it.each(bombs)('$what: within bounds of memory and time', { timeout: 180_000 }, async ({ what, bytes }) => {
    const file = await bytes();
    const begun = performance.now();
    let photoId: string | undefined;
    const grown = await grownBy(async () => {
      const sent = await sendPhoto(file, { name: 'a', type: 'image/png' });
      expect([201, 422]).toContain(sent.status);
      photoId = sent.body.items?.[0]?.id;
    });
    const derived = await grownBy(async () => {
      if (!photoId) return;
      await derivePhotoJob(jobs(), { firmId: firm.id, photoId }, { lastAttempt: true }).catch(
        () => undefined,
      );
    });
    const seconds = Math.round(performance.now() - begun) / 1000;
    console.log(
      `${what}: ${file.length} bytes, api +${grown} MB, worker +${derived} MB, ${seconds} s, ${photoId ? 'taken' : 'refused'}`,
    );
    expect(grown).toBeLessThan(900);
    expect(derived).toBeLessThan(900);
    expect(seconds).toBeLessThan(120);
  });

  it('nothing of a script is in any answer about the survey', async () => {
    const list = await server
      .as(firm.surveyor)
      .get(`/v1/surveys/${place.ids.surveys}/photos?limit=200`)
      .expect(200);
    expect(list.text).not.toContain(script);
  });
});
