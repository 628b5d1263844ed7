import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { chmod, mkdir, mkdtemp, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { connect, createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { migrate } from '@garboard/db/migrate';
import { syncCatalogue } from '@garboard/db/sync-catalogue';
import { findChromium } from '@garboard/platform/chromium';
import { type EmbeddedPostgres, startEmbeddedPostgres } from '@garboard/platform/embedded-postgres';
import { ended, type Program, startProgram } from '@garboard/platform/kept-process';
import { openLogger } from '@garboard/platform/logger';
import { readPostmasterFile } from '@garboard/platform/postgres-running';
import { testSecret } from '@garboard/seed/builders';
import { catalogue } from '@garboard/trade/catalogue/catalogue';
import { type Cable, layCable } from '../support/cable.ts';
import { s3Account, startS3Server } from '../support/s3-server.ts';
import { chromiumDir } from '../support/worker.ts';
import { type FaultyStore, standBefore } from './faulty-store.ts';

/** `laptop`: one folder, one PostgreSQL. `servers`: Redis and an S3-compatible store besides. */
export type Profile = 'laptop' | 'servers';

export type ServiceName = 'api' | 'worker';

const programs: Record<ServiceName, Program> = {
  api: { name: 'api', file: 'apps/api/src/main.ts' },
  worker: { name: 'worker', file: 'apps/worker/src/main.ts' },
};
const shiftedClock = fileURLToPath(new URL('shifted-clock.mjs', import.meta.url));

/** In milliseconds: by the clock, and how much of it went by waiting for a processor that others had. */
export interface StartTime {
  ms: number;
  waitedMs: number;
}

/** A process of the service that is started again as soon as it ends, as an orchestrator would. */
export interface KeptService {
  readonly child: ChildProcess;
  /** The last lines it printed, each time that it ended without being killed by us. */
  readonly ownEnds: readonly string[];
  /** How long until the process that runs now does its work; throws after a minute and a half. */
  untilWorking(): Promise<StartTime>;
  kill(): Promise<void>;
  stop(): Promise<void>;
}

/** The whole service as processes of their own, with a cable between it and everything it depends on. */
export interface Installation {
  profile: Profile;
  dir: string;
  url: string;
  env: Record<string, string>;
  services: Record<ServiceName, KeptService>;
  /** The database as it is, past the cable. */
  databaseUrl(): string;
  /** The store as it is, past the faults; an address as in OBJECT_STORE_URL. */
  storeUrl: string;
  database: Cable & {
    killServer(): Promise<void>;
    stopServer(): Promise<void>;
    startServer(): Promise<void>;
  };
  redis: (Cable & { port(): number; restart(): Promise<void> }) | null;
  /** Only with an S3-compatible store. */
  store: FaultyStore | null;
  /** Shifts the clock of api and worker by so many milliseconds, at once. */
  shiftClock(ms: number): Promise<void>;
  chromiumPids(): Promise<number[]>;
  /** Milliseconds until the service called itself ready; throws after a minute and a half. */
  untilReady(): Promise<number>;
  stop(): Promise<void>;
}

/** Installs the service in an empty folder and starts it. */
export async function install(
  profile: Profile,
  options: { objectStoreUrl?: string } = {},
): Promise<Installation> {
  const dir = await mkdtemp(join(tmpdir(), 'garboard-faults-'));
  await chmod(dir, 0o755);
  const stops: (() => Promise<unknown>)[] = [() => rm(dir, { recursive: true, force: true, maxRetries: 5 })];
  try {
    return await installIn(dir, profile, options, stops);
  } catch (error) {
    for (const stop of stops.reverse()) await stop();
    throw error;
  }
}

async function installIn(
  dir: string,
  profile: Profile,
  options: { objectStoreUrl?: string },
  stops: (() => Promise<unknown>)[],
): Promise<Installation> {
  const log = openLogger('faults', 'warn');
  let server: EmbeddedPostgres = await startEmbeddedPostgres({ dataDir: dir, log });
  stops.push(() => server.stop());
  await migrate({ url: server.url });
  await syncCatalogue({ url: server.url, entries: catalogue });
  const databaseCable = await layCable(server.url);
  stops.push(() => databaseCable.cut());
  const database = {
    ...databaseCable,
    async killServer() {
      const running = await readPostmasterFile(join(dir, 'postgres/18'));
      if (running) process.kill(running.pid, 'SIGKILL');
    },
    stopServer: () => server.stop(),
    async startServer() {
      server = await startedAgain(dir);
      databaseCable.leadTo(server.url);
    },
  };

  const redis = profile === 'servers' ? await startRedis(join(dir, 'redis')) : null;
  if (redis) stops.push(() => redis.end());
  const s3 = profile === 'servers' ? await startS3Server(join(dir, 's3')) : null;
  if (s3) {
    stops.push(() => s3.stop());
    // For the checks, which read the store from this process.
    Object.assign(process.env, s3Account);
    stops.push(async () => {
      for (const name of Object.keys(s3Account)) delete process.env[name];
    });
  }
  const store = s3 ? await standBefore(s3.port) : null;
  if (store) stops.push(() => store.close());
  const storeUrl = s3?.url ?? options.objectStoreUrl ?? pathToFileURL(join(dir, 'objects')).href;

  const port = await freePort();
  const clockFile = join(dir, 'clock-shift');
  const env: Record<string, string> = {
    ...(process.env as Record<string, string>),
    ...s3Account,
    PORT: String(port),
    HOST: '127.0.0.1',
    DATA_DIR: dir,
    DATABASE_URL: databaseCable.url,
    OBJECT_STORE_URL: store && s3 ? s3.url.replace(`:${s3.port}`, `:${store.port}`) : storeUrl,
    ...(redis ? { REDIS_URL: redis.url } : {}),
    GARBOARD_SECRET: testSecret,
    WEBHOOK_ALLOW_PRIVATE: '1',
    LOG_LEVEL: 'info',
    CLOCK_SHIFT_FILE: clockFile,
    NODE_OPTIONS: `--import ${pathToFileURL(shiftedClock).href}`,
    ...(await bundledChromium()),
  };
  const services = {
    api: await keep('api', env, dir),
    worker: await keep('worker', env, dir),
  };
  stops.push(() => Promise.all([services.api.stop(), services.worker.stop()]));
  const url = `http://127.0.0.1:${port}`;
  const installation: Installation = {
    ...{ profile, dir, url, env, services, storeUrl, database, redis, store },
    databaseUrl: () => server.url,
    shiftClock: (ms) => writeFile(clockFile, String(ms)),
    chromiumPids: async () => {
      const { pid } = services.worker.child;
      return pid ? chromiumsOf(pid) : [];
    },
    untilReady: () => untilReady(url),
    async stop() {
      for (const stop of stops.reverse()) await stop();
    },
  };
  await Promise.all([installation.untilReady(), services.worker.untilWorking()]);
  return installation;
}

/** Chromium, unpacked once for all tests. */
async function bundledChromium(): Promise<Record<string, string>> {
  await mkdir(chromiumDir, { recursive: true });
  const found = await findChromium({ dataDir: chromiumDir });
  return { CHROMIUM_PATH: found.executablePath, ...found.env };
}

async function keep(name: ServiceName, env: Record<string, string>, dir: string): Promise<KeptService> {
  let working = false;
  let printed: string[] = [];
  const around = {
    ...{ env, logFile: join(dir, 'logs', `${name}.log`) },
    onLine(line: string) {
      printed = [...printed.slice(-29), line];
      if (line.includes('"msg":"worker ready"')) working = true;
    },
  };
  let stopping = false;
  let killing = false;
  const ownEnds: string[] = [];
  let child = await startProgram(programs[name], around);
  let end = ended(child);
  const run = async () => {
    for (;;) {
      await end;
      if (stopping) return;
      if (!killing) ownEnds.push(printed.join('\n'));
      printed = [];
      killing = false;
      working = false;
      child = await startProgram(programs[name], around);
      end = ended(child);
    }
  };
  const running = run();
  return {
    get child() {
      return child;
    },
    ownEnds,
    async untilWorking() {
      const started = performance.now();
      while (name === 'worker' && !working) {
        if (performance.now() - started > patienceMs) throw new Error(`The ${name} didn’t start.`);
        await sleep(20);
      }
      if (name === 'api') await untilReady(`http://${env.HOST}:${env.PORT}`);
      const ms = performance.now() - started;
      return { ms, waitedMs: await waitedForProcessor(child.pid, ms) };
    },
    async kill() {
      killing = true;
      working = false;
      const died = end;
      child.kill('SIGKILL');
      await died;
    },
    async stop() {
      stopping = true;
      child.kill('SIGTERM');
      const timer = setTimeout(() => child.kill('SIGKILL'), 20_000);
      await running;
      clearTimeout(timer);
    },
  };
}

/**
 * Milliseconds that threads of a process could have run and had no processor, but no more than leave it the processor
 * time that it used; 0 where the system doesn’t tell.
 */
async function waitedForProcessor(pid: number | undefined, ms: number): Promise<number> {
  const threads = await readdir(`/proc/${pid}/task`).catch(() => []);
  const told = await Promise.all(
    threads.map((thread) => readFile(`/proc/${pid}/task/${thread}/schedstat`, 'utf8').catch(() => '0 0')),
  );
  const figures = told.map((line) => line.split(' ').map((nanoseconds) => Number(nanoseconds) / 1e6));
  const sum = (at: number) => figures.reduce((total, figure) => total + (figure[at] ?? 0), 0);
  return Math.max(0, Math.min(sum(1), ms - sum(0)));
}

/** A server whose postmaster was killed leaves others of its processes behind for a moment. */
async function startedAgain(dir: string): Promise<EmbeddedPostgres> {
  const log = openLogger('faults', 'warn');
  for (let tries = 1; ; tries += 1) {
    try {
      return await startEmbeddedPostgres({ dataDir: dir, log });
    } catch (error) {
      if (tries > 50) throw error;
      await sleep(200);
    }
  }
}

async function startRedis(dir: string) {
  await mkdir(dir, { recursive: true });
  let port = await freePort();
  // As an operator who cares runs it: what was written may be lost for a second at most.
  const start = async () => {
    const settings = ['--port', String(port), '--bind', '127.0.0.1', '--dir', dir, '--save', ''];
    const started = spawn('redis-server', [...settings, '--appendonly', 'yes'], { stdio: 'ignore' });
    await untilListening(port);
    return started;
  };
  let child = await start();
  const cable = await layCable(`redis://127.0.0.1:${port}`);
  const end = async () => {
    const gone = once(child, 'exit');
    child.kill('SIGKILL');
    await gone;
  };
  return {
    ...cable,
    port: () => port,
    async restart() {
      await end();
      port = await freePort();
      child = await start();
      cable.leadTo(`redis://127.0.0.1:${port}`);
    },
    async end() {
      await cable.cut();
      await end();
    },
  };
}

async function untilListening(port: number): Promise<void> {
  for (let tries = 0; ; tries += 1) {
    const socket = connect(port, '127.0.0.1');
    const open = await once(socket, 'connect').then(
      () => true,
      () => false,
    );
    socket.destroy();
    if (open) return;
    if (tries > 200) throw new Error(`Nothing listens on port ${port}.`);
    await sleep(50);
  }
}

/** Browser processes that a process has started itself: the first of each Chromium. */
async function chromiumsOf(parent: number): Promise<number[]> {
  const found: number[] = [];
  for (const name of await readdir('/proc')) {
    if (!/^\d+$/.test(name)) continue;
    const stat = await readFile(`/proc/${name}/stat`, 'utf8').catch(() => '');
    const [, comm = '', ppid] = /^\d+ \((.*)\) \S (\d+)/.exec(stat) ?? [];
    if (Number(ppid) === parent && /chrom|headless/i.test(comm)) found.push(Number(name));
  }
  return found;
}

const patienceMs = 90_000;

async function untilReady(url: string): Promise<number> {
  const started = performance.now();
  for (;;) {
    const ready = await fetch(`${url}/health/ready`, { signal: AbortSignal.timeout(6_000) }).then(
      (answer) => answer.ok,
      () => false,
    );
    const ms = performance.now() - started;
    if (ready) return ms;
    if (ms > patienceMs) throw new Error('Not ready after a minute and a half.');
    await sleep(50);
  }
}

export async function freePort(): Promise<number> {
  const server = createServer().listen(0, '127.0.0.1');
  await once(server, 'listening');
  const address = server.address();
  server.close();
  await once(server, 'close');
  if (address === null || typeof address === 'string') throw new Error('No port is free.');
  return address.port;
}
