import { tmpdir, userInfo } from 'node:os';
import { join } from 'node:path';
import { findChromium } from '@garboard/platform/chromium';
import { openLogger } from '@garboard/platform/logger';
import { openMailer } from '@garboard/platform/mail';
import { queueConnection } from '@garboard/platform/queue';
import { testSecret } from '@garboard/seed/builders';
import { WarmBrowser } from '@garboard/worker/render/browser';
import { startWorker } from '@garboard/worker/start-worker';
import type { TestServer } from './server.ts';

export interface TestWorker {
  close(): Promise<void>;
}

/** Chromium is unpacked once for all test files of one account; another's folder could not be written to. */
export const chromiumDir = join(tmpdir(), `garboard-test-chromium-${userInfo().uid}`);

/** The real worker beside a test server, in the same process, on the database's queue or the Redis one given. */
export async function startTestWorker(server: TestServer, redisUrl?: string): Promise<TestWorker> {
  const mail = openMailer({ dataDir: server.dataDir, from: 'Garboard <no-reply@test.example>' });
  const worker = await startWorker({
    db: server.db,
    store: server.store,
    log: openLogger('test-worker', 'fatal'),
    clock: () => new Date(),
    env: { publicUrl: server.url, dataDir: server.dataDir, secret: testSecret, webhookAllowPrivate: true },
    mail,
    browser: new WarmBrowser(() => findChromium({ dataDir: chromiumDir })),
    queue: queueConnection({ databaseUrl: server.databaseUrl, redisUrl }),
    pollMs: 50,
  });
  await worker.ready;
  return {
    async close() {
      await worker.close();
      mail.close();
    },
  };
}
