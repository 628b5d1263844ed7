import type { JobData } from '@garboard/contract/jobs';
import { mark } from '@garboard/contract/photos';
import { usualPrintEdges } from '@garboard/contract/print-sizes';
import { HeicUnreadable } from '@garboard/core/files/decode-heic';
import { PictureDamaged } from '@garboard/core/files/inspect-picture';
import { keepObject } from '@garboard/core/files/keep-object';
import { enqueue } from '@garboard/core/outbox/enqueue';
import {
  deriveImages,
  derivePrints,
  readUpright,
  readUprightFirst,
} from '@garboard/core/photos/derive-images';
import { differenceHash } from '@garboard/core/photos/difference-hash';
import { inTransaction, type Prisma } from '@garboard/db/database';
import { NoRetryError } from '@garboard/platform/queue';
import type { Attempt, JobDeps } from '../job-deps.ts';

/**
 * Makes a photo's sizes. Doing it twice does no harm, and a photo that was turned or marked up again meanwhile is
 * left to the job which that edit asked for.
 */
export async function derivePhotoJob(
  deps: Pick<JobDeps, 'db' | 'store' | 'log'>,
  { firmId, photoId }: JobData<'photo.derive'>,
  { lastAttempt }: Attempt,
): Promise<void> {
  const photo = await inTransaction(deps.db, [firmId], (tx) =>
    tx.photo.findUnique({ where: { id: photoId } }),
  );
  if (photo?.state !== 'processing') return;
  const unchanged: Prisma.PhotoWhereInput = {
    id: photoId,
    state: 'processing',
    quarterTurns: photo.quarterTurns,
    marks: { equals: photo.marks as Prisma.InputJsonValue },
  };
  try {
    const path = await deps.store.localFile(photo.sha256);
    const marks = mark.array().parse(photo.marks);
    // No transaction is open while pictures are made: it would hold a connection for seconds.
    const read = photo.screenHash === null ? readUprightFirst : readUpright;
    const upright = await read(path, photo.mediaType, photo.quarterTurns);
    const dhash = await differenceHash(upright);
    const made = await deriveImages(deps.store, upright, ['screen', 'print', 'thumb'], marks);
    const prints = await derivePrints(deps.store, upright, usualPrintEdges, marks).catch(
      async (error: unknown) => {
        await Promise.all(Object.values(made).map((staged) => staged.discard()));
        throw error;
      },
    );
    const all = [...Object.values(made), ...prints.values()];
    const hashes = {
      screenHash: made.screen.sha256,
      printHash: made.print.sha256,
      thumbHash: made.thumb.sha256,
    };
    try {
      await inTransaction(deps.db, [firmId], async (tx) => {
        const won = await tx.photo.updateMany({
          where: unchanged,
          data: { ...hashes, dhash, problem: null, state: 'ready' },
        });
        if (won.count === 0) return;
        for (const staged of all) await keepObject(tx, staged);
        const before = await tx.photoPrint.findMany({ where: { photoId }, select: { sha256: true } });
        await tx.photoPrint.deleteMany({ where: { photoId } });
        await tx.photoPrint.createMany({
          data: [...prints].map(([edge, { sha256 }]) => ({ firmId, photoId, edge, sha256 })),
        });
        const shown = [photo.screenHash, photo.printHash, photo.thumbHash];
        const old = new Set([...shown, ...before.map((print) => print.sha256)]);
        for (const { sha256 } of all) old.delete(sha256);
        for (const sha256 of old) if (sha256) await enqueue(tx, 'object.collect', { sha256 });
      });
    } finally {
      await Promise.all(all.map((staged) => staged.discard()));
    }
  } catch (error) {
    deps.log.warn({ err: error, photoId, lastAttempt }, 'could not make the sizes of a photo');
    // The bytes won't change: what can't be decoded now never can.
    const hopeless = error instanceof HeicUnreadable || error instanceof PictureDamaged;
    if (lastAttempt || hopeless) {
      const problem = problemInWords(error);
      await inTransaction(deps.db, [firmId], (tx) =>
        tx.photo.updateMany({ where: unchanged, data: { state: 'failed', problem } }),
      );
    }
    if (hopeless) throw new NoRetryError(error.message);
    throw error;
  }
}

function problemInWords(error: unknown): string {
  if (error instanceof PictureDamaged) return error.message;
  return error instanceof HeicUnreadable
    ? 'This HEIC picture can’t be read. Export it as JPEG on the phone and upload that; the original is kept.'
    : 'The sizes of this picture could not be made. Upload it again; the original is kept.';
}
