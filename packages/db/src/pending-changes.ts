import { everyTable, readMigrations, readSchema, withSchemaEngine } from './schema-engine.ts';

/**
 * The SQL that brings a database made by the migrations to the schema; empty when they agree. Applies the
 * migrations to a temporary database beside the given one, which the owner must be allowed to create.
 * @param url of the owner of any database of the server.
 */
export async function pendingChanges(url: string): Promise<string> {
  const schema = await readSchema();
  const migrationsList = await readMigrations();
  const { migrationScript } = await withSchemaEngine({ url, datamodel: schema }, (engine) =>
    engine.createMigration({
      migrationName: 'pending',
      draft: false,
      migrationsList,
      schema,
      filters: everyTable,
    }),
  );
  return migrationScript ?? '';
}
