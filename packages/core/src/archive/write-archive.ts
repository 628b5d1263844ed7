import { once } from 'node:events';
import { createReadStream, createWriteStream } from 'node:fs';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { Readable, type Writable } from 'node:stream';
import { finished, pipeline } from 'node:stream/promises';
import {
  type ArchivedFile,
  type ArchiveManifest,
  archiveFormat,
  archiveFormatVersion,
  columnsOf,
} from '@garboard/contract/archive';
import { archiveTables } from '@garboard/contract/archive-tables';
import type { Database, Tx } from '@garboard/db/database';
import { inSnapshot } from '@garboard/db/long-transactions';
import { ObjectMissingError, type ObjectStore } from '@garboard/platform/object-store';
import { ArchiveRefused } from './archive-refused.ts';
import { filesOf, type NamedFile, rowsOf } from './archive-rows.ts';
import { whileStoreHeld } from './hold-store.ts';
import { leftOutTables } from './left-out.ts';
import { openZipWriter, type ZipWriter } from './zip-writer.ts';

export interface ArchiveSource {
  db: Database;
  store: ObjectStore;
  firmId: string;
  /** Told how far it has come, 0 to 100, and with what; waited for. */
  onProgress?: (percent: number, stage: string) => Promise<void>;
}

type Rows = Pick<ArchiveManifest, 'tables' | 'record' | 'signing' | 'firm'> & { files: number };

/**
 * Writes everything a firm has into one ZIP file: its rows as JSON Lines, all from one moment, the files they name, and
 * a manifest with the length and SHA-256 of each. Nothing is held whole in memory, and the service goes on meanwhile.
 *
 * @param out gets the ZIP file, and is ended or destroyed
 * @throws ArchiveRefused when there is no such firm, or a file that a row names is missing or was changed
 */
export async function writeArchive(source: ArchiveSource, out: Writable): Promise<ArchiveManifest> {
  const { db, firmId } = source;
  const madeAt = new Date();
  const zip = openZipWriter(out, madeAt);
  const work = await mkdtemp(join(tmpdir(), 'garboard-archive-'));
  const list = join(work, 'named');
  try {
    return await whileStoreHeld(db, `archive of firm ${firmId}`, async () => {
      await source.onProgress?.(0, 'Writing rows');
      const { files, ...rows } = await inSnapshot(db, [firmId], (tx) => writeRows(tx, zip, firmId, list));
      const manifest: ArchiveManifest = {
        ...{ format: archiveFormat, formatVersion: archiveFormatVersion, madeAt: madeAt.toISOString() },
        ...rows,
        files: await writeFiles(source, zip, { list, listed: join(work, 'listed'), files }),
        leftOut: Object.entries(leftOutTables).map(([table, reason]) => ({ table, reason })),
      };
      const text = `${JSON.stringify(manifest, null, 1)}\n`;
      await zip.add('manifest.json', Readable.from([text]), { compress: true });
      await zip.end();
      return manifest;
    });
  } catch (error) {
    out.destroy();
    throw error;
  } finally {
    await rm(work, { recursive: true, force: true });
  }
}

/** Writes every table, and the names of the files that the rows name into a file on this machine. */
async function writeRows(tx: Tx, zip: ZipWriter, firmId: string, list: string): Promise<Rows> {
  const firm = await tx.firm.findUnique({ where: { id: firmId }, select: { id: true, name: true } });
  if (!firm) throw new ArchiveRefused(`There is no firm ${firmId} here.`);
  const tables: ArchiveManifest['tables'] = [];
  for (const table of archiveTables) {
    let rows = 0;
    async function* lines() {
      for await (const some of rowsOf(tx, table, firmId)) {
        rows += some.rows;
        yield some.text;
      }
    }
    const entry = `tables/${table.name}.jsonl`;
    const written = await zip.add(entry, lines(), { compress: true });
    const columns = columnsOf(table).map(({ name }) => name);
    tables.push({ table: table.name, entry, rows, columns, ...written });
  }
  let files = 0;
  async function* names() {
    for await (const some of filesOf(tx, firmId)) {
      files += some.length;
      yield some.map((file) => `${JSON.stringify(file)}\n`).join('');
    }
  }
  await pipeline(Readable.from(names()), createWriteStream(list));
  const [head] = await tx.$queryRaw<{ entries: number; head: string | null }[]>`
    SELECT seq::int AS entries, CASE WHEN seq > 0 THEN encode(hash, 'hex') END AS head
    FROM event_heads WHERE firm_id = ${firmId}::uuid`;
  const key = await tx.signingKey.findUnique({ where: { firmId } });
  return {
    firm,
    tables,
    files,
    record: head ?? { entries: 0, head: null },
    signing: key && {
      ...{ subject: key.subject, fingerprint: key.fingerprint, certificates: key.certificates },
      validUntil: key.validUntil.toISOString(),
    },
  };
}

async function writeFiles(
  { store, onProgress }: ArchiveSource,
  zip: ZipWriter,
  { list, listed, files }: { list: string; listed: string; files: number },
): Promise<ArchiveManifest['files']> {
  const out = createWriteStream(listed);
  let [done, fileBytes] = [0, 0];
  for await (const line of createInterface({ input: createReadStream(list) })) {
    const named = JSON.parse(line) as NamedFile;
    const { kind, entry } = placeOf(named);
    const written = await zip.add(entry, bytesOf(store, named), { compress: false });
    if (written.sha256 !== named.sha256) throw spoilt(named, 'was changed since it was kept');
    const file: ArchivedFile = { kind, entry, ...written };
    if (!out.write(`${JSON.stringify(file)}\n`)) await once(out, 'drain');
    fileBytes += written.bytes;
    if (done++ % 25 === 0)
      await onProgress?.(5 + Math.floor((94 * done) / files), 'Writing photos and documents');
  }
  out.end();
  await finished(out);
  const entry = 'files.jsonl';
  const written = await zip.add(entry, createReadStream(listed), { compress: true });
  return { entry, ...written, files, fileBytes };
}

async function* bytesOf(store: ObjectStore, named: NamedFile): AsyncGenerator<Uint8Array> {
  const opened = await store.read(named.sha256).catch((error: unknown) => {
    throw error instanceof ObjectMissingError ? spoilt(named, 'is missing from the store') : error;
  });
  yield* opened.stream;
}

const spoilt = ({ sha256, table, column }: NamedFile, what: string) =>
  new ArchiveRefused(
    `File ${sha256}, named by ${table}.${column}, ${what}. Put it back from a backup, then make the archive again; npm run verify-log checks all files.`,
  );

const endings: Record<string, string> = {
  'image/jpeg': '.jpg',
  'image/png': '.png',
  'image/webp': '.webp',
  'image/heic': '.heic',
  'image/heif': '.heif',
  'application/pdf': '.pdf',
};

/** In which folder of the archive a file goes, by what it is to the firm, and under what name. */
function placeOf({ table, column, sha256, mediaType }: NamedFile): Pick<ArchivedFile, 'kind' | 'entry'> {
  if (column === 'sha256' && table === 'photos') {
    return { kind: 'photo', entry: `photos/${sha256}${endings[mediaType ?? ''] ?? ''}` };
  }
  if (column === 'sha256' && table === 'clearance_files') {
    return { kind: 'evidence', entry: `evidence/${sha256}${endings[mediaType ?? ''] ?? ''}` };
  }
  if (table === 'reports' || table === 'quotations') {
    return { kind: 'document', entry: `documents/${sha256}.pdf` };
  }
  return { kind: 'picture', entry: `pictures/${sha256}.jpg` };
}
