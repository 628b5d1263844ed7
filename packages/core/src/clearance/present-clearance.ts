import type { Clearance } from '@garboard/contract/clearances';
import type { Prisma } from '@garboard/db/database';
import type { ClearanceState, Decision } from '@garboard/trade/vocabulary';

/** What presenting needs besides the row: its files in their order. */
export const withFiles = {
  files: { orderBy: { ordinal: 'asc' } },
} as const satisfies Prisma.ClearanceInclude;

type ClearanceRow = Prisma.ClearanceGetPayload<{ include: typeof withFiles }>;

function presentFile(file: ClearanceRow['files'][number]): Clearance['files'][number] {
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
  };
}

export function presentClearance(row: ClearanceRow): Clearance {
  return {
    id: row.id,
    findingId: row.findingId,
    state: row.state as ClearanceState,
    statement: row.statement,
    workDoneBy: row.workDoneBy,
    workDoneOn: row.workDoneOn.toISOString().slice(0, 10),
    sentBy: { name: row.sentByName, role: row.sentByRole },
    sentAt: row.sentAt.toISOString(),
    files: row.files.map(presentFile),
    decision: row.decision as Decision | null,
    reason: row.reason,
    decidedBy: row.decidedByName === null ? null : { name: row.decidedByName, role: row.decidedByRole ?? '' },
    decidedAt: row.decidedAt?.toISOString() ?? null,
  };
}
