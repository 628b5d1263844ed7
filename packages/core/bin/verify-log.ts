// Checks every firm's record and every file that a row names, and names the first break: npm run verify-log
//   --heads <file>  also compares with the heads that were noted there by an earlier, unbroken check, and notes those of
//                   now. Kept elsewhere, such a file shows even a record that was rewritten from its beginning.
//   --no-files      leaves the files out.
// Exit status 1 when something is broken, 2 on bad usage.
import { readFile, writeFile } from 'node:fs/promises';
import { parseArgs } from 'node:util';
import { inTransaction, openDatabase } from '@garboard/db/database';
import { recordFirmIds } from '@garboard/db/special-reads';
import { readEnv, requiredDatabaseUrl } from '@garboard/platform/env';
import { openObjectStore } from '@garboard/platform/object-store';
import { z } from 'zod';
import { verifyFiles } from '../src/record/verify-files.ts';
import { type Reads, stillHolds, verifyRecord } from '../src/record/verify-record.ts';

const heads = z.array(z.object({ firmId: z.uuid(), entries: z.number(), head: z.string() }));

const options = { heads: { type: 'string' }, 'no-files': { type: 'boolean' } } as const;
const usage = (problem: string): never => {
  console.error(`${problem}\nUsage: npm run verify-log -- [--heads <file>] [--no-files]`);
  process.exit(2);
};
const given = (() => {
  try {
    return parseArgs({ options }).values;
  } catch (error) {
    return usage(error instanceof Error ? error.message : String(error));
  }
})();

const env = readEnv();
const db = openDatabase(requiredDatabaseUrl(env), 2);

/** The first break in words, or null. Says on the way what is whole. */
async function check(): Promise<string | null> {
  const firmIds = await recordFirmIds(db);
  const noted = given.heads ? await notedIn(given.heads) : [];
  const now: z.infer<typeof heads> = [];
  for (const firmId of firmIds) {
    const read: Reads = (work) => inTransaction(db, [firmId], work);
    const firm = await read((tx) => tx.firm.findUnique({ where: { id: firmId }, select: { name: true } }));
    const name = firm?.name ?? 'A firm that is no longer there';
    const checked = await verifyRecord(read, firmId);
    const lost = await firstLost(noted, firmId, (was) => stillHolds(read, was));
    if (checked.broken) {
      const { seq, eventId, problem } = checked.broken;
      const event = eventId ? ` (event ${eventId})` : '';
      return `${name}, firm ${firmId}: ${seq === null ? 'an entry without a number' : `entry ${seq}`}${event}. ${problem}`;
    }
    if (lost) {
      return `${name}, firm ${firmId}: entry ${lost.entries} isn’t the one noted in ${given.heads}. The record was rewritten at or before it.`;
    }
    console.log(
      `${name}: ${checked.entries} entries, unbroken${checked.head ? `; last ${checked.head}` : ''}`,
    );
    if (checked.head) now.push({ firmId, entries: checked.entries, head: checked.head });
  }
  const gone = noted.find((was) => !firmIds.includes(was.firmId));
  if (gone) return `Firm ${gone.firmId}: its record of ${gone.entries} entries is gone.`;
  if (!given['no-files']) {
    const store = await openObjectStore(env.objectStoreUrl, env.dataDir);
    const { files, broken } = await verifyFiles((work) => inTransaction(db, firmIds, work), store);
    if (broken) return `File ${broken.sha256}, named by ${broken.namedBy}. ${broken.problem}`;
    console.log(`${files} files, each as it was kept`);
  }
  if (given.heads) await writeFile(given.heads, `${JSON.stringify(now, null, 2)}\n`);
  return null;
}

async function notedIn(path: string): Promise<z.infer<typeof heads>> {
  const text = await readFile(path, 'utf8').catch((error: NodeJS.ErrnoException) => {
    if (error.code === 'ENOENT') return '[]';
    throw error;
  });
  return heads.parse(JSON.parse(text));
}

async function firstLost(
  noted: z.infer<typeof heads>,
  firmId: string,
  holds: (was: z.infer<typeof heads>[number]) => Promise<boolean>,
) {
  for (const was of noted) if (was.firmId === firmId && !(await holds(was))) return was;
  return null;
}

try {
  const broken = await check();
  if (broken) console.error(`Broken. ${broken}`);
  process.exitCode = broken ? 1 : 0;
} finally {
  await db.close();
}
