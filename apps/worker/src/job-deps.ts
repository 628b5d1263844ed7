import type { Database } from '@garboard/db/database';
import type { Env } from '@garboard/platform/env';
import type { Logger } from '@garboard/platform/logger';
import type { Mailer } from '@garboard/platform/mail';
import type { ObjectStore } from '@garboard/platform/object-store';
import type { WarmBrowser } from './render/browser.ts';

/** What jobs are done with; tests give their own. */
export interface JobDeps {
  db: Database;
  store: ObjectStore;
  log: Logger;
  clock: () => Date;
  env: Pick<Env, 'publicUrl' | 'dataDir' | 'secret' | 'webhookAllowPrivate'>;
  mail: Mailer;
  /** Told how each job ended and how long it took, in milliseconds. */
  measureJob?: (job: string, outcome: 'done' | 'failed', ms: number) => void;
  /** The one Chromium of this worker. */
  browser: WarmBrowser;
}

/** What a handler is told about the attempt it makes. */
export interface Attempt {
  /** Whether an error thrown now ends the job as failed. */
  lastAttempt: boolean;
}
