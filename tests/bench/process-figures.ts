import { readdir, readFile } from 'node:fs/promises';

const ticksMs = 10;

/** Parent and processor time in milliseconds, as Linux tells them; null for a process that has ended. */
async function statOf(pid: number): Promise<{ parent: number; cpuMs: number } | null> {
  const stat = await readFile(`/proc/${pid}/stat`, 'utf8').catch(() => null);
  if (stat === null) return null;
  // The name, in brackets, may hold anything.
  const fields = stat.slice(stat.lastIndexOf(')') + 2).split(' ');
  return { parent: Number(fields[1]), cpuMs: (Number(fields[11]) + Number(fields[12])) * ticksMs };
}

/** Processor time of one process so far, in milliseconds; 0 where the system doesn't tell. */
export const cpuMsOf = async (pid: number): Promise<number> => (await statOf(pid))?.cpuMs ?? 0;

/** Memory of one process, in MB, shared pages by its share of them; 0 where the system doesn't tell. */
export async function memoryOf(pid: number): Promise<number> {
  const told = await readFile(`/proc/${pid}/smaps_rollup`, 'utf8').catch(() => '');
  return Number(/^Pss:\s+(\d+)/m.exec(told)?.[1] ?? 0) / 1024;
}

/** Memory of a process and all that it started, in MB. */
export async function memoryOfTree(root: number): Promise<number> {
  const pids = (await readdir('/proc').catch(() => [])).map(Number).filter(Number.isInteger);
  const parents = new Map<number, number>();
  for (const pid of pids) parents.set(pid, (await statOf(pid))?.parent ?? 0);
  const within = (pid: number): boolean => {
    for (let at = pid; at > 1; at = parents.get(at) ?? 0) if (at === root) return true;
    return false;
  };
  const memories = await Promise.all(pids.filter(within).map(memoryOf));
  return memories.reduce((sum, one) => sum + one, 0);
}
