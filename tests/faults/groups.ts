import { pathToFileURL } from 'node:url';
import { crawlingReaders, crawlingSenders, uploadsBrokenOff } from './faults/clients.ts';
import { clockSet } from './faults/clock.ts';
import { databaseCut, databaseKilled, databaseSilent, databaseStopped } from './faults/database.ts';
import { diskFull, smallDisk } from './faults/disk.ts';
import { killsOf } from './faults/kills.ts';
import { redisEmptied, redisRestarted } from './faults/redis.ts';
import { storeFaults } from './faults/store.ts';
import type { Profile } from './processes.ts';
import { type Outcome, outcomeOf } from './report.ts';
import { begin, endure, type Fault, type Run, rest } from './run.ts';

/** Faults of a kind, each group on an installation of its own. */
interface Group {
  name: string;
  profiles: Profile[];
  run(profile: Profile, options: { seed: number; kills: number }): Promise<Outcome>;
}

const ending = new AbortController();
/** Told to end (Ctrl-C, SIGTERM), a run ends with what it has: after the fault it is at, and a last look at everything. */
export const toldToEnd = ending.signal;
for (const signal of ['SIGINT', 'SIGTERM'] as const) process.once(signal, () => ending.abort());

/** Files without a name that are younger may still be getting one. */
const graceMs = 60_000;
const killsBetweenRests = 30;

async function within(run: Run, work: (run: Run) => Promise<number>): Promise<Outcome> {
  try {
    return outcomeOf(run, await work(run));
  } finally {
    await run.stop();
  }
}

const inflictAll =
  (faults: readonly Fault[]) =>
  async (run: Run): Promise<number> => {
    let inflicted = 0;
    for (const fault of faults) {
      if (toldToEnd.aborted) break;
      await endure(run, fault);
      await rest(run, graceMs);
      if (!fault.impossible?.(run)) inflicted += 1;
    }
    return inflicted;
  };

const group = (name: string, profiles: Profile[], faults: readonly Fault[]): Group => ({
  name,
  profiles,
  run: async (profile, { seed }) => within(await begin(profile, { seed }), inflictAll(faults)),
});

export const groups: readonly Group[] = [
  {
    name: 'kills',
    profiles: ['laptop', 'servers'],
    run: async (profile, { seed, kills }) =>
      within(await begin(profile, { seed }), async (run) => {
        let [done, sinceRest] = [0, 0];
        for (const burst of killsOf(run, kills)) {
          if (toldToEnd.aborted) break;
          await endure(run, burst.fault);
          done += burst.kills;
          sinceRest += burst.kills;
          if (sinceRest < killsBetweenRests) continue;
          await rest(run, graceMs);
          sinceRest = 0;
        }
        await rest(run, graceMs);
        return done;
      }),
  },
  group(
    'database',
    ['laptop', 'servers'],
    [databaseKilled, databaseStopped(0), databaseStopped(20_000), databaseKilled],
  ),
  group('network', ['laptop'], [databaseCut(5_000), databaseSilent(20_000)]),
  group('redis', ['servers'], [redisEmptied, redisRestarted, redisEmptied]),
  group('store', ['servers'], storeFaults(8_000)),
  {
    name: 'disk',
    profiles: ['laptop'],
    async run(_profile, { seed }) {
      const disk = await smallDisk(64 * 1024 * 1024);
      if (typeof disk === 'string') {
        console.log(`left out: ${disk}`);
        return { faults: 0, acknowledged: 0, readyAgain: [], violations: [] };
      }
      try {
        const objectStoreUrl = pathToFileURL(`${disk.folder}/objects`).href;
        return await within(
          await begin('laptop', { seed, objectStoreUrl }),
          inflictAll([diskFull(disk, 8_000)]),
        );
      } finally {
        await disk.release();
      }
    },
  },
  group('clients', ['laptop'], [uploadsBrokenOff, crawlingSenders, crawlingReaders]),
  group('clock', ['laptop'], [clockSet(5, 15_000), clockSet(-5, 15_000), clockSet(30, 15_000)]),
];

export const groupNames: readonly string[] = groups.map(({ name }) => name);
