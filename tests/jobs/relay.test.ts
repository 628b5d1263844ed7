import { markDone } from '@garboard/core/outbox/dispatch';
import { enqueue } from '@garboard/core/outbox/enqueue';
import { type Database, inTransaction, openDatabase } from '@garboard/db/database';
import { newId } from '@garboard/db/ids';
import { openQueue, openWorker } from '@garboard/platform/queue';
import { recoverLost } from '@garboard/worker/lost-jobs';
import { type QueueName, type Queues, relayBatch, startRelay } from '@garboard/worker/relay';
import { afterAll, beforeAll, expect, test, vi } from 'vitest';
import { freshDatabase } from '../support/database.ts';

let db: Database;
let url: string;
let close: () => Promise<void>;
const clock = () => new Date();
const log = { info() {}, warn() {} };

beforeAll(async () => {
  const database = await freshDatabase();
  url = database.url;
  db = openDatabase(url, 6);
  close = async () => {
    await db.close();
    await database.drop();
  };
});
afterAll(() => close());

const everyQueue = (queue: Queues[QueueName]): Queues => ({
  ...{ reports: queue, previews: queue, images: queue, errands: queue, webhooks: queue, archives: queue },
});

const errand = () => inTransaction(db, [], (tx) => enqueue(tx, 'mail.invitation', { linkId: newId() }));
const waiting = () => inTransaction(db, [], (tx) => tx.outbox.count({ where: { dispatchedAt: null } }));

/** Queues kept in an array, which can be taken away. */
function listedQueues() {
  const added: string[] = [];
  const state = { away: false };
  const queue = {
    async add(jobs: readonly { id: string }[]) {
      if (state.away) throw new Error('The queue is away.');
      added.push(...jobs.map((job) => job.id));
    },
    async standings(ids: readonly string[]) {
      return ids.map((id) => (added.includes(id) ? ('under way' as const) : ('lost' as const)));
    },
  };
  return {
    added,
    state,
    queues: everyQueue(queue),
  };
}

test('a job asked for in a transaction that is undone never reaches the queue', async () => {
  const { added, queues } = listedQueues();
  const undone = inTransaction(db, [], async (tx) => {
    await enqueue(tx, 'mail.invitation', { linkId: newId() });
    throw new Error('undone');
  });
  await expect(undone).rejects.toThrow('undone');
  await relayBatch({ db, queues, clock, log });
  expect(added).toEqual([]);
});

test('while the queue is away jobs wait, and reach it in order when it is back', async () => {
  const { added, state, queues } = listedQueues();
  state.away = true;
  const asked = [await errand(), await errand()];
  await expect(relayBatch({ db, queues, clock, log })).rejects.toThrow('away');
  expect(await waiting()).toBe(2);
  const relay = startRelay({ db, queues, clock, log, pollMs: 20 });
  try {
    await new Promise((resolve) => setTimeout(resolve, 100));
    expect(added).toEqual([]);
    state.away = false;
    asked.push(await errand());
    await vi.waitFor(() => expect(added).toEqual(asked), { timeout: 5_000 });
    expect(await waiting()).toBe(0);
  } finally {
    await relay.stop();
  }
});

test('two relays share the work and hand over nothing twice', async () => {
  const { added, queues } = listedQueues();
  const asked: string[] = [];
  for (let n = 0; n < 30; n++) asked.push(await errand());
  const batches = Array.from({ length: 4 }, () => relayBatch({ db, queues, clock, log }));
  await Promise.all(batches);
  expect([...added].sort()).toEqual([...asked].sort());
});

test('a batch handed over again after its transaction failed is done once', async () => {
  const connection = { kind: 'postgres' as const, url };
  const queue = openQueue<unknown>(connection, 'errands');
  const done: string[] = [];
  const worker = openWorker<unknown>(connection, 'errands', async (job) => void done.push(job.id));
  try {
    await worker.ready();
    const asked = await errand();
    // The queue answers, then the process dies before it can commit.
    const dying = {
      standings: queue.standings,
      async add(jobs: Parameters<typeof queue.add>[0]) {
        await queue.add(jobs);
        throw new Error('died');
      },
    };
    const broken = everyQueue(dying);
    await expect(relayBatch({ db, queues: broken, clock, log })).rejects.toThrow('died');
    expect(await waiting()).toBe(1);
    await vi.waitFor(() => expect(done).toEqual([asked]), { timeout: 10_000 });
    await relayBatch({ db, queues: everyQueue(queue), clock, log });
    const last = await errand();
    await relayBatch({ db, queues: everyQueue(queue), clock, log });
    await vi.waitFor(() => expect(done).toContain(last), { timeout: 10_000 });
    expect(done).toEqual([asked, last]);
  } finally {
    await worker.close();
    await queue.close();
  }
});

test('what a queue has lost is handed over once more, what it has and what is done is not', async () => {
  const { added, queues } = listedQueues();
  const [lost, kept, done, fresh] = [await errand(), await errand(), await errand(), await errand()];
  const options = { db, queues, clock, log };
  await relayBatch(options);
  const handedOver = (ids: string[], secondsAgo: number) =>
    inTransaction(db, [], (tx) =>
      tx.outbox.updateMany({
        where: { id: { in: ids } },
        data: { dispatchedAt: new Date(Date.now() - secondsAgo * 1000) },
      }),
    );
  await handedOver([lost, kept, done], 60);
  await inTransaction(db, [], (tx) => markDone(tx, [done], clock()));
  added.splice(0, added.length, kept);
  expect(await recoverLost(options)).toBe(1);
  await relayBatch(options);
  expect(added).toEqual([kept, lost]);
  // Noted by a clock that was ahead: asked about too.
  await handedOver([fresh], -3_600);
  expect(await recoverLost(options)).toBe(1);
  expect(await recoverLost(options)).toBe(0);
});

test('a real queue tells what is under way, what has ended and what it never had', async () => {
  const connection = { kind: 'postgres' as const, url };
  const queue = openQueue<unknown>(connection, 'previews');
  const worker = openWorker<unknown>(connection, 'previews', async () => undefined);
  try {
    await worker.ready();
    const [ended, planned, unknown] = [newId(), newId(), newId()];
    await queue.add([
      { id: ended, name: 'x', data: {} },
      { id: planned, name: 'x', data: {}, delayMs: 600_000 },
    ]);
    await vi.waitFor(
      async () =>
        expect(await queue.standings([ended, planned, unknown])).toEqual(['ended', 'under way', 'lost']),
      { timeout: 10_000 },
    );
  } finally {
    await worker.close();
    await queue.close();
  }
});
