import type { Photo } from '@garboard/contract/photos';
import { isStaff } from '../access/policy.ts';
import type { Ctx } from '../context.ts';
import { notFound } from '../problems.ts';
import { asIssued } from './issued-pictures.ts';
import { loadPhoto } from './load-photo.ts';
import { presentPhotos, presentPhotoToParty } from './present-photo.ts';

/** A photo's record. @throws Refusal `not-found` */
export async function getPhoto(ctx: Ctx, id: string): Promise<Photo> {
  const photo = await loadPhoto(ctx, id);
  if (!isStaff(ctx.actor, photo)) {
    const [issued = photo] = await asIssued(ctx, [photo]);
    return presentPhotoToParty(issued);
  }
  const [presented] = await presentPhotos(ctx, photo.surveyId, [photo]);
  if (!presented) throw notFound('photo');
  return presented;
}
