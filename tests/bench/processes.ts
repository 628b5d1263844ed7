import { once } from 'node:events';
import { createServer } from 'node:net';
import { join } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import { startProgram } from '@garboard/platform/kept-process';
import { testSecret } from '@garboard/seed/builders';

/** A program of the bench that is running as a process of its own. */
export interface BenchProcess {
  url: string;
  pid: number;
  stop(): Promise<void>;
}

/** A port of loopback on which nobody listens. */
export async function freePort(): Promise<number> {
  const server = createServer().listen(0, '127.0.0.1');
  await once(server, 'listening');
  const address = server.address();
  await new Promise<void>((done) => server.close(() => done()));
  if (typeof address !== 'object' || address === null) throw new Error('No port was given.');
  return address.port;
}

/** Starts the real api process, as `npm start` does. @throws Error with its last lines when it doesn't get ready */
export async function startApi(around: { databaseUrl: string; dataDir: string }): Promise<BenchProcess> {
  const port = await freePort();
  return start('api', 'apps/api/src/main.ts', {
    port,
    path: '/health/live',
    dataDir: around.dataDir,
    env: { ...serviceEnv(around), PORT: String(port) },
  });
}

/** Starts the real worker process. */
export async function startWorker(around: { databaseUrl: string; dataDir: string }): Promise<BenchProcess> {
  const port = await freePort();
  return start('worker', 'apps/worker/src/main.ts', {
    ...{ port, path: '/metrics', dataDir: around.dataDir },
    // The worker's figures are at the port after this.
    env: { ...serviceEnv(around), METRICS_PORT: String(port - 1) },
  });
}

const serviceEnv = (around: { databaseUrl: string; dataDir: string }) => ({
  ...process.env,
  HOST: '127.0.0.1',
  DATABASE_URL: around.databaseUrl,
  DATA_DIR: around.dataDir,
  GARBOARD_SECRET: testSecret,
  MALLOC_ARENA_MAX: '2',
  LOG_LEVEL: 'warn',
});

/** Starts a floor: a program in `tests/bench/floors` that listens on the port it is given first. */
export async function startFloor(
  name: string,
  around: { dataDir: string; args?: string[] },
): Promise<BenchProcess> {
  const port = await freePort();
  const args = [String(port), ...(around.args ?? [])];
  const { dataDir } = around;
  return start(name, `tests/bench/floors/${name}.ts`, { port, path: '/', dataDir, env: process.env, args });
}

interface Starting {
  port: number;
  /** Answers as soon as the program is ready, whatever its status. */
  path: string;
  dataDir: string;
  env: NodeJS.ProcessEnv;
  args?: string[];
}

async function start(name: string, file: string, starting: Starting): Promise<BenchProcess> {
  const lines: string[] = [];
  const child = await startProgram(
    { name, file, args: starting.args ?? [] },
    {
      env: starting.env,
      logFile: join(starting.dataDir, `${name}.log`),
      onLine: (line) => lines.push(line),
    },
  );
  const url = `http://127.0.0.1:${starting.port}`;
  const ended = once(child, 'close');
  for (let tries = 0; ; tries += 1) {
    if (child.exitCode !== null || tries > 600) {
      child.kill('SIGKILL');
      throw new Error(`${file} didn't get ready:\n${lines.slice(-20).join('\n')}`);
    }
    const answered = await fetch(url + starting.path).then(
      (answer) => answer.arrayBuffer(),
      () => null,
    );
    if (answered) break;
    await sleep(100);
  }
  return {
    url,
    pid: child.pid ?? 0,
    async stop() {
      if (child.exitCode === null) child.kill('SIGTERM');
      const timer = setTimeout(() => child.kill('SIGKILL'), 20_000);
      await ended;
      clearTimeout(timer);
    },
  };
}
