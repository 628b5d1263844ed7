import { mark } from '@garboard/contract/photos';
import { keepObject } from '@garboard/core/files/keep-object';
import { derivePrints, readUpright } from '@garboard/core/photos/derive-images';
import type { Prisma } from '@garboard/db/database';
import type { JobDeps } from '../job-deps.ts';
import type { Within } from './gather-photos.ts';

/**
 * Makes a print of a photo for a size of place that was not foreseen at upload, and keeps it for the next document.
 *
 * @returns its hash; null when the photo is not ready or was changed meanwhile.
 */
export async function makePrint(
  deps: Pick<JobDeps, 'store'>,
  { within, photoId, edge }: { within: Within; photoId: string; edge: number },
): Promise<string | null> {
  const photo = await within((ctx) => ctx.tx.photo.findUnique({ where: { id: photoId } }));
  if (photo?.state !== 'ready') return null;
  const path = await deps.store.localFile(photo.sha256);
  const upright = await readUpright(path, photo.mediaType, photo.quarterTurns);
  const prints = await derivePrints(deps.store, upright, [edge], mark.array().parse(photo.marks));
  const staged = prints.get(edge);
  if (!staged) throw new Error(`No print of ${edge} pixels was made.`);
  const { sha256 } = staged;
  try {
    return await within(async ({ tx }) => {
      const unchanged = await tx.photo.findFirst({
        where: {
          id: photoId,
          state: 'ready',
          quarterTurns: photo.quarterTurns,
          marks: { equals: photo.marks as Prisma.InputJsonValue },
        },
        select: { firmId: true },
      });
      if (!unchanged) return null;
      await keepObject(tx, staged);
      await tx.photoPrint.upsert({
        where: { photoId_edge: { photoId, edge } },
        create: { firmId: unchanged.firmId, photoId, edge, sha256 },
        update: { sha256 },
      });
      return sha256;
    });
  } finally {
    await staged.discard();
  }
}
