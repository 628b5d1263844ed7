import type { Photo } from '@garboard/contract/photos';
import type { Ctx } from '../context.ts';
import { loadPhoto } from './load-photo.ts';
import { presentPhoto } from './present-photo.ts';

/** A photo's record. @throws Refusal `not-found` */
export async function getPhoto(ctx: Ctx, id: string): Promise<Photo> {
  return presentPhoto(await loadPhoto(ctx, id));
}
