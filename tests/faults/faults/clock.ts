import { setTimeout as sleep } from 'node:timers/promises';
import type { Fault } from '../run.ts';

const hourMs = 3_600_000;

/** The clock of api and worker is set, and set right again after a while. That of the database isn’t theirs. */
export const clockSet = (hours: number, ms: number): Fault => ({
  name: `clock set ${Math.abs(hours)} h ${hours < 0 ? 'back' : 'forward'} for ${ms / 1000} s`,
  async inflict({ installation }) {
    await installation.shiftClock(hours * hourMs);
    await sleep(ms);
    await installation.shiftClock(0);
  },
});
