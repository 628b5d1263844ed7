import { createHash } from 'node:crypto';
import { createWriteStream } from 'node:fs';
import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { archiveTables } from '@garboard/contract/archive-tables';
import { bringIn } from '@garboard/core/archive/bring-in';
import { checkArchive } from '@garboard/core/archive/check-archive';
import { leftOutColumns, leftOutTables } from '@garboard/core/archive/left-out';
import { openArchive } from '@garboard/core/archive/read-archive';
import { writeArchive } from '@garboard/core/archive/write-archive';
import { sweepOrphans } from '@garboard/core/files/sweep-orphans';
import { sweepExports } from '@garboard/core/firm-exports/sweep-exports';
import { hashToken, newToken } from '@garboard/core/people/tokens';
import { fileColumns } from '@garboard/core/record/file-columns';
import { verifyFiles } from '@garboard/core/record/verify-files';
import { type Reads, verifyRecord } from '@garboard/core/record/verify-record';
import { inTransaction } from '@garboard/db/database';
import { newId } from '@garboard/db/ids';
import { buildPerson, type Signed } from '@garboard/seed/builders';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { onServerRows } from '../support/databases.ts';
import { type Caller, startServer, type TestServer } from '../support/server.ts';
import { startTestWorker } from '../support/worker.ts';
import { columnsByTable, rowsIn } from './rows.ts';
import { buildWholeFirm, until, type WholeFirm } from './whole-firm.ts';

let [here, there, third]: TestServer[] = [];
let firm: WholeFirm;
let folder: string;
let archive: string;
beforeAll(async () => {
  here = await startServer();
  there = await startServer();
  third = await startServer();
  folder = await mkdtemp(join(tmpdir(), 'garboard-archive-test-'));
  archive = join(folder, 'firm.zip');
  firm = await buildWholeFirm(a());
  await exported(a(), archive);
}, 240_000);
afterAll(async () => {
  await Promise.all([here?.close(), there?.close(), third?.close()]);
  await rm(folder, { recursive: true, force: true });
});

const server = (one: TestServer | undefined) => {
  if (!one) throw new Error('not started');
  return one;
};
const a = () => server(here);
const b = () => server(there);

const exported = (from: TestServer, path: string) =>
  writeArchive({ db: from.db, store: from.store, firmId: firm.id }, createWriteStream(path));

/** A session in another installation, as a link from a mail gives one. */
async function signedIn(at: TestServer, person: Signed): Promise<Caller> {
  const token = newToken();
  await inTransaction(at.db, [], async (tx) => {
    const { id } = await tx.person.findUniqueOrThrow({ where: { email: person.email } });
    const expiresAt = new Date(Date.now() + 3_600_000);
    await tx.session.create({ data: { id: newId(), personId: id, tokenHash: hashToken(token), expiresAt } });
  });
  return at.as({ ...person, token });
}

const leftOutOf = (table: string) =>
  Object.keys(leftOutColumns).flatMap((name) =>
    name.startsWith(`${table}.`) ? [name.split('.')[1] ?? ''] : [],
  );

describe('what an archive holds', () => {
  it('every table with rows of a firm and every column of theirs, or a reason why not', async () => {
    const known = new Map(
      archiveTables.map(({ name, columns }) => [name, columns.split(',').map((c) => c.trim().split(' ')[0])]),
    );
    const problems: string[] = [];
    for (const [table, columns] of await columnsByTable(a().databaseUrl)) {
      const listed: (string | undefined)[] | undefined = known.get(table as never);
      if (!listed && columns.includes('firm_id') && !leftOutTables[table]) problems.push(table);
      if (listed) {
        const due = columns.filter((column) => !leftOutOf(table).includes(column));
        expect({ table, columns: [...listed].sort() }).toEqual({ table, columns: due.sort() });
      }
    }
    expect(problems).toEqual([]);
    expect(Object.keys(leftOutTables).filter((table) => known.has(table as never))).toEqual([]);
  });

  it('rows of every table and files of every kind, in the firm of this test', async () => {
    const opened = await openArchive(archive);
    const { tables, files, record, signing } = opened.manifest;
    const kinds = new Set<string>();
    for await (const { kind } of opened.files()) kinds.add(kind);
    opened.close();
    expect(tables.filter(({ rows }) => rows === 0).map(({ table }) => table)).toEqual([]);
    expect([...kinds].sort()).toEqual(['document', 'evidence', 'photo', 'picture']);
    expect(files.files).toBeGreaterThan(8);
    expect(record.entries).toBeGreaterThan(30);
    expect(signing?.subject).toContain('Builders Survey');
  });

  it('no secret and nothing of another firm’s', async () => {
    const secrets = await onServerRows<{ secret: string }>(
      a().databaseUrl,
      `SELECT token_hash AS secret FROM sessions UNION SELECT token_hash FROM share_links
       UNION SELECT substr(encode(sealed_key, 'hex'), 1, 80) FROM signing_keys`,
    );
    const opened = await openArchive(archive);
    let text = '';
    for (const { entry } of opened.manifest.tables) {
      for await (const { lines } of opened.lines(entry)) text += lines.join('\n');
    }
    opened.close();
    expect(secrets.length).toBeGreaterThan(10);
    for (const { secret } of secrets) expect(text).not.toContain(secret);
  });

  it('every object that a row names is one in use', async () => {
    const [row] = await onServerRows<{ source: string }>(
      a().databaseUrl,
      `SELECT prosrc AS source FROM pg_proc WHERE proname = 'garboard_object_in_use'`,
    );
    for (const [table, column] of fileColumns) {
      const looked = row?.source.split('EXISTS').find((part) => part.includes(`FROM ${table} WHERE`));
      expect({ table, column, looked: looked?.includes(column) ?? false }).toEqual({
        table,
        column,
        looked: true,
      });
    }
  });
});

describe('an archive brought into another installation', () => {
  it('is there whole: rows, files, record, documents, answers', async () => {
    const brought = await bringIn({ db: b().db, store: b().store }, archive);
    expect(brought).toMatchObject({ firm: { id: firm.id }, known: 0 });
    for (const { name } of archiveTables) {
      const left = leftOutOf(name);
      const where =
        name === 'firms' ? `id = '${firm.id}'` : name === 'people' ? 'true' : `firm_id = '${firm.id}'`;
      const kept = name === 'reports' || name === 'report_photos' ? 'true' : where;
      expect({ name, rows: await rowsIn(b().databaseUrl, name, left, kept) }).toEqual({
        name,
        rows: await rowsIn(a().databaseUrl, name, left, kept),
      });
    }
    // What is made anew by the database is the same too.
    for (const table of ['firm_catalogue_entries', 'firm_catalogue_words']) {
      expect(await rowsIn(b().databaseUrl, table, [])).toEqual(await rowsIn(a().databaseUrl, table, []));
    }
    const read = <T>(work: Parameters<typeof inTransaction<T>>[2]) => inTransaction(b().db, [firm.id], work);
    expect(await verifyRecord(read, firm.id)).toMatchObject({ entries: brought.entries, broken: null });
    expect(await verifyFiles(read, b().store)).toMatchObject({ broken: null });

    const again = join(folder, 'again.zip');
    const second = await exported(b(), again);
    const first = await openArchive(archive);
    const measures = ({ tables, files }: typeof second) => ({
      tables: tables.filter(({ table }) => table !== 'former_ids'),
      files,
    });
    expect(measures(second)).toEqual(measures(first.manifest));
    first.close();

    const [old, now] = [a().as(firm.surveyor), await signedIn(b(), firm.surveyor)];
    const { ids } = firm.place;
    for (const path of [
      `/v1/firms/${firm.id}`,
      `/v1/firms/${firm.id}/members`,
      `/v1/surveys/${ids.surveys}`,
      `/v1/surveys/${ids.surveys}/findings`,
      `/v1/surveys/${ids.surveys}/photos`,
      `/v1/surveys/${ids.surveys}/parties`,
      `/v1/surveys/${ids.surveys}/reports`,
      `/v1/surveys/${ids.surveys}/worksheets`,
      `/v1/surveys/${ids.surveys}/coverage`,
      `/v1/surveys/${ids.surveys}/events`,
      `/v1/surveys/${ids.surveys}/invoices`,
      `/v1/surveys/${ids.surveys}/quotations`,
      `/v1/findings/${ids.findings}/clearances`,
      `/v1/findings/${ids.findings}/comments`,
      `/v1/reports/${firm.report}/data`,
      `/v1/recommendations`,
      `/v1/jobs`,
    ]) {
      const [was, is] = [await old.get(path), await now.get(path)];
      expect({ path, status: was.status }).toEqual({ path, status: 200 });
      expect({ path, body: is.body }).toEqual({ path, body: was.body });
    }
    for (const path of [`/v1/reports/${firm.report}/pdf`, `/v1/photos/${ids.photos}/image?size=original`]) {
      const [was, is] = [await old.get(path).buffer(), await now.get(path).buffer()];
      expect({ path, status: is.status, same: Buffer.compare(was.body, is.body) }).toEqual({
        ...{ path, status: 200, same: 0 },
      });
    }
  }, 120_000);

  it('goes on there: what is recorded next is linked after the last entry', async () => {
    const surveyor = await signedIn(b(), firm.surveyor);
    await surveyor.post('/v1/vessels').send({ name: 'Next' }).expect(201);
    await surveyor.patch(`/v1/surveys/${firm.place.ids.surveys}`).send({ scope: 'More.' }).expect(200);
    const checked = await verifyRecord((work) => inTransaction(b().db, [firm.id], work), firm.id);
    expect(checked.broken).toBeNull();
  });

  it('is refused where the firm is already, and nothing is changed', async () => {
    await expect(bringIn({ db: b().db, store: b().store }, archive)).rejects.toThrow(
      /is in this installation already/,
    );
  });

  it('meets people by their address; an erasure finds them in the record under both ids', async () => {
    const c = server(third);
    const known = await buildPerson(c.db, { name: 'Known here', email: firm.surveyor.email });
    const brought = await bringIn({ db: c.db, store: c.store }, archive);
    expect(brought.known).toBe(1);
    const read = <T>(work: Parameters<typeof inTransaction<T>>[2]) => inTransaction(c.db, [firm.id], work);
    const member = await read((tx) =>
      tx.firmMember.findFirst({ where: { firmId: firm.id, role: 'surveyor' }, select: { personId: true } }),
    );
    expect(member?.personId).toBe(known.id);
    const me = await c.as(known).get('/v1/me').expect(200);
    expect(me.body.firmRoles).toMatchObject([{ role: 'surveyor' }]);
    const mine = await c.as(known).get('/v1/me/export').expect(200);
    const did = mine.body.sections.find((s: { table: string }) => s.table === 'events');
    expect(did.rows.length).toBeGreaterThan(5);
    await c.as(known).post('/v1/me/erasure').send({ email: known.email }).expect(204);
    const left = await read((tx) => tx.event.count({ where: { actorName: firm.surveyor.name } }));
    expect(left).toBe(0);
    expect((await verifyRecord(read, firm.id)).broken).toBeNull();
  }, 60_000);
});

describe('over REST', () => {
  it('the principal asks for the archive, the worker makes it, and each download is on record', async () => {
    const [principal, office] = [a().as(firm.principal), a().as(firm.office)];
    const at = `/v1/firms/${firm.id}/exports`;
    await office.post(at).expect(403);
    const asked = await principal.post(at).expect(202);
    expect(asked.body).toMatchObject({ state: 'queued', bytes: null, askedBy: firm.principal.name });
    expect((await principal.post(at).expect(409)).body.detail).toMatch(/being made already/);
    const file = `/v1/firm-exports/${asked.body.id}/archive`;
    await principal.get(file).expect(409);
    const worker = await startTestWorker(a());
    try {
      const newest = async () => (await principal.get(at).expect(200)).body.items[0];
      const made = await until(newest, ({ state }) => state === 'ready' || state === 'failed');
      expect(made).toMatchObject({ state: 'ready', progress: 100, problem: null });
      const got = await principal.get(file).responseType('blob').expect(200);
      expect(got.headers['content-disposition']).toMatch(
        /^attachment; filename="Firm \d+ \d{4}-\d\d-\d\d.zip"/,
      );
      expect(createHash('sha256').update(got.body).digest('hex')).toBe(made.sha256);
      const path = join(folder, 'fetched.zip');
      await writeFile(path, got.body);
      const opened = await openArchive(path);
      await checkArchive(opened);
      opened.close();
      await office.get(file).expect(403);
      const kinds = await inTransaction(a().db, [firm.id], (tx) =>
        tx.event.findMany({
          where: { firmId: firm.id, kind: { startsWith: 'firm.' } },
          orderBy: { id: 'asc' },
        }),
      );
      expect(kinds.map(({ kind }) => kind).slice(-2)).toEqual(['firm.export-asked', 'firm.archive-fetched']);

      // Another replaces it, and one that was kept for its days goes.
      await principal.post(at).expect(202);
      await principal.get(file).expect(409);
      await until(newest, ({ state }) => state === 'ready');
      const later = () => new Date(Date.now() + 8 * 86_400_000);
      await inTransaction(a().db, [firm.id], (tx) => sweepExports({ tx, clock: later }));
      expect(await newest()).toMatchObject({ state: 'removed', sha256: null });
      // At once, or with the sweep where it became free while the other was written: nothing is removed meanwhile.
      const within: Reads = (work) => inTransaction(a().db, [firm.id], work);
      await until(
        async () => {
          await sweepOrphans(within, { store: a().store, olderThanMs: -60_000, now: new Date() });
          return a().store.has(made.sha256);
        },
        (there) => !there,
      );
    } finally {
      await worker.close();
    }
    // What isn't so after two minutes is told by `until`, with how it is.
  }, 300_000);

  it('what its entries hold is published, and every row of the archive is as it says', async () => {
    const schema = (await a().as(null).get('/v1/schemas/firm-archive.json').expect(200)).body;
    const ajv = new Ajv2020({ strict: false, validateFormats: false });
    ajv.addSchema(schema, 'archive');
    const opened = await openArchive(archive);
    const manifest = ajv.getSchema('archive#/$defs/manifest');
    expect(manifest?.(opened.manifest)).toBe(true);
    for (const { table, entry } of opened.manifest.tables) {
      const row = ajv.getSchema(`archive#/$defs/tables/$defs/${table}`);
      for await (const { lines } of opened.lines(entry)) {
        for (const line of lines)
          expect({ table, line, fits: row?.(JSON.parse(line)) }).toMatchObject({ fits: true });
      }
    }
    opened.close();
  });
});
