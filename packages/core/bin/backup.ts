// Backs the whole installation up into a folder, while the service runs: npm run backup -- <folder> [--trust-lengths]
//   --trust-lengths  doesn't read files that earlier backups left there again, only compares their lengths
// Exit status 1 when files are missing from the store (what there is was backed up), 2 on bad usage.
import { parseArgs } from 'node:util';
import { openDatabase } from '@garboard/db/database';
import { readEnv, requiredDatabaseUrl } from '@garboard/platform/env';
import { openObjectStore } from '@garboard/platform/object-store';
import { openSealer } from '@garboard/platform/sealing';
import { writeBackup } from '../src/backup/write-backup.ts';

const { values, positionals } = (() => {
  try {
    return parseArgs({ allowPositionals: true, options: { 'trust-lengths': { type: 'boolean' } } });
  } catch {
    return { values: {}, positionals: [] };
  }
})();
const [into] = positionals;
if (!into) {
  console.error('Usage: npm run backup -- <folder> [--trust-lengths]');
  process.exit(2);
}

const env = readEnv();
const url = requiredDatabaseUrl(env);
const db = openDatabase(url, 2);
try {
  const store = await openObjectStore(env.objectStoreUrl, env.dataDir);
  const sealer = await openSealer(env);
  const started = performance.now();
  const trustLengths = values['trust-lengths'] ?? false;
  const { folder, manifest, added, addedBytes } = await writeBackup(
    { url, db, store, sealer, trustLengths },
    into,
  );
  const rows = manifest.tables.reduce((sum, table) => sum + table.rows, 0);
  const seconds = ((performance.now() - started) / 1000).toFixed(1);
  console.log(
    `${folder}: ${rows} rows, ${manifest.objects.count} files, ${added} of them new (${(addedBytes / 1e6).toFixed(1)} MB), in ${seconds} s`,
  );
  console.log(
    'The secret that opens signing keys and second factors isn’t in it: keep GARBOARD_SECRET, or the file “secret” of DATA_DIR, apart.',
  );
  for (const hash of manifest.missing) console.error(`Missing or damaged in the store: ${hash}`);
  if (manifest.missing.length > 0) process.exitCode = 1;
} finally {
  await db.close();
}
