import { chmod, mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { onTestFinished } from 'vitest';

/** A new empty folder, which other accounts may pass through. */
export async function newFolder(): Promise<string> {
  const folder = await mkdtemp(join(tmpdir(), 'platform-test-'));
  await chmod(folder, 0o755);
  return folder;
}

/** A new empty folder that is removed when the test ends. */
export async function testFolder(): Promise<string> {
  const folder = await newFolder();
  onTestFinished(() => rm(folder, { recursive: true, force: true }));
  return folder;
}
