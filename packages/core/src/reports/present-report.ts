import { snapshotChanges } from '@garboard/contract/report-snapshot';
import type { Report } from '@garboard/contract/reports';
import { groupedCode } from '@garboard/contract/verification-code';
import type { Prisma } from '@garboard/db/database';
import type { ReportKind, ReportState } from '@garboard/trade/vocabulary';
import type { Ctx } from '../context.ts';
import type { reportFacts } from './load-report.ts';

type ReportRow = Prisma.ReportGetPayload<{ select: typeof reportFacts }>;
interface Latest {
  id: string;
  revision: number;
  issuedAt: string;
}
/** The latest issued revision of each kind. */
export type LatestIssued = ReadonlyMap<string, Latest>;

/** The latest issued revision of each kind of a survey's reports, in one query. */
export async function latestIssued(ctx: Ctx, surveyId: string): Promise<LatestIssued> {
  const rows = await ctx.tx.report.findMany({
    where: { surveyId, state: 'issued' },
    distinct: ['kind'],
    orderBy: [{ kind: 'asc' }, { revision: 'desc' }],
    select: { id: true, kind: true, revision: true, issuedAt: true },
  });
  return new Map(
    rows.flatMap(({ id, kind, revision, issuedAt }) =>
      revision !== null && issuedAt ? [[kind, { id, revision, issuedAt: issuedAt.toISOString() }]] : [],
    ),
  );
}

export function presentReport(row: ReportRow, latest: LatestIssued): Report {
  const newest = latest.get(row.kind);
  const later = row.state === 'issued' && newest && newest.revision > (row.revision ?? 0) ? newest : null;
  return {
    id: row.id,
    surveyId: row.surveyId,
    kind: row.kind as ReportKind,
    revision: row.revision,
    state: row.state as ReportState,
    progress: row.progress,
    stage: row.stage,
    problem: row.problem,
    preview: row.preview,
    superseded: later !== null,
    supersededBy: later,
    changes: row.changes === null ? null : snapshotChanges.parse(row.changes),
    sha256: row.sha256,
    pages: row.pages,
    bytes: row.bytes,
    verificationCode: row.verificationCode && groupedCode(row.verificationCode),
    renderer: row.renderer,
    signedBy: row.signedBy,
    requestedAt: row.createdAt.toISOString(),
    requestedBy: row.requestedBy,
    issuedAt: row.issuedAt?.toISOString() ?? null,
  };
}
