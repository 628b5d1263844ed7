import { createHash, randomUUID } from 'node:crypto';
import { createWriteStream } from 'node:fs';
import { mkdir, open, readdir, rm, stat } from 'node:fs/promises';
import { join } from 'node:path';
import { type Readable, Transform, type Writable } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import { ObjectMissingError, ObjectTooLargeError, type StageLimits } from './object-store.ts';

/** A received file in the waiting area: its hash, its length, and where it lies. */
export interface Received {
  sha256: string;
  bytes: number;
  path: string;
}

/** So much may come in while the disk is still writing; with less, each piece off the network waits for the one before. */
const aheadBytes = 512 * 1024;

/** Receives a file into a folder under a name of its own. What `ObjectStore.stage` says holds here. */
export async function receiveInto(folder: string, source: Readable, limits: StageLimits): Promise<Received> {
  const path = join(folder, randomUUID());
  // Flushed to the disk before the name becomes final: after a power cut a name never stands for half a file.
  const file = createWriteStream(path, { flags: 'wx', flush: true, highWaterMark: aheadBytes });
  const closed = new Promise<void>((done) => file.once('close', done));
  try {
    return { ...(await receive(source, file, limits)), path };
  } catch (error) {
    // A source that fails at once does so before the file is opened: removed too early, it would come after that.
    await closed;
    await rm(path, { force: true });
    throw error;
  }
}

async function receive(source: Readable, file: Writable, limits: StageLimits) {
  const hash = createHash('sha256');
  let bytes = 0;
  const measure = new Transform({
    highWaterMark: aheadBytes,
    transform(chunk: Buffer, _encoding, done) {
      bytes += chunk.length;
      if (bytes > limits.maxBytes) {
        if (!limits.drainWhenTooLarge) return done(new ObjectTooLargeError(limits.maxBytes));
        return done(); // Read on, keep nothing.
      }
      hash.update(chunk);
      done(null, chunk);
    },
  });
  await pipeline(source, measure, file);
  if (bytes > limits.maxBytes) throw new ObjectTooLargeError(limits.maxBytes);
  return { sha256: hash.digest('hex'), bytes };
}

/** Makes the folder, for this account only. */
export async function privateFolder(path: string): Promise<void> {
  await mkdir(path, { recursive: true, mode: 0o700 });
}

/** Removes the files of a folder that were last written longer ago than this. Returns how many. */
export async function removeOlder(folder: string, olderThanMs: number): Promise<number> {
  const before = Date.now() - olderThanMs;
  let removed = 0;
  for (const name of await readdir(folder)) {
    const path = join(folder, name);
    const entry = await stat(path).catch(() => undefined);
    if (entry && entry.mtimeMs <= before) {
      await rm(path, { force: true });
      removed++;
    }
  }
  return removed;
}

/** Length of a file; undefined when there is none. */
export async function sizeOf(path: string): Promise<number | undefined> {
  try {
    return (await stat(path)).size;
  } catch (error) {
    if (isNotFound(error)) return undefined;
    throw error;
  }
}

/** Has the names in a folder written to the disk. */
export async function syncFolder(path: string): Promise<void> {
  // Windows can't open a folder; there the rename alone has to do.
  if (process.platform === 'win32') return;
  const folder = await open(path, 'r');
  try {
    await folder.sync();
  } finally {
    await folder.close();
  }
}

/** `ab/cd/<hash>`, so that no folder grows long. @throws Error when it isn't a SHA-256 */
export function hashPath(sha256: string): [string, string, string] {
  if (!/^[0-9a-f]{64}$/.test(sha256)) throw new Error(`Not a SHA-256 in hex: ${JSON.stringify(sha256)}.`);
  return [sha256.slice(0, 2), sha256.slice(2, 4), sha256];
}

/** Turns "no such file" into "no such object". */
export function missing(sha256: string) {
  return (error: unknown): never => {
    throw isNotFound(error) ? new ObjectMissingError(sha256) : error;
  };
}

export function isNotFound(error: unknown): boolean {
  return error instanceof Error && 'code' in error && error.code === 'ENOENT';
}
