import type { ReportSnapshot } from '@garboard/contract/report-snapshot';
import type { Ctx } from '../context.ts';
import { wrongState } from '../problems.ts';
import { recordSum } from './record-sum.ts';
import { approvalStands, latestReview } from './review-standing.ts';

interface Reviewed {
  id: string;
  firmId: string;
  surveyorId: string | null;
}

/**
 * Where the firm requires a review: makes sure that this very record has been approved.
 *
 * @throws Refusal `wrong-state` saying what is missing.
 */
export async function refuseUnreviewed(
  ctx: Ctx,
  survey: Reviewed,
  snapshot: ReportSnapshot & { kind: 'full' },
): Promise<void> {
  const { reviewRequired } = await ctx.tx.firm.findUniqueOrThrow({
    where: { id: survey.firmId },
    select: { reviewRequired: true },
  });
  if (!reviewRequired) return;
  const review = await latestReview(ctx, survey.id);
  if (approvalStands(survey, review, await recordSum(ctx, snapshot))) return;
  const rule = 'Your firm issues a report only when a second surveyor has approved its record';
  if (!review || review.state === 'withdrawn') throw wrongState(`${rule}. Ask for a review first.`);
  if (review.state === 'asked') throw wrongState(`${rule}. The review asked for is not decided yet.`);
  if (review.state === 'sent-back') {
    throw wrongState(
      `${rule}. ${review.decidedBy ?? 'The reviewer'} sent it back: ${review.reason} Ask again once that is done.`,
    );
  }
  throw wrongState(
    `${rule}, and this one was changed after ${review.decidedBy ?? 'the reviewer'} approved it. Ask for a review again.`,
  );
}
