// npm run scale-test -- [--reports 200] [--uploads 2000] [--kills 60] [--clients 8] [--every 2] [--seed 1]
// Starts 2 api and 3 worker processes on Redis and an S3 server, has reports issued and photos sent while processes are
// killed at random, and looks whether each report was issued once and every file is accounted for. `--every` is the
// least time between two kills, in seconds. Exit status 1 when something is wrong.
import { chmod, mkdtemp, rm } from 'node:fs/promises';
import { cpus, tmpdir } from 'node:os';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { migrate } from '@garboard/db/migrate';
import { syncCatalogue } from '@garboard/db/sync-catalogue';
import { startEmbeddedPostgres } from '@garboard/platform/embedded-postgres';
import { openLogger } from '@garboard/platform/logger';
import { catalogue } from '@garboard/trade/catalogue/catalogue';
import { startRedis } from '../support/redis.ts';
import { runScale } from './run.ts';

const text = { type: 'string' } as const;
const { values } = parseArgs({
  options: { reports: text, uploads: text, kills: text, clients: text, every: text, seed: text },
});
const number = (name: keyof typeof values, otherwise: number) => Number(values[name] ?? otherwise);

const folder = await mkdtemp(join(tmpdir(), 'garboard-scale-'));
// As root, the database runs under another account, which has to pass through here.
await chmod(folder, 0o711);
const server = await startEmbeddedPostgres({
  dataDir: folder,
  log: openLogger('scale', 'warn'),
  throwaway: true,
});
const redis = await startRedis();
try {
  await migrate({ url: server.url });
  await syncCatalogue({ url: server.url, entries: catalogue });
  const outcome = await runScale({
    ...{ reports: number('reports', 200), uploads: number('uploads', 2_000), clients: number('clients', 8) },
    ...{ kills: number('kills', 60), betweenKillsMs: number('every', 2) * 1_000 },
    seed: number('seed', Date.now() % 1_000_000),
    ...{ redisUrl: redis.url, folder },
    database: { url: server.url, drop: async () => undefined },
    say: (line) => console.log(`${new Date().toISOString().slice(11, 19)} ${line}`),
  });
  const { wrong, kills, ...figures } = outcome;
  console.table({ ...figures, kills: kills.length, node: process.version, cores: cpus().length });
  for (const words of wrong) console.error(words);
  console.log(wrong.length === 0 ? 'Each report once, each file accounted for.' : `${wrong.length} wrong.`);
  process.exitCode = wrong.length > 0 ? 1 : 0;
} finally {
  await redis.stop();
  await server.stop();
  await rm(folder, { recursive: true, force: true, maxRetries: 5 });
}
