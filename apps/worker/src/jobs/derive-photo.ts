import type { JobData } from '@garboard/contract/jobs';
import { mark } from '@garboard/contract/photos';
import { keepObject } from '@garboard/core/files/keep-object';
import { enqueue } from '@garboard/core/outbox/enqueue';
import { deriveImages } from '@garboard/core/photos/derive-images';
import { inTransaction, type Prisma } from '@garboard/db/database';
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
    const { quarterTurns } = photo;
    const marks = mark.array().parse(photo.marks);
    // No transaction is open while pictures are made: it would hold a connection for seconds.
    const made = await deriveImages(deps.store, path, ['screen', 'print', 'thumb'], { quarterTurns, marks });
    const hashes = {
      screenHash: made.screen.sha256,
      printHash: made.print.sha256,
      thumbHash: made.thumb.sha256,
    };
    try {
      await inTransaction(deps.db, [firmId], async (tx) => {
        const won = await tx.photo.updateMany({ where: unchanged, data: { ...hashes, state: 'ready' } });
        if (won.count === 0) return;
        for (const staged of Object.values(made)) await keepObject(tx, staged);
        const old = new Set([photo.screenHash, photo.printHash, photo.thumbHash]);
        for (const hash of Object.values(hashes)) old.delete(hash);
        for (const sha256 of old) if (sha256) await enqueue(tx, 'object.collect', { sha256 });
      });
    } finally {
      await Promise.all(Object.values(made).map((staged) => staged.discard()));
    }
  } catch (error) {
    deps.log.warn({ err: error, photoId, lastAttempt }, 'could not make the sizes of a photo');
    if (lastAttempt) {
      await inTransaction(deps.db, [firmId], (tx) =>
        tx.photo.updateMany({ where: unchanged, data: { state: 'failed' } }),
      );
    }
    throw error;
  }
}
