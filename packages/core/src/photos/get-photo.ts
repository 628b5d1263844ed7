import type { Photo } from '@garboard/contract/photos';
import { isStaff } from '../access/policy.ts';
import type { Ctx } from '../context.ts';
import { loadPhoto } from './load-photo.ts';
import { presentPhoto, presentPhotoToParty } from './present-photo.ts';

/** A photo's record. @throws Refusal `not-found` */
export async function getPhoto(ctx: Ctx, id: string): Promise<Photo> {
  const photo = await loadPhoto(ctx, id);
  return isStaff(ctx.actor, photo) ? presentPhoto(photo) : presentPhotoToParty(photo);
}
