import { randomBytes } from 'node:crypto';
import { createReadStream, createWriteStream } from 'node:fs';
import { chmod, mkdtemp, readdir, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pipeline } from 'node:stream/promises';
import { BackupRefused, objectPath } from '@garboard/core/backup/manifest';
import { findBackup, restoreBackup } from '@garboard/core/backup/restore-backup';
import { type BackupSource, writeBackup } from '@garboard/core/backup/write-backup';
import { sweepOrphans } from '@garboard/core/files/sweep-orphans';
import { hashPassword } from '@garboard/core/people/passwords';
import { verifyFiles } from '@garboard/core/record/verify-files';
import { type Reads, verifyRecord } from '@garboard/core/record/verify-record';
import { fillDatabase } from '@garboard/db/copy-in';
import { copyDatabase } from '@garboard/db/copy-out';
import { inTransaction } from '@garboard/db/database';
import { migrate } from '@garboard/db/migrate';
import { readMigrations } from '@garboard/db/schema-engine';
import { sealerOf } from '@garboard/platform/sealing';
import { buildFirm, buildJpeg, testSecret } from '@garboard/seed/builders';
import { collectObjectJob } from '@garboard/worker/jobs/collect-object';
import { afterAll, beforeAll, describe, expect, inject, it } from 'vitest';
import { onServer, onServerRows, withDatabase } from '../support/databases.ts';
import { type Caller, startServer, type TestServer } from '../support/server.ts';
import { startTestWorker } from '../support/worker.ts';
import { columnsByTable, rowsIn } from './rows.ts';
import { until } from './whole-firm.ts';

let folder: string;
const bare: string[] = [];
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'garboard-backup-test-'));
});
afterAll(async () => {
  await rm(folder, { recursive: true, force: true });
  for (const name of bare) await onServer(maintenance(), `DROP DATABASE IF EXISTS ${name} WITH (FORCE)`);
});

const maintenance = () => withDatabase(inject('templateUrl'), 'postgres');

/** A database with nothing in it, not even our tables. */
async function bareDatabase(): Promise<string> {
  const name = `garboard_bare_${randomBytes(6).toString('hex')}`;
  bare.push(name);
  await onServer(maintenance(), `CREATE DATABASE ${name}`);
  return withDatabase(inject('templateUrl'), name);
}

const password = 'tidal rope under mist';

async function buildOffice(server: TestServer) {
  const firm = await buildFirm(server.db, ['principal', 'surveyor']);
  const passwordHash = await hashPassword(password);
  await server.db.prisma.person.update({ where: { id: firm.surveyor.id }, data: { passwordHash } });
  const surveyor = server.as(firm.surveyor);
  const vessel = await surveyor.post('/v1/vessels').send({ name: 'Larch' }).expect(201);
  const open = { vesselId: vessel.body.id, purpose: 'condition' };
  const survey = await surveyor.post('/v1/surveys').send(open).expect(201);
  return { firm, surveyor, surveyId: survey.body.id as string };
}

/** Writes as fast as it is answered, until stopped. Answers the ids that were acknowledged, as they come. */
function writing(surveyor: Caller, surveyId: string) {
  const acknowledged: { findings: string[]; photos: string[] } = { findings: [], photos: [] };
  let going = true;
  const loop = async () => {
    for (let n = 100; going; n += 1) {
      const words = { system: 'hull', title: `Crack ${n}`, urgency: 'note', observed: 'Seen.' };
      const finding = await surveyor.post(`/v1/surveys/${surveyId}/findings`).send(words).expect(201);
      acknowledged.findings.push(finding.body.id);
      const jpeg = await buildJpeg(n, { width: 240, height: 180 });
      const photo = await surveyor
        .post(`/v1/surveys/${surveyId}/photos`)
        .attach('file', jpeg, `${n}.jpg`)
        .expect(201);
      acknowledged.photos.push(photo.body.items[0].id);
    }
  };
  const running = loop();
  return {
    acknowledged,
    async stop() {
      going = false;
      await running;
    },
  };
}

const sourceOf = ({ databaseUrl: url, db, store }: TestServer): BackupSource => ({
  ...{ url, db, store, sealer: sealerOf(testSecret) },
});
const readsOf =
  (server: TestServer, firmId: string): Reads =>
  (work) =>
    inTransaction(server.db, [firmId], work);

describe('a backup made under writes, everything lost, the backup restored', () => {
  let old: TestServer;
  let now: TestServer;
  afterAll(() => now?.close());

  it('has every row acknowledged before it began, with every file, an unbroken record, and people get in', async () => {
    old = await startServer();
    const { firm, surveyor, surveyId } = await buildOffice(old);
    const worker = await startTestWorker(old);
    const writes = writing(surveyor, surveyId);
    await until(
      async () => writes.acknowledged.photos.length,
      (count) => count >= 4,
    );
    const before = structuredClone(writes.acknowledged);
    const doomed = before.photos[0] ?? '';
    const [{ sha256: doomedHash } = { sha256: '' }] = await readsOf(
      old,
      firm.id,
    )((tx) => tx.$queryRaw<{ sha256: string }[]>`SELECT sha256 FROM photos WHERE id = ${doomed}::uuid`);

    // Between the rows and the files a photo is deleted, and its file would be collected.
    let deleted = false;
    const store = {
      ...old.store,
      async read(hash: string) {
        if (!deleted) {
          deleted = true;
          await surveyor.delete(`/v1/photos/${doomed}`).expect(204);
          await collectObjectJob(old, { sha256: doomedHash });
          expect(await old.store.has(doomedHash)).toBe(true);
        }
        return old.store.read(hash);
      },
    };
    const backup = await writeBackup({ ...sourceOf(old), store }, folder);
    await writes.stop();
    expect(deleted).toBe(true);
    expect(backup.manifest.missing).toEqual([]);
    expect(backup.added).toBe(backup.manifest.objects.count);
    // What had to stay for the copy goes with the sweep.
    const sweep = { store: old.store, olderThanMs: -60_000, now: new Date() };
    await sweepOrphans((work) => inTransaction(old.db, [], work), sweep);
    expect(await old.store.has(doomedHash)).toBe(false);
    await worker.close();
    await old.close();

    now = await startServer();
    const found = await findBackup(folder);
    expect(found.folder).toBe(backup.folder);
    const restored = await restoreBackup({ url: now.databaseUrl, store: now.store }, found);
    expect(restored).toMatchObject({ objects: backup.manifest.objects.count, applied: [] });

    const ids = async (table: string) =>
      (await rowsIn(now.databaseUrl, table, [])).map((row) => JSON.parse(row).id as string);
    expect(await ids('findings')).toEqual(expect.arrayContaining(before.findings));
    expect(await ids('photos')).toEqual(expect.arrayContaining(before.photos));
    const record = await verifyRecord(readsOf(now, firm.id), firm.id);
    expect(record).toMatchObject({ broken: null });
    expect(record.entries).toBeGreaterThan(before.findings.length + before.photos.length);
    expect(await verifyFiles(readsOf(now, firm.id), now.store)).toMatchObject({ broken: null });

    const { email } = firm.surveyor;
    const signed = await now.as(null).post('/v1/sessions').send({ email, password }).expect(201);
    const again = now.as(signed.body);
    await again.get(`/v1/photos/${doomed}/image?size=original`).expect(200);
    await again
      .post(`/v1/surveys/${surveyId}/findings`)
      .send({ system: 'hull', title: 'After', urgency: 'note' })
      .expect(201);
    expect(await verifyRecord(readsOf(now, firm.id), firm.id)).toMatchObject({ broken: null });
    // What had been handed to the queue shortly before is handed over again.
    const [row] = await onServerRows<{ waiting: number }>(
      now.databaseUrl,
      'SELECT count(*)::int AS waiting FROM outbox WHERE dispatched_at IS NULL',
    );
    expect(row?.waiting).toBeGreaterThan(0);
  }, 240_000);

  it('a second one adds only files that are new or were spoilt; a spoilt one is refused, and so is a full database', async () => {
    const first = await writeBackup(sourceOf(now), folder);
    expect(first.added).toBe(0);
    const files = await readdir(join(folder, 'objects'));
    const outer = files[0] ?? '';
    const [inner = ''] = await readdir(join(folder, 'objects', outer));
    const [hash = ''] = await readdir(join(folder, 'objects', outer, inner));
    const path = join(folder, ...objectPath(hash));
    await chmod(path, 0o600);
    await writeFile(path, 'spoilt');

    const url = await bareDatabase();
    const found = await findBackup(first.folder);
    await expect(restoreBackup({ url, store: now.store }, found)).rejects.toThrow(
      /is damaged. Nothing was changed/,
    );
    expect((await columnsByTable(url)).size).toBe(0);
    const second = await writeBackup(sourceOf(now), folder);
    expect(second.added).toBe(1);

    await expect(restoreBackup({ url: now.databaseUrl, store: now.store }, found)).rejects.toThrow(
      BackupRefused,
    );
    const { rows } = await restoreBackup({ url, store: now.store }, await findBackup(folder));
    expect(rows).toBeGreaterThan(100);
    for (const [table] of await columnsByTable(now.databaseUrl)) {
      // Held meanwhile; handed over again.
      if (table === 'store_holds' || table === 'outbox') continue;
      expect({ table, rows: await rowsIn(url, table, []) }).toEqual({
        table,
        rows: await rowsIn(now.databaseUrl, table, []),
      });
    }
  }, 120_000);

  it('one made by a newer version is refused', async () => {
    const { folder: path, manifest } = await findBackup(folder);
    await chmod(join(path, 'manifest.json'), 0o600);
    const newer = { ...manifest, migrations: [...manifest.migrations, '29990101000000_from_the_future'] };
    await writeFile(join(path, 'manifest.json'), JSON.stringify(newer));
    await expect(findBackup(path)).rejects.toThrow(/made by a newer version/);
  });
});

it('a copy of an older version is filled in and brought up to date', async () => {
  const { migrationDirectories } = await readMigrations();
  const names = migrationDirectories.map(({ path }) => path);
  const older = names.slice(0, names.indexOf('20261130055590_erased_notices') + 1);
  const [from, into] = [await bareDatabase(), await bareDatabase()];
  await migrate({ url: from, only: older });
  await onServer(
    from,
    `INSERT INTO firms (id, name) VALUES ('01890000-0000-7000-8000-000000000001', 'Old Firm')`,
  );
  const file = (name: string) => join(folder, `older-${name}`);
  const { applied } = await copyDatabase(from, async (copy) => {
    for (const table of copy.tables)
      await pipeline(copy.rowsOf(table).stream, createWriteStream(file(table.name)));
    const { at, migrations, tables, sequences } = copy;
    expect(migrations).toEqual(older);
    return fillDatabase(into, {
      at,
      migrations,
      tables,
      sequences,
      rowsOf: ({ name }) => createReadStream(file(name)),
    });
  });
  expect(applied).toEqual(names.slice(older.length));
  expect(await rowsIn(into, 'firms', [])).toHaveLength(1);
}, 120_000);
