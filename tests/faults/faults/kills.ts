import { setTimeout as sleep } from 'node:timers/promises';
import { type Fault, noteReady, type Run } from '../run.ts';

/** Chromium twice as often: it is at its most delicate work for most of the time, and back in a moment. */
const victims = ['api', 'worker', 'Chromium', 'Chromium'] as const;
export type Victim = (typeof victims)[number];

/** Kills every Chromium of the worker, the next one when none runs just now. @returns whether there was one */
async function killChromium({ installation }: Run): Promise<boolean> {
  for (let tries = 0; tries < 600; tries += 1) {
    const pids = await installation.chromiumPids();
    for (const pid of pids) {
      try {
        process.kill(pid, 'SIGKILL');
      } catch {
        // It ended between being found and being killed.
      }
    }
    if (pids.length > 0) return true;
    await sleep(50);
  }
  return false;
}

/** Workers that are starting again: others may be killed meanwhile, a worker only once it works. */
const starting = new WeakMap<Run, Promise<void>>();

async function killWorker(run: Run): Promise<void> {
  await starting.get(run);
  const { worker } = run.installation.services;
  await worker.kill();
  starting.set(
    run,
    worker.untilWorking().then(
      (time) => noteReady(run, 'the death of worker', time),
      (error: unknown) => run.ledger.violation(String(error)),
    ),
  );
}

/** SIGKILL at a random moment within a second and a half. */
export function kill(victim: Victim): Fault {
  return {
    name: `SIGKILL of ${victim}`,
    async inflict(run) {
      await sleep(run.random() * 1_500);
      if (victim === 'worker') return killWorker(run);
      if (victim === 'Chromium') {
        await starting.get(run);
        if (!(await killChromium(run))) run.ledger.violation('Nothing was printed for half a minute.');
        return;
      }
      const { api } = run.installation.services;
      await api.kill();
      noteReady(run, 'the death of api', await api.untilWorking());
    },
  };
}

/** As many kills as asked for, of whom and when as the seed says. */
export const killsOf = (run: Run, count: number): Fault[] =>
  Array.from({ length: count }, () => kill(victims[Math.floor(run.random() * victims.length)] ?? 'api'));
