import { setTimeout as sleep } from 'node:timers/promises';
import { openDatabase } from '@garboard/db/database';
import { assemble, type Cast } from './cast.ts';
import { type Checks, openChecks } from './checks.ts';
import { Ledger } from './ledger.ts';
import { type Load, startLoad } from './load.ts';
import { type Installation, install, type Profile, type StartTime } from './processes.ts';
import { type Receiver, startReceiver } from './receiver.ts';

/** The service may take so long to be ready again after a fault, in milliseconds. */
const usualReadyMs = 10_000;

/** An installation under load, and everything that watches it. */
export interface Run {
  installation: Installation;
  cast: Cast;
  ledger: Ledger;
  load: Load;
  checks: Checks;
  receiver: Receiver;
  /** How long the service may take to be ready again, in milliseconds. */
  readyWithinMs: number;
  /** 0 to 1, the same row of numbers for the same seed. */
  random(): number;
  /** What was measured until all was ready again, by fault. */
  readyAgain: (StartTime & { fault: string })[];
  say(line: string): void;
  stop(): Promise<void>;
}

/** Something that befalls the service: the name, and what happens. It is over when the promise resolves. */
export interface Fault {
  name: string;
  /** Why it can’t be tried here, or null. */
  impossible?(run: Run): string | null;
  inflict(run: Run): Promise<void>;
}

/** Numbers from a seed; mulberry32, which is in the public domain. */
function randomFrom(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
}

export async function begin(
  profile: Profile,
  options: { seed: number; pace?: number; objectStoreUrl?: string; quiet?: boolean; readyWithinMs?: number },
): Promise<Run> {
  const { seed, pace = 400, objectStoreUrl, quiet = false, readyWithinMs = usualReadyMs } = options;
  const installation = await install(profile, objectStoreUrl ? { objectStoreUrl } : {});
  const receiver = await startReceiver();
  const ledger = new Ledger();
  const db = openDatabase(installation.databaseUrl(), 2);
  const cast = await assemble(db, installation, receiver.url).finally(() => db.close());
  const checks = await openChecks(installation, ledger, receiver);
  const load = startLoad(installation.url, cast, ledger, { pace });
  const started = performance.now();
  // Faults come when everybody is at work, and there is something to be lost.
  for (let tries = 0; ledger.counts().issued === 0 && tries < 1_200; tries += 1) await sleep(50);
  return {
    ...{ installation, cast, ledger, load, checks, receiver, readyAgain: [], readyWithinMs },
    random: randomFrom(seed),
    say(line) {
      if (!quiet) console.log(`${((performance.now() - started) / 1000).toFixed(1).padStart(7)} s  ${line}`);
    },
    async stop() {
      await load.stop();
      await installation.stop();
      await receiver.close();
    },
  };
}

/** Notes how long a part took to be ready again. Time without a processor, others having it, is no fault of ours. */
export function noteReady({ ledger, readyAgain, readyWithinMs }: Run, fault: string, time: StartTime): void {
  readyAgain.push({ fault, ...time });
  const own = time.ms - time.waitedMs;
  if (own > readyWithinMs) ledger.violation(`Ready again only ${Math.ceil(own / 1000)} s after ${fault}.`);
}

/** Inflicts a fault, waits until the service is ready again, and looks at what was acknowledged meanwhile. */
export async function endure(run: Run, fault: Fault): Promise<void> {
  const why = fault.impossible?.(run);
  if (why) return run.say(`${fault.name}: left out, ${why}`);
  run.say(`${fault.name} …`);
  await fault.inflict(run);
  const ms = await run.installation.untilReady();
  noteReady(run, fault.name, { ms, waitedMs: 0 });
  const looked = await run.checks.acknowledged();
  run.say(`${fault.name}: ready again after ${Math.round(ms)} ms, ${looked} acknowledged, each there`);
}

/** Lets the service come to rest and looks at everything. */
export async function rest(run: Run, graceMs: number): Promise<void> {
  await run.load.pause();
  const started = performance.now();
  await run.checks.acknowledged();
  await run.checks.atRest(graceMs);
  run.say(`at rest after ${Math.round(performance.now() - started)} ms, all of it looked at`);
  run.load.resume();
}
