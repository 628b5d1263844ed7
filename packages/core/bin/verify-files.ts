// npm run verify-files -- [--remove-older <hours>]
// Sets the rows of the database and the files of the object store against each other, by their names alone: tells of
// files that rows name and the store lacks, and counts files that no row names. (`npm run verify-log` also reads each
// file that is named, and compares its content.)
//   --remove-older  removes files that no row names and that are older than this; what the worker does once a day.
// Exit status 1 when a file is missing, 2 on bad usage.
import { parseArgs } from 'node:util';
import { inTransaction, openDatabase } from '@garboard/db/database';
import { allFirmIds } from '@garboard/db/special-reads';
import { readEnv, requiredDatabaseUrl } from '@garboard/platform/env';
import { openObjectStore } from '@garboard/platform/object-store';
import { sweepOrphans } from '../src/files/sweep-orphans.ts';
import { accountForFiles } from '../src/record/account-for-files.ts';
import type { Reads } from '../src/record/verify-record.ts';

const options = { 'remove-older': { type: 'string' } } as const;
const usage = (problem: string): never => {
  console.error(`${problem}\nUsage: npm run verify-files -- [--remove-older <hours>]`);
  process.exit(2);
};
const hours = (() => {
  try {
    const given = parseArgs({ options }).values['remove-older'];
    if (given === undefined || /^\d+(\.\d+)?$/.test(given)) return given === undefined ? null : Number(given);
    return usage('--remove-older takes a number of hours.');
  } catch (error) {
    return usage(error instanceof Error ? error.message : String(error));
  }
})();

const env = readEnv();
const db = openDatabase(requiredDatabaseUrl(env), 2);
try {
  const store = await openObjectStore(env.objectStoreUrl, env.dataDir);
  const firmIds = await allFirmIds(db);
  const within: Reads = (work) => inTransaction(db, firmIds, work);
  if (hours !== null) {
    const olderThanMs = hours * 3_600_000;
    const { removed, bytes } = await sweepOrphans(within, { store, olderThanMs, now: new Date() });
    console.log(`${removed} files that no row named removed, ${bytes} bytes`);
  }
  const account = await accountForFiles(within, store);
  const { objects, unnamed, unnamedBytes, missing, missingCount } = account;
  console.log(`${objects} files in the store, ${unnamed} of them named by no row (${unnamedBytes} bytes)`);
  for (const { sha256, namedBy } of missing) console.error(`Missing: ${sha256}, named by ${namedBy}`);
  if (missingCount > missing.length) console.error(`… ${missingCount} missing in all`);
  if (missingCount === 0) console.log(`Every file that a row names is there (${account.named} looked up)`);
  process.exitCode = missingCount > 0 ? 1 : 0;
} finally {
  await db.close();
}
