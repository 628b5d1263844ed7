import { Prisma } from '@garboard/db/database';
import type { Ctx } from '../context.ts';
import { enqueue } from '../outbox/enqueue.ts';

const none = { thumbHash: null, screenHash: null, printHash: null, width: null, height: null };

/**
 * Keeps with a report the pictures from which it is about to be made; whatever is done to the photos afterwards, its
 * readers see these. Another attempt begins anew. Photos whose sizes are still being made wait for
 * `keepMissingPictures`.
 */
export async function keepPictures(ctx: Ctx, reportId: string): Promise<void> {
  await collectPictures(ctx, { reportId });
  await ctx.tx.reportPhoto.updateMany({ where: { reportId }, data: none });
  await keep(ctx, reportId, Prisma.sql`p.state = 'ready'`);
}

/** Keeps the pictures of those photos whose sizes were made together with the report. */
export async function keepMissingPictures(ctx: Ctx, reportId: string): Promise<void> {
  await keep(ctx, reportId, Prisma.sql`p.screen_hash IS NOT NULL`);
}

/** Lets go of the photos of reports that are never issued. */
export async function dropPictures(ctx: Ctx, where: Prisma.ReportPhotoWhereInput): Promise<void> {
  await collectPictures(ctx, where);
  await ctx.tx.reportPhoto.deleteMany({ where });
}

async function keep(ctx: Ctx, reportId: string, fit: Prisma.Sql): Promise<void> {
  // Share locks hold up who would make the sizes anew until these are kept: the old ones are collected after that.
  await ctx.tx.$executeRaw`
    UPDATE report_photos AS shown
    SET thumb_hash = photo.thumb_hash, screen_hash = photo.screen_hash, print_hash = photo.print_hash,
        width = photo.width, height = photo.height
    FROM (
      SELECT p.* FROM photos AS p JOIN report_photos AS rp ON rp.photo_id = p.id
      WHERE rp.report_id = ${reportId}::uuid AND ${fit}
      ORDER BY p.id FOR SHARE OF p
    ) AS photo
    WHERE shown.report_id = ${reportId}::uuid AND shown.photo_id = photo.id AND shown.screen_hash IS NULL`;
}

/** Has the files removed that nothing else names once these rows no longer do. */
async function collectPictures(ctx: Ctx, where: Prisma.ReportPhotoWhereInput): Promise<void> {
  const rows = await ctx.tx.reportPhoto.findMany({ where: { ...where, screenHash: { not: null } } });
  const hashes = new Set(rows.flatMap((row) => [row.thumbHash, row.screenHash, row.printHash]));
  for (const sha256 of hashes) if (sha256) await enqueue(ctx.tx, 'object.collect', { sha256 });
}
