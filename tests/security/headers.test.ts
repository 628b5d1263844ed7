import { mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { connect } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type Route, routes } from '@garboard/contract/routes';
import { buildFirm, buildJpeg, type Signed } from '@garboard/seed/builders';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { startServer, type TestServer } from '../support/server.ts';

// Behind https, with a portal of one page and one asset: what is looked at is the head of each answer.
let server: TestServer;
let portalDir: string;
let surveyor: Signed;
let photoId: string;
let hashedPicture: string;

beforeAll(async () => {
  portalDir = await mkdtemp(join(tmpdir(), 'garboard-portal-'));
  await mkdir(join(portalDir, 'assets'));
  await writeFile(join(portalDir, 'index.html'), '<!doctype html><title>Portal</title>');
  await writeFile(join(portalDir, 'assets/app-1a2b.js'), 'export {};');
  await writeFile(join(portalDir, 'sw.js'), '// nothing');
  server = await startServer({ publicUrl: 'https://survey.example', portalDir });
  surveyor = (await buildFirm(server.db, ['surveyor'])).surveyor;
  const as = server.as(surveyor);
  const vessel = await as.post('/v1/vessels').send({ name: 'Pintle' }).expect(201);
  const survey = await as
    .post('/v1/surveys')
    .send({ vesselId: vessel.body.id, purpose: 'insurance' })
    .expect(201);
  const photo = await as
    .post(`/v1/surveys/${survey.body.id}/photos`)
    .attach('file', await buildJpeg(3), 'a.jpg')
    .expect(201);
  photoId = photo.body.items[0].id;
  hashedPicture = photo.body.items[0].sha256;
});
afterAll(async () => {
  await server?.close();
  await rm(portalDir, { recursive: true, force: true });
});

const get = (path: string, person?: Signed, headers: Record<string, string> = {}) =>
  fetch(`${server.url}${path}`, {
    redirect: 'manual',
    headers: { ...headers, ...(person ? { authorization: `Bearer ${person.token}` } : {}) },
  });

/** Sends bytes as they are and answers all that comes back. */
function raw(text: string): Promise<string> {
  return new Promise((done) => {
    const socket = connect(Number(new URL(server.url).port), '127.0.0.1', () => socket.write(text));
    let all = '';
    socket.on('data', (chunk) => {
      all += chunk;
    });
    socket.on('close', () => done(all));
    socket.on('error', () => undefined);
    socket.setTimeout(20_000, () => socket.destroy());
  });
}

function policyOf(header: string | null): Map<string, string[]> {
  const parts = (header ?? '').split(';').map((part) => part.trim().split(/\s+/));
  return new Map(parts.map(([name = '', ...values]) => [name, values]));
}

const answers: [string, () => Promise<Response>][] = [
  ['the portal', () => get('/')],
  ['an address within the portal', () => get('/surveys/none')],
  ['the page of a share link', () => get('/shared')],
  ['the service worker', () => get('/sw.js')],
  ['an asset', () => get('/assets/app-1a2b.js')],
  ['an asset that isn’t there', () => get('/assets/none.js')],
  ['the reading page of the interface', () => get('/docs/')],
  ['its description', () => get('/openapi.json')],
  ['health', () => get('/health/live')],
  ['a record', () => get('/v1/me', surveyor)],
  ['a refusal', () => get('/v1/me')],
  ['nothing there', () => get('/v1/nothing')],
  ['a file to save', () => get(`/v1/photos/${photoId}/image?size=original`, surveyor)],
  ['a file that isn’t there', () => get(`/v1/photos/${surveyor.id}/image?size=original`, surveyor)],
  ['an address that can’t be decoded', () => get('/%zz')],
  ['the same within the interface', () => get('/v1/%zz')],
  [
    'malformed JSON',
    () =>
      fetch(`${server.url}/v1/sessions`, {
        method: 'POST',
        headers: { 'content-type': 'application/json' },
        body: '{',
      }),
  ],
];

describe('every answer', () => {
  it.each(answers)('tells browsers what to refuse: %s', async (_, ask) => {
    const { headers } = await ask();
    const policy = policyOf(headers.get('content-security-policy'));
    expect(policy.get('frame-ancestors')).toEqual(["'none'"]);
    expect(policy.get('base-uri')).toEqual(["'none'"]);
    const objects = policy.get('object-src') ?? policy.get('default-src');
    expect(objects).toEqual(["'none'"]);
    for (const [name, values] of policy) {
      for (const loose of ["'unsafe-inline'", "'unsafe-eval'", '*', 'https:', 'http:']) {
        expect(values, `${name} ${loose}`).not.toContain(loose);
      }
    }
    for (const name of ['script-src', 'style-src', 'font-src', 'connect-src', 'form-action']) {
      // A hash names one text exactly: nothing else is let in by it.
      const values = (policy.get(name) ?? policy.get('default-src') ?? []).filter(
        (value) => !value.startsWith("'sha256-"),
      );
      expect([["'self'"], ["'none'"]], name).toContainEqual(values);
    }
    expect(headers.get('x-content-type-options')).toBe('nosniff');
    expect(headers.get('referrer-policy')).toBe('no-referrer');
    expect(headers.get('cross-origin-resource-policy')).toBe('same-origin');
    expect(headers.get('strict-transport-security')).toBe('max-age=31536000; includeSubDomains');
    expect(headers.get('cache-control')).toBeTruthy();
    expect(headers.get('content-type')).toMatch(
      /^(text\/.*|application\/(problem\+)?json); charset=utf-8$|^image\/|^application\/javascript/,
    );
    expect(headers.get('server')).toBeNull();
    expect(headers.get('x-powered-by')).toBeNull();
  });

  it('of pages keeps them out of frames and apart from windows that open them, and takes devices away', async () => {
    for (const path of ['/', '/shared', '/docs/']) {
      const { headers } = await get(path);
      expect(headers.get('content-type')).toBe('text/html; charset=utf-8');
      expect(headers.get('x-frame-options')).toBe('DENY');
      expect(headers.get('cross-origin-opener-policy')).toBe('same-origin');
      const devices = headers.get('permissions-policy') ?? '';
      for (const name of ['camera', 'microphone', 'geolocation', 'payment', 'usb']) {
        expect(devices).toContain(`${name}=()`);
      }
    }
  });

  it('of pages holds no script or style within the page', async () => {
    for (const path of ['/', '/docs/']) {
      const page = await (await get(path)).text();
      expect(page).not.toMatch(/<script(?![^>]*\ssrc=)[^>]*>|<style|\son\w+=|\sstyle=|javascript:/i);
    }
  });
});

describe('what one person sees', () => {
  it('is kept by nobody: JSON and refusals', async () => {
    for (const answer of [
      await get('/v1/me', surveyor),
      await get('/v1/surveys', surveyor),
      await get('/v1/me'),
    ]) {
      expect(answer.headers.get('cache-control')).toBe('private, no-store');
    }
  });

  it('is kept for its reader alone: files, for ever under an address that names the bytes, else asked again', async () => {
    const original = await get(`/v1/photos/${photoId}/image?size=original`, surveyor);
    expect(original.status).toBe(200);
    expect(original.headers.get('cache-control')).toMatch(
      /^private, (no-cache|max-age=31536000, immutable)$/,
    );
    expect(original.headers.get('content-disposition')).toMatch(
      /^inline; filename="a\.jpg"; filename\*=UTF-8''a\.jpg$/,
    );
    expect(original.headers.get('content-security-policy')).toContain('sandbox');
    expect(original.headers.get('etag')).toContain(hashedPicture);
    const again = await get(`/v1/photos/${photoId}/image?size=original`, undefined, {
      'if-none-match': original.headers.get('etag') ?? '',
    });
    expect(again.status).toBe(401);
  });

  it('of the portal, the same for everybody, lasts where the name changes with the content', async () => {
    expect((await get('/assets/app-1a2b.js')).headers.get('cache-control')).toBe(
      'public, max-age=31536000, immutable',
    );
    for (const path of ['/', '/sw.js', '/anything']) {
      expect((await get(path)).headers.get('cache-control')).toBe('no-cache');
    }
  });
});

describe('without https', () => {
  it('no browser is told to insist on it', async () => {
    const plain = await startServer();
    try {
      const answer = await fetch(`${plain.url}/health/live`);
      expect(answer.headers.get('strict-transport-security')).toBeNull();
      expect(answer.headers.get('content-security-policy')).not.toContain('upgrade-insecure-requests');
    } finally {
      await plain.close();
    }
  });
});

describe('the bounds of a request', () => {
  const smuggled: [string, string][] = [
    ['a length and chunks', 'Content-Length: 4\r\nTransfer-Encoding: chunked\r\n'],
    ['two lengths', 'Content-Length: 4\r\nContent-Length: 5\r\n'],
    ['a length that is none', 'Content-Length: +4\r\n'],
    ['chunks by another name', 'Transfer-Encoding: xchunked\r\n'],
    ['chunks not last', 'Transfer-Encoding: chunked, identity\r\n'],
    ['a blank before the colon', 'Transfer-Encoding : chunked\r\n'],
    ['a folded line', 'X-A: b\r\n Transfer-Encoding: chunked\r\n'],
    ['a bare line feed', 'X-A: b\nTransfer-Encoding: chunked\r\n'],
    ['a zero in a header', 'X-A: b\0c\r\n'],
  ];
  it.each(smuggled)('are told in one way or refused, and the connection ends: %s', async (_, header) => {
    const answer = await raw(
      `POST /v1/sessions HTTP/1.1\r\nHost: x\r\nContent-Type: application/json\r\n${header}\r\n0\r\n\r\nGET /health/live HTTP/1.1\r\nHost: x\r\n\r\n`,
    );
    expect(answer).toMatch(/^HTTP\/1\.1 400 /);
    expect(answer.match(/HTTP\/1\.1 \d/g)).toHaveLength(1);
    expect(answer).toMatch(/content-security-policy: default-src 'none'/);
    expect(answer).toContain('application/problem+json');
  });

  it('are 16 KiB for the head and 2 MiB for a body', async () => {
    const head = await raw(`GET / HTTP/1.1\r\nHost: x\r\nX-A: ${'a'.repeat(20_000)}\r\n\r\n`);
    expect(head).toMatch(/^HTTP\/1\.1 431 /);
    const body = await fetch(`${server.url}/v1/sessions`, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify({ email: 'a@b.example', password: 'x'.repeat(2 * 1024 * 1024) }),
    });
    expect(body.status).toBe(413);
  });

  it('are kept in time: a head that comes too slowly is refused and hung up on', async () => {
    const { server: http } = server.app;
    expect(http.headersTimeout).toBe(15_000);
    expect(http.requestTimeout).toBe(1_800_000);
    expect(http.timeout).toBe(120_000);
    http.headersTimeout = 200;
    try {
      const answer = await raw('GET /health/live HTTP/1.1\r\nHost: x\r\nX-Slow');
      expect(answer).toMatch(/^HTTP\/1\.1 408 /);
    } finally {
      http.headersTimeout = 15_000;
    }
  });
});

describe('what a client says of itself', () => {
  it('changes no address that we give out: host and forwarded names are not believed', async () => {
    const liar = {
      'x-forwarded-host': 'elsewhere.example',
      'x-forwarded-proto': 'http',
      'x-original-url': '/v1/me',
      'x-rewrite-url': '/v1/me',
      forwarded: 'host=elsewhere.example',
    };
    for (const path of ['/openapi.json', '/', '/docs/', '/v1/surveys']) {
      const answer = await get(path, surveyor, liar);
      expect(await answer.text()).not.toContain('elsewhere.example');
      expect([...answer.headers.values()].join('\n')).not.toContain('elsewhere.example');
      expect(answer.status).toBe(200);
    }
    const asked = await raw(
      'GET /openapi.json HTTP/1.1\r\nHost: elsewhere.example\r\nConnection: close\r\n\r\n',
    );
    expect(asked).toMatch(/^HTTP\/1\.1 200/);
    expect(asked).toContain('https://survey.example');
    expect(asked).not.toContain('elsewhere.example');
  });

  it('of where it comes from is believed of named proxies only', async () => {
    const { default: fastify } = await import('fastify');
    const seen = async (trustProxy: string) => {
      const app = fastify({ trustProxy });
      app.get('/', async (request) => request.ip);
      const answer = await app.inject({
        path: '/',
        remoteAddress: '10.1.2.3',
        headers: { 'x-forwarded-for': '203.0.113.9' },
      });
      await app.close();
      return answer.body;
    };
    expect(await seen('loopback')).toBe('10.1.2.3');
    expect(await seen('10.1.0.0/16')).toBe('203.0.113.9');
    const { readEnv } = await import('@garboard/platform/env');
    expect(readEnv({}).trustedProxies).toBe('loopback');
    for (const bad of ['true', '*', '0.0.0.0/33', 'proxy.example']) {
      expect(() => readEnv({ TRUSTED_PROXIES: bad })).toThrow('TRUSTED_PROXIES must be');
    }
  });

  it('sends nobody elsewhere: no answer redirects to an address from the request', async () => {
    for (const path of [
      '//elsewhere.example',
      '//elsewhere.example/%2e%2e',
      '/\\elsewhere.example',
      '/?next=https://elsewhere.example',
      '/sign-in?to=//elsewhere.example',
      '/docs/static/index.html',
      '/docs?url=https://elsewhere.example/openapi.json',
      '/v1/me?return=https://elsewhere.example',
    ]) {
      const answer = await get(path);
      const to = answer.headers.get('location');
      if (to !== null) expect(to).toMatch(/^\/(?![/\\])/);
    }
  });

  it('by another method than the contract’s gets nothing, TRACE least of all', async () => {
    for (const method of ['TRACE', 'TRACK', 'PROPFIND', 'DEBUG', 'PUT']) {
      const answer = await raw(
        `${method} /v1/me HTTP/1.1\r\nHost: x\r\nCookie: a=secret\r\nConnection: close\r\n\r\n`,
      );
      expect(answer, method).toMatch(/^HTTP\/1\.1 (400|404|405) /);
      expect(answer).not.toContain('a=secret');
    }
  });

  it('twice counts once or is refused: a parameter given again is no list, a field given again no array', async () => {
    const twice = await get('/v1/surveys?limit=5&limit=100', surveyor);
    expect(twice.status).toBe(422);
    const typed = await fetch(`${server.url}/v1/sessions`, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: '{"email":["a@b.example"],"password":{"$ne":""},"__proto__":{"isAdmin":true}}',
    });
    expect([400, 422]).toContain(typed.status);
    expect(({} as { isAdmin?: boolean }).isAdmin).toBeUndefined();
  });
});

describe('addresses', () => {
  it('of routes take no secret: tokens and passwords travel in bodies and headers, but for a calendar’s', () => {
    const secretive = /token|password|secret|passcode|code$|key$/i;
    const found: string[] = [];
    for (const [name, route] of Object.entries(routes) as [string, Route][]) {
      const named = [...route.path.matchAll(/\{(\w+)\}/g)].map((match) => match[1] ?? '');
      const asked = route.query && 'shape' in route.query ? Object.keys(route.query.shape as object) : [];
      for (const field of [...named, ...asked]) if (secretive.test(field)) found.push(`${name} ${field}`);
    }
    expect(found.sort()).toEqual(expectedInAddresses);
  });

  it('out of the folder of the portal lead nowhere, and folders are not listed', async () => {
    for (const path of [
      '/..%2f..%2fpackage.json',
      '/assets/..%2f..%2f..%2fetc%2fpasswd',
      '/assets/',
      '/.git/config',
      '/package.json',
      '/.env',
      '/assets%00.js',
      '/%2e%2e/%2e%2e/etc/passwd',
    ]) {
      const answer = await get(path);
      const text = await answer.text();
      expect(text, path).not.toMatch(/"workspaces"|root:|\[core\]|app-1a2b/);
      if (answer.status === 200) expect(text).toContain('<title>Portal</title>');
    }
  });
});

/**
 * A calendar program can send nothing but an address. A key of the catalogue names an entry, and a verification code is
 * printed on the document for anybody to check.
 */
const expectedInAddresses = [
  'deleteCatalogueEntry key',
  'getCatalogueEntry key',
  'listCatalogueVersions key',
  'putCatalogueEntry key',
  'readCalendar token',
  'verifyCode code',
];
