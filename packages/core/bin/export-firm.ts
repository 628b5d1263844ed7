// Writes everything a firm has into one ZIP file: npm run export-firm -- <firm id> <file>
// Exit status 1 when it can't be made, 2 on bad usage.
import { createWriteStream } from 'node:fs';
import { rename, rm } from 'node:fs/promises';
import { inTransaction, openDatabase } from '@garboard/db/database';
import { allFirmIds } from '@garboard/db/special-reads';
import { readEnv, requiredDatabaseUrl } from '@garboard/platform/env';
import { openObjectStore } from '@garboard/platform/object-store';
import { ArchiveRefused } from '../src/archive/archive-refused.ts';
import { writeArchive } from '../src/archive/write-archive.ts';

const env = readEnv();
const db = openDatabase(requiredDatabaseUrl(env), 3);
const [firmId = '', file] = process.argv.slice(2);
if (!file || !/^[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}$/.test(firmId)) {
  console.error('Usage: npm run export-firm -- <firm id> <file>\nThe firms of this installation:');
  const ids = await allFirmIds(db);
  const firms = await inTransaction(db, ids, (tx) => tx.firm.findMany({ orderBy: { name: 'asc' } }));
  for (const { id, name } of firms) console.error(`  ${id}  ${name}`);
  await db.close();
  process.exit(2);
}
const unfinished = `${file}.unfinished`;
try {
  const store = await openObjectStore(env.objectStoreUrl, env.dataDir);
  const started = performance.now();
  // Whole people and their boats: for nobody else on this machine.
  const out = createWriteStream(unfinished, { mode: 0o600 });
  const { firm, tables, files, record } = await writeArchive({ db, store, firmId }, out);
  await rename(unfinished, file);
  const rows = tables.reduce((sum, table) => sum + table.rows, 0);
  const seconds = ((performance.now() - started) / 1000).toFixed(1);
  console.log(
    `${firm.name}: ${rows} rows, ${files.files} files of ${(files.fileBytes / 1e6).toFixed(1)} MB, ${record.entries} entries of the record, in ${seconds} s`,
  );
} catch (error) {
  await rm(unfinished, { force: true });
  if (!(error instanceof ArchiveRefused)) throw error;
  console.error(error.message);
  process.exitCode = 1;
} finally {
  await db.close();
}
