import { spawn } from 'node:child_process';
import { resolve } from 'node:path';
import { startEmbeddedPostgres } from './embedded-postgres.ts';
import { readEnv } from './env.ts';
import { openLogger } from './logger.ts';

/**
 * Runs a TypeScript file with DATABASE_URL set, starting PostgreSQL for it when there is none (or using the one
 * that `npm start` runs in the same DATA_DIR).
 * @returns the file's exit code.
 */
export async function runScript(file: string, args: string[]): Promise<number> {
  const env = readEnv();
  const database = env.databaseUrl
    ? undefined
    : await startEmbeddedPostgres({ dataDir: env.dataDir, log: openLogger('run', 'warn') });
  const child = spawn(process.execPath, ['--import', 'tsx', resolve(file), ...args], {
    stdio: 'inherit',
    env: { ...process.env, DATA_DIR: env.dataDir, DATABASE_URL: env.databaseUrl ?? database?.url },
  });
  // Ctrl-C reaches the file by the terminal; a SIGTERM is passed on. Either way the database is stopped afterwards.
  const pass = () => child.kill('SIGTERM');
  const ignore = () => undefined;
  process.on('SIGTERM', pass);
  process.on('SIGINT', ignore);
  try {
    return await new Promise((done, fail) => {
      child.once('error', fail);
      child.once('exit', (code) => done(code ?? 1));
    });
  } finally {
    await database?.stop();
    process.off('SIGTERM', pass);
    process.off('SIGINT', ignore);
  }
}
