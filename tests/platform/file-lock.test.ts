import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { readdir, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { withFileLock } from '@garboard/platform/file-lock';
import { expect, test } from 'vitest';
import { testFolder } from './folders.ts';

test('only one holds the lock at a time, and it is gone afterwards', async () => {
  const folder = await testFolder();
  const path = join(folder, 'lock');
  let holders = 0;
  let most = 0;
  const work = async () => {
    holders++;
    most = Math.max(most, holders);
    await new Promise((resolve) => setTimeout(resolve, 20));
    holders--;
  };
  await Promise.all([1, 2, 3, 4].map(() => withFileLock(path, work)));
  expect(most).toBe(1);
  expect(await readdir(folder)).toEqual([]);
});

test('the lock of a dead process is taken over', async () => {
  const path = join(await testFolder(), 'lock');
  const child = spawn('true');
  await once(child, 'exit');
  await writeFile(path, String(child.pid));
  expect(await withFileLock(path, async () => 'done', 2_000)).toBe('done');
});

test('a live process that keeps the lock is named', async () => {
  const path = join(await testFolder(), 'lock');
  await writeFile(path, String(process.ppid));
  await expect(withFileLock(path, async () => undefined, 200)).rejects.toThrow(`Process ${process.ppid}`);
});

test('a failure gives the lock back', async () => {
  const path = join(await testFolder(), 'lock');
  const failing = withFileLock(path, async () => {
    throw new Error('inside');
  });
  await expect(failing).rejects.toThrow('inside');
  expect(await withFileLock(path, async () => 'free', 1_000)).toBe('free');
});
