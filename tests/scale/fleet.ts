import type { Balancer } from '../support/balancer.ts';
import type { Installation, Running } from '../support/installation.ts';

/** Processes of which some are killed now and then, and started again at once, as an orchestrator does. */
export interface Fleet {
  /** Kills one of those that run. @returns what was killed */
  killOne(): Promise<string>;
  readonly kills: readonly string[];
  /** Everything that every process has printed so far. */
  printed(): string;
  /** Waits until all that were started anew serve again. */
  whole(): Promise<void>;
}

/** Numbers from 0 to 1 that come the same for the same seed. */
export function seeded(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296;
  };
}

/** Starts so many processes of each kind behind one address, and waits until they serve. */
export async function startFleet(
  installation: Installation,
  balancer: Balancer,
  size: { apis: number; workers: number },
  chance: () => number,
): Promise<Fleet> {
  const kinds = [...Array(size.apis).fill('api'), ...Array(size.workers).fill('worker')] as (
    | 'api'
    | 'worker'
  )[];
  const all: Running[] = [];
  const start = async (kind: 'api' | 'worker') => {
    const started = await installation.start(kind);
    all.push(started);
    return started;
  };
  const running = await Promise.all(kinds.map(start));
  const announce = () => balancer.serve(running.filter((_, n) => kinds[n] === 'api').map(({ url }) => url));
  announce();
  await Promise.all(running.map((one) => one.ready()));
  const kills: string[] = [];
  return {
    kills,
    printed: () => all.map((one) => one.printed()).join(''),
    async killOne() {
      const n = Math.floor(chance() * running.length);
      const victim = running[n];
      const kind = kinds[n];
      if (!victim || !kind) throw new Error('Nothing to kill.');
      await victim.end('SIGKILL');
      running[n] = await start(kind);
      announce();
      kills.push(victim.name);
      return victim.name;
    },
    async whole() {
      await Promise.all(running.map((one) => one.ready()));
    },
  };
}
