import { createHash, randomUUID } from 'node:crypto';
import { createReadStream, createWriteStream } from 'node:fs';
import { chmod, mkdir, open, rename, rm, stat, writeFile } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { Readable, Transform } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import { createGzip } from 'node:zlib';
import { copyDatabase, type DatabaseCopy } from '@garboard/db/copy-out';
import type { Database } from '@garboard/db/database';
import { ObjectMissingError, type ObjectStore } from '@garboard/platform/object-store';
import type { Sealer } from '@garboard/platform/sealing';
import { whileStoreHeld } from '../archive/hold-store.ts';
import { fileColumns } from '../record/file-columns.ts';
import {
  type BackupManifest,
  backupVersion,
  manifestName,
  objectPath,
  sealedFor,
  sealedWord,
} from './manifest.ts';

export interface BackupSource {
  /** Of the database's owner. */
  url: string;
  db: Database;
  store: ObjectStore;
  sealer: Sealer;
  /** Takes files that are in the folder already by their length, without reading them. */
  trustLengths?: boolean;
}

export interface WrittenBackup {
  /** The folder of this backup, within the one given. */
  folder: string;
  manifest: BackupManifest;
  /** Files that weren't in the folder before, and their bytes. */
  added: number;
  addedBytes: number;
}

/**
 * Writes a backup of the whole installation into a folder of backups, while the service runs: rows as of one moment, then
 * the files that these name, which nobody removes meanwhile. Files that an earlier backup left there are compared by
 * their SHA-256 and not written again. A backup that was cut short leaves a folder ending in `.unfinished`.
 */
export async function writeBackup(source: BackupSource, into: string): Promise<WrittenBackup> {
  return whileStoreHeld(source.db, `backup to ${into}`, async () => {
    await mkdir(into, { recursive: true, mode: 0o700 });
    const draft = join(into, `${randomUUID()}.unfinished`);
    await mkdir(join(draft, 'tables'), { recursive: true, mode: 0o700 });
    const rows = await copyDatabase(source.url, (copy) => writeRows(copy, draft));
    const { objects, missing, added, addedBytes } = await copyObjects(source, into, draft);
    const manifest: BackupManifest = {
      ...{ format: 'garboard backup', version: backupVersion, ...rows, objects, missing },
      sealed: source.sealer.seal(Buffer.from(sealedWord), sealedFor).toString('base64'),
    };
    await writeFile(join(draft, manifestName), `${JSON.stringify(manifest, null, 1)}\n`, { flush: true });
    const folder = join(into, manifest.at.replaceAll(':', '-').replace(/\.\d+Z$/, 'Z'));
    await rename(draft, folder);
    return { folder, manifest, added, addedBytes };
  });
}

async function writeRows(copy: DatabaseCopy, draft: string) {
  const tables: BackupManifest['tables'] = [];
  for (const table of copy.tables) {
    const { stream, count } = copy.rowsOf(table);
    const file = `tables/${table.name}.copy.gz`;
    const measure = measuring();
    // The fastest level: the disk is the slower one by then.
    await pipeline(stream, createGzip({ level: 1 }), measure.through, syncedFile(join(draft, file)));
    tables.push({ ...table, file, rows: count(), ...measure.settle() });
  }
  async function* lines() {
    for await (const hashes of copy.valuesOf(fileColumns)) yield hashes.map((hash) => `${hash}\n`).join('');
  }
  await pipeline(Readable.from(lines()), createWriteStream(join(draft, 'named')));
  const { at, migrations, sequences } = copy;
  return { at: at.toISOString(), migrations, tables, sequences };
}

async function copyObjects(source: BackupSource, into: string, draft: string) {
  const missing: string[] = [];
  const found = { count: 0, objectBytes: 0, added: 0, addedBytes: 0 };
  async function* lines() {
    for await (const hash of linesIn(join(draft, 'named'))) {
      const copied = await copyObject(source, into, hash);
      if (!copied) {
        missing.push(hash);
        continue;
      }
      found.count += 1;
      found.objectBytes += copied.bytes;
      if (copied.added) {
        found.added += 1;
        found.addedBytes += copied.bytes;
      }
      yield `${hash} ${copied.bytes}\n`;
    }
  }
  const file = 'objects.txt';
  const measure = measuring();
  await pipeline(Readable.from(lines()), measure.through, syncedFile(join(draft, file)));
  await rm(join(draft, 'named'));
  const { count, objectBytes, added, addedBytes } = found;
  return { objects: { file, ...measure.settle(), count, objectBytes }, missing, added, addedBytes };
}

/** Copies a file unless it is there already. @returns null when the store hasn't got it */
async function copyObject(
  { store, trustLengths }: BackupSource,
  into: string,
  hash: string,
): Promise<{ bytes: number; added: boolean } | null> {
  const path = join(into, ...objectPath(hash));
  const there = await stat(path).catch(() => null);
  if (there && (trustLengths || (await hashOf(path)) === hash)) return { bytes: there.size, added: false };
  const opened = await store.read(hash).catch((error: unknown) => {
    if (error instanceof ObjectMissingError) return null;
    throw error;
  });
  if (!opened) return null;
  await mkdir(dirname(path), { recursive: true, mode: 0o700 });
  const draft = `${path}.unfinished`;
  const measure = measuring();
  await pipeline(opened.stream, measure.through, syncedFile(draft));
  const { bytes, sha256 } = measure.settle();
  if (sha256 !== hash) {
    // Whatever it has become, it is not what the row names.
    await rm(draft);
    return null;
  }
  await chmod(draft, 0o400);
  await rename(draft, path);
  return { bytes, added: true };
}

/** The SHA-256 of a file on this machine. */
export async function hashOf(path: string): Promise<string> {
  const hash = createHash('sha256');
  await pipeline(createReadStream(path), hash);
  return hash.digest('hex');
}

/** The lines of a file on this machine. */
export async function* linesIn(path: string): AsyncGenerator<string> {
  const file = await open(path);
  try {
    yield* file.readLines();
  } finally {
    await file.close();
  }
}

/** A new file, for nobody else on this machine, safe on the disk when it is closed. */
const syncedFile = (path: string) => createWriteStream(path, { mode: 0o600, flush: true });

function measuring() {
  const hash = createHash('sha256');
  let bytes = 0;
  const through = new Transform({
    transform(chunk: Buffer, _, done) {
      hash.update(chunk);
      bytes += chunk.length;
      done(null, chunk);
    },
  });
  return { through, settle: () => ({ bytes, sha256: hash.digest('hex') }) };
}
