import { openDatabase } from '@garboard/db/database';
import { migrate } from '@garboard/db/migrate';
import { syncCatalogue } from '@garboard/db/sync-catalogue';
import { readEnv, requiredDatabaseUrl } from '@garboard/platform/env';
import { openLogger } from '@garboard/platform/logger';
import { catalogue } from '@garboard/trade/catalogue/catalogue';
import { firstAccountLink, hasPeople } from './first-account.ts';
import { clearInterruptedLoad } from './interrupted-load.ts';

/**
 * Makes a database ready for the server: applies new migrations, brings the catalogue to that of the code, and on an
 * empty one loads the demonstration, or with GARBOARD_DEMO=0 makes the link for the first account. Prints one JSON
 * object a line for whoever started it.
 */
const env = readEnv();
const log = openLogger('prepare', env.logLevel);
const databaseUrl = requiredDatabaseUrl(env);

const say = (line: Record<string, unknown>) => console.log(JSON.stringify(line));

const { applied } = await migrate({ url: databaseUrl, log }).catch((error: unknown) => {
  log.fatal({ err: error }, 'migrating failed');
  console.error(error instanceof Error ? error.message : error);
  process.exit(1);
});
if (applied.length > 0) say({ step: 'migrated', applied });

const db = openDatabase(databaseUrl, 4);
try {
  await clearInterruptedLoad(databaseUrl, db);
  await syncCatalogue({ url: databaseUrl, entries: catalogue, log });
  if (await hasPeople(db)) say({ step: 'ready' });
  else if (env.demo) {
    say({ step: 'loading', what: 'the demonstration firm: drawing its photos takes a moment' });
    // Imported only now: drawing and printing take long to load, and most starts need neither.
    const { loadDemonstration } = await import('./demonstration/load.ts');
    await loadDemonstration({ env, db, log, say });
    say({ step: 'loaded' });
  } else say({ step: 'first-account', link: await firstAccountLink(db, env.publicUrl) });
} finally {
  await db.close();
}
// The schema engine leaves a timer of ten seconds behind it that would hold the process, and the start, for as long.
process.exit(0);
