import type { Ctx } from '../context.ts';

/** What of a photo changes when it is turned or marked up. */
interface Pictured {
  id: string;
  state: string;
  thumbHash: string | null;
  screenHash: string | null;
  printHash: string | null;
  width: number;
  height: number;
}

/**
 * Photos with the pictures that were issued, as parties see them: those of the last full report that shows each, or
 * of another document where none does. One of which no pictures were kept, as before they were, stays as it is.
 * One query for all.
 */
export async function asIssued<P extends Pictured>(ctx: Ctx, photos: readonly P[]): Promise<P[]> {
  const ids = photos.map((photo) => photo.id);
  const rows = await ctx.tx.$queryRaw<Pictured[]>`
    SELECT DISTINCT ON (rp.photo_id) rp.photo_id AS id, 'ready' AS state, rp.thumb_hash AS "thumbHash",
      rp.screen_hash AS "screenHash", rp.print_hash AS "printHash", rp.width, rp.height
    FROM report_photos AS rp JOIN reports AS r ON r.id = rp.report_id
    WHERE rp.photo_id = ANY (${ids}::uuid[]) AND r.state = 'issued'
    ORDER BY rp.photo_id, (r.kind = 'full') DESC, r.id DESC`;
  const kept = new Map(rows.flatMap((row) => (row.screenHash === null ? [] : [[row.id, row]])));
  return photos.map((photo) => ({ ...photo, ...kept.get(photo.id) }));
}
