import type { Report } from '@garboard/contract/reports';
import { groupedCode } from '@garboard/contract/verification';
import type { Prisma } from '@garboard/db/database';
import type { ReportKind, ReportState } from '@garboard/trade/vocabulary';
import type { Ctx } from '../context.ts';
import type { reportFacts } from './load-report.ts';

type ReportRow = Prisma.ReportGetPayload<{ select: typeof reportFacts }>;
/** The latest issued revision of each kind. */
export type LatestIssued = ReadonlyMap<string, number>;

/** The latest issued revision of each kind of a survey's reports, in one query. */
export async function latestIssued(ctx: Ctx, surveyId: string): Promise<LatestIssued> {
  const rows = await ctx.tx.report.groupBy({
    by: ['kind'],
    where: { surveyId, state: 'issued' },
    _max: { revision: true },
  });
  return new Map(rows.map((row) => [row.kind, row._max.revision ?? 0]));
}

export function presentReport(row: ReportRow, latest: LatestIssued): Report {
  return {
    id: row.id,
    surveyId: row.surveyId,
    kind: row.kind as ReportKind,
    revision: row.revision,
    state: row.state as ReportState,
    progress: row.progress,
    stage: row.stage,
    problem: row.problem,
    superseded: (latest.get(row.kind) ?? 0) > row.revision,
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
