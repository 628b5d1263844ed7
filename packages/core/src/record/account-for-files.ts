import { unnamedAmong } from '@garboard/db/special-reads';
import type { ObjectStore } from '@garboard/platform/object-store';
import { type NamedFile, namedFiles } from './named-files.ts';
import type { Reads } from './verify-record.ts';

export interface FileAccount {
  /** Mentions of files in rows that were looked up. */
  named: number;
  /** Files that rows name and the store lacks; the first hundred of them. */
  missing: NamedFile[];
  missingCount: number;
  /** Objects of the store, those that no row names, and the bytes of these. */
  objects: number;
  unnamed: number;
  unnamedBytes: number;
}

const asked = 16;
const listed = 1_000;
const shown = 100;

/**
 * Sets rows and store against each other, both ways, without reading a file: does every file that a row names exist,
 * and is every object named. The reads must see all firms. What is uploaded meanwhile may count as unnamed.
 */
export async function accountForFiles(read: Reads, store: ObjectStore): Promise<FileAccount> {
  const account: FileAccount = {
    ...{ named: 0, missing: [], missingCount: 0 },
    ...{ objects: 0, unnamed: 0, unnamedBytes: 0 },
  };
  for await (const files of namedFiles(read)) {
    for (let at = 0; at < files.length; at += asked) {
      const some = files.slice(at, at + asked);
      const there = await Promise.all(some.map(({ sha256 }) => store.has(sha256)));
      const gone = some.filter((_, i) => !there[i]);
      account.named += some.length;
      account.missingCount += gone.length;
      account.missing.push(...gone.slice(0, shown - account.missing.length));
    }
  }
  let batch = new Map<string, number>();
  const settle = async () => {
    const unnamed = batch.size > 0 ? await read((tx) => unnamedAmong(tx, [...batch.keys()])) : [];
    account.unnamed += unnamed.length;
    for (const sha256 of unnamed) account.unnamedBytes += batch.get(sha256) ?? 0;
    batch = new Map();
  };
  for await (const { sha256, bytes } of store.objects()) {
    account.objects += 1;
    batch.set(sha256, bytes);
    if (batch.size >= listed) await settle();
  }
  await settle();
  return account;
}
