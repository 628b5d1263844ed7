import type { Database } from '@garboard/db/database';
import type { Env } from '@garboard/platform/env';
import type { Logger } from '@garboard/platform/logger';
import type { ObjectStore } from '@garboard/platform/object-store';

/** What the server is built from; tests give their own. */
export interface Deps {
  env: Pick<Env, 'publicUrl' | 'dataDir' | 'secret'>;
  db: Database;
  store: ObjectStore;
  log: Logger;
  clock: () => Date;
  /** Named probes that must pass before the server calls itself ready. */
  probes: Record<string, () => Promise<void>>;
  /** Folder of the built portal; null serves the interface alone. */
  portalDir: string | null;
}
