import type { Photo } from '@garboard/contract/photos';

/** While the worker is still making sizes, a list looks again soon. */
export const whilePreparing = (photos: Photo[]) =>
  photos.some((photo) => photo.state === 'processing') ? 2000 : false;
