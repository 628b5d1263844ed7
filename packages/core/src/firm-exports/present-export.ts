import type { FirmExport } from '@garboard/contract/archive';
import type { Prisma } from '@garboard/db/database';

/** A making of an archive as its firm's principal sees it. */
export function presentExport(row: Prisma.FirmExportGetPayload<object>): FirmExport {
  return {
    ...{ id: row.id, state: row.state as FirmExport['state'], progress: row.progress, stage: row.stage },
    ...{ problem: row.problem, bytes: row.bytes === null ? null : Number(row.bytes), sha256: row.sha256 },
    ...{ askedBy: row.askedBy, askedAt: row.askedAt.toISOString() },
    ...{ readyAt: row.readyAt?.toISOString() ?? null, keptUntil: row.keptUntil?.toISOString() ?? null },
  };
}
