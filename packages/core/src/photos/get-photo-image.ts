import type { imageQuery } from '@garboard/contract/photos';
import type { z } from 'zod';
import { authorise, isStaff } from '../access/policy.ts';
import type { Ctx } from '../context.ts';
import type { ServedFile } from '../files/served-file.ts';
import { asIssued } from './issued-pictures.ts';
import { loadPhoto } from './load-photo.ts';
import { pictureFile } from './picture-file.ts';

/**
 * Which stored file is a photo's size: for the firm as it is now, for all others as it was issued. The original holds
 * where and with what it was taken, so only the firm gets it.
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
  const [shown = photo] = isStaff(ctx.actor, photo) ? [] : await asIssued(ctx, [photo]);
  const file = pictureFile(shown, query.size);
  return { ...file, immutable: query.v === file.sha256 };
}
