import type { Clearance, CoveredItem } from '@garboard/contract/clearances';
import type { SnapshotFinding } from '@garboard/contract/report-snapshot';
import type { Prisma } from '@garboard/db/database';
import type { ClearanceState, Decision } from '@garboard/trade/vocabulary';
import type { WorksheetResult } from '@garboard/trade/worksheets/core/evaluate';
import { isStaff } from '../access/policy.ts';
import type { Ctx } from '../context.ts';
import { asIssued } from '../photos/issued-pictures.ts';
import { imageAddresses } from '../photos/present-photo.ts';
import { dayOf } from './extension-rows.ts';

/** What presenting needs besides the row: its files in their order. */
export const withFiles = {
  files: { orderBy: { ordinal: 'asc' } },
} as const satisfies Prisma.ClearanceInclude;

export type ClearanceRow = Prisma.ClearanceGetPayload<{ include: typeof withFiles }>;
type Answered = NonNullable<Clearance['files'][number]['before']>;

/** What of its finding the evidence is shown with. */
interface ItsFinding {
  firmId: string;
  issued: unknown;
}

/** Evidence for one finding; the photos that it answers come in one query for all. */
export async function presentClearances(
  ctx: Ctx,
  rows: readonly ClearanceRow[],
  finding: ItsFinding,
): Promise<Clearance[]> {
  const answered = await answeredPhotos(ctx, rows, finding);
  return rows.map((row) => ({
    id: row.id,
    findingId: row.findingId,
    state: row.state as ClearanceState,
    statement: row.statement,
    workDoneBy: row.workDoneBy,
    workDoneOn: row.workDoneOn.toISOString().slice(0, 10),
    revision: row.revision,
    items: row.items as unknown as CoveredItem[],
    worksheet: row.worksheet as unknown as WorksheetResult | null,
    reInspectionId: row.reInspectionId,
    sentBy: { name: row.sentByName, role: row.sentByRole },
    sentAt: row.sentAt.toISOString(),
    files: row.files.map((file) => presentFile(file, answered)),
    decision: row.decision as Decision | null,
    reason: row.reason,
    limit: row.limit,
    limitUntil: dayOf(row.limitUntil),
    decidedBy: row.decidedByName === null ? null : { name: row.decidedByName, role: row.decidedByRole ?? '' },
    decidedAt: row.decidedAt?.toISOString() ?? null,
  }));
}

/** One piece of evidence. */
export async function presentClearance(ctx: Ctx, row: ClearanceRow, finding: ItsFinding): Promise<Clearance> {
  const [clearance] = await presentClearances(ctx, [row], finding);
  return clearance as Clearance;
}

/** The photos of the finding that files answer, by id; outside the firm as they were issued. */
async function answeredPhotos(
  ctx: Ctx,
  rows: readonly ClearanceRow[],
  finding: ItsFinding,
): Promise<Map<string, Answered>> {
  const ids = rows.flatMap((row) => row.files.flatMap((file) => file.beforePhotoId ?? []));
  if (ids.length === 0) return new Map();
  const photos = await ctx.tx.photo.findMany({ where: { id: { in: ids } } });
  const shown = isStaff(ctx.actor, finding) ? photos : await asIssued(ctx, photos);
  const captions = new Map(
    (finding.issued as SnapshotFinding | null)?.photos.map((photo) => [photo.id, photo.caption]),
  );
  return new Map(
    shown.map((photo) => {
      const { thumb, screen } = imageAddresses(photo);
      const caption = captions.get(photo.id) ?? photo.caption;
      return [photo.id, { photoId: photo.id, caption, images: { thumb, screen } }];
    }),
  );
}

function presentFile(
  file: ClearanceRow['files'][number],
  answered: ReadonlyMap<string, Answered>,
): Clearance['files'][number] {
  const { id, fileName, mediaType, bytes, sha256, width, height } = file;
  const address = `/v1/clearances/${file.clearanceId}/files/${id}`;
  const picture = mediaType.startsWith('image/');
  return {
    id,
    fileName,
    mediaType,
    bytes,
    sha256,
    width,
    height,
    url: picture ? `${address}?size=screen` : address,
    thumbUrl: picture && file.thumbHash ? `${address}?size=thumb` : null,
    before: (file.beforePhotoId && answered.get(file.beforePhotoId)) || null,
  };
}
