import type { Prisma } from '@garboard/db/database';
import { newId } from '@garboard/db/ids';
import { actorId } from '../access/actor.ts';
import type { Ctx } from '../context.ts';
import { recordEvent } from '../events/record-event.ts';
import { keepObjects } from '../files/keep-object.ts';
import type { AcceptedFile } from '../files/received-file.ts';
import { enqueueAll } from '../outbox/enqueue.ts';

export interface NewPhoto {
  file: AcceptedFile;
  /** The photo's id when its client made one. */
  id?: string;
  caption?: string;
}

export interface AddPhoto extends NewPhoto {
  survey: { id: string; firmId: string };
}

/** A photo of the survey, and whether it wasn't there before. */
export interface AddedPhoto {
  id: string;
  fresh: boolean;
}

/** Adds one photo: see `addPhotos`. */
export async function addPhoto(ctx: Ctx, { survey, ...photo }: AddPhoto): Promise<AddedPhoto> {
  const [added] = await addPhotos(ctx, survey, [photo]);
  return added as AddedPhoto;
}

/**
 * Adds photos to a survey whose row is locked, and asks for their sizes. A picture that the survey has already, or
 * that comes twice, stays one photo. The number of queries doesn't depend on how many there are.
 */
export async function addPhotos(
  ctx: Ctx,
  survey: AddPhoto['survey'],
  photos: readonly NewPhoto[],
): Promise<AddedPhoto[]> {
  const existing = await ctx.tx.photo.findMany({
    where: { surveyId: survey.id, sha256: { in: photos.map(({ file }) => file.staged.sha256) } },
    select: { id: true, sha256: true },
  });
  const idOf = new Map(existing.map(({ id, sha256 }) => [sha256, id]));
  const fresh: (NewPhoto & { id: string })[] = [];
  const added = photos.map((photo): AddedPhoto => {
    const { sha256 } = photo.file.staged;
    const known = idOf.get(sha256);
    if (known) return { id: known, fresh: false };
    const id = photo.id ?? newId();
    idOf.set(sha256, id);
    fresh.push({ ...photo, id });
    return { id, fresh: true };
  });
  if (fresh.length === 0) return added;
  const { firmId } = survey;
  await ctx.tx.photo.createMany({ data: fresh.map((photo) => rowOf(ctx, survey, photo)) });
  await keepObjects(
    ctx.tx,
    fresh.map(({ file }) => file.staged),
  );
  await enqueueAll(
    ctx.tx,
    'photo.derive',
    fresh.map(({ id }) => ({ firmId, photoId: id })),
  );
  return added;
}

function rowOf(
  ctx: Ctx,
  survey: AddPhoto['survey'],
  { file, id, caption = '' }: NewPhoto & { id: string },
): Prisma.PhotoCreateManyInput {
  if (!file.size) throw new Error(`A document came where only pictures are taken: ${file.mediaType}`);
  return {
    id,
    firmId: survey.firmId,
    surveyId: survey.id,
    sha256: file.staged.sha256,
    bytes: file.staged.bytes,
    mediaType: file.mediaType,
    fileName: file.name,
    width: file.size.width,
    height: file.size.height,
    takenAt: file.takenAt,
    caption,
    orderKey: `${(file.takenAt ?? ctx.clock()).toISOString()}_${id}`,
    uploadedById: actorId(ctx.actor),
    createdAt: ctx.clock(),
  };
}

/** Counts added photos on the survey and writes them into its history. */
export async function countAdded(
  ctx: Ctx,
  survey: { id: string; firmId: string },
  { added, role }: { added: number; role: string },
): Promise<void> {
  if (added === 0) return;
  await ctx.tx.survey.update({ where: { id: survey.id }, data: { photoCount: { increment: added } } });
  const where = { firmId: survey.firmId, surveyId: survey.id };
  await recordEvent(ctx, { ...where, kind: 'photos.added', role, data: { count: added } });
}
