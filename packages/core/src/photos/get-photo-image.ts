import type { imageQuery } from '@garboard/contract/photos';
import type { z } from 'zod';
import { authorise } from '../access/policy.ts';
import type { Ctx } from '../context.ts';
import type { ServedFile } from '../files/served-file.ts';
import { Refusal } from '../problems.ts';
import { loadPhoto } from './load-photo.ts';

/**
 * Which stored file is a photo's size. The original holds where and with what it was taken, so only the firm gets it.
 *
 * @throws Refusal `not-found`, also while the size is being made; `not-allowed`
 */
export async function getPhotoImage(
  ctx: Ctx,
  { id, query }: { id: string; query: z.output<typeof imageQuery> },
): Promise<ServedFile> {
  const photo = await loadPhoto(ctx, id);
  if (query.size === 'original') {
    authorise(
      ctx.actor,
      photo.survey,
      'photo.original.read',
      'Originals stay with the survey firm; ask for size=screen.',
    );
    const { sha256, mediaType, fileName } = photo;
    return { sha256, mediaType, fileName, immutable: query.v === sha256, download: false };
  }
  const hash = { thumb: photo.thumbHash, screen: photo.screenHash, print: photo.printHash }[query.size];
  if (!hash) {
    const detail =
      photo.state === 'failed'
        ? 'This size could not be made. The survey firm still has the original.'
        : 'This size is still being prepared. Ask again in a moment.';
    throw new Refusal('not-found', detail);
  }
  const fileName = `${photo.fileName.replace(/\.[a-z0-9]{1,5}$/i, '')}-${query.size}.jpg`;
  return { sha256: hash, mediaType: 'image/jpeg', fileName, immutable: query.v === hash, download: false };
}
