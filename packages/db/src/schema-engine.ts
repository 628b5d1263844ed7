import { readdir, readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { repositoryRoot } from '@garboard/platform/paths';
import { PrismaPg } from '@prisma/adapter-pg';
import {
  bindMigrationAwareSqlAdapterFactory,
  ColumnTypeEnum,
  type SqlDriverAdapter,
  type SqlMigrationAwareDriverAdapterFactory,
  type SqlQuery,
} from '@prisma/driver-adapter-utils';
import type {
  MigrationList,
  SchemaEngine,
  SchemasContainer,
} from '@prisma/schema-engine-wasm/schema_engine_bg';
import { Pool, type QueryConfig } from 'pg';

type EngineModule = typeof import('@prisma/schema-engine-wasm/schema_engine_bg') & {
  __wbg_set_wasm(exports: WebAssembly.Exports): void;
};

let loaded: Promise<EngineModule> | undefined;

/** Where the migrations live. */
export const migrationsFolder = (): string => join(repositoryRoot(), 'prisma', 'migrations');

/** No table of the database is left out of comparisons. */
export const everyTable = { externalTables: [], externalEnums: [] };

/**
 * Runs work with Prisma's schema engine on a database. The engine is WebAssembly over `pg`: no program has to be
 * downloaded, which the `prisma` command would do.
 * @param options.url of the database's owner.
 * @param options.datamodel the schema, where the work needs it.
 * @throws Error of the engine, naming the migration and what PostgreSQL said; whatever `work` throws.
 */
export async function withSchemaEngine<T>(
  options: { url: string; datamodel?: SchemasContainer },
  work: (engine: SchemaEngine) => Promise<T>,
): Promise<T> {
  loaded ??= loadEngine();
  const { SchemaEngine: Engine } = await loaded;
  const connections = openConnections(options.url);
  try {
    const datamodels = options.datamodel?.files.map((file): [string, string] => [file.path, file.content]);
    const adapter = bindMigrationAwareSqlAdapterFactory(connections.factory);
    const engine = await Engine.new({ datamodels }, () => undefined, adapter);
    try {
      return await work(engine);
    } finally {
      engine.free();
    }
  } finally {
    await connections.close();
  }
}

// The engine leaves what it opened to the end of the process; here it is closed when the work is done.
function openConnections(url: string) {
  const pools: Pool[] = [];
  const factory: SqlMigrationAwareDriverAdapterFactory = {
    provider: 'postgres',
    adapterName: '@prisma/adapter-pg',
    async connect() {
      const pool = acceptCatalogueLetters(new Pool({ connectionString: url, max: 2 }));
      pools.push(pool);
      return forEngine(await new PrismaPg(pool).connect());
    },
    connectToShadowDb: () =>
      Promise.reject(new Error('Compare with a migrated database: see pendingChanges.')),
  };
  return { factory, close: () => Promise.all(pools.map((pool) => pool.end())) };
}

// Prisma's adapter refuses the type "char", one letter, that the system catalogue has and the engine asks for when it
// reads a database. On the way in it is renamed for the adapter, on the way out it is told as the engine's character.
const catalogueLetter = 18;
const characterOid = 1042;
const letterColumns = new Set(['confdeltype', 'confupdtype', 'constraint_type']);

function acceptCatalogueLetters(pool: Pool): Pool {
  const query = pool.query.bind(pool);
  return Object.assign(pool, {
    async query(config: QueryConfig) {
      const result = await query(config);
      for (const field of result.fields ?? []) {
        if (field.dataTypeID === catalogueLetter) field.dataTypeID = characterOid;
      }
      return result;
    },
  });
}

// Prisma's adapter cuts a script at every semicolon, also inside $$ and quotes. Sent whole and without parameters,
// PostgreSQL takes it apart itself, and all of it or nothing is done.
function forEngine(adapter: SqlDriverAdapter): SqlDriverAdapter {
  const queryRaw = adapter.queryRaw.bind(adapter);
  return Object.assign(adapter, {
    async queryRaw(query: SqlQuery) {
      const result = await queryRaw(query);
      const columnTypes = result.columnTypes.map((type, at) =>
        letterColumns.has(result.columnNames[at] ?? '') ? ColumnTypeEnum.Character : type,
      );
      return { ...result, columnTypes };
    },
    async executeScript(script: string) {
      await adapter.executeRaw({ sql: script, args: [], argTypes: [] });
    },
  });
}

/** The schema's files, as the engine takes them. */
export async function readSchema(folder = join(repositoryRoot(), 'prisma')): Promise<SchemasContainer> {
  const names = (await readdir(folder)).filter((name) => name.endsWith('.prisma')).sort();
  const files = names.map(async (name) => ({
    path: join(folder, name),
    content: await readFile(join(folder, name), 'utf8'),
  }));
  return { files: await Promise.all(files) };
}

/** The migrations in order of their names, as the engine takes them. */
export async function readMigrations(folder = migrationsFolder()): Promise<MigrationList> {
  const entries = await readdir(folder, { withFileTypes: true });
  const names = entries.filter((entry) => entry.isDirectory()).map((entry) => entry.name);
  const migrationDirectories = names.sort().map(async (path) => ({
    path,
    migrationFile: {
      path: 'migration.sql',
      content: { tag: 'ok' as const, value: await readFile(join(folder, path, 'migration.sql'), 'utf8') },
    },
  }));
  return {
    baseDir: folder,
    lockfile: { path: 'migration_lock.toml', content: 'provider = "postgresql"\n' },
    shadowDbInitScript: '',
    migrationDirectories: await Promise.all(migrationDirectories),
  };
}

async function loadEngine(): Promise<EngineModule> {
  // The package's main file imports the .wasm as a module, which Node 20 can't: put the two together here.
  const glue = createRequire(import.meta.url).resolve('@prisma/schema-engine-wasm/schema_engine_bg');
  const engine: EngineModule = await import(pathToFileURL(glue).href);
  const bytes = await readFile(join(dirname(glue), 'schema_engine_bg.wasm'));
  const { instance } = await WebAssembly.instantiate(bytes, { './schema_engine_bg.js': { ...engine } });
  engine.__wbg_set_wasm(instance.exports);
  const start = instance.exports.__wbindgen_start;
  if (typeof start === 'function') start();
  return engine;
}
