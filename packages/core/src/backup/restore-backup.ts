import { createReadStream } from 'node:fs';
import { readdir, readFile, stat } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import type { Readable } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import { createGunzip } from 'node:zlib';
import { fillDatabase, standingOf, unknownMigrations } from '@garboard/db/copy-in';
import type { ObjectStore } from '@garboard/platform/object-store';
import {
  type BackupManifest,
  BackupRefused,
  backupManifest,
  backupVersion,
  manifestName,
  objectPath,
} from './manifest.ts';
import { hashOf, linesIn } from './write-backup.ts';

/** A backup on this machine, found and read. */
export interface FoundBackup {
  folder: string;
  manifest: BackupManifest;
}

/**
 * Finds a backup: the folder itself, or the newest finished one in a folder of backups.
 *
 * @throws BackupRefused when there is none, it can't be read, or a newer version made it
 */
export async function findBackup(given: string): Promise<FoundBackup> {
  const isOne = await stat(join(given, manifestName)).catch(() => null);
  const folder = isOne ? given : join(given, await newestIn(given));
  const text = await readFile(join(folder, manifestName), 'utf8').catch(() => '');
  const parsed = backupManifest.safeParse(jsonOf(text));
  if (!parsed.success) {
    throw new BackupRefused(`${join(folder, manifestName)} is missing or damaged. Use another backup.`);
  }
  const manifest = parsed.data;
  const [unknown] = await unknownMigrations(manifest.migrations);
  if (manifest.version > backupVersion || unknown) {
    throw new BackupRefused(
      'This backup was made by a newer version. Bring the program up to date first, then restore.',
    );
  }
  return { folder, manifest };
}

async function newestIn(given: string): Promise<string> {
  const names = await readdir(given).catch(() => []);
  const dated = names.filter((name) => /^\d{4}-\d\d-\d\dT[\d-]+Z$/.test(name)).sort();
  const newest = dated.at(-1);
  if (!newest) throw new BackupRefused(`There is no finished backup in ${given}.`);
  return newest;
}

/** Compares every file of a backup with the hash it was written with. @throws BackupRefused naming the first at fault */
export async function checkBackup({ folder, manifest }: FoundBackup): Promise<void> {
  const check = async (path: string, sha256: string) => {
    const found = await hashOf(path).catch(() => null);
    if (found === sha256) return;
    throw new BackupRefused(
      `${path} ${found === null ? 'is missing' : 'is damaged'}. Nothing was changed; use another backup.`,
    );
  };
  for (const { file, sha256 } of manifest.tables) await check(join(folder, file), sha256);
  await check(join(folder, manifest.objects.file), manifest.objects.sha256);
  for await (const { sha256, path } of objectsOf({ folder, manifest })) await check(path, sha256);
}

async function* objectsOf({ folder, manifest }: FoundBackup) {
  for await (const line of linesIn(join(folder, manifest.objects.file))) {
    const [sha256 = '', bytes] = line.split(' ');
    yield { sha256, bytes: Number(bytes), path: join(dirname(folder), ...objectPath(sha256)) };
  }
}

export interface Restored {
  rows: number;
  objects: number;
  /** Migrations that came since the backup. */
  applied: string[];
}

/**
 * Restores a backup into a database and a store: files first, then all rows in one transaction. The service must not run.
 *
 * @param replace whether a database that holds people or firms may be emptied for it
 * @throws BackupRefused when it may not, or the backup is damaged
 */
export async function restoreBackup(
  { url, store, replace = false }: { url: string; store: ObjectStore; replace?: boolean },
  backup: FoundBackup,
): Promise<Restored> {
  const { empty, sessions } = await standingOf(url);
  if (!empty && !replace) {
    throw new BackupRefused(
      'The database isn’t empty. Restore into an empty one, or add --replace: then everything in it is lost.',
    );
  }
  if (!empty && sessions > 0) {
    throw new BackupRefused('Something is connected to the database. Stop the service, then restore.');
  }
  await checkBackup(backup);
  const { folder, manifest } = backup;
  let objects = 0;
  for await (const { sha256, bytes, path } of objectsOf(backup)) {
    objects += 1;
    if (await store.has(sha256)) continue;
    const staged = await store.stage(createReadStream(path), { maxBytes: bytes });
    await staged.keep();
  }
  const { applied } = await fillDatabase(url, {
    ...{ at: new Date(manifest.at), migrations: manifest.migrations, sequences: manifest.sequences },
    tables: manifest.tables,
    rowsOf(table): Readable {
      const written = manifest.tables.find(({ name }) => name === table.name);
      if (!written) throw new Error(`The backup has no table ${table.name}.`);
      const rows = createGunzip();
      // What goes wrong is told by the end of the rows.
      pipeline(createReadStream(join(folder, written.file)), rows).catch(() => undefined);
      return rows;
    },
  });
  return { rows: manifest.tables.reduce((sum, table) => sum + table.rows, 0), objects, applied };
}

function jsonOf(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}
