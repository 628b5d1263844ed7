import {
  type ReportSnapshot,
  reportSnapshot,
  type SnapshotChanges,
} from '@garboard/contract/report-snapshot';
import type { Ctx } from '../context.ts';
import { changesBetween } from './changes-between.ts';

type Full = ReportSnapshot & { kind: 'full' };

type Revised = Pick<ReportSnapshot, 'kind' | 'revision' | 'frozenAt' | 'preview'>;

/** The revisions of a document up to the one that is being made, which has no file yet; a draft is none. */
export async function revisionsUpTo(
  ctx: Ctx,
  { surveyId, kind, revision, frozenAt, preview }: Revised & { surveyId: string },
): Promise<ReportSnapshot['revisions']> {
  const earlier = await ctx.tx.report.findMany({
    where: { surveyId, kind, state: 'issued', revision: { lt: revision } },
    orderBy: { revision: 'asc' },
    select: { revision: true, issuedAt: true, sha256: true },
  });
  return [
    ...earlier.flatMap((r) =>
      r.revision !== null && r.issuedAt
        ? [{ revision: r.revision, issuedAt: r.issuedAt.toISOString(), sha256: r.sha256 }]
        : [],
    ),
    ...(preview ? [] : [{ revision, issuedAt: frozenAt, sha256: null }]),
  ];
}

/** What the full report differs in from the last one issued; null when there is none. */
export async function changesOf(ctx: Ctx, surveyId: string, after: Full): Promise<SnapshotChanges | null> {
  const last = await ctx.tx.report.findFirst({
    where: { surveyId, kind: 'full', state: 'issued' },
    orderBy: { revision: 'desc' },
    select: { snapshot: true },
  });
  if (!last) return null;
  const before = reportSnapshot.parse(last.snapshot);
  if (before.kind !== 'full')
    throw new Error(`A full report of survey ${surveyId} is frozen as ${before.kind}.`);
  const withdrawn = await ctx.tx.finding.findMany({
    where: { surveyId, state: 'withdrawn' },
    select: { id: true, withdrawnReason: true },
  });
  const reasons = new Map(withdrawn.map((f) => [f.id, f.withdrawnReason ?? '']));
  return changesBetween(before, after, reasons);
}
