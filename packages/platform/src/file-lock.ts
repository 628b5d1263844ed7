import { randomUUID } from 'node:crypto';
import { link, readFile, rm, writeFile } from 'node:fs/promises';
import { setTimeout as sleep } from 'node:timers/promises';

/**
 * Runs `work` while holding a lock that other processes of this machine respect: a file with our process id. The
 * lock of a process that has died is taken over.
 * @throws Error when it isn't free within `timeoutMs`; whatever `work` throws.
 */
export async function withFileLock<T>(path: string, work: () => Promise<T>, timeoutMs = 60_000): Promise<T> {
  const mine = `${path}.${randomUUID()}`;
  await writeFile(mine, String(process.pid));
  try {
    const deadline = Date.now() + timeoutMs;
    while (!(await take(mine, path))) {
      const holder = Number(await readFile(path, 'utf8').catch(() => '0'));
      if (holder > 0 && !isRunning(holder)) {
        await rm(path, { force: true });
        continue;
      }
      if (Date.now() > deadline) {
        throw new Error(`Process ${holder} has held ${path} for too long: end it, or remove that file.`);
      }
      await sleep(50);
    }
  } finally {
    await rm(mine, { force: true });
  }
  try {
    return await work();
  } finally {
    await rm(path, { force: true });
  }
}

// A link to a file already written appears with its content: nobody ever reads a lock without an owner.
async function take(mine: string, path: string): Promise<boolean> {
  try {
    await link(mine, path);
    return true;
  } catch (error) {
    if (error instanceof Error && 'code' in error && error.code === 'EEXIST') return false;
    throw error;
  }
}

export function isRunning(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    // EPERM: it runs, under another account.
    return error instanceof Error && 'code' in error && error.code === 'EPERM';
  }
}
