import { setTimeout as sleep } from 'node:timers/promises';
import type { StoreFault } from '../faulty-store.ts';
import type { Fault, Run } from '../run.ts';

const impossible = ({ installation }: Run) => (installation.store ? null : 'files are kept in a folder here');

function misbehaving(name: string, fault: StoreFault, ms: number): Fault {
  return {
    name: `object store ${name} for ${ms / 1000} s`,
    impossible,
    async inflict({ installation: { store } }) {
      await store?.behave(fault);
      await sleep(ms);
      await store?.behave(null);
    },
  };
}

/** What an object store does when it can’t do what it should. */
export const storeFaults = (ms: number): Fault[] => [
  misbehaving('refusing connections', 'refuses', ms),
  misbehaving('answering 503', { status: 503, code: 'SlowDown' }, ms),
  misbehaving('out of space', { status: 507, code: 'InsufficientStorage' }, ms),
  misbehaving('taking 10 s to answer', { delayMs: 10_000 }, 2 * ms),
];
