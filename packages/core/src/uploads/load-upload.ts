import type { UploadRecord } from '@garboard/contract/uploads';
import type { Prisma } from '@garboard/db/database';
import { staffFirmIds } from '../access/actor.ts';
import type { Ctx } from '../context.ts';
import { notFound } from '../problems.ts';

export type UploadRow = Prisma.PhotoUploadGetPayload<object>;

/** An upload to one of the actor's own firms. @throws Refusal `not-found` */
export async function loadUpload(ctx: Ctx, id: string): Promise<UploadRow> {
  const row = await findUpload(ctx, id);
  if (!row) throw notFound('upload');
  return row;
}

/** The same, held until the transaction ends, so that of two parts or two endings one waits for the other. */
export async function lockUpload(ctx: Ctx, id: string): Promise<UploadRow> {
  await ctx.tx.$queryRaw`SELECT id FROM photo_uploads WHERE id = ${id}::uuid FOR UPDATE`;
  return loadUpload(ctx, id);
}

/** The same, or null. */
export async function findUpload(ctx: Ctx, id: string): Promise<UploadRow | null> {
  return ctx.tx.photoUpload.findFirst({ where: { id, firmId: { in: staffFirmIds(ctx.actor) } } });
}

export function presentUpload(row: UploadRow): UploadRecord {
  const { id, surveyId, received, bytes, photoId, problem } = row;
  return { id, surveyId, received, bytes, state: row.state as UploadRecord['state'], photoId, problem };
}
