import { mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { request } from 'node:http';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { brotliCompressSync, brotliDecompressSync, gunzipSync } from 'node:zlib';
import { buildFirm, type Signed } from '@garboard/seed/builders';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { startServer, type TestServer } from '../support/server.ts';

let server: TestServer;
let portalDir: string;
let surveyor: Signed;

beforeAll(async () => {
  portalDir = await mkdtemp(join(tmpdir(), 'garboard-portal-'));
  await mkdir(join(portalDir, 'assets'));
  await builtFile('index.html', `<title>Garboard</title>${' '.repeat(3000)}`);
  await builtFile('assets/page.js', 'export const words = "hull";'.repeat(200));
  await writeFile(join(portalDir, 'assets/page.woff2'), Buffer.alloc(4000));
  server = await startServer({ portalDir });
  surveyor = (await buildFirm(server.db, ['surveyor'])).surveyor;
  for (let n = 0; n < 20; n++) {
    await server
      .as(surveyor)
      .post('/v1/vessels')
      .send({ name: `Tern ${n}` })
      .expect(201);
  }
});
afterAll(async () => {
  await server.close();
  await rm(portalDir, { recursive: true, force: true });
});

/** As the portal's build leaves a text: the file and what is sent instead. */
async function builtFile(name: string, text: string): Promise<void> {
  await writeFile(join(portalDir, name), text);
  await writeFile(join(portalDir, `${name}.br`), brotliCompressSync(text));
}

interface Plain {
  headers: Record<string, string | string[] | undefined>;
  body: Buffer;
}

/** What goes over the line, not unpacked by a client. */
function get(path: string, accepted: string | null, method = 'GET'): Promise<Plain> {
  const headers = {
    authorization: `Bearer ${surveyor.token}`,
    ...(accepted === null ? {} : { 'accept-encoding': accepted }),
  };
  return new Promise((resolve, reject) => {
    const asked = request(server.url + path, { headers, method }, (answer) => {
      const chunks: Buffer[] = [];
      answer.on('data', (chunk: Buffer) => chunks.push(chunk));
      answer.on('end', () => resolve({ headers: answer.headers, body: Buffer.concat(chunks) }));
    });
    asked.on('error', reject);
    asked.end();
  });
}

describe('answers of the interface', () => {
  it('come as the client understands them, a long list at a fraction of its length', async () => {
    const plain = await get('/v1/vessels', null);
    expect(plain.headers['content-encoding']).toBeUndefined();
    expect(plain.headers.vary).toBe('accept-encoding');
    const unpack = { br: brotliDecompressSync, gzip: gunzipSync };
    for (const encoding of ['br', 'gzip'] as const) {
      const packed = await get('/v1/vessels', encoding);
      expect(packed.headers).toMatchObject({
        'content-encoding': encoding,
        'content-length': String(packed.body.length),
        'content-type': plain.headers['content-type'],
        vary: 'accept-encoding',
      });
      expect(packed.body.length).toBeLessThan(plain.body.length / 4);
      expect(unpack[encoding](packed.body).equals(plain.body)).toBe(true);
    }
    expect((await get('/v1/vessels', 'gzip;q=0, identity')).headers['content-encoding']).toBeUndefined();
  });

  it('that fit into one packet, and those without a body, are left as they are', async () => {
    expect((await get('/v1/me', 'br')).headers['content-encoding']).toBeUndefined();
    expect((await get('/v1/vessels', 'br', 'HEAD')).body).toHaveLength(0);
  });
});

describe('the portal', () => {
  it('comes as it was compressed by the build, under any address', async () => {
    for (const path of ['/', '/surveys/1/findings', '/assets/page.js']) {
      const [plain, packed] = [await get(path, null), await get(path, 'gzip, deflate, br')];
      expect(packed.headers['content-encoding'], path).toBe('br');
      expect(packed.headers['content-type'], path).toBe(plain.headers['content-type']);
      expect(packed.headers['cache-control'], path).toBe(plain.headers['cache-control']);
      expect(brotliDecompressSync(packed.body).equals(plain.body), path).toBe(true);
      expect(packed.headers.vary, path).toMatch(/accept-encoding/i);
    }
    expect((await get('/assets/page.woff2', 'br')).headers['content-encoding']).toBeUndefined();
  });
});
