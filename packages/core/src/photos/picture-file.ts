import type { ServedFile } from '../files/served-file.ts';
import { Refusal } from '../problems.ts';

interface Picture {
  fileName: string;
  state: string;
  thumbHash: string | null;
  screenHash: string | null;
  printHash: string | null;
}

/** The stored file of a size made of a photo. @throws Refusal `not-found`, also while the size is being made */
export function pictureFile(
  photo: Picture,
  size: 'thumb' | 'screen' | 'print',
): Omit<ServedFile, 'immutable'> {
  const sha256 = { thumb: photo.thumbHash, screen: photo.screenHash, print: photo.printHash }[size];
  if (!sha256) {
    const detail =
      photo.state === 'failed'
        ? 'This size could not be made. The survey firm still has the original.'
        : 'This size is still being prepared. Ask again in a moment.';
    throw new Refusal('not-found', detail);
  }
  const fileName = `${photo.fileName.replace(/\.[a-z0-9]{1,5}$/i, '')}-${size}.jpg`;
  return { sha256, mediaType: 'image/jpeg', fileName, download: false };
}
