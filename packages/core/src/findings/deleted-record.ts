import type { Prisma } from '@garboard/db/database';
import { Prisma as sql } from '@garboard/db/database';
import type { Ctx } from '../context.ts';

/** How long a deleted draft can be brought back, in days. */
export const keptDays = 30;
const dayMs = 24 * 60 * 60_000;

/** Drafts deleted before this are gone for good. */
export const goneBefore = (now: Date): Date => new Date(now.getTime() - keptDays * dayMs);

/** The day on which a draft goes for good, in UTC. */
export const removedOn = (deletedAt: Date): string =>
  new Date(deletedAt.getTime() + keptDays * dayMs).toISOString().slice(0, 10);

type Row = Prisma.FindingGetPayload<object>;

/** A deleted finding as JSON: its row, its photos in order, its worksheets. */
interface DeletedRecord {
  finding: Omit<Row, 'createdAt' | 'updatedAt' | 'dueOn' | 'issued'> & { createdAt: string };
  photoIds: string[];
  worksheetIds: string[];
}

/** Everything of a draft that deleting it would lose. */
export async function recordOf(ctx: Ctx, id: string): Promise<Prisma.InputJsonObject | null> {
  const row = await ctx.tx.finding.findUnique({
    where: { id },
    include: { photos: { orderBy: { ordinal: 'asc' } }, worksheets: { select: { id: true } } },
  });
  if (!row) return null;
  const { photos, worksheets, updatedAt: _, dueOn: __, issued: ___, ...finding } = row;
  const record: DeletedRecord = {
    finding: { ...finding, createdAt: finding.createdAt.toISOString() },
    photoIds: photos.map((p) => p.photoId),
    worksheetIds: worksheets.map((w) => w.id),
  };
  return record as unknown as Prisma.InputJsonObject;
}

/** Writes a deleted draft back under the number given, with those of its photos and worksheets that still are there. */
export async function writeBack(
  ctx: Ctx,
  deleted: { id: string; firmId: string; surveyId: string; record: unknown; number: number },
): Promise<void> {
  const { finding, photoIds, worksheetIds } = deleted.record as DeletedRecord;
  const { firmId, surveyId } = deleted;
  const position = finding.position ?? sql.DbNull;
  // Drafts deleted before there were items have none.
  const json = { items: finding.items ?? [], itemStates: {} };
  await ctx.tx.finding.create({
    data: { ...finding, ...json, position, number: deleted.number, createdAt: new Date(finding.createdAt) },
  });
  const there = await ctx.tx.photo.findMany({
    where: { id: { in: photoIds }, surveyId },
    select: { id: true },
  });
  const still = new Set(there.map((photo) => photo.id));
  await ctx.tx.findingPhoto.createMany({
    data: photoIds
      .filter((photoId) => still.has(photoId))
      .map((photoId, ordinal) => ({ firmId, findingId: deleted.id, photoId, ordinal })),
  });
  // One that was given to another finding meanwhile stays there.
  await ctx.tx.worksheet.updateMany({
    where: { id: { in: worksheetIds }, surveyId, findingId: null },
    data: { findingId: deleted.id },
  });
}
