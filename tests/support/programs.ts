import { execFile, spawnSync } from 'node:child_process';
import { promisify } from 'node:util';

const run = promisify(execFile);

/** Whether every one of these programs is on PATH; tests that need them are skipped elsewhere, and CI refuses that. */
export const onPath = (...names: string[]): boolean =>
  names.every((name) => spawnSync('which', [name], { stdio: 'ignore' }).status === 0);

/** What a program says, on both its outputs, whether it is content or not. */
export async function says(program: string, args: readonly string[]): Promise<string> {
  const { stdout, stderr } = await run(program, [...args], { maxBuffer: 64 * 1024 * 1024 }).catch(
    (error: { stdout?: string; stderr?: string; code?: unknown }) => {
      if (error.code === 'ENOENT') throw error;
      return { stdout: error.stdout ?? '', stderr: error.stderr ?? '' };
    },
  );
  return `${stdout}${stderr}`;
}
