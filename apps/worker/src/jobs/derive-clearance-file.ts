import type { JobData } from '@garboard/contract/jobs';
import { keepObject } from '@garboard/core/files/keep-object';
import { deriveImages, readUpright } from '@garboard/core/photos/derive-images';
import { inTransaction } from '@garboard/db/database';
import type { JobDeps } from '../job-deps.ts';

/** Makes the sizes of a picture sent as evidence; doing it twice does no harm. */
export async function deriveClearanceFileJob(
  deps: Pick<JobDeps, 'db' | 'store'>,
  { firmId, fileId }: JobData<'clearance-file.derive'>,
): Promise<void> {
  const file = await inTransaction(deps.db, [firmId], (tx) =>
    tx.clearanceFile.findUnique({ where: { id: fileId } }),
  );
  if (!file?.mediaType.startsWith('image/') || file.screenHash) return;
  const path = await deps.store.localFile(file.sha256);
  const upright = await readUpright(path, file.mediaType, 0);
  const made = await deriveImages(deps.store, upright, ['screen', 'thumb'], []);
  try {
    await inTransaction(deps.db, [firmId], async (tx) => {
      const won = await tx.clearanceFile.updateMany({
        where: { id: fileId, screenHash: null },
        data: { screenHash: made.screen.sha256, thumbHash: made.thumb.sha256 },
      });
      if (won.count === 0) return;
      await keepObject(tx, made.screen);
      await keepObject(tx, made.thumb);
    });
  } finally {
    await Promise.all([made.screen.discard(), made.thumb.discard()]);
  }
}
