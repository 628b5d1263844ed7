import { ownParties } from '../access/scopes.ts';
import type { Ctx } from '../context.ts';
import { notFound } from '../problems.ts';
import { photoInclude } from './present-photo.ts';
import { visiblePhotos } from './visible-photos.ts';

/** A photo with its survey as the actor stands to it. @throws Refusal `not-found` */
export async function loadPhoto(ctx: Ctx, photoId: string) {
  const photo = await ctx.tx.photo.findFirst({
    where: { AND: [{ id: photoId }, await visiblePhotos(ctx)] },
    include: {
      ...photoInclude,
      survey: { include: { parties: { where: ownParties(ctx.actor) } } },
    },
  });
  if (!photo) throw notFound('photo');
  return photo;
}
