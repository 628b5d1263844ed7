// Brings a firm from an archive into this installation: npm run import-firm -- <file>
// Exit status 1 when it is refused, and then nothing was changed; 2 on bad usage.
import { openDatabase } from '@garboard/db/database';
import { migrate } from '@garboard/db/migrate';
import { readEnv, requiredDatabaseUrl } from '@garboard/platform/env';
import { openObjectStore } from '@garboard/platform/object-store';
import { ArchiveRefused } from '../src/archive/archive-refused.ts';
import { bringIn } from '../src/archive/bring-in.ts';

const [file] = process.argv.slice(2);
if (!file) {
  console.error('Usage: npm run import-firm -- <file>');
  process.exit(2);
}

const env = readEnv();
const url = requiredDatabaseUrl(env);
await migrate({ url });
const db = openDatabase(url, 3);
try {
  const store = await openObjectStore(env.objectStoreUrl, env.dataDir);
  const started = performance.now();
  const brought = await bringIn({ db, store, onStage: (words) => console.log(`${words}…`) }, file);
  const seconds = ((performance.now() - started) / 1000).toFixed(1);
  const { firm, rows, files, fileBytes, entries, known, anew } = brought;
  console.log(
    `${firm.name} is here: ${rows} rows, ${files} files of ${(fileBytes / 1e6).toFixed(1)} MB in ${seconds} s; its record of ${entries} entries is unbroken.`,
  );
  if (known > 0) console.log(`${known} of its people were here already, known by their e-mail address.`);
  console.log('Its people get in by asking for a link on the sign-in page. To be set up anew:');
  for (const sentence of anew) console.log(`- ${sentence}`);
} catch (error) {
  if (!(error instanceof ArchiveRefused)) throw error;
  console.error(error.message);
  process.exitCode = 1;
} finally {
  await db.close();
}
// The schema engine leaves a timer behind it that would hold the process.
process.exit();
