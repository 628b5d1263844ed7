import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import type { JobData } from '@garboard/contract/jobs';
import { stagingMs } from '@garboard/core/uploads/tidy-uploads';
import { openDatabase, refuseOtherRole } from '@garboard/db/database';
import { findChromium } from '@garboard/platform/chromium';
import { readEnv, requiredDatabaseUrl, servingDatabase } from '@garboard/platform/env';
import { openLogger } from '@garboard/platform/logger';
import { openMetrics, serveMetrics } from '@garboard/platform/metrics';
import { openObjectStore } from '@garboard/platform/object-store';
import { repositoryRoot } from '@garboard/platform/paths';
import { openQueue, queueConnection } from '@garboard/platform/queue';
import { onShutdown } from '@garboard/platform/shutdown';
import { startTracing } from '@garboard/platform/tracing';
import { buildApp } from './app.ts';

const env = readEnv();
// An upload under way is given time to end.
const shutdownMs = 20_000 + env.drainSeconds * 1000;
const log = openLogger('api', env.logLevel);
const databaseUrl = requiredDatabaseUrl(env);
const { url, pooled } = servingDatabase(env);

const db = openDatabase(url, 12, { pooled });
if (pooled) await refuseOtherRole(db);
const store = await openObjectStore(env.objectStoreUrl, env.dataDir);
const connection = queueConnection({ databaseUrl, redisUrl: env.redisUrl });
const queue = openQueue(connection, 'reports', log);
const previews = openQueue<JobData<'finding.preview'>>(connection, 'previews', log);
const metrics = openMetrics('api');
const tracing = await startTracing('api', env.otlpEndpoint, log);
let draining = false;
const portalDir = join(repositoryRoot(), 'apps/portal/dist');

const app = await buildApp({
  env,
  db,
  store,
  log,
  clock: () => new Date(),
  previews,
  metrics,
  draining: () => draining,
  probes: {
    database: async () => {
      await db.prisma.$queryRaw`SELECT 1`;
    },
    queue: () => queue.check(),
    objectStore: () => store.check(),
    renderer: async () => {
      await findChromium({ chromiumPath: env.chromiumPath, dataDir: env.dataDir });
    },
  },
  portalDir: existsSync(join(portalDir, 'index.html')) ? portalDir : null,
});

// With a bucket, uploads cut short and copies of pictures lie on this machine, where no worker may be to sweep them.
const sweepStaging = () =>
  store
    .sweepStaging(stagingMs)
    .catch((error: unknown) => log.warn({ err: error }, 'the waiting area could not be swept'));
void sweepStaging();
const sweeping = setInterval(() => void sweepStaging(), 60 * 60_000);

const scraped = env.metricsPort
  ? await serveMetrics(metrics, { port: env.metricsPort, host: env.host })
  : undefined;

onShutdown(
  log,
  async () => {
    // Balancers look every few seconds: until they have seen that this process is ending, it answers as before.
    draining = true;
    await sleep(env.drainSeconds * 1000);
    clearInterval(sweeping);
    await app.close();
    await scraped?.close();
    await queue.close();
    await previews.close();
    await db.close();
    await tracing.stop();
  },
  shutdownMs,
);
await app.listen({ port: env.port, host: env.host });
