import { execFileSync } from 'node:child_process';
import { mkdtemp, rm, statfs, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import type { Fault } from '../run.ts';

/** A disk so small that it can be filled. */
export interface SmallDisk {
  folder: string;
  release(): Promise<void>;
}

/** A file system in memory of so many bytes, or why there can be none. */
export async function smallDisk(bytes: number): Promise<SmallDisk | string> {
  if (process.platform !== 'linux' || process.getuid?.() !== 0)
    return 'only root of a Linux machine can mount a small disk';
  const folder = await mkdtemp(join(tmpdir(), 'garboard-disk-'));
  try {
    execFileSync('mount', ['-t', 'tmpfs', '-o', `size=${bytes}`, 'garboard-faults', folder], {
      stdio: 'ignore',
    });
  } catch {
    await rm(folder, { recursive: true, force: true });
    return 'this machine lets nobody mount a small disk';
  }
  return {
    folder,
    async release() {
      execFileSync('umount', ['-l', folder]);
      await rm(folder, { recursive: true, force: true });
    },
  };
}

/** The disk with photos and documents is filled to its last byte while they are sent, and emptied again. */
export const diskFull = (disk: SmallDisk, ms: number): Fault => ({
  name: `disk full for ${ms / 1000} s`,
  async inflict() {
    const ballast = join(disk.folder, 'ballast');
    const { bavail, bsize } = await statfs(disk.folder);
    await writeFile(ballast, Buffer.alloc(bavail * bsize)).catch(() => undefined);
    await sleep(ms);
    await rm(ballast, { force: true });
  },
});
