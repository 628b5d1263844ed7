import { randomUUID } from 'node:crypto';
import { chmod, mkdir, open, readdir, rename, rm, stat, writeFile } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { filePartsIn } from './file-parts.ts';
import type { ObjectStore, StagedObject } from './object-store.ts';
import {
  hashPath,
  missing,
  privateFolder,
  type Received,
  receiveInto,
  removeOlder,
  sizeOf,
  syncFolder,
} from './stage-file.ts';

/** Opens a store in a folder: `ab/cd/<hash>` for what is kept, `staging/` for what isn't yet, `parts/` for what comes
 * in pieces. */
export async function openFileObjectStore(folder: string): Promise<ObjectStore> {
  const staging = join(folder, 'staging');
  await privateFolder(staging);
  const pathOf = (sha256: string) => join(folder, ...hashPath(sha256));

  return {
    ...filePartsIn(join(folder, 'parts')),

    async stage(source, limits) {
      const received = await receiveInto(staging, source, limits);
      return stagedObject(received, pathOf(received.sha256));
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

    async *objects() {
      for (const outer of await readdir(folder)) {
        if (!/^[0-9a-f]{2}$/.test(outer)) continue;
        for (const inner of await readdir(join(folder, outer))) {
          for (const sha256 of await readdir(join(folder, outer, inner))) {
            if (!/^[0-9a-f]{64}$/.test(sha256)) continue;
            const entry = await stat(join(folder, outer, inner, sha256)).catch(() => undefined);
            if (entry) yield { sha256, bytes: entry.size, keptAt: entry.mtime };
          }
        }
      }
    },

    sweepStaging: (olderThanMs) => removeOlder(staging, olderThanMs),

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

function stagedObject({ path: stagedPath, sha256, bytes }: Received, finalPath: string): StagedObject {
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
