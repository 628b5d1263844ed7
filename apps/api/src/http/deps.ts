import type { JobData } from '@garboard/contract/jobs';
import type { Database } from '@garboard/db/database';
import type { Env } from '@garboard/platform/env';
import type { Logger } from '@garboard/platform/logger';
import type { openMetrics } from '@garboard/platform/metrics';
import type { ObjectStore } from '@garboard/platform/object-store';
import type { JobQueue } from '@garboard/platform/queue';

/** What the server is built from; tests give their own. */
export interface Deps {
  env: Pick<Env, 'publicUrl' | 'dataDir' | 'secret' | 'webhookAllowPrivate'> &
    Partial<Pick<Env, 'trustedProxies'>>;
  db: Database;
  store: ObjectStore;
  log: Logger;
  clock: () => Date;
  /** Takes previews of single findings to the worker. */
  previews: Pick<JobQueue<JobData<'finding.preview'>>, 'add'>;
  /** Named probes that must pass before the server calls itself ready. */
  probes: Record<string, () => Promise<void>>;
  /** Where requests are counted, if anywhere. */
  metrics?: ReturnType<typeof openMetrics>;
  /** Whether the process has been told to end: it is then no longer ready, and goes on answering. */
  draining?: () => boolean;
  /** Whether every answer is held against its schema before it leaves; tests do. */
  checkAnswers?: boolean;
  /** Folder of the built portal; null serves the interface alone. */
  portalDir: string | null;
}
