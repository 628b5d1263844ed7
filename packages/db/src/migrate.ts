import type { Logger } from '@garboard/platform/logger';
import { Client } from 'pg';
import { everyTable, readMigrations, withSchemaEngine } from './schema-engine.ts';

// Any fixed number will do: it names the lock among this database's advisory locks.
const lockKey = 7_261_125;

/**
 * Applies the migrations that the database lacks; `_prisma_migrations` tells which. Processes that start at the
 * same time wait for each other: each migration is applied once.
 * @param options.url of the database's owner.
 * @returns the names of what was applied, in order.
 * @throws Error naming the migration that failed and why.
 */
export async function migrate(options: {
  url: string;
  log?: Pick<Logger, 'info'>;
}): Promise<{ applied: string[] }> {
  const holder = new Client({ connectionString: options.url });
  await holder.connect();
  try {
    await holder.query('SELECT pg_advisory_lock($1)', [lockKey]);
    const migrationsList = await readMigrations();
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
