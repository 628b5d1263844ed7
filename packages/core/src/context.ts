import type { Tx } from '@garboard/db/database';
import type { ReadTx } from '@garboard/db/reading';
import type { Logger } from '@garboard/platform/logger';
import type { ObjectStore } from '@garboard/platform/object-store';
import type { Actor } from './access/actor.ts';

/** What every use case works with: who acts, in which transaction, with which files, and what time it is. */
export interface Ctx {
  actor: Actor;
  tx: Tx;
  store: ObjectStore;
  clock: () => Date;
  log: Pick<Logger, 'info' | 'warn' | 'error'>;
}

/** What a use case works with that only reads, by statements of its own; every `Ctx` is one. */
export interface ReadCtx extends Omit<Ctx, 'tx'> {
  tx: ReadTx;
}
