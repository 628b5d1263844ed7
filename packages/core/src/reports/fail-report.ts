import { type ReportKind, reportKindLabels } from '@garboard/trade/vocabulary';
import type { Ctx } from '../context.ts';
import { recordEvent } from '../events/record-event.ts';
import { reportFacts } from './load-report.ts';
import { requesterOf } from './requester.ts';

export interface FailReport {
  reportId: string;
  claim: string;
  /** Why, in words for the surveyor. */
  problem: string;
}

/** Gives a report up after its last attempt. False when another attempt has taken it over. */
export async function failReport(ctx: Ctx, { reportId, claim, problem }: FailReport): Promise<boolean> {
  const mine = await ctx.tx.report.updateMany({
    where: { id: reportId, claim, state: 'rendering' },
    data: { state: 'failed', problem, stage: 'Could not be made' },
  });
  if (mine.count === 0) return false;
  const report = await ctx.tx.report.findUniqueOrThrow({ where: { id: reportId }, select: reportFacts });
  const { firmId, surveyId, kind, revision, preview } = report;
  if (preview) return true;
  await recordEvent(ctx, {
    firmId,
    surveyId,
    reportId,
    kind: 'report.failed',
    ...(await requesterOf(ctx, report)),
    data: { label: reportKindLabels[kind as ReportKind], revision, problem },
  });
  return true;
}
