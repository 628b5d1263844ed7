import { isStaff, may } from '../access/policy.ts';
import { ownParties, visibleSurveys } from '../access/scopes.ts';
import type { Ctx } from '../context.ts';
import { notFound } from '../problems.ts';

/** Everything of a report but its snapshot, which is large. */
export const reportFacts = {
  id: true,
  firmId: true,
  surveyId: true,
  kind: true,
  revision: true,
  preview: true,
  changes: true,
  state: true,
  progress: true,
  stage: true,
  problem: true,
  sha256: true,
  pages: true,
  bytes: true,
  verificationCode: true,
  renderer: true,
  signedBy: true,
  requestedById: true,
  requestedBy: true,
  createdAt: true,
  issuedAt: true,
} as const;

/**
 * A report as the actor stands to its survey: staff see every one, drafts too; parties to whom it was released only what was
 * issued. For all others, the yard among them, there is no such report.
 *
 * @throws Refusal `not-found`
 */
export async function loadReport(ctx: Ctx, reportId: string) {
  const report = await ctx.tx.report.findFirst({
    where: { id: reportId, survey: visibleSurveys(ctx.actor) },
    select: {
      ...reportFacts,
      survey: {
        select: {
          firmId: true,
          number: true,
          clearanceDecidedBy: true,
          vessel: { select: { name: true } },
          parties: { where: ownParties(ctx.actor) },
        },
      },
    },
  });
  if (!report) throw notFound('report');
  const shown =
    isStaff(ctx.actor, report.survey) ||
    (report.state === 'issued' && may(ctx.actor, report.survey, 'report.read'));
  if (!shown) throw notFound('report');
  return report;
}
