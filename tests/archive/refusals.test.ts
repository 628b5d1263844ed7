import { createHash } from 'node:crypto';
import { createWriteStream } from 'node:fs';
import { copyFile, mkdtemp, open, rm, truncate } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Readable } from 'node:stream';
import { pathToFileURL } from 'node:url';
import type { ArchiveManifest } from '@garboard/contract/archive';
import { ArchiveRefused } from '@garboard/core/archive/archive-refused';
import { bringIn } from '@garboard/core/archive/bring-in';
import { openArchive } from '@garboard/core/archive/read-archive';
import { writeArchive } from '@garboard/core/archive/write-archive';
import { openZipWriter } from '@garboard/core/archive/zip-writer';
import { type Database, inTransaction, openDatabase } from '@garboard/db/database';
import { newId } from '@garboard/db/ids';
import { type ObjectStore, openObjectStore } from '@garboard/platform/object-store';
import { buildFirm, streamOf } from '@garboard/seed/builders';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { type FreshDatabase, freshDatabase } from '../support/database.ts';
import { columnsByTable, rowsIn } from './rows.ts';

interface Installation {
  url: string;
  db: Database;
  store: ObjectStore;
}

let folder: string;
let archive: string;
let fileHash: string;
let [from, into]: Installation[] = [];
const databases: FreshDatabase[] = [];
let firmId: string;

async function install(name: string): Promise<Installation> {
  const database = await freshDatabase();
  databases.push(database);
  const objects = pathToFileURL(join(folder, name)).href;
  return {
    url: database.url,
    db: openDatabase(database.url, 3),
    store: await openObjectStore(objects, folder),
  };
}

/** A firm with a boat, a survey, a photo and a record. */
async function buildSmallFirm({ db }: Installation, hash: string) {
  const firm = await buildFirm(db, ['principal', 'surveyor']);
  const [vessel, survey] = [newId(), newId()];
  await inTransaction(db, [firm.id], async (tx) => {
    const who = { firmId: firm.id };
    await tx.vessel.create({ data: { ...who, id: vessel, name: 'Larch' } });
    const open = { number: '2026-0001', purpose: 'condition' };
    await tx.survey.create({ data: { ...who, ...open, id: survey, vesselId: vessel } });
    const file = { sha256: hash, bytes: 5, mediaType: 'image/jpeg', fileName: 'a.jpg' };
    const size = { width: 1, height: 1, orderKey: 'x' };
    await tx.photo.create({ data: { ...who, ...file, ...size, id: newId(), surveyId: survey } });
    const party = { id: newId(), role: 'owner', name: 'Ines', released: true, personId: firm.principal.id };
    await tx.party.create({ data: { ...who, ...party, surveyId: survey } });
    const did = { kind: 'survey.created', actorName: 'S', actorRole: 'surveyor', data: { note: 'Held' } };
    for (let n = 0; n < 3; n += 1) await tx.event.create({ data: { ...who, ...did, id: newId() } });
  });
  return { firm, survey };
}

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'garboard-refusals-'));
  [from, into] = [await install('from'), await install('into')];
  const staged = await a().store.stage(streamOf(Buffer.from('photo')), { maxBytes: 100 });
  await staged.keep();
  fileHash = staged.sha256;
  firmId = (await buildSmallFirm(a(), fileHash)).firm.id;
  archive = join(folder, 'firm.zip');
  await writeArchive({ ...a(), firmId }, createWriteStream(archive));
}, 120_000);
afterAll(async () => {
  await Promise.all([from?.db.close(), into?.db.close()]);
  for (const database of databases) await database.drop();
  await rm(folder, { recursive: true, force: true });
});

const started = (one: Installation | undefined) => {
  if (!one) throw new Error('not started');
  return one;
};
const a = () => started(from);
const b = () => started(into);

/** The archive packed anew: its tables and manifest changed, lengths and hashes made right again. */
async function repacked(change: {
  table?: (name: string, text: string) => string;
  manifest?: (manifest: ArchiveManifest) => object;
}): Promise<string> {
  const path = join(folder, `${newId()}.zip`);
  const opened = await openArchive(archive);
  const zip = openZipWriter(createWriteStream(path), new Date());
  const manifest = structuredClone(opened.manifest);
  for (const table of manifest.tables) {
    let text = '';
    for await (const chunk of opened.read(table.entry)) text += chunk.toString('utf8');
    text = change.table?.(table.table, text) ?? text;
    Object.assign(table, await zip.add(table.entry, Readable.from([text]), { compress: true }));
    table.rows = text.split('\n').length - 1;
  }
  for (const name of opened.entries) {
    if (name.startsWith('tables/') || name === 'manifest.json') continue;
    await zip.add(name, opened.read(name), { compress: false });
  }
  const text = JSON.stringify(change.manifest?.(manifest) ?? manifest);
  await zip.add('manifest.json', Readable.from([text]), { compress: true });
  await zip.end();
  opened.close();
  return path;
}

/** Why it is refused; fails when it isn't, or when anything was changed by it. */
async function refusalOf(path: string): Promise<string> {
  const standing = async () => {
    const tables = [...(await columnsByTable(b().url)).keys()];
    const rows = await Promise.all(tables.map((table) => rowsIn(b().url, table, [])));
    const objects: string[] = [];
    for await (const { sha256 } of b().store.objects()) objects.push(sha256);
    return createHash('sha256')
      .update(JSON.stringify([rows, objects.sort()]))
      .digest('hex');
  };
  const before = await standing();
  const error = await bringIn(b(), path).then(
    () => null,
    (reason: unknown) => reason,
  );
  if (!(error instanceof ArchiveRefused)) throw error ?? new Error('It was brought in.');
  expect(await standing()).toBe(before);
  return error.message;
}

/** Changes the first line of a table. */
const firstLine =
  (of: string, change: (row: Record<string, unknown>) => void) => (name: string, text: string) => {
    if (name !== of) return text;
    const [line = '', ...rest] = text.split('\n');
    const row = JSON.parse(line);
    change(row);
    return [JSON.stringify(row), ...rest].join('\n');
  };

it('an archive with a byte changed, or without its end', async () => {
  const path = join(folder, 'changed.zip');
  await copyFile(archive, path);
  const file = await open(path, 'r+');
  const { size } = await file.stat();
  const bytes = Buffer.alloc(size);
  await file.read(bytes, 0, size, 0);
  const name = `photos/${fileHash}.jpg`;
  const at = bytes.indexOf(`${name}photo`);
  await file.write('X', at + name.length);
  await file.close();
  expect(at).toBeGreaterThan(0);
  expect(await refusalOf(path)).toMatch(
    new RegExp(`entry photos/${fileHash}.jpg is damaged: .* Copy the archive again`),
  );
  const cut = join(folder, 'cut.zip');
  await copyFile(archive, cut);
  await truncate(cut, Math.floor(size / 2));
  expect(await refusalOf(cut)).toMatch(/can’t be read as a ZIP file/);
});

it('an archive of a newer format, with a table or a column that isn’t known', async () => {
  const newer = await repacked({ manifest: (m) => ({ ...m, formatVersion: 2, unknown: true }) });
  expect(await refusalOf(newer)).toMatch(/of format 2, and this installation reads up to 1/);
  const table = await repacked({
    manifest: (m) => ({ ...m, tables: [...m.tables, { ...m.tables[0], table: 'moorings' }] }),
  });
  expect(await refusalOf(table)).toMatch(/a table moorings, which this installation doesn’t know/);
  const column = await repacked({
    manifest: (m) => ({ ...m, tables: m.tables.map((t) => ({ ...t, columns: [...t.columns, 'berth'] })) }),
  });
  expect(await refusalOf(column)).toMatch(/a column berth of firms, which this installation doesn’t know/);
});

it('rows that aren’t as the schema says, or another firm’s', async () => {
  const odd = await repacked({
    table: firstLine('photos', (row) => {
      row.width = 'wide';
    }),
  });
  expect(await refusalOf(odd)).toMatch(
    /tables\/photos.jsonl is damaged: line 1 is not as the schema says \(width/,
  );
  const other = await repacked({
    table: firstLine('vessels', (row) => {
      row.firm_id = newId();
    }),
  });
  expect(await refusalOf(other)).toMatch(/vessels.jsonl is damaged: line 1 is another firm’s/);
});

it('rows that reach for another firm’s survey, as who is party to it would see that', async () => {
  const { survey } = await buildSmallFirm(b(), 'e'.repeat(64));
  const reaching = await repacked({
    table: firstLine('parties', (row) => {
      row.survey_id = survey;
    }),
  });
  expect(await refusalOf(reaching)).toMatch(
    /parties.jsonl names, as its survey_id, something of another firm’s/,
  );
  const taken = await repacked({
    table: firstLine('vessels', (row) => {
      row.id = newId();
    }),
  });
  expect(await refusalOf(taken)).toMatch(/is not whole: /);
});

it('a record that was changed', async () => {
  const changed = await repacked({
    table: firstLine('events', (row) => {
      row.data = { note: 'Let go' };
    }),
  });
  expect(await refusalOf(changed)).toMatch(/record in the archive is broken. Its particulars were changed/);
});

it('an archive can’t be made while a file is missing', async () => {
  await a().store.remove(fileHash);
  const path = join(folder, 'missing.zip');
  await expect(writeArchive({ ...a(), firmId }, createWriteStream(path))).rejects.toThrow(
    new RegExp(`File ${fileHash}, named by photos.sha256, is missing from the store`),
  );
});

it('the archive as it was made is brought in', async () => {
  expect(await bringIn(b(), archive)).toMatchObject({ files: 1, entries: 3 });
});
