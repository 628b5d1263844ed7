import type { Verification } from '@garboard/contract/verification';
import { verifiedDocument } from '@garboard/db/special-reads';
import type { ReportKind } from '@garboard/trade/vocabulary';
import type { Ctx } from '../context.ts';

/**
 * Whether a document with this code, or this very file, was issued here and still stands. For anybody: nothing of
 * the contents is told, not even the vessel.
 */
export async function verifyDocument(
  ctx: Pick<Ctx, 'tx'>,
  by: { code: string } | { sha256: string },
): Promise<Verification> {
  const row = await verifiedDocument(ctx.tx, by);
  if (!row) return { verdict: 'unknown', document: null };
  const later =
    row.later_revision !== null && row.later_issued_at !== null
      ? { revision: row.later_revision, issuedAt: row.later_issued_at.toISOString() }
      : null;
  return {
    verdict: later ? 'superseded' : 'genuine',
    document: {
      firmName: row.firm_name,
      kind: row.kind as ReportKind,
      revision: row.revision,
      issuedAt: row.issued_at.toISOString(),
      sha256: row.sha256,
      supersededBy: later,
    },
  };
}
