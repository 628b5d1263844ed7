import { Readable } from 'node:stream';
import { type Database, inTransaction } from '@garboard/db/database';
import { asOwner } from '@garboard/db/long-transactions';
import type { ObjectStore } from '@garboard/platform/object-store';
import { removeUnlessNamed } from '../files/keep-object.ts';
import { verifyRecord } from '../record/verify-record.ts';
import { ArchiveRefused } from './archive-refused.ts';
import { bringInRows } from './bring-in-rows.ts';
import { checkArchive } from './check-archive.ts';
import { whileStoreHeld } from './hold-store.ts';
import { openArchive } from './read-archive.ts';

export interface BroughtIn {
  firm: { id: string; name: string };
  rows: number;
  /** People who were here already. */
  known: number;
  files: number;
  fileBytes: number;
  /** Entries of the firm's record, which was worked again. */
  entries: number;
  /** What has to be set up anew, in sentences. */
  anew: string[];
}

/**
 * Brings a firm from an archive into this installation: all of it, or nothing. Everything is looked at first; then the
 * files are kept, then the rows, in one transaction that ends only when the firm's record is found unbroken.
 *
 * @param db opened with the address of the database's owner
 * @throws ArchiveRefused
 */
export async function bringIn(
  { db, store, onStage }: { db: Database; store: ObjectStore; onStage?: (words: string) => void },
  path: string,
): Promise<BroughtIn> {
  const archive = await openArchive(path);
  try {
    onStage?.('Looking at the archive');
    await checkArchive(archive);
    const { firm, files, leftOut, record } = archive.manifest;
    const kept: string[] = [];
    try {
      return await whileStoreHeld(db, `bringing in firm ${firm.id}`, async () => {
        onStage?.('Keeping files');
        for await (const file of archive.files()) {
          if (await store.has(file.sha256)) continue;
          kept.push(file.sha256);
          const staged = await store.stage(Readable.from(archive.read(file.entry)), { maxBytes: file.bytes });
          if (staged.sha256 !== file.sha256) throw new ArchiveRefused(`${file.entry} has changed meanwhile.`);
          await staged.keep();
        }
        onStage?.('Writing rows');
        const done = await asOwner(db, async (tx) => {
          const brought = await bringInRows(tx, archive);
          const checked = await verifyRecord((work) => work(tx), firm.id);
          if (checked.broken || checked.head !== record.head) {
            const at = checked.broken?.problem ?? 'It ends otherwise than the manifest says.';
            throw new ArchiveRefused(
              `The firm’s record in the archive is broken. ${at} Nothing was brought in.`,
            );
          }
          return { ...brought, entries: checked.entries };
        });
        const { files: count, fileBytes } = files;
        return {
          firm,
          ...done,
          files: count,
          fileBytes,
          anew: [...new Set(leftOut.map(({ reason }) => reason))],
        };
      });
    } catch (error) {
      // What nobody names goes again; what doesn't, because of somebody else's copy, goes with the next sweep.
      for (const sha256 of kept) {
        await inTransaction(db, [], (tx) => removeUnlessNamed(tx, store, sha256)).catch(() => undefined);
      }
      throw refusalOf(error);
    }
  } finally {
    archive.close();
  }
}

/** What the database says to a row that is here already, or refers to one that isn't there, as a sentence. */
function refusalOf(error: unknown): unknown {
  const text = error instanceof Error ? error.message : '';
  const clash = /duplicate key value violates unique constraint "?(\w+)/.exec(text)?.[1];
  if (clash) {
    return new ArchiveRefused(
      `Something of the firm is here already (${clash}), though the firm isn’t. Nothing was brought in; bring it into another installation.`,
    );
  }
  const lacking = /violates (?:foreign key|not-null|check) constraint "?(\w+)/.exec(text)?.[1];
  if (!lacking) return error;
  return new ArchiveRefused(
    `The archive is not whole: a row lacks what it refers to (${lacking}). Nothing was brought in; make the archive again.`,
  );
}
