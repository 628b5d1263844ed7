import { createHash, randomBytes } from 'node:crypto';
import { mkdir, readdir, readFile, rm, utimes, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { Readable } from 'node:stream';
import { buffer } from 'node:stream/consumers';
import {
  ObjectMissingError,
  type ObjectStore,
  ObjectTooLargeError,
  openObjectStore,
  PartsMissingError,
} from '@garboard/platform/object-store';
import { afterAll, beforeAll, expect, test, vi } from 'vitest';
import { type S3Server, s3Account, startS3Server } from '../support/s3-server.ts';
import { newFolder, testFolder } from './folders.ts';

let folder: string;
let server: S3Server;

beforeAll(async () => {
  for (const [name, value] of Object.entries(s3Account)) vi.stubEnv(name, value);
  folder = await newFolder();
  server = await startS3Server(folder);
});
afterAll(async () => {
  await server?.stop();
  await rm(folder, { recursive: true, force: true });
  vi.unstubAllEnvs();
});

const generous = { maxBytes: 64 * 1024 * 1024 };
const sha256 = (bytes: Uint8Array) => createHash('sha256').update(bytes).digest('hex');
const source = (bytes: Buffer) => Readable.from([bytes]);
const key = '0199f2a4-7b1e-7c40-9a51-0b6f1c2d3e4f';

/** A store as another process on another machine would open it. */
async function newStore(): Promise<{ store: ObjectStore; work: string }> {
  const work = await testFolder();
  return { store: await openObjectStore(server.url, work), work: join(work, 's3') };
}

async function kept(store: ObjectStore, bytes: Buffer): Promise<string> {
  const staged = await store.stage(source(bytes), generous);
  await staged.keep();
  return staged.sha256;
}

test('what one process keeps, another reads, as a stream and as a file', async () => {
  const [one, other] = [await newStore(), await newStore()];
  const bytes = randomBytes(3_000_001);
  const staged = await one.store.stage(source(bytes), generous);
  expect(staged).toMatchObject({ sha256: sha256(bytes), bytes: bytes.length });
  expect(await other.store.has(staged.sha256)).toBe(false);
  await staged.keep();
  await staged.keep();
  expect(bytes.equals(await readFile(staged.localPath))).toBe(true);

  const { stream, bytes: length } = await other.store.read(staged.sha256);
  expect(length).toBe(bytes.length);
  expect(bytes.equals(await buffer(stream))).toBe(true);
  const copy = await other.store.localFile(staged.sha256);
  expect(bytes.equals(await readFile(copy))).toBe(true);
  expect(await other.store.localFile(staged.sha256)).toBe(copy);
  expect(await readdir(join(other.work, 'staging'))).toEqual([]);
});

test('an empty file is a file, one over the limit is refused and nothing is left', async () => {
  const { store, work } = await newStore();
  const empty = await kept(store, Buffer.alloc(0));
  expect(await store.has(empty)).toBe(true);
  await expect(store.stage(source(randomBytes(20)), { maxBytes: 10 })).rejects.toThrow(ObjectTooLargeError);
  expect(await readdir(join(work, 'staging'))).toEqual([]);
});

test('the same bytes kept by several processes at once are one object', async () => {
  const stores = await Promise.all([newStore(), newStore(), newStore()]);
  const bytes = randomBytes(50_000);
  const staged = await Promise.all(
    stores.flatMap(({ store }) => [
      store.stage(source(bytes), generous),
      store.stage(source(bytes), generous),
    ]),
  );
  await Promise.all(staged.map((one) => one.keep()));
  const listed = [];
  for await (const object of stores[0].store.objects()) listed.push(object);
  expect(listed.filter((object) => object.sha256 === sha256(bytes))).toEqual([
    { sha256: sha256(bytes), bytes: 50_000, keptAt: expect.any(Date) },
  ]);
});

test('what is missing is said to be, and removing it is no error', async () => {
  const { store } = await newStore();
  const absent = sha256(randomBytes(8));
  await expect(store.read(absent)).rejects.toThrow(ObjectMissingError);
  await expect(store.localFile(absent)).rejects.toThrow(ObjectMissingError);
  await expect(store.remove(absent)).resolves.toBeUndefined();
  const hash = await kept(store, randomBytes(10));
  await store.remove(hash);
  expect(await store.has(hash)).toBe(false);
  await expect(store.localFile(hash)).rejects.toThrow(ObjectMissingError);
  await expect(store.read('../../etc/passwd')).rejects.toThrow('Not a SHA-256');
});

test('discarding drops a staged file, never a kept one', async () => {
  const { store, work } = await newStore();
  const dropped = await store.stage(source(randomBytes(10)), generous);
  await dropped.discard();
  expect(await store.has(dropped.sha256)).toBe(false);
  expect(await readdir(join(work, 'staging'))).toEqual([]);
  const staged = await store.stage(source(randomBytes(10)), generous);
  await staged.keep();
  await staged.discard();
  expect(await store.has(staged.sha256)).toBe(true);
});

test('parts taken by several processes become one file', async () => {
  const [one, other] = [await newStore(), await newStore()];
  const whole = randomBytes(50_000);
  await one.store.putPart(key, 0, whole.subarray(0, 20_000));
  await other.store.putPart(key, 20_000, whole.subarray(20_000));
  expect(whole.equals(await buffer(one.store.readParts(key, 50_000)))).toBe(true);
  await expect(buffer(one.store.readParts(key, 60_000))).rejects.toThrow(PartsMissingError);
  expect(await one.store.sweepParts(60_000)).toBe(0);
  await other.store.dropParts(key);
  await other.store.dropParts(key);
  await expect(buffer(one.store.readParts(key, 50_000))).rejects.toThrow(PartsMissingError);
  await one.store.putPart(key, 0, whole);
  expect(await other.store.sweepParts(-60_000)).toBe(1);
});

test('sweeping removes old staged files and copies not asked for lately; the object stays', async () => {
  const { store, work } = await newStore();
  const hash = await kept(store, randomBytes(10));
  const copy = await store.localFile(hash);
  const staged = await store.stage(source(randomBytes(10)), generous);
  const long = new Date(Date.now() - 2 * 3_600_000);
  await utimes(copy, long, long);
  await utimes(staged.localPath, long, long);
  expect(await store.sweepStaging(60_000)).toBe(1);
  expect(await readdir(join(work, 'copies'))).toEqual([]);
  expect(await readFile(await store.localFile(hash))).toHaveLength(10);
});

test('the check finds a server that is gone, and one that is back', async () => {
  const { store } = await newStore();
  await store.check();
  const { port } = server;
  await server.stop();
  await expect(store.check()).rejects.toThrow();
  server = await startS3Server(folder, port);
  await store.check();
  await expect(
    (await openObjectStore(server.url.replace('garboard/', 'none/'), folder)).check(),
  ).rejects.toThrow();
});

test('a bucket is listed to its end, though a page of its list holds a thousand', async () => {
  const { store } = await newStore();
  const before = new Set<string>();
  for await (const { sha256: name } of store.objects()) before.add(name);
  // Laid where the server keeps its objects: sent one by one they would take half a minute.
  const added = Array.from({ length: 1_100 }, (_, n) => sha256(Buffer.from(`object ${n}`)));
  for (const name of added) {
    const path = join(folder, 'garboard/firm-files', name.slice(0, 2), name.slice(2, 4));
    await mkdir(path, { recursive: true });
    await writeFile(join(path, `${name}._S3rver_object`), 'x');
    await writeFile(join(path, `${name}._S3rver_metadata.json`), '{}');
  }
  const listed: string[] = [];
  for await (const { sha256: name } of store.objects()) listed.push(name);
  expect(new Set(listed)).toEqual(new Set([...before, ...added]));
  expect(listed).toHaveLength(before.size + added.length);
});
