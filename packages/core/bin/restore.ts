// Restores a backup while the service is stopped: npm run restore -- <folder> [--replace]
//   <folder>   one backup, or the folder of backups, of which the newest is taken
//   --replace  empties a database that isn't empty
// Exit status 1 when it is refused, 2 on bad usage.
import { stat } from 'node:fs/promises';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { readEnv, requiredDatabaseUrl } from '@garboard/platform/env';
import { openObjectStore } from '@garboard/platform/object-store';
import { openSealer, secretFileName } from '@garboard/platform/sealing';
import { type BackupManifest, BackupRefused, sealedFor } from '../src/backup/manifest.ts';
import { findBackup, restoreBackup } from '../src/backup/restore-backup.ts';

const { values, positionals } = (() => {
  try {
    return parseArgs({ allowPositionals: true, options: { replace: { type: 'boolean' } } });
  } catch {
    return { values: {}, positionals: [] };
  }
})();
const [given] = positionals;
if (!given) {
  console.error('Usage: npm run restore -- <folder> [--replace]');
  process.exit(2);
}

const env = readEnv();

/** What is to be done about the secret, in a sentence; null when it is the one of the backup. */
async function secretProblem({ sealed }: BackupManifest): Promise<string | null> {
  const there = env.secret ?? (await stat(join(env.dataDir, secretFileName)).catch(() => null));
  const place = `GARBOARD_SECRET, or ${join(env.dataDir, secretFileName)}`;
  if (!there)
    return `Put the secret back before the start: ${place}. Else signing keys and second factors are lost.`;
  try {
    (await openSealer(env)).open(Buffer.from(sealed, 'base64'), sealedFor);
    return null;
  } catch {
    return `The secret here isn’t the one of the backup: put that back as ${place}. Else signing keys and second factors are lost.`;
  }
}

try {
  const backup = await findBackup(given);
  console.log(`Restoring ${backup.folder}…`);
  const started = performance.now();
  const store = await openObjectStore(env.objectStoreUrl, env.dataDir);
  const replace = values.replace ?? false;
  const restored = await restoreBackup({ url: requiredDatabaseUrl(env), store, replace }, backup);
  const seconds = ((performance.now() - started) / 1000).toFixed(1);
  console.log(
    `Restored as of ${backup.manifest.at}: ${restored.rows} rows, ${restored.objects} files, in ${seconds} s.`,
  );
  if (restored.applied.length > 0)
    console.log(`Brought up to date by ${restored.applied.length} migrations.`);
  for (const hash of backup.manifest.missing) console.error(`Was missing when it was backed up: ${hash}`);
  const problem = await secretProblem(backup.manifest);
  if (problem) console.error(problem);
  console.log('Check it with npm run verify-log, then start the service.');
} catch (error) {
  if (!(error instanceof BackupRefused)) throw error;
  console.error(error.message);
  process.exitCode = 1;
}
// The schema engine leaves a timer behind it that would hold the process.
process.exit();
