import { readdir, readFile } from 'node:fs/promises';

/** What Linux tells of a process. */
interface Told {
  parent: number;
  /** Processor time spent so far, in milliseconds. */
  cpuMs: number;
  /** Memory of its own and shared, that is in the machine's, in MB. */
  rssMb: number;
}

const ticksMs = 10;

async function told(pid: number): Promise<Told | null> {
  try {
    const stat = await readFile(`/proc/${pid}/stat`, 'utf8');
    // The name, in brackets, may hold anything.
    const fields = stat.slice(stat.lastIndexOf(')') + 2).split(' ');
    // Shared pages count for each process by its share, so that a tree's sum is what it takes.
    const memory = await readFile(`/proc/${pid}/smaps_rollup`, 'utf8');
    return {
      parent: Number(fields[1]),
      cpuMs: (Number(fields[11]) + Number(fields[12])) * ticksMs,
      rssMb: Number(/^Pss:\s+(\d+)/m.exec(memory)?.[1]) / 1024,
    };
  } catch {
    // It has ended meanwhile.
    return null;
  }
}

/** Processor time of one process so far, in milliseconds; 0 where the system doesn't tell. */
export const cpuMsOf = async (pid: number): Promise<number> => (await told(pid))?.cpuMs ?? 0;

/** Memory of one process, in MB; 0 where the system doesn't tell. */
export const memoryOf = async (pid: number): Promise<number> => (await told(pid))?.rssMb ?? 0;

/** Memory of a process and all that it started, in MB; shared pages are counted once. */
export async function memoryOfTree(root: number): Promise<number> {
  const pids = (await readdir('/proc').catch(() => [])).map(Number).filter(Number.isInteger);
  const all = new Map<number, Told>();
  for (const pid of pids) {
    const one = await told(pid);
    if (one) all.set(pid, one);
  }
  const within = (pid: number): boolean => pid === root || within2(all.get(pid)?.parent);
  const within2 = (pid: number | undefined): boolean => pid !== undefined && pid > 1 && within(pid);
  return [...all].reduce((sum, [pid, { rssMb }]) => sum + (within(pid) ? rssMb : 0), 0);
}
