import { execFile } from 'node:child_process';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { promisify } from 'node:util';
import { keepObject } from '@garboard/core/files/keep-object';
import { sweepOrphans } from '@garboard/core/files/sweep-orphans';
import { accountForFiles } from '@garboard/core/record/account-for-files';
import { inTransaction, type Tx } from '@garboard/db/database';
import { newId } from '@garboard/db/ids';
import { openLogger } from '@garboard/platform/logger';
import { type ObjectStore, openObjectStore } from '@garboard/platform/object-store';
import { streamOf } from '@garboard/seed/builders';
import { orphanRound } from '@garboard/worker/orphan-rounds';
import { Client } from 'pg';
import { afterAll, beforeAll, describe, expect, test, vi } from 'vitest';
import { type S3Server, s3Account, startS3Server } from '../support/s3-server.ts';
import { startServer, type TestServer } from '../support/server.ts';
import { type SurveyRows, writeSurvey } from './survey-rows.ts';

const run = promisify(execFile);
const hour = 3_600_000;
const later = (hours: number) => new Date(Date.now() + hours * hour);

let server: TestServer;
let s3: S3Server;
let folder: string;
let rows: SurveyRows;
beforeAll(async () => {
  for (const [name, value] of Object.entries(s3Account)) vi.stubEnv(name, value);
  folder = await mkdtemp(join(tmpdir(), 'garboard-orphans-'));
  s3 = await startS3Server(join(folder, 'bucket'));
  server = await startServer();
  rows = await writeSurvey(server.db, 1);
});
afterAll(async () => {
  await server?.close();
  await s3?.stop();
  await rm(folder, { recursive: true, force: true });
  vi.unstubAllEnvs();
});

const within = <T>(work: (tx: Tx) => Promise<T>) => inTransaction(server.db, [rows.firmId], work);

describe.each(['file', 's3'])('in a store of kind %s', (kind) => {
  let store: ObjectStore;
  const address = () => (kind === 's3' ? s3.url : pathToFileURL(join(folder, 'objects')).href);
  beforeAll(async () => {
    store = await openObjectStore(address(), join(folder, `work-${kind}`));
  });

  const stage = (words: string) => store.stage(streamOf(Buffer.from(`${kind} ${words}`)), { maxBytes: 1e6 });
  const kept = async (words: string) => {
    const staged = await stage(words);
    await staged.keep();
    return staged.sha256;
  };
  const sweepAt = (now: Date) => sweepOrphans(within, { store, olderThanMs: 24 * hour, now });

  /** A photo whose row names these files. */
  function namePhoto(tx: Tx, sha256: string, sizes: { thumbHash?: string; printHash?: string } = {}) {
    const { firmId, surveyId } = rows;
    const id = newId();
    const picture = { bytes: 9, mediaType: 'image/jpeg', fileName: 'hose.jpg', width: 6, height: 4 };
    return tx.photo.create({
      data: { id, firmId, surveyId, sha256, ...sizes, ...picture, state: 'ready', orderKey: id },
    });
  }

  test('what no row names goes when it is a day old; what is younger or named stays', async () => {
    const [original, thumbHash, printHash] = [
      await kept('original'),
      await kept('thumb'),
      await kept('print'),
    ];
    await within((tx) => namePhoto(tx, original, { thumbHash, printHash }));
    const orphan = await kept('of a process that was killed');
    expect(await sweepAt(later(23))).toMatchObject({ seen: 4, removed: 0 });
    const bytes = `${kind} of a process that was killed`.length;
    expect(await sweepAt(later(25))).toEqual({ seen: 4, removed: 1, bytes });
    expect(await store.has(orphan)).toBe(false);
    for (const sha256 of [original, thumbHash, printHash]) expect(await store.has(sha256)).toBe(true);
    expect(await sweepAt(later(25))).toEqual({ seen: 3, removed: 0, bytes: 0 });
  });

  test('an old orphan that somebody is just uploading again is waited for, and stays', async () => {
    const orphan = await kept('uploaded again');
    let commit = () => {};
    const ended: string[] = [];
    const uploading = inTransaction(server.db, [rows.firmId], async (tx) => {
      const staged = await stage('uploaded again');
      await keepObject(tx, staged);
      await namePhoto(tx, staged.sha256);
      const go = new Promise<void>((done) => {
        commit = done;
      });
      holding();
      await go;
    }).then(() => ended.push('upload'));
    let holding = () => {};
    await new Promise<void>((done) => {
      holding = done;
    });
    const sweeping = sweepAt(later(25)).then((found) => {
      ended.push('sweep');
      return found;
    });
    await vi.waitFor(async () => {
      const waiting = await within(
        (tx) => tx.$queryRaw<unknown[]>`SELECT FROM pg_locks WHERE locktype = 'advisory' AND NOT granted
          AND database = (SELECT oid FROM pg_database WHERE datname = current_database())`,
      );
      expect(waiting).toHaveLength(1);
    });
    expect(ended).toEqual([]);
    commit();
    await uploading;
    expect((await sweeping).removed).toBe(0);
    expect(ended).toEqual(['upload', 'sweep']);
    expect(await store.has(orphan)).toBe(true);
  });

  test('rows and files are set against each other both ways', async () => {
    const before = await accountForFiles(within, store);
    expect(before).toMatchObject({ unnamed: 0 });
    const gone = await kept('lost by a disk');
    await within((tx) => namePhoto(tx, gone, { thumbHash: nothings(kind) }));
    await store.remove(gone);
    await kept('nobody’s');
    const after = await accountForFiles(within, store);
    expect(after).toMatchObject({
      objects: before.objects + 1,
      unnamed: 1,
      unnamedBytes: Buffer.byteLength(`${kind} nobody’s`),
      missingCount: before.missingCount + 2,
    });
    expect(after.missing).toContainEqual({ sha256: gone, namedBy: 'photos.sha256' });
    expect(after.missing).toContainEqual({ sha256: nothings(kind), namedBy: 'photos.thumb_hash' });

    const env = { ...process.env, DATABASE_URL: server.databaseUrl, OBJECT_STORE_URL: address() };
    const said = await run(
      process.execPath,
      ['--import', 'tsx', 'packages/core/bin/verify-files.ts', '--remove-older', '0'],
      { env: { ...env, DATA_DIR: join(folder, `command-${kind}`) } },
    ).catch((error: { code: number; stdout: string; stderr: string }) => error);
    expect(said).toMatchObject({ code: 1 });
    expect(said.stdout).toContain('1 files that no row named removed');
    expect(said.stdout).toContain(
      `${before.objects} files in the store, 0 of them named by no row (0 bytes)`,
    );
    expect(said.stderr).toContain(`Missing: ${gone}, named by photos.sha256`);
  }, 60_000);
});

/** A hash that nothing has. */
const nothings = (kind: string) => (kind === 's3' ? 'ab' : 'cd').repeat(32);

test('one worker of all makes a round, and another takes it up when that one has died', async () => {
  const deps = {
    db: server.db,
    store: server.store,
    log: openLogger('test', 'fatal'),
    clock: () => new Date(),
  };
  const rounds = { olderThanMs: 24 * hour, everyMs: 24 * hour };
  const taken = await Promise.all([1, 2, 3].map(() => orphanRound(deps, rounds)));
  expect(taken.filter((removed) => removed !== null)).toEqual([0]);
  expect(await orphanRound(deps, rounds)).toBeNull();
  const stands = (data: { seenAt: Date; endedAt: Date | null }) =>
    within((tx) => tx.sweepRound.update({ where: { name: 'orphans' }, data }));
  await stands({ seenAt: later(-25), endedAt: later(-23) });
  expect(await orphanRound(deps, rounds)).toBeNull();
  await stands({ seenAt: later(-25), endedAt: later(-25) });
  expect(await orphanRound(deps, rounds)).toBe(0);
  await stands({ seenAt: later(-0.1), endedAt: null });
  expect(await orphanRound(deps, rounds)).toBeNull();
  await stands({ seenAt: later(-0.2), endedAt: null });
  expect(await orphanRound(deps, rounds)).toBe(0);
});

test('whether a file is named is read from indexes, whichever size it is', async () => {
  const owner = new Client({ connectionString: server.databaseUrl });
  await owner.connect();
  try {
    await owner.query('SET enable_seqscan = off');
    for (const table of ['photos', 'report_photos', 'clearance_files']) {
      const sizes = table === 'clearance_files' ? '' : ', print_hash';
      const { rows: lines } = await owner.query<Record<string, string>>(
        `EXPLAIN SELECT FROM ${table} WHERE '${'ab'.repeat(32)}' IN (thumb_hash, screen_hash${sizes})`,
      );
      const plan = lines.map((line) => Object.values(line)[0]).join('\n');
      expect(plan).toMatch(/BitmapOr[\s\S]*thumb_hash_idx/);
    }
  } finally {
    await owner.end();
  }
});
