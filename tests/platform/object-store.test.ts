import { createHash, randomBytes } from 'node:crypto';
import { readdir, readFile, stat, utimes } from 'node:fs/promises';
import { join } from 'node:path';
import { Readable } from 'node:stream';
import { buffer } from 'node:stream/consumers';
import { pathToFileURL } from 'node:url';
import {
  ObjectMissingError,
  type ObjectStore,
  ObjectTooLargeError,
  openObjectStore,
  PartsMissingError,
} from '@garboard/platform/object-store';
import { expect, test } from 'vitest';
import { testFolder } from './folders.ts';

const generous = { maxBytes: 64 * 1024 * 1024 };
const sha256 = (bytes: Uint8Array) => createHash('sha256').update(bytes).digest('hex');

async function newStore() {
  const folder = await testFolder();
  return { folder, store: await openObjectStore(pathToFileURL(folder).href, folder) };
}

const source = (bytes: Buffer, chunk = 64 * 1024) =>
  Readable.from(
    (function* () {
      for (let at = 0; at < bytes.length; at += chunk) yield bytes.subarray(at, at + chunk);
    })(),
  );

test('what is kept can be read back under its hash', async () => {
  const { folder, store } = await newStore();
  const bytes = randomBytes(3_000_001);
  const staged = await store.stage(source(bytes), generous);
  expect(staged).toMatchObject({ sha256: sha256(bytes), bytes: bytes.length });
  expect(await store.has(staged.sha256)).toBe(false);
  expect(bytes.equals(await readFile(staged.localPath))).toBe(true);

  await staged.keep();
  const { stream, bytes: length } = await store.read(staged.sha256);
  expect(length).toBe(bytes.length);
  expect(bytes.equals(await buffer(stream))).toBe(true);
  const path = join(folder, staged.sha256.slice(0, 2), staged.sha256.slice(2, 4), staged.sha256);
  expect(await store.localFile(staged.sha256)).toBe(path);
  expect(staged.localPath).toBe(path);
  expect((await stat(path)).mode & 0o222).toBe(0);
  expect(await readdir(join(folder, 'staging'))).toEqual([]);
});

test('an empty file is a file', async () => {
  const { store } = await newStore();
  const staged = await store.stage(Readable.from([]), generous);
  expect(staged).toMatchObject({ bytes: 0, sha256: sha256(new Uint8Array()) });
  await staged.keep();
  expect(await store.has(staged.sha256)).toBe(true);
});

test('a file over the limit is refused, its source ended, and nothing is left', async () => {
  const { folder, store } = await newStore();
  const input = source(randomBytes(200_000), 1_000);
  await expect(store.stage(input, { maxBytes: 100_000 })).rejects.toThrow(ObjectTooLargeError);
  expect(input.destroyed).toBe(true);
  expect(input.readableEnded).toBe(false);
  expect(await readdir(join(folder, 'staging'))).toEqual([]);
});

test('a file of exactly the limit is taken', async () => {
  const { store } = await newStore();
  await expect(store.stage(source(randomBytes(100_000)), { maxBytes: 100_000 })).resolves.toBeDefined();
});

test('asked to drain, the source of a file over the limit is read to its end', async () => {
  const { folder, store } = await newStore();
  const input = source(randomBytes(200_000), 1_000);
  const limits = { maxBytes: 100_000, drainWhenTooLarge: true };
  await expect(store.stage(input, limits)).rejects.toThrow(ObjectTooLargeError);
  expect(input.readableEnded).toBe(true);
  expect(await readdir(join(folder, 'staging'))).toEqual([]);
});

test('an upload that breaks off leaves nothing', async () => {
  const { folder, store } = await newStore();
  const broken = Readable.from(
    (function* () {
      yield randomBytes(1000);
      throw new Error('connection lost');
    })(),
  );
  await expect(store.stage(broken, generous)).rejects.toThrow('connection lost');
  expect(await readdir(join(folder, 'staging'))).toEqual([]);
});

test('sources that fail at once leave nothing either', async () => {
  const { folder, store } = await newStore();
  const failing = () =>
    new Readable({
      read() {
        this.destroy(new Error('gone'));
      },
    });
  await Promise.all(
    Array.from({ length: 100 }, () => expect(store.stage(failing(), generous)).rejects.toThrow('gone')),
  );
  await new Promise((done) => setTimeout(done, 100));
  expect(await readdir(join(folder, 'staging'))).toEqual([]);
});

test('the same bytes kept many times at once are one object', async () => {
  const { folder, store } = await newStore();
  const bytes = randomBytes(50_000);
  const staged = await Promise.all(Array.from({ length: 8 }, () => store.stage(source(bytes), generous)));
  await Promise.all(staged.map((one) => one.keep()));
  const kept = await store.read(sha256(bytes));
  expect(bytes.equals(await buffer(kept.stream))).toBe(true);
  expect(await readdir(join(folder, 'staging'))).toEqual([]);
});

test('discarding drops a staged file, never a kept one', async () => {
  const { folder, store } = await newStore();
  const dropped = await store.stage(source(randomBytes(10)), generous);
  await dropped.discard();
  expect(await store.has(dropped.sha256)).toBe(false);
  expect(await readdir(join(folder, 'staging'))).toEqual([]);
  const kept = await store.stage(source(randomBytes(10)), generous);
  await kept.keep();
  await kept.discard();
  expect(await store.has(kept.sha256)).toBe(true);
});

test('what is missing is said to be, and removing it is no error', async () => {
  const { store } = await newStore();
  const absent = sha256(randomBytes(8));
  await expect(store.read(absent)).rejects.toThrow(ObjectMissingError);
  await expect(store.localFile(absent)).rejects.toThrow(ObjectMissingError);
  await expect(store.remove(absent)).resolves.toBeUndefined();
  const staged = await store.stage(source(randomBytes(10)), generous);
  await staged.keep();
  await store.remove(staged.sha256);
  expect(await store.has(staged.sha256)).toBe(false);
});

test.each(['../../etc/passwd', '', 'A'.repeat(64), 'a'.repeat(63)])(
  '%j is not taken for a hash',
  async (name) => {
    const { store } = await newStore();
    await expect(store.read(name)).rejects.toThrow('Not a SHA-256');
    await expect(store.remove(name)).rejects.toThrow('Not a SHA-256');
  },
);

test('sweeping removes old staged files only', async () => {
  const { store } = await newStore();
  const old = await store.stage(source(randomBytes(10)), generous);
  const fresh = await store.stage(source(randomBytes(10)), generous);
  const hourAgo = new Date(Date.now() - 3_600_000);
  await utimes(old.localPath, hourAgo, hourAgo);
  expect(await store.sweepStaging(60_000)).toBe(1);
  await expect(stat(old.localPath)).rejects.toThrow();
  await expect(stat(fresh.localPath)).resolves.toBeDefined();
});

const key = '0199f2a4-7b1e-7c40-9a51-0b6f1c2d3e4f';

const together = (store: ObjectStore, bytes: number) => buffer(store.readParts(key, bytes));

test('parts become one file again, also after the store was opened anew', async () => {
  const { folder, store } = await newStore();
  const whole = randomBytes(50_000);
  await store.putPart(key, 0, whole.subarray(0, 20_000));
  await store.putPart(key, 20_000, randomBytes(30_000));
  // Sent once more, shorter: the later one counts.
  await store.putPart(key, 20_000, whole.subarray(20_000, 45_000));
  const again = await openObjectStore(pathToFileURL(folder).href, folder);
  await again.putPart(key, 45_000, whole.subarray(45_000));
  expect(Buffer.compare(await together(again, 50_000), whole)).toBe(0);
  const staged = await again.stage(again.readParts(key, 50_000), generous);
  expect(staged.bytes).toBe(50_000);
  await staged.discard();
  await again.dropParts(key);
  await again.dropParts(key);
  expect(await readdir(join(folder, 'parts'))).toEqual([]);
});

test('parts with a gap, or fewer than said, are not taken for a file', async () => {
  const { store } = await newStore();
  await expect(together(store, 10)).rejects.toThrow(PartsMissingError);
  await store.putPart(key, 0, randomBytes(10));
  await store.putPart(key, 20, randomBytes(10));
  await expect(together(store, 30)).rejects.toThrow(PartsMissingError);
  await expect(together(store, 15)).rejects.toThrow(PartsMissingError);
  await expect(store.stage(store.readParts(key, 30), generous)).rejects.toThrow(PartsMissingError);
  await expect(store.putPart('../x', 0, randomBytes(1))).rejects.toThrow('Not a UUID');
});

test('sweeping removes the parts of files that were given up only', async () => {
  const { folder, store } = await newStore();
  expect(await store.sweepParts(60_000)).toBe(0);
  await store.putPart(key, 0, randomBytes(10));
  expect(await store.sweepParts(60_000)).toBe(0);
  const hourAgo = new Date(Date.now() - 3_600_000);
  await utimes(join(folder, 'parts', key), hourAgo, hourAgo);
  expect(await store.sweepParts(60_000)).toBe(1);
});

test('the check leaves nothing behind', async () => {
  const { folder, store } = await newStore();
  await store.check();
  expect(await readdir(join(folder, 'staging'))).toEqual([]);
});

test('what is kept is listed, and nothing else', async () => {
  const { store } = await newStore();
  const kept = await store.stage(source(randomBytes(70)), generous);
  await kept.keep();
  await store.stage(source(randomBytes(10)), generous);
  await store.putPart(key, 0, randomBytes(10));
  const found = [];
  for await (const object of store.objects()) found.push(object);
  expect(found).toEqual([{ sha256: kept.sha256, bytes: 70, keptAt: expect.any(Date) }]);
});
