import { type ChildProcess, spawn, spawnSync } from 'node:child_process';
import { randomUUID } from 'node:crypto';
import { rm } from 'node:fs/promises';
import { createServer } from 'node:net';
import { fileURLToPath } from 'node:url';
import { type EmbeddedPostgres, startEmbeddedPostgres } from '@garboard/platform/embedded-postgres';
import { readEnv } from '@garboard/platform/env';
import {
  type JobWorkerOptions,
  NoRetryError,
  openQueue,
  openWorker,
  type QueueConnection,
  queueConnection,
  type ReceivedJob,
} from '@garboard/platform/queue';
import { afterAll, beforeAll, describe, expect, onTestFinished, test } from 'vitest';
import { newFolder } from './folders.ts';

interface Work {
  n: number;
}

const quick: JobWorkerOptions = { lockDurationMs: 1_000, stalledIntervalMs: 500 };

function behavesAsAQueue(connection: () => QueueConnection): void {
  const open = () => {
    // A name of its own keeps each test's jobs apart.
    const name = `test-${randomUUID()}`;
    const queue = openQueue<Work>(connection(), name);
    onTestFinished(() => queue.close());
    const work = (handler: (job: ReceivedJob<Work>) => Promise<void>, options = quick) => {
      const worker = openWorker<Work>(connection(), name, handler, options);
      onTestFinished(() => worker.close());
      return worker;
    };
    return { name, queue, work };
  };
  const job = (n: number, more = {}) => ({ id: randomUUID(), name: 'count', data: { n }, ...more });

  test('jobs are handed out in order, each once', async () => {
    const { queue, work } = open();
    const seen: number[] = [];
    await queue.add([1, 2, 3].map((n) => job(n)));
    await queue.add([job(4)]);
    expect(await queue.counts()).toMatchObject({ waiting: 4, active: 0, completed: 0 });
    work(async ({ data }) => void seen.push(data.n));
    await expect.poll(() => queue.counts(), { timeout: 10_000 }).toMatchObject({ waiting: 0, completed: 4 });
    expect(seen).toEqual([1, 2, 3, 4]);
  });

  test('a job added while the worker waits is taken at once', async () => {
    const { queue, work } = open();
    let at = 0;
    await work(async () => {
      at = Date.now();
    }).ready();
    await new Promise((resolve) => setTimeout(resolve, 300));
    const added = Date.now();
    await queue.add([job(1)]);
    await expect.poll(() => at, { timeout: 5_000, interval: 10 }).toBeGreaterThan(0);
    expect(at - added).toBeLessThan(2_000);
  });

  test('a failing job is tried again after a wait, and told of its last attempt', async () => {
    const { queue, work } = open();
    const attempts: { attempt: number; lastAttempt: boolean; at: number }[] = [];
    work(async ({ attempt, lastAttempt }) => {
      attempts.push({ attempt, lastAttempt, at: Date.now() });
      throw new Error('not today');
    });
    await queue.add([job(1, { attempts: 3, backoffMs: 100 })]);
    await expect.poll(() => queue.counts(), { timeout: 10_000 }).toMatchObject({ failed: 1, delayed: 0 });
    expect(attempts.map(({ attempt, lastAttempt }) => [attempt, lastAttempt])).toEqual([
      [1, false],
      [2, false],
      [3, true],
    ]);
    const [first, second, third] = attempts.map(({ at }) => at);
    expect((second ?? 0) - (first ?? 0)).toBeGreaterThanOrEqual(95);
    expect((third ?? 0) - (second ?? 0)).toBeGreaterThanOrEqual(195);
  });

  test('an error that retrying can not mend fails the job at once', async () => {
    const { queue, work } = open();
    let tries = 0;
    work(async () => {
      tries++;
      throw new NoRetryError('the row is gone');
    });
    await queue.add([job(1, { attempts: 5, backoffMs: 10 })]);
    await expect
      .poll(() => queue.counts(), { timeout: 10_000 })
      .toMatchObject({ failed: 1, waiting: 0, delayed: 0 });
    expect(tries).toBe(1);
  });

  test('an id the queue knows is not added again, before or after the job is done', async () => {
    const { queue, work } = open();
    const seen: number[] = [];
    const first = job(1);
    await queue.add([first, { ...first, data: { n: 2 } }]);
    await queue.add([first]);
    expect(await queue.counts()).toMatchObject({ waiting: 1 });
    work(async ({ data }) => void seen.push(data.n));
    await expect.poll(() => queue.counts(), { timeout: 10_000 }).toMatchObject({ completed: 1 });
    await queue.add([first, job(3)]);
    await expect.poll(() => queue.counts(), { timeout: 10_000 }).toMatchObject({ completed: 2 });
    expect(seen).toEqual([1, 3]);
  });

  test('the job of a worker killed in the middle is finished by another, once', {
    timeout: 30_000,
  }, async () => {
    const { name, queue, work } = open();
    const killed = job(1);
    await queue.add([killed]);
    const { kind, url } = connection();
    const script = fileURLToPath(new URL('queue-worker.ts', import.meta.url));
    const child = spawn(process.execPath, ['--import', 'tsx', script, kind, url, name]);
    onTestFinished(() => void child.kill('SIGKILL'));
    expect(await firstLine(child)).toBe(killed.id);
    child.kill('SIGKILL');

    const finished: { id: string; attempt: number }[] = [];
    work(async ({ id, attempt }) => void finished.push({ id, attempt }));
    await expect.poll(() => queue.counts(), { timeout: 15_000 }).toMatchObject({ completed: 1, active: 0 });
    // The cut-short attempt isn't counted against the job.
    expect(finished).toEqual([{ id: killed.id, attempt: 1 }]);
  });

  test('closing waits for the job under way', async () => {
    const { queue, work } = open();
    let state = 'waiting';
    const worker = work(async () => {
      state = 'started';
      await new Promise((resolve) => setTimeout(resolve, 400));
      state = 'finished';
    });
    await queue.add([job(1)]);
    await expect.poll(() => state, { timeout: 10_000, interval: 10 }).toBe('started');
    await worker.close();
    expect(state).toBe('finished');
  });

  test('the check passes', async () => {
    await expect(open().queue.check()).resolves.toBeUndefined();
  });
}

function firstLine(child: ChildProcess): Promise<string> {
  return new Promise((resolve, reject) => {
    let said = '';
    child.stdout?.on('data', (chunk) => {
      said += chunk;
      if (said.includes('\n')) resolve(said.slice(0, said.indexOf('\n')));
    });
    child.stderr?.pipe(process.stderr);
    child.once('exit', (code) => reject(new Error(`The worker ended with ${code}.`)));
  });
}

describe('on PostgreSQL', () => {
  let dataDir: string;
  let server: EmbeddedPostgres;
  beforeAll(async () => {
    dataDir = await newFolder();
    const log = { info: () => undefined, warn: () => undefined };
    server = await startEmbeddedPostgres({ dataDir, log, throwaway: true });
  }, 60_000);
  afterAll(async () => {
    await server.stop();
    await rm(dataDir, { recursive: true, force: true });
  });
  behavesAsAQueue(() => queueConnection({ databaseUrl: server.url }));
});

const hasRedis = spawnSync('redis-server', ['--version']).status === 0;
const { redisUrl } = readEnv();

describe('on Redis', () => {
  if (!hasRedis && !redisUrl) {
    test('the same', (context) => context.skip('no redis-server on PATH and no REDIS_URL'));
    return;
  }
  let url: string;
  let redis: ChildProcess | undefined;
  beforeAll(async () => {
    if (redisUrl) {
      url = redisUrl;
      return;
    }
    const port = await freePort();
    url = `redis://127.0.0.1:${port}`;
    const settings = ['--port', String(port), '--bind', '127.0.0.1', '--save', '', '--appendonly', 'no'];
    redis = spawn('redis-server', settings, { stdio: 'ignore' });
  });
  afterAll(() => void redis?.kill('SIGTERM'));
  behavesAsAQueue(() => queueConnection({ redisUrl: url }));
});

test('a queue that can not be reached says so', async () => {
  const port = await freePort();
  const queue = openQueue<Work>(
    { kind: 'postgres', url: `postgres://x:y@127.0.0.1:${port}/z` },
    'unreachable',
  );
  await expect(queue.check()).rejects.toThrow();
  await expect(queue.add([{ id: randomUUID(), name: 'count', data: { n: 1 } }])).rejects.toThrow();
  await queue.close();
});

test('without any address there is no queue', () => {
  expect(() => queueConnection({})).toThrow('DATABASE_URL or REDIS_URL');
});

async function freePort(): Promise<number> {
  const server = createServer();
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  const address = server.address();
  await new Promise((resolve) => server.close(resolve));
  return typeof address === 'object' && address ? address.port : 0;
}
