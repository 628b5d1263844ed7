// A worker in a process of its own, for the test that kills it: takes jobs of a queue and never finishes one.
import { openWorker, type QueueConnection } from '@garboard/platform/queue';

const kind = process.argv[2] === 'redis' ? 'redis' : 'postgres';
const [, , , url = '', name = ''] = process.argv;
const connection: QueueConnection = { kind, url };
openWorker<unknown>(
  connection,
  name,
  async (job) => {
    process.stdout.write(`${job.id}\n`);
    await new Promise(() => undefined);
  },
  { lockDurationMs: 1_000, stalledIntervalMs: 500 },
);
