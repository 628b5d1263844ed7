import type { Ctx } from '@garboard/core/context';
import type { Tx } from '@garboard/db/database';
import { openLogger } from '@garboard/platform/logger';
import type { ObjectStore } from '@garboard/platform/object-store';

/** Garboard itself, acting for these firms; for use cases that touch no files. */
export function contextFor(tx: Tx, firmIds: string[], clock = () => new Date()): Ctx {
  return {
    tx,
    actor: { kind: 'system', firmIds },
    store: undefined as unknown as ObjectStore,
    clock,
    log: openLogger('test', 'fatal'),
  };
}
