import { setTimeout as sleep } from 'node:timers/promises';
import { type Fault, noteReady, type Run } from '../run.ts';

/** Chromium twice as often: it is at its most delicate work for most of the time, and back in a moment. */
const victims = ['api', 'worker', 'Chromium', 'Chromium'] as const;
export type Victim = (typeof victims)[number];

/** Kills every Chromium of the worker, the next one when none runs just now. @returns whether there was one in time */
async function killChromium({ installation }: Run, patienceMs: number): Promise<boolean> {
  for (const end = performance.now() + patienceMs; performance.now() < end; await sleep(25)) {
    const pids = await installation.chromiumPids();
    for (const pid of pids) {
      try {
        process.kill(pid, 'SIGKILL');
      } catch {
        // It ended between being found and being killed.
      }
    }
    if (pids.length > 0) return true;
  }
  return false;
}

/** A victim is killed as it is, also while it is still starting after the kill before. */
async function kill(run: Run, victim: Victim): Promise<void> {
  await sleep(run.random() * 1_500);
  const { services } = run.installation;
  if (victim !== 'Chromium') await services[victim].kill();
  // A worker that has just been killed has none yet: then it is killed once more itself.
  else if (!(await killChromium(run, 3_000))) await services.worker.kill();
}

/** These are killed one after the other, each within a second and a half of the one before; then all must be well. */
export const killed = (chosen: readonly Victim[]): Fault => ({
  name: `SIGKILL of ${chosen.join(', ')}`,
  async inflict(run) {
    for (const victim of chosen) await kill(run, victim);
    const { api, worker } = run.installation.services;
    const last = chosen.join(', ');
    const noted = async (service: typeof api) =>
      noteReady(run, `SIGKILL of ${last}`, await service.untilWorking());
    await Promise.all([api, worker].map(noted));
  },
});

/** So many kills in bursts of up to eight, of whom and when as the seed says. */
export function killsOf(run: Run, count: number): { fault: Fault; kills: number }[] {
  const bursts: { fault: Fault; kills: number }[] = [];
  for (let left = count; left > 0; ) {
    const kills = Math.min(left, 1 + Math.floor(run.random() * 8));
    const chosen = Array.from({ length: kills }, () => victims[Math.floor(run.random() * 4)] ?? 'api');
    bursts.push({ fault: killed(chosen), kills });
    left -= kills;
  }
  return bursts;
}
