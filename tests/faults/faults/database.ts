import { setTimeout as sleep } from 'node:timers/promises';
import type { Fault, Run } from '../run.ts';

async function away(run: Run, stop: () => Promise<void>, ms: number): Promise<void> {
  // What starts without a database ends, and is started again; here what runs is to live on.
  const { api, worker } = run.installation.services;
  await Promise.all([api.untilWorking(), worker.untilWorking()]);
  await sleep(run.random() * 1_000);
  await stop();
  await sleep(ms);
  await run.installation.database.startServer();
}

/** PostgreSQL is stopped as an operator stops it, and comes back after a while. */
export const databaseStopped = (ms: number): Fault => ({
  name: `PostgreSQL stopped for ${ms / 1000} s`,
  inflict: (run) => away(run, run.installation.database.stopServer, ms),
});

/** PostgreSQL’s first process is killed, as by a machine out of memory, and started again at once. */
export const databaseKilled: Fault = {
  name: 'SIGKILL of PostgreSQL',
  inflict: (run) => away(run, run.installation.database.killServer, 0),
};

/** The network to the database breaks: every connection is reset, and none can be made for a while. */
export const databaseCut = (ms: number): Fault => ({
  name: `network to PostgreSQL cut for ${ms / 1000} s`,
  async inflict({ installation: { database } }) {
    await database.cut();
    await sleep(ms);
    await database.mend();
  },
});

/** The network to the database swallows what is sent, telling nobody; what was under way is lost in the end. */
export const databaseSilent = (ms: number): Fault => ({
  name: `network to PostgreSQL silent for ${ms / 1000} s`,
  async inflict({ installation: { database } }) {
    database.block();
    await sleep(ms);
    await database.mend();
  },
});
