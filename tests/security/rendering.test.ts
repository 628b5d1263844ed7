import { execFileSync } from 'node:child_process';
import { readFile, writeFile } from 'node:fs/promises';
import { createServer, type Server } from 'node:net';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { routes } from '@garboard/contract/routes';
import { buildJpeg, buildPerson } from '@garboard/seed/builders';
import { worksheets as worksheetSpecs } from '@garboard/seed/world/worksheets';
import { inputSchema } from '@garboard/trade/worksheets/core/evaluate';
import { worksheets } from '@garboard/trade/worksheets/registry';
import { afterAll, afterEach, beforeAll, describe, expect, it, vi } from 'vitest';
import { quotation, rates } from '../isolation/bodies.ts';
import { buildStaffedFirm } from '../isolation/world.ts';
import { eachPage, openPdf, pageTexts, startPrinting } from '../report/printing.ts';
import { answerAllCoverage } from '../support/coverage.ts';
import { startServer, type TestServer } from '../support/server.ts';
import { startTestWorker, type TestWorker } from '../support/worker.ts';
import { filled } from './fill.ts';

// Text that tries to have Chromium load something, in every field of free text that a document prints. Two doors, one
// of IPv4 and one of IPv6, count who knocks; a file that none of our pages may read says what it is when it is read.

const marker = 'the content of a file that no page may read';
let printing: Awaited<ReturnType<typeof startPrinting>>;
let secretFile: string;
const doors: Server[] = [];
const knocks: string[] = [];
let addresses: string[];

async function openDoor(host: string): Promise<string[]> {
  const door = createServer((socket) => {
    socket.on('error', () => undefined);
    socket.once('data', (data) => knocks.push(`${host}: ${data.toString('latin1').slice(0, 100)}`));
    knocks.push(host);
    socket.end('HTTP/1.1 200 OK\r\ncontent-type: text/css\r\n\r\nbody::before { content: "smuggled in" }');
  });
  const opened = await new Promise<boolean>((resolve) => {
    door.once('error', () => resolve(false));
    door.listen(0, host, () => resolve(true));
  });
  if (!opened) return [];
  doors.push(door);
  const address = door.address();
  const port = address && typeof address === 'object' ? address.port : 0;
  return [`http://${host === '::1' ? '[::1]' : host}:${port}`];
}

beforeAll(async () => {
  printing = await startPrinting();
  secretFile = join(printing.folder, 's.html');
  await writeFile(secretFile, `<p>${marker}</p>`);
  addresses = [...(await openDoor('127.0.0.1')), ...(await openDoor('::1'))];
}, 300_000);
afterAll(async () => {
  for (const door of doors) door.close();
  await printing?.end();
});
afterEach(() => {
  knocks.length = 0;
});

/** Ways to have something loaded: by a browser’s own markup, by styles, by SVG and by what writes markup in short. */
function lures(at: string, file: string): string[] {
  return [
    `<img src=${at}/a>`,
    `<script src=${at}/b></script>`,
    `<link rel=stylesheet href=${at}/c>`,
    `<style>@import url(${at}/d)</style>`,
    `</style><style>*{background:url(${at}/e)}`,
    `<iframe src=${file}></iframe>`,
    `<object data=${file}></object>`,
    `<embed src=${at}/f>`,
    `<iframe src="data:text/html,<img src=${at}/g>">`,
    `<svg><foreignObject><img src=${at}/h>`,
    `<svg><image href=${at}/i></svg>`,
    `<svg><use href="${at}/j#x"/></svg>`,
    `<meta http-equiv=refresh content=0;url=${at}/k>`,
    `<base href=${at}/>`,
    `<video src=${at}/l autoplay>`,
    `<input type=image src=${at}/m>`,
    `<img srcset="${at}/n 2x">`,
    `<link rel=dns-prefetch href=${at}>`,
    `<link rel=preconnect href=${at}>`,
    `<p style="background:url(${at}/o)">`,
    `<style>@font-face{font-family:x;src:url(${at}/p)}*{font-family:x}</style>`,
    `"><img src=${at}/q onerror=alert(1)>`,
    `' onload='fetch("${at}/r")`,
    `![x](${at}/s) [y](${file})`,
    `url(${at}/t) @import "${at}/u";`,
    `{{constructor.constructor("fetch('${at}/v')")()}}`,
    `<!--#include file="${file}" -->`,
    `<?xml-stylesheet href="${at}/w"?>`,
    `<!ENTITY x SYSTEM "${file}">&x;`,
    `<math><mtext><img src=${at}/x>`,
  ];
}

describe('a page whose markup is not even escaped', () => {
  it('reaches nothing outside its folder; what it asks for is refused and told', {
    timeout: 240_000,
  }, async () => {
    const refused: string[] = [];
    const all = addresses.flatMap((at) => lures(at, pathToFileURL(secretFile).href));
    // One a page of its own, since some of them swallow all that follows.
    for (const group of [all.filter((_, i) => i % 2 === 0), all.filter((_, i) => i % 2 === 1)]) {
      const html = `<!doctype html><title>t</title><p>Only this.</p>${group.map((lure) => `<div>${lure}</div>`).join('\n')}`;
      const outcome = await printing
        .print({ html, onRefused: (url) => refused.push(url) })
        .catch((error: unknown) => error as Error);
      if (outcome instanceof Error) continue;
      const text = (await pageTexts(await openPdf(outcome.pdfPath))).join(' ');
      expect(text).not.toContain(marker);
      expect(text).not.toContain('smuggled');
    }
    const single = lures(addresses[0] ?? '', pathToFileURL(secretFile).href);
    const alone = async (lure: string) => {
      const outcome = await printing
        .print({ html: `<!doctype html><p>Only this.</p>${lure}`, onRefused: (url) => refused.push(url) })
        .catch((error: unknown) => error as Error);
      if (outcome instanceof Error) return;
      expect((await readFile(outcome.pdfPath, 'latin1')).includes(marker)).toBe(false);
    };
    const lane = async () => {
      for (let lure = single.pop(); lure; lure = single.pop()) await alone(lure);
    };
    await Promise.all([lane(), lane(), lane(), lane()]);
    expect(knocks).toEqual([]);
    // What the content policy can't tell from ours is stopped one by one.
    expect(refused.length).toBeGreaterThan(0);
    expect(
      refused.every((url) => !url.startsWith('http') || addresses.some((at) => url.startsWith(at))),
    ).toBe(true);
  });
});

describe('the browser’s processes', () => {
  it.skipIf(process.platform !== 'linux')('know none of our secrets', { timeout: 240_000 }, async () => {
    const names = [
      'DATABASE_URL',
      'REDIS_URL',
      'GARBOARD_SECRET',
      'SMTP_URL',
      'OBJECT_STORE_URL',
      'AWS_SECRET_ACCESS_KEY',
    ];
    for (const name of names) vi.stubEnv(name, 'hush-hush');
    const fresh = await startPrinting();
    try {
      await fresh.print({ html: '<p>x' });
      const first = await fresh.browser.pid();
      if (first === undefined) throw new Error('Chromium is not running.');
      const rows = execFileSync('ps', ['-e', '-o', 'pid=,ppid='], { encoding: 'utf8' })
        .trim()
        .split('\n')
        .map((row) => row.trim().split(/\s+/).map(Number));
      const family = new Set([first]);
      for (let grown = true; grown; ) {
        const before = family.size;
        for (const [pid = 0, parent = 0] of rows) if (family.has(parent)) family.add(pid);
        grown = family.size > before;
      }
      expect(family.size).toBeGreaterThan(1);
      for (const pid of family) {
        const [environment, command] = await Promise.all(
          ['environ', 'cmdline'].map((part) => readFile(`/proc/${pid}/${part}`, 'latin1').catch(() => '')),
        );
        expect(`${environment} ${command}`).not.toMatch(/hush-hush|DATABASE_URL|GARBOARD_SECRET/);
      }
    } finally {
      vi.unstubAllEnvs();
      await fresh.end();
    }
  });
});

describe('documents of a survey full of such text', () => {
  let server: TestServer;
  let worker: TestWorker;
  beforeAll(async () => {
    server = await startServer();
    worker = await startTestWorker(server);
  }, 300_000);
  afterAll(async () => {
    await worker?.close();
    await server?.close();
  });

  it('are printed with the text as it was written, and load nothing', { timeout: 480_000 }, async () => {
    const firm = await buildStaffedFirm(server);
    const owner = await buildPerson(server.db);
    const surveyor = server.as(firm.surveyor);
    const principal = server.as(firm.principal);
    const all = addresses.flatMap((at) => lures(at, pathToFileURL(secretFile).href));
    const fields: string[] = [];
    const text = (max: number, path: string) => {
      fields.push(path);
      // Long fields hold everything; the others take turns, each as long as fits.
      if (max >= 5000) return all.join('\n');
      const fitting = all.filter((lure) => max === 0 || lure.length <= max);
      return fitting[fields.length % Math.max(1, fitting.length)] ?? '<img src=//x>'.slice(0, max);
    };
    const made = async (path: string, body: object | undefined, status = 201) => {
      const answer = await surveyor.post(path).send(body);
      expect({ path, status: answer.status, detail: answer.body.detail }).toEqual({
        path,
        status,
        detail: undefined,
      });
      return answer.body;
    };
    const fill = (schema: unknown, base: object) => filled(schema as never, base, text) as object;
    const { createVessel, createSurvey, createFinding, updatePhoto, updateFirm, createWorksheet } = routes;

    await principal.patch(`/v1/firms/${firm.id}`).send(fill(updateFirm.body, {})).expect(200);
    await principal.put(`/v1/firms/${firm.id}/rates`).send(rates).expect(200);
    await principal
      .post(`/v1/firms/${firm.id}/terms`)
      .send({ text: all.join('\n') })
      .expect(201);
    const vessel = await made('/v1/vessels', fill(createVessel.body, {}));
    const attendances = [{ date: '2026-05-04', place: 'x', condition: 'ashore' }];
    const survey = await made(
      '/v1/surveys',
      fill(createSurvey.body, { vesselId: vessel.id, purpose: 'insurance', attendances }),
    );
    const at = `/v1/surveys/${survey.id}`;
    const shot = await surveyor
      .post(`${at}/photos`)
      .attach('file', await buildJpeg(5), '<img src=x>.jpg')
      .expect(201);
    const photo: string = shot.body.items[0].id;
    const marked = await surveyor.patch(`/v1/photos/${photo}`).send(fill(updatePhoto.body, { caption: 'x' }));
    expect(marked.status).toBe(200);
    const words = fill(createFinding.body, {
      ...{
        system: 'gas',
        urgency: 'before-use',
        photoIds: [photo],
        references: ['x', 'y'],
        items: [{ text: 'x' }],
      },
      cost: { low: 1, high: 2, currency: 'EUR', basis: 'opinion' },
    });
    // This one names an entry of the catalogue.
    const finding = await made(`${at}/findings`, { ...words, catalogueKey: null });
    // One of each worksheet that has words of the surveyor’s in it.
    for (const sheet of worksheets) {
      const spec = worksheetSpecs.find(({ kind }) => kind === sheet.kind);
      if (!spec) continue;
      const before = fields.length;
      const inputs = filled(inputSchema(sheet), spec.inputs, text);
      if (fields.length === before) continue;
      const body = { ...fill(createWorksheet.body, {}), kind: sheet.kind, inputs, findingId: finding.id };
      const answer = await surveyor.post(`${at}/worksheets`).send(body);
      expect([201, 422]).toContain(answer.status);
    }
    await made(`${at}/inventory`, fill(routes.createInventoryItem.body, { system: 'life-saving' }));
    const party = await made(`${at}/parties`, {
      role: 'owner',
      name: all[0],
      email: owner.email,
      client: true,
    });
    await answerAllCoverage(surveyor, survey.id);
    await surveyor
      .put(`${at}/coverage/hull`)
      .send(fill(routes.answerCoverage.body, { reached: 'not-reached' }))
      .expect(200);
    const offer = await made(
      `${at}/quotations`,
      fill(routes.createQuotation.body, { ...quotation, partyId: party.id }),
    );
    const quoted = `/v1/quotations/${offer.id}`;
    await surveyor.post(`${quoted}/sending`).expect(200);
    const { textSha256 } = (await server.as(owner).get(quoted).expect(200)).body;
    const accepted = { typedName: all[0], textSha256 };
    await server.as(owner).post(`${quoted}/acceptance`).send(accepted).expect(200);

    const asked = await made(`${at}/reports`, { kind: 'full' }, 202);
    await vi.waitFor(
      async () => {
        const { state, problem } = (await surveyor.get(`/v1/reports/${asked.id}`).expect(200)).body;
        expect({ state, problem }).toEqual({ state: 'issued', problem: null });
      },
      { timeout: 180_000, interval: 200 },
    );
    const files = [`/v1/reports/${asked.id}/pdf`, `${quoted}/pdf`, `/v1/findings/${finding.id}/preview`];
    for (const path of files) {
      let bytes = Buffer.alloc(0);
      await vi.waitFor(
        async () => {
          const got = await surveyor
            .get(path)
            .buffer(true)
            .parse((answer, done) => {
              const parts: Buffer[] = [];
              answer.on('data', (part: Buffer) => parts.push(part));
              answer.on('end', () => done(null, Buffer.concat(parts)));
            });
          expect({ path, status: got.status }).toEqual({ path, status: 200 });
          bytes = got.body;
        },
        { timeout: 120_000, interval: 200 },
      );
      const kept = join(printing.folder, 'got.pdf');
      await writeFile(kept, bytes);
      const pdf = await openPdf(kept);
      const read = (await pageTexts(pdf)).join(' ').replace(/\s+/g, '');
      expect(read).toContain('<iframe');
      expect(read).not.toContain(marker.replace(/\s+/g, ''));
      expect(read).not.toContain('smuggledin');
      // Nothing to press that leads to such an address, and nothing that acts by itself.
      const links = await eachPage(pdf, async (page) => page.getAnnotations());
      const targets = links.flat().map((link: { url?: string }) => link.url ?? '');
      expect(
        targets.filter((url) => url.startsWith('file:') || addresses.some((door) => url.startsWith(door))),
      ).toEqual([]);
      expect(await pdf.getJSActions()).toBeNull();
    }
    console.log(`Rendering: ${fields.length} fields of text, ${all.length} lures, ${knocks.length} knocks`);
    expect(fields.length).toBeGreaterThan(60);
    expect(knocks).toEqual([]);
  });
});
