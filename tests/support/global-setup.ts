import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { migrate } from '@garboard/db/migrate';
import { syncCatalogue } from '@garboard/db/sync-catalogue';
import { startEmbeddedPostgres } from '@garboard/platform/embedded-postgres';
import { readEnv } from '@garboard/platform/env';
import { openLogger } from '@garboard/platform/logger';
import { catalogue } from '@garboard/trade/catalogue/catalogue';
import type { TestProject } from 'vitest/node';
import { onServer, withDatabase } from './databases.ts';

declare module 'vitest' {
  interface ProvidedContext {
    /** The owner's address of the migrated database that each test file's is a copy of. */
    templateUrl: string;
  }
}

/** Makes one migrated database for the whole run, on DATABASE_URL's server or on one started for the run. */
export default async function setup(project: TestProject): Promise<() => Promise<void>> {
  const log = openLogger('tests', 'warn');
  const given = readEnv().databaseUrl;
  const dataDir = await mkdtemp(join(tmpdir(), 'garboard-tests-'));
  const server = given ? undefined : await startEmbeddedPostgres({ dataDir, log, throwaway: true });
  const name = `garboard_template_${process.pid}`;
  const serverUrl = given ?? server?.url ?? '';
  const templateUrl = withDatabase(serverUrl, name);
  await onServer(serverUrl, `CREATE DATABASE ${name}`);
  await migrate({ url: templateUrl });
  await syncCatalogue({ url: templateUrl, entries: catalogue });
  project.provide('templateUrl', templateUrl);
  return async () => {
    await onServer(serverUrl, `DROP DATABASE IF EXISTS ${name} WITH (FORCE)`);
    await server?.stop();
    await rm(dataDir, { recursive: true, force: true });
  };
}
