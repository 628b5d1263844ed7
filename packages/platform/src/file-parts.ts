import { randomUUID } from 'node:crypto';
import { mkdir, open, readdir, readFile, rename, rm, stat } from 'node:fs/promises';
import { join } from 'node:path';
import { Readable } from 'node:stream';
import { type ObjectStore, PartsMissingError } from './object-store.ts';

type Parts = Pick<ObjectStore, 'putPart' | 'readParts' | 'dropParts' | 'sweepParts'>;

const partForm = /^\d{12}$/;

/** Keeps the parts of unfinished files in a folder: `<key>/<offset>`, one file a part. */
export function filePartsIn(folder: string): Parts {
  const folderOf = (key: string) => {
    if (!/^[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}$/.test(key))
      throw new Error(`Not a UUID: ${JSON.stringify(key)}.`);
    return join(folder, key);
  };

  return {
    async putPart(key, offset, bytes) {
      const home = folderOf(key);
      await mkdir(home, { recursive: true, mode: 0o700 });
      const path = join(home, String(offset).padStart(12, '0'));
      const draft = join(home, `draft-${randomUUID()}`);
      const file = await open(draft, 'wx', 0o600);
      try {
        await file.writeFile(bytes);
        await file.sync();
      } finally {
        await file.close();
      }
      await rename(draft, path);
    },

    readParts(key, bytes) {
      const home = folderOf(key);
      return Readable.from(read(key, home, bytes), { objectMode: false });
    },

    async dropParts(key) {
      await rm(folderOf(key), { recursive: true, force: true });
    },

    async sweepParts(olderThanMs) {
      const before = Date.now() - olderThanMs;
      let removed = 0;
      for (const name of await readdir(folder).catch(none)) {
        // A folder changes with each part that is put into it.
        const entry = await stat(join(folder, name)).catch(() => undefined);
        if (!entry || entry.mtimeMs > before) continue;
        await rm(join(folder, name), { recursive: true, force: true });
        removed++;
      }
      return removed;
    },
  };
}

async function* read(key: string, home: string, bytes: number): AsyncGenerator<Buffer> {
  const names = (await readdir(home).catch(none)).filter((name) => partForm.test(name)).sort();
  let at = 0;
  for (const name of names) {
    if (at >= bytes) break;
    if (Number(name) !== at) throw new PartsMissingError(key);
    const part = await readFile(join(home, name));
    at += part.length;
    yield part;
  }
  if (at !== bytes) throw new PartsMissingError(key);
}

/** Nothing was put there yet. */
function none(error: unknown): string[] {
  if (error instanceof Error && 'code' in error && error.code === 'ENOENT') return [];
  throw error;
}
