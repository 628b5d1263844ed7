import { openDatabase, refuseOtherRole } from '@garboard/db/database';
import { findChromium } from '@garboard/platform/chromium';
import { readEnv, requiredDatabaseUrl, servingDatabase } from '@garboard/platform/env';
import { openLogger } from '@garboard/platform/logger';
import { openMailer } from '@garboard/platform/mail';
import { openMetrics, serveMetrics } from '@garboard/platform/metrics';
import { openObjectStore } from '@garboard/platform/object-store';
import { queueConnection } from '@garboard/platform/queue';
import { onShutdown } from '@garboard/platform/shutdown';
import { startTracing } from '@garboard/platform/tracing';
import { measureJobs, measureQueues } from './measure.ts';
import { WarmBrowser } from './render/browser.ts';
import { startSignOfLife } from './sign-of-life.ts';
import { startWorker } from './start-worker.ts';

// A report under way is finished before the process ends; a container should be given as long.
const shutdownMs = 90_000;

const env = readEnv();
const log = openLogger('worker', env.logLevel);
const databaseUrl = requiredDatabaseUrl(env);
const { url, pooled } = servingDatabase(env);
const db = openDatabase(url, 8, { pooled });
if (pooled) await refuseOtherRole(db);
const store = await openObjectStore(env.objectStoreUrl, env.dataDir);
const from = `Garboard <no-reply@${new URL(env.publicUrl).hostname}>`;
const mail = openMailer({ smtpUrl: env.smtpUrl, dataDir: env.dataDir, from });
const browser = new WarmBrowser(() => findChromium({ chromiumPath: env.chromiumPath, dataDir: env.dataDir }));
const queue = queueConnection({ databaseUrl, redisUrl: env.redisUrl });

const metrics = openMetrics('worker');
const tracing = await startTracing('worker', env.otlpEndpoint, log);
const measureJob = measureJobs(metrics);

const orphanMs = env.orphanAgeHours * 60 * 60_000;
const worker = await startWorker({
  ...{ db, store, log, clock: () => new Date(), env, mail, browser, queue, measureJob },
  orphans: { olderThanMs: orphanMs, everyMs: orphanMs },
});
measureQueues(metrics, { db, queues: worker.queues });
const scraped = env.metricsPort
  ? await serveMetrics(metrics, { port: env.metricsPort + 1, host: env.host })
  : undefined;
const life = startSignOfLife({ db, log });
onShutdown(
  log,
  async () => {
    life.stop();
    await worker.close();
    await scraped?.close();
    mail.close();
    await db.close();
    await tracing.stop();
  },
  shutdownMs,
);
await worker.ready;
log.info({ queue: queue.kind }, 'worker ready');
