import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdir, mkdtemp, rm, symlink } from 'node:fs/promises';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { type Database, openDatabase } from '@garboard/db/database';
import { findChromium } from '@garboard/platform/chromium';
import { type ObjectStore, openObjectStore } from '@garboard/platform/object-store';
import { testSecret } from '@garboard/seed/builders';
import { type FreshDatabase, freshDatabase } from './database.ts';
import { chromiumDir } from './worker.ts';

type Settings = Record<string, string>;

/** A real process of the service, as on a machine of its own: its own DATA_DIR. */
export interface Running {
  name: string;
  /** Where an api process listens. */
  url: string;
  child: ChildProcess;
  /** Everything it has printed. */
  printed(): string;
  /** Resolves when it serves, or takes jobs. */
  ready(): Promise<void>;
  /** Sends a signal and waits for its end. @returns exit code, null after SIGKILL */
  end(signal: 'SIGTERM' | 'SIGKILL'): Promise<number | null>;
}

/** A database and a store, and real api and worker processes on them, started and ended as wanted. */
export interface Installation {
  databaseUrl: string;
  /** For building worlds and looking at what came of them. */
  db: Database;
  store: ObjectStore;
  folder: string;
  start(kind: 'api' | 'worker', settings?: Settings): Promise<Running>;
  /** Kills what still runs and removes everything. */
  close(): Promise<void>;
}

/**
 * @param settings environment of every process, beyond what is needed; OBJECT_STORE_URL: a folder unless given
 * @param given a migrated database, outside vitest
 */
export async function newInstallation(settings: Settings = {}, given?: FreshDatabase): Promise<Installation> {
  const database = given ?? (await freshDatabase());
  const folder = await mkdtemp(join(tmpdir(), 'garboard-installed-'));
  const db = openDatabase(database.url, 4);
  const common: Settings = {
    DATABASE_URL: database.url,
    OBJECT_STORE_URL: pathToFileURL(join(folder, 'objects')).href,
    GARBOARD_SECRET: testSecret,
    GARBOARD_DEMO: '0',
    HOST: '127.0.0.1',
    PUBLIC_URL: 'http://127.0.0.1:3000',
    WEBHOOK_ALLOW_PRIVATE: '1',
    ...settings,
  };
  const store = await openObjectStore(common.OBJECT_STORE_URL ?? '', join(folder, 'tests'));
  // Unpacked once for all test files.
  await findChromium({ dataDir: chromiumDir });
  const running: Running[] = [];

  return {
    ...{ databaseUrl: database.url, db, store, folder },
    async start(kind, own = {}) {
      const name = `${kind}-${running.length + 1}`;
      const dataDir = join(folder, name);
      await mkdir(dataDir, { recursive: true });
      await symlink(join(chromiumDir, 'chromium'), join(dataDir, 'chromium')).catch(() => undefined);
      const port = await freePort();
      const env = { ...process.env, ...common, DATA_DIR: dataDir, PORT: String(port), ...own };
      const started = begin(name, `apps/${kind}/src/main.ts`, env, `http://127.0.0.1:${port}`);
      running.push(started);
      return started;
    },
    async close() {
      await Promise.all(running.map((one) => one.end('SIGKILL')));
      await db.close();
      await database.drop();
      await rm(folder, { recursive: true, force: true, maxRetries: 5 });
    },
  };
}

function begin(name: string, file: string, env: NodeJS.ProcessEnv, url: string): Running {
  // A group of its own, so that a killed worker takes its browser along, as a machine that fails does.
  const child = spawn(process.execPath, ['--max-semi-space-size=64', '--import', 'tsx', file], {
    env,
    detached: true,
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  let text = '';
  const keep = (chunk: Buffer) => {
    text += chunk;
  };
  child.stdout.on('data', keep);
  child.stderr.on('data', keep);
  const gone = () => child.exitCode !== null || child.signalCode !== null;
  return {
    ...{ name, url, child },
    printed: () => text,
    async ready() {
      for (let tries = 0; tries < 720; tries += 1) {
        if (gone()) throw new Error(`${name} ended while it started:\n${text.slice(-3_000)}`);
        const serves = name.startsWith('api')
          ? await answers(`${url}/health/ready`)
          : /worker ready/.test(text);
        if (serves) return;
        await new Promise((done) => setTimeout(done, 250));
      }
      throw new Error(`${name} did not get ready:\n${text.slice(-3_000)}`);
    },
    async end(signal) {
      if (gone()) return child.exitCode;
      const closed = once(child, 'close');
      if (signal === 'SIGKILL' && child.pid) process.kill(-child.pid, signal);
      else child.kill(signal);
      await closed;
      return child.exitCode;
    },
  };
}

const answers = (url: string): Promise<boolean> =>
  fetch(url).then(
    (answer) => answer.ok,
    () => false,
  );

/** A port of loopback that nothing listens on now. */
export async function freePort(): Promise<number> {
  const server = createServer().listen(0, '127.0.0.1');
  await once(server, 'listening');
  const address = server.address();
  server.close();
  await once(server, 'close');
  if (address === null || typeof address === 'string') throw new Error('No port is free.');
  return address.port;
}
