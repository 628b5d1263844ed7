import { type Actor, type PersonActor, sightOf } from '@garboard/core/access/actor';
import type { Ctx } from '@garboard/core/context';
import { type Database, inTransaction } from '@garboard/db/database';
import type { Env } from '@garboard/platform/env';
import type { Logger } from '@garboard/platform/logger';
import type { ObjectStore } from '@garboard/platform/object-store';

export interface LoadInput {
  env: Env;
  db: Database;
  log: Logger;
  say: (line: Record<string, unknown>) => void;
}

/** What loading works with: the cast that has been put on stage, and the time it all counts from. */
export interface Stage extends LoadInput {
  store: ObjectStore;
  loadedAt: Date;
  firmIds: Map<string, string>;
  actors: Map<string, PersonActor>;
}

const day = 86_400_000;

/** An instant so many days from loading, at an hour of the working day. */
export const dayFrom = (stage: Stage, days: number, hour = 10): Date => {
  const start = Math.floor(stage.loadedAt.getTime() / day) * day;
  return new Date(Math.min(start + days * day + hour * 3_600_000, stage.loadedAt.getTime()));
};

/** The calendar day so many days from loading. */
export const calendarDay = (stage: Stage, days: number): string =>
  new Date(stage.loadedAt.getTime() + days * day).toISOString().slice(0, 10);

export function actorOf(stage: Stage, key: string): PersonActor {
  const actor = stage.actors.get(key);
  if (!actor) throw new Error(`The demonstration names a person “${key}” who isn't in its cast.`);
  return actor;
}

/** Runs a use case as one of the cast at a time in the past, as if it had been done then. */
export function as<T>(stage: Stage, actor: Actor, at: Date, work: (ctx: Ctx) => Promise<T>): Promise<T> {
  return inTransaction(stage.db, sightOf(actor), (tx) =>
    work({ actor, tx, store: stage.store, clock: () => at, log: stage.log }),
  );
}
