import { actorId } from '../access/actor.ts';
import type { Ctx } from '../context.ts';
import { notFound } from '../problems.ts';
import { photoInclude } from './present-photo.ts';
import { visiblePhotos } from './visible-photos.ts';

const nobody = '00000000-0000-0000-0000-000000000000';

/** A photo with its survey as the actor stands to it. @throws Refusal `not-found` */
export async function loadPhoto(ctx: Ctx, photoId: string) {
  const photo = await ctx.tx.photo.findFirst({
    where: { AND: [{ id: photoId }, visiblePhotos(ctx.actor)] },
    include: {
      ...photoInclude,
      survey: { include: { parties: { where: { personId: actorId(ctx.actor) ?? nobody } } } },
    },
  });
  if (!photo) throw notFound('photo');
  return photo;
}
