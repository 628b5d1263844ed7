import type { Mark, Photo } from '@garboard/contract/photos';
import type { Prisma } from '@garboard/db/database';
import type { Ctx } from '../context.ts';
import { thumbSize } from './derive-images.ts';
import { groupByLikeness } from './likeness.ts';

/** What is read with a photo so that it can be presented. */
export const photoInclude = {
  before: { include: { survey: { select: { number: true } } } },
} satisfies Prisma.PhotoInclude;

type PhotoRow = Prisma.PhotoGetPayload<{ include: typeof photoInclude }>;
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

/** What every view of a photo shows: when and what it is, its sizes and where they are. */
export function presentPicture(row: Omit<PhotoRow, 'before'>) {
  return {
    id: row.id,
    surveyId: row.surveyId,
    takenAt: row.takenAt?.toISOString() ?? null,
    caption: row.caption,
    width: row.width,
    height: row.height,
    ...thumbSize(row.width, row.height),
    state: row.state as Photo['state'],
    images: imageAddresses(row),
  };
}

function presentPhoto(row: PhotoRow, likeness: string | null): Photo {
  return {
    ...presentPicture(row),
    sha256: row.sha256,
    bytes: row.bytes,
    mediaType: row.mediaType,
    fileName: row.fileName,
    marks: row.marks as Mark[],
    quarterTurns: row.quarterTurns,
    problem: row.problem,
    dhash: row.dhash,
    likeness,
    beforePhotoId: row.beforePhotoId,
    before: row.before && { ...presentPicture(row.before), surveyNumber: row.before.survey.number },
    createdAt: row.createdAt.toISOString(),
    version: row.version,
  };
}

/**
 * Photos of one survey as its firm sees them, in the order they were taken; near-duplicates are looked for among all
 * photos of the survey.
 *
 * @param whole whether these are all of them, so that no others need be read
 */
export async function presentPhotos(
  ctx: Ctx,
  surveyId: string,
  rows: readonly PhotoRow[],
  whole = false,
): Promise<Photo[]> {
  const alone = whole || rows.every((row) => row.dhash === null);
  const hashed = alone
    ? rows
    : await ctx.tx.photo.findMany({
        where: { surveyId, dhash: { not: null } },
        orderBy: { orderKey: 'asc' },
        select: { id: true, dhash: true },
      });
  const likeness = groupByLikeness(hashed);
  return rows.map((row) => presentPhoto(row, likeness.get(row.id) ?? null));
}

/**
 * A photo as a party to the survey sees it: without the firm's working words and marks, and without what of other
 * surveys or pictures it is compared with. The caption as issued stands with the finding that shows the photo, and
 * the marks are in the picture.
 */
export function presentPhotoToParty(row: PhotoRow): Photo {
  const apart = { problem: null, dhash: null, beforePhotoId: null, before: null };
  return { ...presentPhoto(row, null), ...apart, caption: '', marks: [] };
}
