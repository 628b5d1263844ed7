import { setTimeout as sleep } from 'node:timers/promises';
import { type Fault, noteReady, type Run } from '../run.ts';

const victims = ['api', 'worker', 'Chromium'] as const;
export type Victim = (typeof victims)[number];

async function killChromium({ installation }: Run): Promise<void> {
  // It is started with the first page; while nothing is printed there is none to be killed.
  for (let tries = 0; tries < 100; tries += 1) {
    const pids = await installation.chromiumPids();
    for (const pid of pids) {
      try {
        process.kill(pid, 'SIGKILL');
      } catch {
        // It ended between being found and being killed.
      }
    }
    if (pids.length > 0) return;
    await sleep(50);
  }
}

/** SIGKILL at a random moment within a second and a half. */
export function kill(victim: Victim): Fault {
  return {
    name: `SIGKILL of ${victim}`,
    async inflict(run) {
      await sleep(run.random() * 1_500);
      if (victim === 'Chromium') return killChromium(run);
      const service = run.installation.services[victim];
      await service.kill();
      noteReady(run, `the death of ${victim}`, await service.untilWorking());
    },
  };
}

/** As many kills as asked for, of whom and when as the seed says. */
export const killsOf = (run: Run, count: number): Fault[] =>
  Array.from({ length: count }, () => kill(victims[Math.floor(run.random() * victims.length)] ?? 'api'));
