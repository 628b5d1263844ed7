import type { Logger } from '@garboard/platform/logger';
import { Client } from 'pg';
import { everyTable, readMigrations, withSchemaEngine } from './schema-engine.ts';

// Any fixed number will do: it names the lock among this database's advisory locks.
const lockKey = 7_261_125;

/**
 * Applies the migrations that the database lacks; `_prisma_migrations` tells which. Processes that start at the
 * same time wait for each other: each migration is applied once.
 * @param options.url of the database's owner.
 * @param options.only these alone, as when a copy is to be filled in that has no others; all when left out.
 * @returns the names of what was applied, in order.
 * @throws Error naming the migration that failed and why.
 */
export async function migrate(options: {
  url: string;
  only?: readonly string[];
  log?: Pick<Logger, 'info'>;
}): Promise<{ applied: string[] }> {
  const holder = new Client({ connectionString: options.url });
  await holder.connect();
  try {
    await holder.query('SELECT pg_advisory_lock($1)', [lockKey]);
    await forgetFailures(holder);
    const all = await readMigrations();
    const { only } = options;
    const migrationDirectories = all.migrationDirectories.filter(({ path }) => !only || only.includes(path));
    const migrationsList = { ...all, migrationDirectories };
    const { appliedMigrationNames: applied } = await withSchemaEngine({ url: options.url }, (engine) =>
      engine.applyMigrations({ migrationsList, filters: everyTable }),
    );
    for (const migration of applied) options.log?.info({ migration }, 'migration applied');
    return { applied };
  } finally {
    // Ending the session gives the lock back.
    await holder.end();
  }
}

/**
 * Lets a migration that failed be tried again. A script is sent as one query and so takes effect whole or not at all;
 * we hold the lock, so none is under way.
 */
async function forgetFailures(client: Client): Promise<void> {
  const { rows } = await client.query(`SELECT to_regclass('public._prisma_migrations') IS NOT NULL AS there`);
  if (!rows[0]?.there) return;
  await client.query(
    'UPDATE _prisma_migrations SET rolled_back_at = now() WHERE finished_at IS NULL AND rolled_back_at IS NULL',
  );
}
