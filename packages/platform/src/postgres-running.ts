import { readFile, readlink, realpath, rm } from 'node:fs/promises';
import { join } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import { isRunning } from './file-lock.ts';

/** A PostgreSQL server's process; `started` when this process has just started it. */
export interface RunningPostgres {
  pid: number;
  port: number;
  started: boolean;
}

/**
 * Finds the server that runs in a cluster's folder, waiting for one that is starting or recovering. A
 * postmaster.pid left by a crash is removed when its process id now belongs to something else, which PostgreSQL
 * itself can't tell (usual in containers, where ids are small and come again).
 */
export async function findRunningPostgres(cluster: string): Promise<RunningPostgres | undefined> {
  const deadline = Date.now() + 60_000;
  while (Date.now() < deadline) {
    const file = await readPostmasterFile(cluster);
    if (!file || !isRunning(file.pid)) return undefined;
    if (!(await isServerOf(file.pid, cluster))) {
      await rm(join(cluster, 'postmaster.pid'), { force: true });
      return undefined;
    }
    if (file.status === 'ready') return { pid: file.pid, port: file.port, started: false };
    await sleep(50);
  }
  throw new Error(
    `The PostgreSQL running in ${cluster} hasn't become ready in a minute: see server.log beside it.`,
  );
}

/** What postmaster.pid says; undefined when there is none or it isn't complete yet. */
export async function readPostmasterFile(cluster: string) {
  const content = await readFile(join(cluster, 'postmaster.pid'), 'utf8').catch(() => '');
  // Process, data folder, start time, port, socket folder, address, shared memory, status.
  const lines = content.split('\n').map((line) => line.trim());
  const pid = Number(lines[0]);
  if (!Number.isInteger(pid) || pid <= 0) return undefined;
  return { pid, port: Number(lines[3]), status: lines[7] ?? '' };
}

/** Waits until a process has ended; false when it hasn't within `timeoutMs`. */
export async function waitForEnd(pid: number, timeoutMs: number): Promise<boolean> {
  const deadline = Date.now() + timeoutMs;
  while (isAlive(pid)) {
    if (Date.now() > deadline) return false;
    await sleep(20);
  }
  return true;
}

/** Whether a process id is in use; 0 isn't. */
export function isAlive(pid: number): boolean {
  return pid > 0 && isRunning(pid);
}

// The server makes its cluster its working folder. Where /proc is missing (macOS), the id is taken at its word.
async function isServerOf(pid: number, cluster: string): Promise<boolean> {
  if (process.platform !== 'linux') return true;
  const name = await readFile(`/proc/${pid}/comm`, 'utf8').catch(() => '');
  if (name.trim() !== 'postgres') return false;
  const workingFolder = await readlink(`/proc/${pid}/cwd`).catch(() => undefined);
  // Without the right to look (another account's process) the name has to do.
  return workingFolder === undefined || workingFolder === (await realpath(cluster));
}
