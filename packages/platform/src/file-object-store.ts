import { createHash, randomUUID } from 'node:crypto';
import { createWriteStream } from 'node:fs';
import { chmod, mkdir, open, readdir, rename, rm, stat, writeFile } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { type Readable, Transform } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import { filePartsIn } from './file-parts.ts';
import {
  ObjectMissingError,
  type ObjectStore,
  ObjectTooLargeError,
  type StagedObject,
  type StageLimits,
} from './object-store.ts';

/** Opens a store in a folder: `ab/cd/<hash>` for what is kept, `staging/` for what isn't yet, `parts/` for what comes
 * in pieces. */
export async function openFileObjectStore(folder: string): Promise<ObjectStore> {
  const staging = join(folder, 'staging');
  await mkdir(staging, { recursive: true, mode: 0o700 });

  const pathOf = (sha256: string) => {
    if (!/^[0-9a-f]{64}$/.test(sha256)) throw new Error(`Not a SHA-256 in hex: ${JSON.stringify(sha256)}.`);
    return join(folder, sha256.slice(0, 2), sha256.slice(2, 4), sha256);
  };

  return {
    ...filePartsIn(join(folder, 'parts')),

    async stage(source, limits) {
      const path = join(staging, randomUUID());
      try {
        const { sha256, bytes } = await receive(source, path, limits);
        return stagedObject(path, pathOf(sha256), sha256, bytes);
      } catch (error) {
        await rm(path, { force: true });
        throw error;
      }
    },

    async read(sha256) {
      const file = await open(pathOf(sha256)).catch(missing(sha256));
      const { size } = await file.stat();
      return { stream: file.createReadStream(), bytes: size };
    },

    async localFile(sha256) {
      const path = pathOf(sha256);
      await stat(path).catch(missing(sha256));
      return path;
    },

    async has(sha256) {
      return (await sizeOf(pathOf(sha256))) !== undefined;
    },

    async remove(sha256) {
      await rm(pathOf(sha256), { force: true });
    },

    async sweepStaging(olderThanMs) {
      const before = Date.now() - olderThanMs;
      let removed = 0;
      for (const name of await readdir(staging)) {
        const path = join(staging, name);
        const entry = await stat(path).catch(() => undefined);
        if (entry && entry.mtimeMs <= before) {
          await rm(path, { force: true });
          removed++;
        }
      }
      return removed;
    },

    async check() {
      const path = join(staging, `check-${randomUUID()}`);
      try {
        await writeFile(path, 'ready');
      } finally {
        await rm(path, { force: true });
      }
    },
  };
}

async function receive(source: Readable, path: string, limits: StageLimits) {
  const hash = createHash('sha256');
  let bytes = 0;
  const measure = new Transform({
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
  // Flushed to the disk before the name becomes final: after a power cut a name never stands for half a file.
  await pipeline(source, measure, createWriteStream(path, { flags: 'wx', flush: true }));
  if (bytes > limits.maxBytes) throw new ObjectTooLargeError(limits.maxBytes);
  return { sha256: hash.digest('hex'), bytes };
}

function stagedObject(stagedPath: string, finalPath: string, sha256: string, bytes: number): StagedObject {
  let kept = false;
  return {
    sha256,
    bytes,
    get localPath() {
      return kept ? finalPath : stagedPath;
    },
    async keep() {
      if (kept) return;
      if ((await sizeOf(finalPath)) === bytes) {
        await rm(stagedPath, { force: true });
      } else {
        await mkdir(dirname(finalPath), { recursive: true, mode: 0o700 });
        await chmod(stagedPath, 0o440);
        // Two uploads of the same bytes may both come here: the second rename puts the same content in place.
        await rename(stagedPath, finalPath);
        await syncFolder(dirname(finalPath));
      }
      kept = true;
    },
    async discard() {
      if (!kept) await rm(stagedPath, { force: true });
    },
  };
}

async function sizeOf(path: string): Promise<number | undefined> {
  try {
    return (await stat(path)).size;
  } catch (error) {
    if (isNotFound(error)) return undefined;
    throw error;
  }
}

async function syncFolder(path: string): Promise<void> {
  // Windows can't open a folder; there the rename alone has to do.
  if (process.platform === 'win32') return;
  const folder = await open(path, 'r');
  try {
    await folder.sync();
  } finally {
    await folder.close();
  }
}

function missing(sha256: string) {
  return (error: unknown): never => {
    throw isNotFound(error) ? new ObjectMissingError(sha256) : error;
  };
}

function isNotFound(error: unknown): boolean {
  return error instanceof Error && 'code' in error && error.code === 'ENOENT';
}
