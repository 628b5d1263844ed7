import { randomBytes } from 'node:crypto';
import { inject } from 'vitest';
import { onServer, withDatabase } from './databases.ts';

/** A database of one's own. */
export interface FreshDatabase {
  /** The owner's address. */
  url: string;
  /** Ends whatever is still connected and removes it. */
  drop(): Promise<void>;
}

/** An empty, migrated database for one test file: `beforeAll` makes it, `afterAll` drops it. */
export async function freshDatabase(): Promise<FreshDatabase> {
  const templateUrl = inject('templateUrl');
  const template = new URL(templateUrl).pathname.slice(1);
  const name = `garboard_test_${randomBytes(8).toString('hex')}`;
  // Statements go to the server's maintenance database: a template may have no sessions while it is copied.
  const maintenance = withDatabase(templateUrl, 'postgres');
  await onServer(maintenance, `CREATE DATABASE ${name} TEMPLATE ${template}`);
  return {
    url: withDatabase(templateUrl, name),
    drop: () => onServer(maintenance, `DROP DATABASE IF EXISTS ${name} WITH (FORCE)`),
  };
}
