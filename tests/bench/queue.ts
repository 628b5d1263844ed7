// Jobs a second that do nothing: through our queue, beside bare BullMQ, on PostgreSQL and on Redis; and what the outbox
// and its relay add.
import { spawn, spawnSync } from 'node:child_process';
import { randomUUID } from 'node:crypto';
import { once } from 'node:events';
import { setTimeout as sleep } from 'node:timers/promises';
import { queueNames } from '@garboard/contract/jobs';
import { enqueueAll } from '@garboard/core/outbox/enqueue';
import { inTransaction } from '@garboard/db/database';
import { openLogger } from '@garboard/platform/logger';
import { openQueue, openWorker, type QueueConnection } from '@garboard/platform/queue';
import { type Queues, relayBatch } from '@garboard/worker/relay';
import { createPostgresBackend, createRedisBackend, withBackend } from 'bullmq';
import type { Bench, Part, Round } from './harness.ts';
import { type MediaOffice, openMediaOffice } from './media-office.ts';
import { freePort } from './processes.ts';

/** Jobs at once of one worker, and how many the relay hands over at a time. */
const atOnce = 8;
const batch = 100;

export const run: Part = async (bench) => {
  const office = await openMediaOffice();
  try {
    await measureQueues(bench, office, { postgres: 1_500, redis: 6_000, relayed: 1_500 });
  } finally {
    await office.close();
  }
};

export interface QueueSizes {
  postgres: number;
  redis: number;
  /** Jobs that go through the outbox. */
  relayed: number;
}

/** Measures both places a queue may live in; Redis only where `redis-server` is on PATH. */
export async function measureQueues(bench: Bench, office: MediaOffice, sizes: QueueSizes): Promise<void> {
  const postgres = { kind: 'postgres', url: office.databaseUrl } as const;
  const redis = await startRedis();
  const unit = 'jobs/s';
  try {
    const compared = [
      {
        ...{ what: 'on PostgreSQL', unit },
        ours: () => throughOurs(postgres, sizes.postgres),
        floor: () => throughBare(postgres, sizes.postgres),
      },
    ];
    if (redis) {
      const there = { kind: 'redis', url: redis.url } as const;
      compared.push({
        ...{ what: 'on Redis', unit },
        ours: () => throughOurs(there, sizes.redis),
        floor: () => throughBare(there, sizes.redis),
      });
    }
    await bench.compare(compared);
    for (const there of [postgres, ...(redis ? [{ kind: 'redis', url: redis.url } as const] : [])]) {
      const values: number[] = [];
      for (let round = 0; round < bench.rounds; round += 1) {
        values.push(await throughOutbox(office, there, sizes.relayed));
      }
      bench.figure({ what: `outbox, relay and queue on ${there.kind}`, unit, values });
    }
  } finally {
    await redis?.stop();
  }
}

/** Adds jobs in batches while a worker takes them; from the first added to the last done. */
async function timed(
  jobs: number,
  add: (ids: string[]) => Promise<void>,
  done: Promise<void>,
): Promise<Round> {
  const begun = performance.now();
  for (let n = 0; n < jobs; n += batch) {
    await add(Array.from({ length: Math.min(batch, jobs - n) }, () => randomUUID()));
  }
  await done;
  return { value: jobs / ((performance.now() - begun) / 1000) };
}

/** Counts to a number, and then resolves. */
function counter(to: number): { count: () => void; reached: Promise<void> } {
  let left = to;
  let resolve: () => void = () => undefined;
  const reached = new Promise<void>((done) => {
    resolve = done;
  });
  const count = () => {
    left -= 1;
    if (left === 0) resolve();
  };
  return { count, reached };
}

async function throughOurs(connection: QueueConnection, jobs: number): Promise<Round> {
  const name = `bench-${randomUUID()}`;
  const { count, reached } = counter(jobs);
  const queue = openQueue<{ n: number }>(connection, name);
  const worker = openWorker<{ n: number }>(connection, name, async () => count(), { concurrency: atOnce });
  try {
    await worker.ready();
    await queue.check();
    const add = (ids: string[]) =>
      queue.add(ids.map((id) => ({ id, name: 'nothing', data: { n: 1 }, attempts: 5, backoffMs: 2_000 })));
    return await timed(jobs, add, reached);
  } finally {
    await worker.close();
    await queue.close();
  }
}

const bareOnPostgres = withBackend(createPostgresBackend);
const bareOnRedis = withBackend(createRedisBackend);

async function throughBare({ kind, url }: QueueConnection, jobs: number): Promise<Round> {
  const name = `bare-${randomUUID()}`;
  const { count, reached } = counter(jobs);
  const process = async () => count();
  const concurrency = atOnce;
  // The same connections as ours; everything else as BullMQ has it by itself.
  const [queue, worker] =
    kind === 'postgres'
      ? [
          new bareOnPostgres.Queue(name, { connection: { connectionString: url, migrate: true, max: 2 } }),
          new bareOnPostgres.Worker(name, process, {
            connection: { connectionString: url, migrate: true, max: 2 + atOnce },
            concurrency,
          }),
        ]
      : [
          new bareOnRedis.Queue(name, { connection: { url } }),
          new bareOnRedis.Worker(name, process, {
            connection: { url, maxRetriesPerRequest: null },
            concurrency,
          }),
        ];
  try {
    await queue.waitUntilReady();
    await worker.waitUntilReady();
    const add = async (ids: string[]) => {
      await queue.addBulk(ids.map(() => ({ name: 'nothing', data: { n: 1 } })));
    };
    return await timed(jobs, add, reached);
  } finally {
    await worker.close();
    await queue.close();
  }
}

/** From rows written by a transaction, over the relay, to a worker. Answers jobs a second. */
async function throughOutbox(
  { db, firmId }: MediaOffice,
  connection: QueueConnection,
  jobs: number,
): Promise<number> {
  const name = `relayed-${randomUUID()}`;
  const { count, reached } = counter(jobs);
  const queue = openQueue<unknown>(connection, name);
  const worker = openWorker<unknown>(connection, name, async () => count(), { concurrency: atOnce });
  // What each job is for matters to nobody here: all go to the one queue.
  const queues = Object.fromEntries(queueNames.map((one) => [one, queue])) as unknown as Queues;
  try {
    await worker.ready();
    await queue.check();
    const eventId = randomUUID();
    await inTransaction(db, [firmId], (tx) =>
      enqueueAll(
        tx,
        'event.fan-out',
        Array.from({ length: jobs }, () => ({ firmId, eventId })),
      ),
    );
    const log = openLogger('bench', 'fatal');
    const begun = performance.now();
    while ((await relayBatch({ db, queues, clock: () => new Date(), log })) > 0);
    await reached;
    return jobs / ((performance.now() - begun) / 1000);
  } finally {
    await worker.close();
    await queue.close();
  }
}

/** A Redis that keeps nothing, or null where there is none. */
async function startRedis(): Promise<{ url: string; stop(): Promise<void> } | null> {
  if (spawnSync('which', ['redis-server'], { stdio: 'ignore' }).status !== 0) return null;
  const port = await freePort();
  const child = spawn('redis-server', ['--port', `${port}`, '--save', '', '--bind', '127.0.0.1'], {
    stdio: 'ignore',
  });
  const ended = once(child, 'exit');
  await sleep(300);
  return {
    url: `redis://127.0.0.1:${port}`,
    async stop() {
      child.kill('SIGTERM');
      await ended;
    },
  };
}
