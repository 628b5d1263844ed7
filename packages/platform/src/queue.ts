import {
  createPostgresBackend,
  createRedisBackend,
  type Job,
  type JobsOptions,
  type JobType,
  UnrecoverableError,
  type WorkerOptions,
  withBackend,
} from 'bullmq';
import { Client } from 'pg';
import type { Logger } from './logger.ts';

// A worker that dies (SIGKILL, power) leaves its jobs locked. The lock is renewed every half of its duration, and
// every interval some worker looks for expired ones: a job is taken up again 7.5 to 20 s after the death.
const lockDurationMs = 15_000;
const stalledIntervalMs = 5_000;
/** A job whose worker died is tried again, however often; only its own errors use up attempts. */
const maxStalledCount = 1_000_000;
const day = 24 * 60 * 60;
const readyTimeoutMs = 10_000;
/** Shorter than the transaction in which the relay waits for it. */
const answerTimeoutMs = 15_000;
// Finished jobs are kept for a while: a job id still kept isn't added a second time. Redis holds them in memory, so
// there are only so many; on PostgreSQL BullMQ reads all that are kept whenever one ends in order to count them.
const kept = {
  postgres: { completed: { age: day }, failed: { age: 14 * day } },
  redis: { completed: { age: day, count: 5_000 }, failed: { age: 14 * day, count: 5_000 } },
};

/** Where the queue lives. */
export type QueueConnection = { kind: 'postgres'; url: string } | { kind: 'redis'; url: string };

/** A job to be added. The id is the caller's (a UUID; no colon): one that the queue still knows is not added again. */
export interface NewJob<Data> {
  id: string;
  name: string;
  data: Data;
  /** How often it may be tried in all; default 1. */
  attempts?: number;
  /** Wait before the second attempt, doubled before each further one; default 1000. */
  backoffMs?: number;
  /** Wait before the first attempt; default none. */
  delayMs?: number;
}

/** A job as its handler gets it. */
export interface ReceivedJob<Data> {
  id: string;
  name: string;
  data: Data;
  /** 1 on the first attempt. Attempts cut short by the worker's death don't count. */
  attempt: number;
  /** True when an error thrown now ends the job as failed. */
  lastAttempt: boolean;
}

/** What a queue knows of a job: `lost` when it was never added, or the queue has lost or long forgotten it. */
export type JobStanding = 'under way' | 'ended' | 'lost';

export interface JobQueue<Data> {
  /** Adds jobs in this order. @throws Error when the queue can't be reached. */
  add(jobs: readonly NewJob<Data>[]): Promise<void>;
  /** What became of these jobs, in their order. @throws Error when the queue can't be reached. */
  standings(ids: readonly string[]): Promise<JobStanding[]>;
  /** How many jobs are in each state. */
  counts(): Promise<{ waiting: number; active: number; delayed: number; completed: number; failed: number }>;
  /** Resolves when the queue answers. @throws Error saying why it doesn't. */
  check(): Promise<void>;
  close(): Promise<void>;
}

export interface JobWorker {
  /** Resolves when jobs are being taken. */
  ready(): Promise<void>;
  /** Takes no more jobs, waits for those under way, then closes. */
  close(): Promise<void>;
}

export interface JobWorkerOptions {
  /** How many jobs at once; default 1. */
  concurrency?: number;
  /** How long a job stays locked when its worker has died; renewed every half of it. Default 15 000. */
  lockDurationMs?: number;
  /** How often expired locks are looked for; default 5 000. */
  stalledIntervalMs?: number;
  log?: Pick<Logger, 'error' | 'warn'>;
}

/** The queue was asked and said nothing, neither yes nor no. */
class QueueSilent extends Error {
  override name = 'QueueSilent';
}

/** Thrown by a handler: trying again is no use, so the job fails now whatever attempts are left. */
export class NoRetryError extends Error {
  override name = 'NoRetryError';
}

/**
 * Chooses where the queue lives: in Redis when there is a Redis address, else in PostgreSQL.
 * @throws Error when there is neither.
 */
export function queueConnection(from: { databaseUrl?: string; redisUrl?: string }): QueueConnection {
  if (from.redisUrl) return { kind: 'redis', url: from.redisUrl };
  if (from.databaseUrl) return { kind: 'postgres', url: from.databaseUrl };
  throw new Error('The job queue needs DATABASE_URL or REDIS_URL.');
}

/** Opens the side of a queue that adds jobs. On PostgreSQL it makes the tables it needs, once, under a lock. */
export function openQueue<Data>(
  connection: QueueConnection,
  name: string,
  log?: Pick<Logger, 'error' | 'warn'>,
): JobQueue<Data> {
  let current: AnyQueue | undefined;

  const drop = (queue: AnyQueue) => {
    if (current === queue) current = undefined;
    queue.close().catch(() => undefined);
  };

  // BullMQ remembers a failed first connection for ever, so a queue that didn't get ready is dropped and opened anew.
  const ready = async (): Promise<AnyQueue> => {
    if (!current) {
      current = newQueue(connection, name);
      current.on('error', (error) => log?.error({ err: error, queue: name }, 'queue connection'));
    }
    const queue = current;
    try {
      await within(readyTimeoutMs, queue.waitUntilReady());
      return queue;
    } catch (error) {
      drop(queue);
      throw error;
    }
  };

  // One that was closed under somebody's feet, because another caller found it silent, never answers; nor does one whose
  // start went wrong under load. Whoever waits for it would wait for ever, the relay above all.
  const ask = async <T>(question: (queue: AnyQueue) => Promise<T>): Promise<T> => {
    const queue = await ready();
    try {
      return await within(answerTimeoutMs, question(queue));
    } catch (error) {
      if (error instanceof QueueSilent) drop(queue);
      throw error;
    }
  };

  return {
    async add(jobs) {
      await ask((queue) => queue.addBulk(jobs.map((job) => bulkJob(job, connection.kind))));
    },
    async standings(ids) {
      const states = await ask((queue) => Promise.all(ids.map((id) => queue.getJobState(id))));
      return states.map((state) =>
        state === 'unknown' ? 'lost' : state === 'completed' || state === 'failed' ? 'ended' : 'under way',
      );
    },
    async counts() {
      const counts = await ask((queue) =>
        queue.getJobCounts('waiting', 'active', 'delayed', 'completed', 'failed'),
      );
      const of = (state: string) => counts[state] ?? 0;
      return {
        waiting: of('waiting'),
        active: of('active'),
        delayed: of('delayed'),
        completed: of('completed'),
        failed: of('failed'),
      };
    },
    async check() {
      await ask((queue) => queue.getJobCounts('waiting'));
    },
    async close() {
      await current?.close();
    },
  };
}

/**
 * Takes jobs and hands each to `handler`; an error it throws is a failed attempt. Jobs of a worker that died are
 * handed out again, so a handler must be idempotent.
 */
export function openWorker<Data>(
  connection: QueueConnection,
  name: string,
  handler: (job: ReceivedJob<Data>) => Promise<void>,
  options: JobWorkerOptions = {},
): JobWorker {
  const process = async (job: Job<Data, void, string>) => {
    try {
      await handler(receivedJob(job));
    } catch (error) {
      throw error instanceof NoRetryError ? new UnrecoverableError(error.message) : error;
    }
  };
  const worker = newWorker(connection, name, process, {
    concurrency: options.concurrency ?? 1,
    lockDuration: options.lockDurationMs ?? lockDurationMs,
    stalledInterval: options.stalledIntervalMs ?? stalledIntervalMs,
    maxStalledCount,
    // How long a lost connection waits before it is tried again; BullMQ's own 15 s is a long silence.
    runRetryDelay: 2_000,
  });
  worker.on('error', (error: Error) => options.log?.error({ err: error, queue: name }, 'worker connection'));
  worker.on('stalled', (id: string) => options.log?.warn({ jobId: id, queue: name }, 'job taken up again'));
  return {
    ready: () => within(readyTimeoutMs, worker.waitUntilReady()).then(() => undefined),
    close: () => worker.close(),
  };
}

// What is used of BullMQ's Queue, whose type differs with the place the queue lives in.
type AnyQueue = {
  on(event: 'error', listener: (error: Error) => void): unknown;
  waitUntilReady(): Promise<unknown>;
  addBulk(jobs: { name: string; data: unknown; opts: JobsOptions }[]): Promise<unknown>;
  getJobState(id: string): Promise<string>;
  getJobCounts(...states: JobType[]): Promise<Record<string, number>>;
  close(): Promise<void>;
};

type SharedWorkerOptions = Omit<WorkerOptions, 'connection'>;

const onPostgres = withBackend(createPostgresBackend);
const onRedis = withBackend(createRedisBackend);

function newQueue(connection: QueueConnection, name: string): AnyQueue {
  if (connection.kind === 'postgres') {
    return new onPostgres.Queue<unknown, void>(name, { connection: postgresOptions(connection.url, 2) });
  }
  // One retry, so that adding fails soon when Redis is away: the outbox keeps the job and tries later.
  const options = { url: connection.url, maxRetriesPerRequest: 1 };
  return new onRedis.Queue<unknown, void>(name, { connection: options });
}

function newWorker<Data>(
  connection: QueueConnection,
  name: string,
  process: (job: Job<Data, void, string>) => Promise<void>,
  options: SharedWorkerOptions,
) {
  if (connection.kind === 'postgres') {
    const pool = postgresOptions(connection.url, 2 + (options.concurrency ?? 1));
    return new onPostgres.Worker<Data, void>(name, process, { ...options, connection: pool });
  }
  // BullMQ requires endless retries of a worker's blocking commands.
  const redis = { url: connection.url, maxRetriesPerRequest: null };
  return new onRedis.Worker<Data, void>(name, process, { ...options, connection: redis });
}

/** BullMQ doesn't listen while it makes its tables: a connection that ended then would end the process. */
class HeardClient extends Client {
  constructor(config?: ConstructorParameters<typeof Client>[0]) {
    super(config);
    this.on('error', () => undefined);
  }
}

function postgresOptions(url: string, max: number) {
  return { connectionString: url, migrate: true, max, Client: HeardClient };
}

function bulkJob<Data>(job: NewJob<Data>, kind: QueueConnection['kind']) {
  const opts: JobsOptions = {
    jobId: job.id,
    attempts: job.attempts ?? 1,
    backoff: { type: 'exponential', delay: job.backoffMs ?? 1_000 },
    delay: job.delayMs,
    removeOnComplete: kept[kind].completed,
    removeOnFail: kept[kind].failed,
  };
  return { name: job.name, data: job.data, opts };
}

function receivedJob<Data>(job: Job<Data, void, string>): ReceivedJob<Data> {
  const attempt = job.attemptsMade + 1;
  return {
    id: job.id ?? '',
    name: job.name,
    data: job.data,
    attempt,
    lastAttempt: attempt >= (job.opts.attempts ?? 1),
  };
}

async function within<T>(ms: number, work: Promise<T>): Promise<T> {
  let timer: NodeJS.Timeout | undefined;
  const late = new Promise<never>((_, reject) => {
    timer = setTimeout(
      () => reject(new QueueSilent(`The job queue didn't answer within ${ms / 1000} s.`)),
      ms,
    );
  });
  try {
    return await Promise.race([work, late]);
  } finally {
    clearTimeout(timer);
  }
}
