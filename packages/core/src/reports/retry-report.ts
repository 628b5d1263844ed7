import type { Report } from '@garboard/contract/reports';
import { type ReportKind, reportKindLabels } from '@garboard/trade/vocabulary';
import { authorise } from '../access/policy.ts';
import type { Ctx } from '../context.ts';
import { recordEvent } from '../events/record-event.ts';
import { enqueue } from '../outbox/enqueue.ts';
import { wrongState } from '../problems.ts';
import { lockSurvey } from '../surveys/load-survey.ts';
import { getReport } from './get-report.ts';
import { loadReport } from './load-report.ts';

/**
 * Tries again to make a report that failed, from the same frozen snapshot.
 *
 * @throws Refusal `not-found`, `not-allowed`; `wrong-state` when it has not failed or a newer one was asked for.
 */
export async function retryReport(ctx: Ctx, reportId: string): Promise<Report> {
  const report = await loadReport(ctx, reportId);
  const role = report.preview
    ? authorise(ctx.actor, report.survey, 'report.preview', 'Only the survey firm makes drafts.')
    : authorise(
        ctx.actor,
        report.survey,
        'report.issue',
        'Reports and letters are issued by a surveyor or principal of the survey firm.',
      );
  await lockSurvey(ctx, report.surveyId);
  const { firmId, surveyId, kind, revision } = report;
  // What it says is older than what the newer one says, and would take its place in the findings.
  // One that gave its number up was asked for anew.
  const newer =
    !report.preview &&
    (revision === null ||
      (await ctx.tx.report.count({
        where: { surveyId, kind, revision: { gt: revision }, state: { not: 'failed' } },
      })) > 0);
  if (newer) throw wrongState('A newer revision has been asked for since. Use that one.');
  const queued = await ctx.tx.report.updateMany({
    where: { id: reportId, state: 'failed' },
    data: {
      state: 'queued',
      progress: 0,
      stage: 'Waiting for its turn',
      problem: null,
      claim: null,
      heartbeatAt: ctx.clock(),
    },
  });
  if (queued.count === 0) throw wrongState('Only a report that could not be made can be tried again.');
  if (!report.preview) {
    const data = { label: reportKindLabels[kind as ReportKind], revision };
    await recordEvent(ctx, { firmId, surveyId, reportId, kind: 'report.requested', role, data });
  }
  await enqueue(ctx.tx, 'report.render', { firmId, reportId });
  return getReport(ctx, reportId);
}
