// Writes prisma/migrations/<time>_<name>/migration.sql: what brings the migrations to the schema. Look it over and
// add by hand what a schema can't say (policies, rights, functions). Usage, from the root:
//   DATA_DIR=./data npx tsx packages/db/bin/new-migration.ts add-yard-notes
import { mkdir, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { startEmbeddedPostgres } from '@garboard/platform/embedded-postgres';
import { readEnv } from '@garboard/platform/env';
import { openLogger } from '@garboard/platform/logger';
import { pendingChanges } from '../src/pending-changes.ts';
import { migrationsFolder } from '../src/schema-engine.ts';

const name = process.argv[2] ?? '';
if (!/^[a-z0-9]+(-[a-z0-9]+)*$/.test(name)) {
  console.error('Give the migration a name of small letters, digits and hyphens, such as add-yard-notes.');
  process.exit(2);
}

const env = readEnv();
const server = env.databaseUrl
  ? undefined
  : await startEmbeddedPostgres({ dataDir: env.dataDir, log: openLogger('new-migration', env.logLevel) });
try {
  const sql = await pendingChanges(env.databaseUrl ?? server?.url ?? '');
  if (sql.trim() === '') {
    console.log('The migrations agree with the schema: nothing to write.');
  } else {
    const time = new Date().toISOString().replace(/\D/g, '').slice(0, 14);
    const folder = join(migrationsFolder(), `${time}_${name.replaceAll('-', '_')}`);
    await mkdir(folder);
    await writeFile(join(folder, 'migration.sql'), sql);
    console.log(`Written: ${join(folder, 'migration.sql')}`);
  }
} finally {
  await server?.stop();
}
