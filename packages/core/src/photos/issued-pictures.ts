import type { ReadCtx } from '../context.ts';

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
export async function asIssued<P extends Pictured>(ctx: ReadCtx, photos: readonly P[]): Promise<P[]> {
  const ids = photos.map((photo) => photo.id);
  const rows = await ctx.tx.$queryRaw<Pictured[]>`
    SELECT DISTINCT ON (photo_id) photo_id AS id, 'ready' AS state, thumb_hash AS "thumbHash",
      screen_hash AS "screenHash", print_hash AS "printHash", width, height
    FROM issued_pictures
    WHERE photo_id = ANY (${ids}::uuid[])
    ORDER BY photo_id, (kind = 'full') DESC, report_id DESC`;
  const kept = new Map(rows.flatMap((row) => (row.screenHash === null ? [] : [[row.id, row]])));
  return photos.map((photo) => ({ ...photo, ...kept.get(photo.id) }));
}
