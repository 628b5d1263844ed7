import { randomBytes } from 'node:crypto';
import { dirname } from 'node:path';
import type { SchemasContainer } from '@prisma/schema-engine-wasm/schema_engine_bg';
import { Client } from 'pg';
import { migrate } from './migrate.ts';
import { everyTable, readSchema, withSchemaEngine } from './schema-engine.ts';

/**
 * The SQL that brings a database made by the migrations to the schema; comments only when they agree. Makes, migrates
 * and drops a temporary database beside the given one, which its owner must be allowed to do.
 * @param url of the owner of any database of the server.
 * @param schema to compare with, prisma/ unless given.
 */
export async function pendingChanges(url: string, schema?: SchemasContainer): Promise<string> {
  const name = `garboard_compare_${randomBytes(8).toString('hex')}`;
  const temporary = new URL(url);
  temporary.pathname = `/${name}`;
  const client = new Client({ connectionString: url });
  await client.connect();
  try {
    await client.query(`CREATE DATABASE ${name}`);
    await migrate({ url: temporary.href });
    await dropPartialIndexes(temporary.href);
    return await changesTo(temporary.href, schema ?? (await readSchema()));
  } finally {
    await client.query(`DROP DATABASE IF EXISTS ${name} WITH (FORCE)`);
    await client.end();
  }
}

// A schema can't say WHERE of an index: those that have one are the migrations' alone, and left out of the comparison.
async function dropPartialIndexes(url: string): Promise<void> {
  const client = new Client({ connectionString: url });
  await client.connect();
  try {
    await client.query(`DO $$ DECLARE name regclass; BEGIN
      FOR name IN SELECT indexrelid FROM pg_index WHERE indpred IS NOT NULL LOOP
        EXECUTE format('DROP INDEX %s', name);
      END LOOP;
    END $$`);
  } finally {
    await client.end();
  }
}

// The engine compares schemas with schemas: what the migrations made is read back as one.
async function changesTo(url: string, schema: SchemasContainer): Promise<string> {
  const baseDirectoryPath = dirname(schema.files[0]?.path ?? '');
  const { stdout } = await withSchemaEngine({ url, datamodel: schema }, async (engine) => {
    const made = await engine.introspect({
      schema,
      baseDirectoryPath,
      force: false,
      compositeTypeDepth: 0,
      namespaces: null,
    });
    return engine.diff({
      from: { tag: 'schemaDatamodel', ...made.schema },
      to: { tag: 'schemaDatamodel', ...schema },
      script: true,
      exitCode: null,
      filters: everyTable,
    });
  });
  return stdout ?? '';
}
