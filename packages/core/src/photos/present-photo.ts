import type { Mark, Photo } from '@garboard/contract/photos';
import type { Prisma } from '@garboard/db/database';

type PhotoRow = Prisma.PhotoGetPayload<object>;
type Derived = Pick<PhotoRow, 'id' | 'thumbHash' | 'screenHash' | 'printHash'>;

/** Addresses of a photo's sizes, each naming its content so that caches may keep it; null until made. */
export function imageAddresses(photo: Derived): Photo['images'] {
  const address = (size: string, hash: string | null) =>
    hash && `/v1/photos/${photo.id}/image?size=${size}&v=${hash}`;
  return {
    thumb: address('thumb', photo.thumbHash),
    screen: address('screen', photo.screenHash),
    print: address('print', photo.printHash),
  };
}

export function presentPhoto(row: PhotoRow): Photo {
  return {
    id: row.id,
    surveyId: row.surveyId,
    sha256: row.sha256,
    bytes: row.bytes,
    mediaType: row.mediaType,
    fileName: row.fileName,
    width: row.width,
    height: row.height,
    takenAt: row.takenAt?.toISOString() ?? null,
    caption: row.caption,
    marks: row.marks as Mark[],
    quarterTurns: row.quarterTurns,
    state: row.state as Photo['state'],
    images: imageAddresses(row),
    createdAt: row.createdAt.toISOString(),
    version: row.version,
  };
}

/**
 * A photo as a party to the survey sees it: without the firm's working words and marks. The caption as issued
 * stands with the finding that shows the photo, and the marks are in the picture.
 */
export function presentPhotoToParty(row: PhotoRow): Photo {
  return { ...presentPhoto(row), caption: '', marks: [] };
}
