import { writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { JobDeps } from './job-deps.ts';

/** Written every few seconds while the worker can reach its database. A container's healthcheck looks at its age. */
export const signOfLifeFile = join(tmpdir(), 'garboard-worker-alive');
const everyMs = 10_000;

/** Keeps the file fresh until stopped; a worker that hangs or has lost its database lets it grow old. */
export function startSignOfLife({ db, log }: Pick<JobDeps, 'db' | 'log'>): { stop(): void } {
  const sign = async () => {
    try {
      await db.prisma.$queryRaw`SELECT 1`;
      await writeFile(signOfLifeFile, new Date().toISOString());
    } catch (error) {
      log.warn({ err: error }, 'no sign of life written');
    }
  };
  void sign();
  const timer = setInterval(() => void sign(), everyMs);
  return { stop: () => clearInterval(timer) };
}
